import { BadInput } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import { liftPicks, panelBendingRatio } from "../../core/lifting/picks.ts";
import { orElse } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length, quantity, whole } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { panel, panelValues } from "../wood/panel-param.ts";
import { familyFunction } from "./family.ts";
import { LIFT_CAUTIONS } from "./words.ts";

interface PickRow {
  readonly pick: string;
  readonly fromLeftFt: number | "";
  readonly momentFtLb: number;
}

const pickColumns = columnsOf<PickRow>(
  ["pick", "", (r) => r.pick],
  ["from left", "ft", (r) => r.fromLeftFt],
  ["moment", "ft lb", (r) => r.momentFtLb],
);

export const picksForBending = familyFunction({
  name: "LIFT_PICKS",
  summary: "Where to pick up a piece of even weight so that it bends least, and the bending.",
  params: {
    length: length("ft", {
      says: "length of the piece",
      min: 1,
      max: 120,
      usual: { min: 2, max: 80, ask: "is it in feet?" },
    }),
    weight: quantity("plf", {
      says: "static weight of a foot of its length, plf",
      above: 0,
      max: 5000,
      usual: { min: 1, max: 1000, ask: "is it the weight of one foot?" },
    }),
    count: optional(
      whole({ says: "picks with equal pulls, 2 to 4; 1 tilts the piece up about its left end", min: 1, max: 4 }),
      2,
      "{} picks",
    ),
  },
  placed: {
    slingImpactFactor: orElse("sling impact factor"),
    panel: optional(panel, [], "no panel values: its stress is not checked"),
  },
  returns: pickColumns.table(
    "place of each pick and the bending there; then the spacing of the picks and the greatest bending anywhere; with panel values the ratio of bending stress to strength last",
  ),
  sources: [
    "Mechanics teaching site, two-point lift: 0.207 L; statics of a beam of even weight",
    "One pick, tilted about the foot: 0.293 L from the top, from memory and by statics",
  ],
  assumptions: [
    "The piece is lifted level by its face, the worst for bending; the impact factor is in the bending.",
    "With panel values the weight is that of a strip one foot wide, face grain along the length, with no factor for the short time.",
  ],
  cautions: [...LIFT_CAUTIONS, "Slings at an angle add compression along the piece and bending about its weak axis."],
  example: {
    args: { length: 10, weight: 1, count: 2, slingImpactFactor: 1 },
    gives: [
      ["pick 1", 2.07, -2.14],
      ["pick 2", 7.93, -2.14],
      ["best spacing", 5.86, 2.14],
    ],
    within: 0.005,
    source: "Mechanics teaching site, two-point lift: 0.207 L from each end; 0.0214 w L2 from memory",
  },
  refuses: [
    { args: { count: 6 }, says: "it must be from 1 to 4" },
    { args: { length: null }, says: "Length is missing" },
  ],
  notFor: "Uneven pieces take LIFT_CENTROID first; tilting up from the flat puts other bending on the piece.",
  run(a, tape) {
    const { picks: found, spacingFt, greatestFtLb } = liftPicks(a.length, a.weight, a.count, a.slingImpactFactor, tape);
    const rows: PickRow[] = [...found, { pick: "best spacing", fromLeftFt: spacingFt, momentFtLb: greatestFtLb }];
    if (a.panel.length > 0) {
      rows.push({ pick: "bending ratio", fromLeftFt: "", momentFtLb: ratioOf(greatestFtLb, a.panel, tape) });
    }
    return spill(pickColumns, rows, "picks", "place and bending, best spacing and greatest bending", tape);
  },
});

/** Bending stress over strength of a panel by its values; those two must be there. */
function ratioOf(momentFtLb: number, rows: Parameters<typeof panelValues>[0], tape: Tape | undefined): number {
  const { S = 0, Fb = 0 } = panelValues(rows, "along");
  if (S > 0 && Fb > 0) return panelBendingRatio(momentFtLb, S, Fb, tape);
  throw new BadInput(
    `The panel's ${S > 0 ? "Fb" : "S"} along the grain is missing`,
    "bending stress is 12 M / S, held against Fb",
    "Add the row from the panel's evaluation report, or leave the panel out",
  );
}
