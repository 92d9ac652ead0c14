import { BadInput, OutOfRange, plain, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import {
  CLADDING_PSF,
  FOAM,
  FURRING_SPACINGS_IN,
  type FurringFastener,
  type FurringRow,
  type FurringTable,
  NOT_IN_2018_PSF,
  PENETRATION_IN,
  TABLE_NUMBER,
} from "./tables/furring.ts";

export interface FurringCase {
  readonly insulationIn: number;
  readonly claddingPsf: number;
  readonly fastener: FurringFastener;
  readonly table: FurringTable;
  /** spacing of the furring; of the framing where cladding is fastened straight to it */
  readonly furringIn: number;
  /** edition of the residential code */
  readonly edition: string;
}

export interface FurringAnswer {
  readonly fastener: FurringFastener;
  readonly penetrationIn: number;
  /** along the furring; undefined where the table asks for a design */
  readonly spacingIn: number | undefined;
  /** what was read, in words */
  readonly row: string;
}

const HELD = ["2018", "2021"];
const [NARROW_IN, WIDE_IN] = FURRING_SPACINGS_IN;

function checkEdition(c: FurringCase): void {
  if (!HELD.includes(c.edition)) {
    throw new BadInput(
      `The residential code is ${c.edition}`,
      "its tables of furring over insulation are not held",
      "Give the residential code 2021, and compare with your edition",
    );
  }
  if (c.edition === "2018" && c.table === "direct") {
    throw new BadInput(
      "The residential code is 2018 and the table is direct",
      "that table of 2018 is not held, the furred one is",
      "Give the residential code 2021, and compare with your edition",
    );
  }
}

/** The column of the next heavier cladding that the edition has. */
function claddingColumn(psf: number, edition: string): number {
  return CLADDING_PSF.findIndex((column) => psf <= column && !(edition === "2018" && column === NOT_IN_2018_PSF));
}

function furringColumn(furringIn: number): "at16" | "at24" {
  return furringIn <= NARROW_IN ? "at16" : "at24";
}

function rowsOf(c: FurringCase): readonly FurringRow[] {
  const rows = FOAM[c.table][c.fastener];
  if (rows !== undefined) return rows;
  const has = Object.keys(FOAM[c.table]).join(", ");
  throw new OutOfRange(
    `The ${c.fastener} is not in ${TABLE_NUMBER[c.table]}`,
    `it has ${has}`,
    "Use one of these, or a fastener with a report of its own",
  );
}

/**
 * Spacing of the fasteners that carry furring, or cladding itself, through foam on wood framing: the widest row of the code's table whose thickness
 * is not below the insulation. Nothing is interpolated: the next heavier cladding, the next wider furring.
 * @throws OutOfRange beyond the table, BadInput for an edition that is not held
 * Source: IRC 2021 Tables R703.15.1 and R703.15.2; IBC 2018 Table 2603.13.2.
 */
export function furringFasteners(c: FurringCase, tape?: Tape): FurringAnswer {
  checkEdition(c);
  const number = TABLE_NUMBER[c.table];
  const clause = `residential code ${c.edition} ${number}`;
  within("The insulation", c.insulationIn, 0.1, 4, "in", clause);
  within("The weight of the cladding", c.claddingPsf, 0.1, 25, "psf", clause);
  within("The furring spacing", c.furringIn, 1, WIDE_IN, "in", clause);
  const column = claddingColumn(c.claddingPsf, c.edition);
  const furring = furringColumn(c.furringIn);
  const psf = CLADDING_PSF[column] ?? 0;
  const at = furring === "at16" ? NARROW_IN : WIDE_IN;
  tape?.step("cladding", `next column from ${plain(c.claddingPsf)} psf`, psf, "psf", clause);
  tape?.step("furring", `next column from ${plain(c.furringIn)} in`, at, "in", clause);
  let held: { spacingIn: number; foamIn: number } | undefined;
  for (const row of rowsOf(c)) {
    const foamIn = row[furring][column];
    tape?.step(
      `foam at ${row.spacingIn} in`,
      foamIn === undefined ? "design required" : "greatest thickness of foam",
      foamIn ?? "DR",
      "in",
      clause,
    );
    if (foamIn !== undefined && foamIn >= c.insulationIn - 1e-9) held = { spacingIn: row.spacingIn, foamIn };
  }
  says(c, tape);
  const where = `${number}: ${c.fastener}, ${c.table === "furred" ? "furring" : "framing"} ${at} in, ${psf} psf`;
  return {
    fastener: c.fastener,
    penetrationIn: PENETRATION_IN[c.fastener],
    spacingIn: held?.spacingIn,
    row:
      held === undefined
        ? `${where}: design required`
        : `${where}, every ${held.spacingIn} in: up to ${plain(held.foamIn)} in`,
  };
}

function says(c: FurringCase, tape: Tape | undefined): void {
  tape?.assume("Foam of at least 15 psi compressive strength; framing of wood of specific gravity 0.42 or more.");
  tape?.assume("The nominal 2x or wood structural panel of the wall counts in the penetration as the code allows.");
  if (c.table === "furred") tape?.assume("Furring of 1x wood at least, 2x where the cladding's fasteners need it.");
  tape?.caution(
    "The table is for foam: mineral wool, wood fiber and foam over 4 in need a report or a design. Wind and earthquake are checked apart.",
  );
}
