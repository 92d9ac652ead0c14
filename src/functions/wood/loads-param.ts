import type { LoadLevel } from "../../core/kit/load-level.ts";
import { BadInput, plain } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import { parseQuantity } from "../../core/units/quantity.ts";
import type { BeamLoad } from "../../core/wood/beam/beam.ts";
import { levels, type Use } from "../../core/wood/use.ts";
import { capital, oneCell } from "../declare/cell.ts";
import { optional, type Param } from "../declare/param.ts";
import { isRange } from "../declare/raw.ts";
import { length, quantity } from "../declare/scalar.ts";
import { type ExampleRows, type RowOf, table } from "../declare/table.ts";
import { choice, text } from "../declare/word.ts";

const MOST = 1_000_000;
/** Loads of builders are larger (common practice, no source); kips fall below. */
const LEAST = 5;
const KINDS = ["dead", "live", "roof", "snow", "rain", "wind", "seismic"] as const;

/** An amount with the unit that was written behind it, if any. */
interface Amount {
  readonly value: number;
  readonly unit: "plf" | "lb" | undefined;
}

/** A number, or text in plf or lb; which of the two a bare number is follows from where the load stands. */
const amount: Param<Amount, number | string> = {
  kind: "number",
  says: "load: plf where it is spread, lb where it is a point; downward positive",
  unit: "",
  limits: { min: -MOST, max: MOST },
  heads: ["plf", "lb", "value"],
  usual: { min: LEAST, max: MOST, eitherSign: true, ask: "is it in plf or lb, and not in kips?" },
  read(raw, at, notes) {
    const cell = oneCell(raw, at, "a load in plf or lb");
    const read = amountOf(cell, at);
    if (read.value !== 0 && Math.abs(read.value) < LEAST) {
      notes.caution(
        `${capital(at)} of ${plain(read.value)} is below the usual ${LEAST} of either sign: is it in plf or lb, and not in kips?`,
      );
    }
    if (Math.abs(read.value) <= MOST) return { value: read, shown: String(cell) };
    throw new BadInput(`${capital(at)} is ${read.value}`, `loads up to ${MOST} can be worked with`, "Check the load");
  },
};

function amountOf(cell: number | string | boolean, at: string): Amount {
  if (typeof cell === "number") return { value: cell, unit: undefined };
  for (const unit of ["plf", "lb"] as const) {
    try {
      const value = parseQuantity(String(cell), unit);
      return { value, unit: /^[-+\d.,\s]+$/.test(String(cell)) ? undefined : unit };
    } catch {
      // The next unit is tried; what neither reads is refused below.
    }
  }
  throw new BadInput(
    `${capital(at)} is "${String(cell).slice(0, 40)}"`,
    "it is read as neither plf nor lb",
    "Give a number, or text such as 200 plf or 900 lb",
  );
}

const place = (says: string) => optional(length("ft", { says, min: 0, max: 180 }), undefined, "");

const COLUMNS = {
  load: text({ says: "name of the load", heads: ["name"] }),
  amount,
  from: place("start from the left end of the whole beam, ft; alone it is where a point load stands"),
  to: place("end from the left end of the whole beam, ft"),
  kind: optional(
    choice(KINDS, {
      says: "kind: dead, live, roof, snow, rain, wind, seismic; deflection is that of the live ones where any is named so",
      also: { d: "dead", l: "live", lr: "roof", s: "snow", r: "rain", w: "wind", e: "seismic" },
    }),
    undefined,
    "",
  ),
} as const;

type LoadRow = RowOf<typeof COLUMNS>;
const rows = table(COLUMNS, { says: "loads, one row each: load, amount, from, to, kind", maxRows: 50 });
const oneLoad = quantity("plf", {
  says: "one load on all spans, plf",
  min: -20_000,
  max: 20_000,
  usual: { min: LEAST, max: 5000, eitherSign: true, ask: "is it in plf?" },
});

export type LoadsArgument = { readonly plf: number } | { readonly rows: readonly LoadRow[] };

/** One number of plf on all spans, or a table of loads. */
export const loads: Param<LoadsArgument, number | string | ExampleRows> = {
  ...rows,
  says: "loads: plf on all spans, or rows of load, amount, from ft, to ft, kind",
  unit: "plf",
  read(raw, at, notes) {
    if (isRange(raw) && (raw.length > 1 || (raw[0]?.length ?? 0) > 1)) {
      const reading = rows.read(raw, at, notes);
      return { value: { rows: reading.value }, shown: reading.shown };
    }
    const reading = oneLoad.read(raw, at, notes);
    return { value: { plf: reading.value }, shown: reading.shown };
  },
};

/** Loads on a beam at the two levels that it is checked at, inches and pounds. */
export interface LevelLoads {
  readonly design: readonly BeamLoad[];
  readonly deflection: readonly BeamLoad[];
}

const INCHES = 12;

/** Brings loads to the levels of design and service. @throws BadInput for rows that do not say where they stand */
export function levelLoads(
  argument: LoadsArgument,
  lengthIn: number,
  use: Use,
  level: LoadLevel | undefined,
  tape?: Tape,
): LevelLoads {
  if ("plf" in argument) {
    if (argument.plf === 0) throw noLoad();
    const { design, service } = levels("The load", argument.plf, "plf", use, level, tape);
    const whole = (plf: number): BeamLoad[] => [{ kind: "uniform", fromIn: 0, toIn: lengthIn, lbPerIn: plf / INCHES }];
    return { design: whole(design), deflection: whole(service) };
  }
  if (argument.rows.every((row) => row.amount.value === 0)) throw noLoad();
  const live = argument.rows.some((row) => row.kind === "live");
  if (live) tape?.assume("Deflection is that of the live loads alone, since rows say live.");
  const turned = argument.rows.map((row) => ({ row, ...rowLevels(row, use, level, tape) }));
  return {
    design: turned.map(({ row, design }) => placed(row, design, lengthIn, tape)),
    deflection: turned
      .filter(({ row }) => !live || row.kind === "live")
      .map(({ row, service }) => placed(row, service, lengthIn)),
  };
}

function noLoad(): BadInput {
  return new BadInput("Loads are 0", "there is nothing to check", "Give plf, or rows with amounts");
}

/** Gravity loads stand at their own level; the others are of wind or earthquake where the load duration says so. */
function rowLevels(row: LoadRow, use: Use, level: LoadLevel | undefined, tape?: Tape) {
  const gravity = row.kind !== undefined && row.kind !== "wind" && row.kind !== "seismic";
  if (gravity && (use.duration === "wind" || use.duration === "seismic")) {
    tape?.assume(
      `${row.load} is taken as given, at ${use.method} level: only loads of wind and earthquake are turned.`,
    );
    return { design: row.amount.value, service: row.amount.value };
  }
  const unit = isPoint(row) ? "lb" : "plf";
  return levels(`The load ${row.load}`, row.amount.value, unit, use, level, tape);
}

/** Whether a row is a point load: a start and no end (one host hands a blank over as 0). */
function isPoint(row: LoadRow): boolean {
  return row.from !== undefined && row.from > 0 && (row.to === undefined || row.to === 0);
}

function placed(row: LoadRow, value: number, lengthIn: number, tape?: Tape): BeamLoad {
  const { unit } = row.amount;
  if (isPoint(row)) {
    if (unit === "plf") throw unitOf(row, "a point, since it has a start and no end", "lb");
    return { kind: "point", atIn: (row.from ?? 0) * INCHES, lb: value };
  }
  if (unit === "lb") throw unitOf(row, "spread, since it has no single place", "plf");
  const from = row.from ?? 0;
  const whole = (row.to ?? 0) === 0;
  if (whole && row.from === 0 && row.to === undefined) {
    tape?.caution(`${row.load}: from 0 without an end is read as blank, so the load lies on the whole beam.`);
  }
  return {
    kind: "uniform",
    fromIn: from * INCHES,
    toIn: whole ? lengthIn : (row.to ?? 0) * INCHES,
    lbPerIn: value / INCHES,
  };
}

function unitOf(row: LoadRow, reads: string, wants: string): BadInput {
  return new BadInput(
    `${row.load} in row ${row.row} of loads is in ${row.amount.unit}`,
    `it is read as ${reads}`,
    `Give it in ${wants}, or mend its from and to`,
  );
}
