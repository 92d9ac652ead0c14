import { type LoadRow, truckLoads } from "../../core/lifting/truck.ts";
import { needed, orElse } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { spill } from "../declare/spill.ts";
import { familyFunction } from "./family.ts";
import { pieces, sizeOf } from "./pieces.ts";
import { LIFT_CAUTIONS } from "./words.ts";

const columns = columnsOf<LoadRow>(
  ["load", "", (r) => r.load],
  ["order", "", (r) => r.order],
  ["piece", "", (r) => r.piece],
  ["weight", "lb", (r) => r.weightLb],
  ["used length", "ft", (r) => r.usedLengthFt],
  ["height", "ft", (r) => r.heightFt],
);

export const truck = familyFunction({
  name: "TRUCK_LOADS",
  summary: "Pieces in truck loads by weight, deck and stack, in the order of erection, last in first out.",
  params: { pieces },
  placed: {
    truckPayload: needed("truck payload"),
    deckLength: orElse("deck length"),
    deckWidth: orElse("deck width"),
    stackHeight: needed("stack height"),
  },
  returns: columns.table(
    "one row a piece in the order of loading; deck in use and top of its pile above the deck once it is on",
  ),
  sources: [
    "23 USC 127(a), 23 CFR 658.17: federal bridge formula, 20,000 lb a single axle, 34,000 lb a tandem, 80,000 lb gross",
    "The axle groups of a usual five-axle truck: common practice, no source",
  ],
  assumptions: [
    "A careful search, not an exhaustive one: another arrangement may need a truck less where the weight allows it.",
  ],
  cautions: [
    ...LIFT_CAUTIONS,
    "Height, length and overhang of a load are state law; tie-downs and the driver's own check rule. Weigh the truck.",
  ],
  example: {
    args: {
      pieces: [
        ["wall panel", 4000, 32, 8, 12, 2, null, null, null, 1],
        ["roof panel", 9000, 40, 8, 24, 1, null, null, null, 2],
      ],
      truckPayload: 46_000,
      stackHeight: 8.5,
    },
    gives: [
      [1, 1, "roof panel", 9000, 40, 2],
      [1, 2, "wall panel", 4000, 40, 3],
      [1, 3, "wall panel", 4000, 40, 4],
    ],
    within: 0,
    source: "exact arithmetic: what is erected last lies lowest",
  },
  refuses: [
    { args: { deckLength: 12 }, says: "the truck takes 12 ft" },
    { args: { truckPayload: 460 }, says: "the truck takes 460 lb" },
    {
      args: {
        pieces: [
          ["wall panel", 4000, 0, 8, 12, 2, "", "", "", 1],
          ["roof panel", 9000, 40, 8, 24, 1, "", "", "", 2],
        ],
      },
      says: "a load is laid out by length and width in feet and thickness in inches",
    },
    { args: { stackHeight: 17 }, says: "it must be above 0 ft and at most 14 ft" },
    {
      args: {
        pieces: [
          ["wall panel", 4000, 32, 8, 12, 400],
          ["b", 4000, 32, 8, 12, 400],
        ],
      },
      says: "at most 500 are laid out at once",
    },
  ],
  notFor: "Oversize permits, axle loads and tie-downs are the hauler's own sum.",
  run(a, tape) {
    const rows = a.pieces.map((p) => ({
      piece: p.piece,
      weightLb: p.weight,
      lengthFt: sizeOf(p, "length"),
      widthFt: sizeOf(p, "width"),
      thicknessIn: sizeOf(p, "thickness"),
      count: p.count,
      turn: p.turn,
    }));
    const deck = { payloadLb: a.truckPayload, lengthFt: a.deckLength, widthFt: a.deckWidth, stackFt: a.stackHeight };
    return spill(columns, truckLoads(rows, deck, tape), "loads", "pieces in the order of loading", tape);
  },
});
