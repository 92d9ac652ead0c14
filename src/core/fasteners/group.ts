import { recalled } from "../kit/known.ts";
import { OutOfRange, plain, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { SMALL_DOWEL_IN } from "./tables/fasteners.ts";

/** A member that the row pulls on. */
export interface GroupMember {
  readonly name: string;
  readonly steel: boolean;
  /** stiffness E A of the gross section, lb */
  readonly stiffnessLb: number;
}

export interface Row {
  readonly count: number;
  readonly spacingIn: number;
  readonly diameterIn: number;
  readonly main: GroupMember;
  /** one side member, or both together in double shear */
  readonly sides: readonly GroupMember[];
}

/** Load/slip modulus of a dowel, lb/in, over D^1.5. NDS 2018 11.3.6, from memory. */
const SLIP = { wood: 180_000, steel: 270_000 } as const;
const LEAST_SPACING = 3;
const MOST_IN_ROW = 30;

/**
 * Group action factor Cg of one row of fasteners.
 * @throws OutOfRange for a row or spacing outside the equation
 * Source: NDS 2018 11.3.6, equation 11.3-1, from memory.
 */
export function groupActionFactor(row: Row, tape?: Tape): number {
  const { count: n, spacingIn: s, diameterIn: d } = row;
  within("The number in the row", n, 1, MOST_IN_ROW, "", "longer rows have not been tried");
  if (n > 1 && s < LEAST_SPACING * d - 1e-9) {
    throw new OutOfRange(
      `The spacing in the row is ${plain(s)} in`,
      `at least ${plain(LEAST_SPACING * d)} in is wanted, 3 diameters (NDS Table 12.5.1B)`,
      "Space them wider, and check that the spacing is in inches",
    );
  }
  if (d < SMALL_DOWEL_IN || n === 1) {
    tape?.step("Cg", n === 1 ? "one fastener" : `fasteners under ${SMALL_DOWEL_IN} in`, 1, "", "NDS 2018 11.3.6");
    return 1;
  }
  const main = row.main.stiffnessLb;
  const side = row.sides.reduce((sum, m) => sum + m.stiffnessLb, 0);
  const ratio = Math.min(main / side, side / main);
  const slip = (row.main.steel || row.sides.some((m) => m.steel) ? SLIP.steel : SLIP.wood) * d ** 1.5;
  const u = 1 + slip * (s / 2) * (1 / main + 1 / side);
  const m = u - Math.sqrt(u * u - 1);
  const cg =
    ((m * (1 - m ** (2 * n))) / (n * ((1 + ratio * m ** n) * (1 + m) - 1 + m ** (2 * n)))) * ((1 + ratio) / (1 - m));
  const clause = recalled("NDS 2018 11.3.6");
  tape?.step("R_EA", `smaller of E A ${plain(main)} / ${plain(side)} and its inverse`, ratio, "", clause);
  tape?.step("u", `1 + ${plain(slip)} s/2 (1/EmAm + 1/EsAs)`, u, "", clause);
  tape?.step("m", "u - sqrt(u^2 - 1)", m, "", clause);
  tape?.step(
    "Cg",
    `[m (1 - m^2n) / (n ((1 + R_EA m^n)(1 + m) - 1 + m^2n))] (1 + R_EA)/(1 - m), n ${n}`,
    cg,
    "",
    clause,
  );
  return cg;
}

/**
 * What a row of fasteners carries, lb: its number times one fastener times Cg.
 * Source: NDS 2018 11.2.2, 11.3.6.
 */
export function rowValue(capacityLb: number, row: Row, tape?: Tape): number {
  const cg = groupActionFactor(row, tape);
  const value = row.count * capacityLb * cg;
  tape?.caution(
    "Row and group tear-out, the net section and the geometry factor of short ends and edges are not checked.",
  );
  tape?.step("n Z' Cg", `${row.count} x ${plain(capacityLb)} x ${plain(cg)}`, value, "lb", "NDS 2018 11.2.2");
  return value;
}
