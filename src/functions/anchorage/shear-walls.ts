import { type SegmentShear, segmentShears } from "../../core/anchorage/shear-wall.ts";
import { columnsOf } from "../declare/columns.ts";
import { length } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { list } from "../declare/table.ts";
import { familyFunction } from "./family.ts";
import { CAUTION, shearLb } from "./params.ts";

const rows = columnsOf<SegmentShear>(
  ["segment", "", (r) => r.segment],
  ["length", "ft", (r) => r.lengthFt],
  ["shear", "lb", (r) => r.shearLb],
  ["unit", "plf", (r) => r.unitPlf],
  ["drag", "lb", (r) => r.dragLb],
);

const unit = familyFunction({
  name: "SHEARWALL_UNIT",
  summary: "Unit shear of the segments of a wall line, and the drag force that its collector gathers between them.",
  params: {
    shear: shearLb,
    segments: list(
      length("ft", {
        says: "length of a piece",
        min: -500,
        max: 500,
        usual: { min: 0, max: 80, eitherSign: true, ask: "is it in feet?" },
      }),
      {
        says: "lengths of the pieces from one end of the line to the other, gaps below 0",
        max: 200,
      },
    ),
  },
  placed: {},
  returns: rows.table("a row for each piece: its shear, unit shear, and the collector's force at its end"),
  sources: ["AWC ASD/LRFD Manual M14.3: v = V / L; statics of a collector that takes the shear in evenly"],
  assumptions: [
    "Segments of one material and height, so that they share by length; narrow ones need the reduction of the shear wall standard.",
    "Results are at the level of the shear that is given.",
  ],
  cautions: [CAUTION],
  example: {
    args: { shear: 1800, segments: [[8, -6, 10]] },
    gives: [
      ["wall 1", 8, 800, 100, 200],
      ["gap 1", 6, 0, 0, -250],
      ["wall 2", 10, 1000, 100, 0],
    ],
    within: 1e-9,
    source: "exact arithmetic: 1800/18 = 100 plf in the walls, 1800/24 = 75 plf along the line",
  },
  refuses: [
    { args: { segments: [[-5]] }, says: "a gap is written below 0, a piece of wall above 0" },
    { args: { shear: 1800000 }, says: "it must be from 1 to 1000000 lb" },
  ],
  notFor: "Diaphragms that twist, walls of different stiffness and seismic force go to an engineer.",
  run: (a, tape) =>
    spill(
      rows,
      segmentShears(
        a.shear,
        a.segments.filter((ft) => ft !== 0),
        tape,
      ),
      "answer",
      "segment, length, shear, unit shear, drag",
      tape,
    ),
});

export const shearWallFunctions = [unit] as const;
