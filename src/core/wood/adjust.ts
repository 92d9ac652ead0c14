import { loadDurationFactor, timeEffectFactor } from "../kit/load-duration.ts";
import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { referenceValue, type ValueName, type Wood } from "./material.ts";
import { isFlat, nominalOf, type Section, widthIn } from "./section.ts";
import {
  FACTORS_SOURCE,
  FLAT_USE,
  REPETITIVE_COMPOSITE,
  REPETITIVE_SAWN,
  type SizeFactors,
  sizeRows,
  TIMBER,
  WET_FREE,
  WET_GLULAM,
  WET_LUMBER,
  WET_TIMBER,
} from "./tables/factors.ts";
import { CD_SOURCE, LAMBDA_SOURCE, RESISTANCE, RESISTANCE_SOURCE } from "./tables/resistance.ts";
import type { Use } from "./use.ts";

/** One adjustment factor. */
export interface Factor {
  readonly symbol: string;
  readonly value: number;
  readonly says: string;
  readonly clause: string;
}

/** A design value with its factors. */
export interface Adjusted {
  readonly name: ValueName;
  readonly referencePsi: number;
  readonly factors: readonly Factor[];
  readonly adjustedPsi: number;
}

/** A member of a material in a use, which all factors depend on. */
export interface Member {
  readonly section: Section;
  readonly wood: Wood;
  readonly use: Use;
  /** three or more beside each other, at most 24 in apart, with a deck that shares the load */
  readonly repetitive: boolean;
}

/** Values that neither duration nor repetition changes. */
const UNTIMED: readonly ValueName[] = ["Fcp", "E", "Emin"];

function durationFactors(name: ValueName, use: Use): Factor[] {
  if (use.method === "allowable") {
    if (UNTIMED.includes(name)) return [];
    const says = typeof use.duration === "number" ? "load duration as given" : `load duration: ${use.duration}`;
    return [{ symbol: "CD", value: loadDurationFactor(use.duration), says, clause: CD_SOURCE }];
  }
  const r = RESISTANCE[name];
  if (r === undefined) return [];
  const factors = [
    { symbol: "KF", value: r.kf, says: `format conversion of ${name}`, clause: RESISTANCE_SOURCE },
    { symbol: "phi", value: r.phi, says: `resistance factor of ${name}`, clause: RESISTANCE_SOURCE },
  ];
  if (!r.timed) return factors;
  const lambda = timeEffectFactor(use.duration);
  return [...factors, { symbol: "lambda", value: lambda, says: `time effect: ${use.duration}`, clause: LAMBDA_SOURCE }];
}

/** The row of the widest size that is not above the ply's. */
function sizeRow(rows: readonly SizeFactors[], wide: number): SizeFactors {
  const row = rows.findLast((r) => r.widthIn <= wide);
  if (row === undefined) throw new RangeError("no size factor"); // sizes start at 2 in
  return row;
}

/** Size factor of a generic grade; own rows hold it already. */
function sizeFactor(name: ValueName, { section, wood }: Member): Factor[] {
  const nominal = nominalOf(section);
  if (wood.sized || wood.grade === undefined || nominal === undefined) return [];
  const wide = Math.max(nominal.first, nominal.second);
  const thick = Math.min(nominal.first, nominal.second);
  const row = sizeRow(sizeRows(wood.grade), wide);
  const bending = thick >= TIMBER.thickLumber ? row.bendingThick : row.bending;
  const value = { Fb: bending, Ft: row.tension, Fc: row.compression }[name as "Fb" | "Ft" | "Fc"];
  if (value === undefined) return [];
  return [{ symbol: "CF", value, says: `size of ${plain(thick)}x${plain(wide)}, ${name}`, clause: FACTORS_SOURCE }];
}

function wetFactor(name: ValueName, referencePsi: number, cf: number, { wood, section, use }: Member): Factor[] {
  if (!use.wet) return [];
  if (wood.kind !== "sawn" && wood.kind !== "glulam") {
    throw new BadInput(
      `${wood.kind} is asked for wet service`,
      "structural composite lumber is for dry service unless its report says otherwise",
      "Give the values for wet use from its report as an own row, and say dry",
    );
  }
  const thickness = Math.min(section.plyIn, section.depthIn);
  const sawn = thickness >= TIMBER.actualFrom ? WET_TIMBER : WET_LUMBER;
  const table = wood.kind === "glulam" ? WET_GLULAM : sawn;
  const free = name === "Fb" || name === "Fc" ? WET_FREE[name] : 0;
  const exempt = table === WET_LUMBER && referencePsi * cf <= free;
  const says = exempt ? `wet service, ${name} up to ${free} psi takes none` : `wet service, ${name}`;
  return [{ symbol: "CM", value: exempt ? 1 : table[name], says, clause: table.source }];
}

function flatUse(name: ValueName, { section, wood }: Member): Factor[] {
  if (name !== "Fb" || !isFlat(section) || wood.kind !== "sawn") return [];
  const wide = section.nominal === undefined ? section.plyIn : Math.max(section.nominal.first, section.nominal.second);
  const thick =
    section.nominal === undefined ? section.depthIn : Math.min(section.nominal.first, section.nominal.second);
  const row = FLAT_USE.findLast(([from]) => from <= wide);
  if (row === undefined) return [];
  const value = thick >= TIMBER.thickLumber ? row[2] : row[1];
  return [{ symbol: "Cfu", value, says: "flat use: the load comes on the wide face", clause: FACTORS_SOURCE }];
}

function repetitiveFactor(name: ValueName, { wood, repetitive }: Member): Factor[] {
  if (name !== "Fb" || !repetitive || wood.kind === "glulam") return [];
  const value = wood.kind === "sawn" ? REPETITIVE_SAWN : REPETITIVE_COMPOSITE;
  return [
    {
      symbol: "Cr",
      value,
      says: "repetitive members",
      clause: "NDS 4.3.9, 8.3.7, from memory; 1.15 confirmed by printed spans",
    },
  ];
}

/**
 * A design value with all factors but stability (CL, CP).
 * @throws BadInput for a value that the row lacks, for composite lumber in wet service
 * Source: NDS 4.3, 5.3, 8.3 and Appendix N; the tables of factors say which of them are from memory.
 */
export function adjust(name: ValueName, member: Member, tape?: Tape): Adjusted {
  const referencePsi = referenceValue(member.wood, name, tape);
  const cf = sizeFactor(name, member);
  const factors = [
    ...durationFactors(name, member.use),
    ...wetFactor(name, referencePsi, cf[0]?.value ?? 1, member),
    ...cf,
    ...flatUse(name, member),
    ...repetitiveFactor(name, member),
  ];
  for (const f of factors) stepOnce(f, tape);
  return { name, referencePsi, factors, adjustedPsi: times(referencePsi, factors) };
}

export function times(referencePsi: number, factors: readonly Factor[]): number {
  return factors.reduce((product, f) => product * f.value, referencePsi);
}

/** A factor that several values share is a step once. */
function stepOnce(f: Factor, tape?: Tape): void {
  if (tape?.steps.some((s) => s.symbol === f.symbol && s.expression === f.says)) return;
  tape?.step(f.symbol, f.says, f.value, "", f.clause);
}

/** Factors in one text: "CD 1.25 CF 1.2"; "none" where there is none. */
export function factorsText(factors: readonly Factor[]): string {
  return factors.map((f) => `${f.symbol} ${plain(f.value)}`).join(" ") || "none";
}

/** Writes an adjusted value as a step: F' = F CD CF. */
export function showAdjusted(a: Adjusted, tape?: Tape, symbol = `${a.name}'`): void {
  const product = a.factors.map((f) => plain(f.value)).join(" x ");
  const says = product === "" ? plain(a.referencePsi) : `${plain(a.referencePsi)} x ${product}`;
  tape?.step(symbol, says, a.adjustedPsi, "psi", "NDS 4.3, 8.3");
}

/** What no argument says and every member stands on. */
export function assumeCommon(member: Member, tape?: Tape): void {
  tape?.step("Ct", "up to 100 F; hot members are not held here", 1, "", "NDS 2.3.3");
  tape?.assume(
    "Not notched, drilled, incised or treated with fire retardant; below 100 F (Ct 1); not a truss chord (CT 1).",
  );
  if (widthIn(member.section) > member.section.plyIn) {
    tape?.assume("The plies are joined so that they act together and share the load.");
  }
}
