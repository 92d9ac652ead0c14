import type { Centroid } from "../../core/lifting/centroid.ts";
import { liftCentroid } from "../../core/lifting/centroid.ts";
import type { SlingPick } from "../../core/lifting/hanging.ts";
import { liftSling } from "../../core/lifting/sling.ts";
import { orElse } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length, quantity } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { list, table } from "../declare/table.ts";
import { text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { axisOf, placedPieces } from "./pieces.ts";
import { LIFT_CAUTIONS, NAVY } from "./words.ts";

const centroidColumns = columnsOf<Centroid>(
  ["weight", "lb", (c) => c.weightLb],
  ["x", "ft", (c) => c.xFt],
  ["y", "ft", (c) => c.yFt],
  ["z", "ft", (c) => c.zFt],
);

export const centroid = familyFunction({
  name: "LIFT_CENTROID",
  summary: "Weight and center of gravity of pieces that are lifted together.",
  params: { pieces: placedPieces },
  placed: {},
  returns: centroidColumns.table("weight of all and the place of their center of gravity"),
  oneRow: true,
  sources: ["Statics of composite bodies: sum of W x over sum of W"],
  assumptions: ["x, y and z of a row are those of the piece's own center of gravity, from any one origin."],
  cautions: LIFT_CAUTIONS,
  example: {
    args: {
      pieces: [
        ["4 x 12", 48, null, null, null, null, 0, 10],
        ["6 x 8", 48, null, null, null, null, 0, 4],
      ],
    },
    gives: [[96, 0, 7, 0]],
    within: 0.5,
    source: "Statics course worked examples (composite areas): 4 x 12 at y 10 and 6 x 8 at y 4 have y 7",
  },
  refuses: [
    {
      args: {
        pieces: [
          ["4 x 12", 48, -1, "", "", "", 0, 10],
          ["6 x 8", 48, "", "", "", "", 0, 4],
        ],
      },
      says: "it must be above 0 ft and at most 120 ft",
    },
    {
      args: {
        pieces: [
          ["", 48, "", "", "", "", 0, 10],
          ["6 x 8", 48, "", "", "", "", 0, 4],
        ],
      },
      says: "Piece in row 1 of pieces is missing",
    },
    {
      args: {
        pieces: [
          ["a", -40, "", "", "", "", 0, 10],
          ["b", 30, "", "", "", "", 0, 5],
        ],
      },
      says: "a load has a weight above 0",
    },
  ],
  notFor: "A piece whose parts are not known is found by a trial lift, a hand above the ground.",
  run(a, tape) {
    const [x, y, z] = [axisOf(a.pieces, "x", tape), axisOf(a.pieces, "y", tape), axisOf(a.pieces, "z", tape)];
    const placed = a.pieces.map((p) => ({
      piece: p.piece,
      weightLb: p.weight,
      count: p.count,
      xFt: x(p),
      yFt: y(p),
      zFt: z(p),
    }));
    return spill(centroidColumns, [liftCentroid(placed, tape)], "W, x, y, z", "weight and center of gravity", tape);
  },
});

const offset = (says: string) => length("ft", { says, min: -200, max: 200 });

const picks = table(
  {
    pick: text({ says: "name of the pick", heads: ["leg", "name"] }),
    x: offset("x of the pick from the center of gravity"),
    y: offset("y of the pick from the center of gravity"),
    z: optional(offset("height of the pick above the center of gravity"), 0, "at the height of the center of gravity"),
  },
  { says: "two to four picks: pick, x ft, y ft, z ft from the center of gravity", minRows: 2, maxRows: 4 },
);

interface SlingRow {
  readonly leg: string;
  readonly tensionLb: number;
  readonly angleDeg: number | "";
}

const slingColumns = columnsOf<SlingRow>(
  ["leg", "", (r) => r.leg],
  ["tension", "lb", (r) => r.tensionLb],
  ["angle", "deg from level", (r) => r.angleDeg],
);

export const sling = familyFunction({
  name: "LIFT_SLING",
  summary: "Tension of each leg of a sling from one hook, by the places of the picks, and the least rating of a leg.",
  params: {
    weight: quantity("lb", {
      says: "static weight of the load",
      above: 0,
      max: 500_000,
      usual: { min: 50, max: 40_000, ask: "is it in pounds?" },
    }),
    picks,
    rise: length("ft", {
      says: "from the lowest pick up to the hook, ft",
      min: 0.5,
      max: 300,
      usual: { min: 2, max: 60, ask: "is it the rise in feet?" },
    }),
    hook: optional(
      list(offset("x and y of the hook from the center of gravity"), {
        says: "x and y of the hook from the center of gravity, where it is off",
        min: 2,
        max: 2,
      }),
      [0, 0],
      "the hook stands plumb above the center of gravity",
    ),
  },
  placed: { slingImpactFactor: orElse("sling impact factor") },
  returns: slingColumns.table("tension under the static weight and angle of each leg; last the least rating of a leg"),
  sources: [
    `${NAVY}: legs 45 degrees from the level or steeper, none under 30; two legs carry a rigid load`,
    "Statics of unequal legs: T = W D2 S1 / (H (D1 + D2)), maritime-industry training page",
  ],
  assumptions: [
    "Sources differ on three and four legs: Navy manuals give a rigid load to two, a training page to three, a homework answer to four. Two are counted, or more on a leg where statics puts more.",
    "Angles are from the level: some tables count them from the plumb line.",
  ],
  cautions: [
    ...LIFT_CAUTIONS,
    "The impact factor is in the least rating, not in the tensions. Slings, shackles and picks are each rated by their makers.",
  ],
  example: {
    args: {
      weight: 2400,
      picks: [
        ["left", -6, 0],
        ["right", 6, 0],
      ],
      rise: 8,
      slingImpactFactor: 1,
    },
    gives: [
      ["left", 1500, 53.13],
      ["right", 1500, 53.13],
      ["least rating", 1500, ""],
    ],
    within: 0.01,
    source: "trade sling page worked example: H 96 in, L 120 in, 1200 lb a sling need a vertical rating of 1500 lb",
  },
  refuses: [
    { args: { rise: 0.8 }, says: "legs flatter than 30 deg are not used (US Navy rigging manuals" },
    {
      args: {
        picks: [
          ["left", 3, 0],
          ["right", 6, 0],
        ],
      },
      says: "the load would turn over until it hangs below them",
    },
    {
      args: {
        picks: [
          ["left", -6, 3],
          ["right", 6, 0],
        ],
      },
      says: "the load would turn over as it leaves the ground",
    },
    {
      args: {
        picks: [
          ["left", -6, 0, 12],
          ["right", 6, 0],
        ],
      },
      says: "the highest pick is 12 ft above it",
    },
    { args: { rise: 800 }, says: "it must be from 0.5 to 300 ft" },
    {
      args: {
        picks: [
          ["left", -6, 0],
          ["right", 6, 0],
          ["other", 6, 0],
        ],
      },
      says: "legs at one place are one leg",
    },
  ],
  notFor: "Spreader bars, rolling blocks and two cranes on one piece are a rigger's plan.",
  run(a, tape) {
    const places = a.picks.map((p): SlingPick => ({ pick: p.pick, xFt: p.x, yFt: p.y, zFt: p.z }));
    const [xFt = 0, yFt = 0] = a.hook;
    const { legs, leastRatingLb } = liftSling(a.weight, places, a.rise, { xFt, yFt }, a.slingImpactFactor, tape);
    const rows: SlingRow[] = [...legs, { leg: "least rating", tensionLb: leastRatingLb, angleDeg: "" }];
    return spill(slingColumns, rows, "T", "tension and angle of each leg, least rating", tape);
  },
});
