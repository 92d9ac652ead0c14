import { BadInput, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { type Zone, zoneName } from "../climate/zone.ts";
import { CODE_SOURCE, type CodeEdition } from "../tables/energy-code.ts";
import { codeKeeps, codeValue } from "./energy-code.ts";
import type { AreaPart } from "./heat-loss.ts";

const UA_CLAUSE = "IECC R402.1.5, total UA alternative";
const MEAN_CLAUSE = "IECC R402.3.1 and R402.3.2: fenestration by its mean weighted by area";
/** The part of the code's table whose solar heat gain is limited. */
const WINDOW = "window";

/** A part with the part of the code's table that it is held against. */
export interface CodedPart extends AreaPart {
  readonly codePart: string;
  /** solar heat gain coefficient of a window */
  readonly shgc: number | undefined;
}

/** A part, the mean of parts that share one of the code's, or the total, against the code. U in Btu/(h ft2 F), UA in Btu/(h F). */
export interface UaRow {
  readonly name: string;
  readonly areaFt2: number;
  readonly u: number;
  /** "" in a row of means, which is no part of the sum */
  readonly ua: number | "";
  readonly codeU: number;
  readonly codeUa: number | "";
  readonly verdict: string;
  readonly shgc: number | "";
  readonly codeShgc: number | string;
}

/**
 * Whole-house trade-off: the sum of U A of the parts against the sum with the code's U. Where several parts share one of the code's, or windows have a solar
 * heat gain, a row of means weighted by area follows them. The last row is the total.
 * @throws BadInput for a part that the code's table gives no number for, or where only some windows have a solar heat gain; as codeValue
 * Source: IECC R402.1.5 (total UA alternative), U of Table R402.1.2; R402.3.1, R402.3.2 (means weighted by area).
 */
export function uaAgainstCode(
  parts: readonly CodedPart[],
  zone: Zone,
  edition: CodeEdition,
  tape?: Tape,
): readonly UaRow[] {
  const rows = parts.map((p) => partRow(p, zone, edition, tape));
  const means = meanRows(parts, rows, zone, edition, tape);
  return [...rows, ...means, totalRow(rows, means, tape)];
}

function partRow(p: CodedPart, zone: Zone, edition: CodeEdition, tape: Tape | undefined): UaRow & Summed {
  const codeU = codeValue("U", zone, p.codePart, edition, tape);
  if (typeof codeU !== "number") {
    throw new BadInput(
      `The code's U of ${p.codePart} is "${codeU}" in zone ${zoneName(zone)}`,
      `${CODE_SOURCE[edition].U} sets none there`,
      `Leave ${p.name} out of the trade-off`,
    );
  }
  return {
    name: p.name,
    areaFt2: p.areaFt2,
    u: p.u,
    ua: p.areaFt2 * p.u,
    codeU,
    codeUa: p.areaFt2 * codeU,
    verdict: p.u <= codeU ? "within the code's U" : "above the code's U",
    shgc: p.shgc ?? "",
    codeShgc: "",
  };
}

interface Summed {
  readonly ua: number;
  readonly codeUa: number;
}

function meanRows(
  parts: readonly CodedPart[],
  rows: readonly UaRow[],
  zone: Zone,
  edition: CodeEdition,
  tape: Tape | undefined,
): readonly UaRow[] {
  return [...new Set(parts.map((p) => p.codePart))].flatMap((codePart) => {
    const own = parts.filter((p) => p.codePart === codePart);
    const sun = codePart === WINDOW ? shgcOf(own, zone, edition, tape) : undefined;
    if (own.length < 2 && sun === undefined) return [];
    const codeU = rows[parts.findIndex((p) => p.codePart === codePart)]?.codeU ?? 0;
    const u = weighted(`U ${codePart}`, own, (p) => p.u, "Btu/(h ft2 F)", tape);
    const heat = u <= codeU ? "within the code's U" : "above the code's U";
    return [
      {
        name: `${codePart}, mean by area`,
        areaFt2: areaOf(own),
        u,
        ua: "",
        codeU,
        codeUa: "",
        verdict: sun === undefined ? heat : `${heat}; ${sun.verdict}`,
        shgc: sun?.mean ?? "",
        codeShgc: sun?.code ?? "",
      },
    ];
  });
}

interface SolarGain {
  readonly mean: number;
  readonly code: number | string;
  readonly verdict: string;
}

/** Windows' solar heat gain against the code; undefined where none is given. */
function shgcOf(
  windows: readonly CodedPart[],
  zone: Zone,
  edition: CodeEdition,
  tape: Tape | undefined,
): SolarGain | undefined {
  const without = windows.find((w) => w.shgc === undefined);
  if (windows.every((w) => w.shgc === undefined)) return undefined;
  if (without !== undefined) {
    throw new BadInput(
      `${without.name} has no SHGC`,
      "the code holds the mean of all windows, weighted by area, against its limit",
      "Give the SHGC of each window, or of none",
    );
  }
  const mean = weighted("SHGC", windows, (w) => w.shgc ?? 0, "", tape);
  if (!codeKeeps("U", "SHGC", edition)) {
    tape?.caution(`The SHGC of ${CODE_SOURCE[edition].U} is not kept: the windows' mean is shown without a verdict.`);
    return { mean, code: "", verdict: "code SHGC not kept" };
  }
  const code = codeValue("U", zone, "SHGC", edition, tape);
  if (typeof code !== "number") return { mean, code, verdict: "no SHGC is asked" };
  return { mean, code, verdict: mean <= code ? "within the code's SHGC" : ABOVE_SHGC };
}

const ABOVE_SHGC = "above the code's SHGC";
const areaOf = (parts: readonly { readonly areaFt2: number }[]) => parts.reduce((s, p) => s + p.areaFt2, 0);

function weighted(
  symbol: string,
  parts: readonly CodedPart[],
  of: (p: CodedPart) => number,
  unit: string,
  tape: Tape | undefined,
): number {
  const area = areaOf(parts);
  if (area === 0) {
    throw new BadInput(
      `The parts of ${symbol} have no area`,
      "a mean weighted by area needs one",
      "Give their areas, or leave them out",
    );
  }
  const mean = parts.reduce((s, p) => s + p.areaFt2 * of(p), 0) / area;
  tape?.step(symbol, `sum of it times area / ${plain(area)} ft2`, mean, unit, MEAN_CLAUSE);
  return mean;
}

function totalRow(rows: readonly (UaRow & Summed)[], means: readonly UaRow[], tape: Tape | undefined): UaRow {
  const sum = (of: (r: UaRow & Summed) => number) => rows.reduce((s, r) => s + of(r), 0);
  const [areaFt2, ua, codeUa] = [areaOf(rows), sum((r) => r.ua), sum((r) => r.codeUa)];
  if (areaFt2 === 0) {
    throw new BadInput(
      "The parts have no area",
      "the UA of a building goes by its areas",
      "Give the area of each part in ft2",
    );
  }
  tape?.step("UA", "sum(U A)", ua, "Btu/(h F)", UA_CLAUSE);
  tape?.step("UA code", "sum(U_code A)", codeUa, "Btu/(h F)", UA_CLAUSE);
  const off = plain(Number((100 * Math.abs(1 - ua / codeUa)).toPrecision(2)));
  const heat = ua <= codeUa ? `met, ${off} % under the code` : `not met, ${off} % over the code`;
  const sunny = means.some((m) => m.verdict.includes(ABOVE_SHGC));
  tape?.caution(
    "The trade-off of the code counts insulation and fenestration only where the edition says so, and the SHGC of windows must be met besides: the building department decides.",
  );
  return {
    name: "total",
    areaFt2,
    u: ua / areaFt2,
    ua,
    codeU: codeUa / areaFt2,
    codeUa,
    verdict: sunny ? `${heat}; SHGC not met` : heat,
    shgc: "",
    codeShgc: "",
  };
}
