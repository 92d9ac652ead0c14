import { type BeadSection, beadContainers } from "../../core/takeoff/bead.ts";
import { sheetsCount } from "../../core/takeoff/sheets-count.ts";
import { wallArea, wallAreaRow } from "../../core/takeoff/wall-area.ts";
import { cellFunction, quantityOf, tableOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { length, quantity } from "../declare/scalar.ts";
import { list } from "../declare/table.ts";
import { gableRise, noOpenings, sheetArea, wallHeight, wallLength, wallOf, waste } from "./params.ts";

const wallAreaFunction = cellFunction({
  name: "WALL_AREA",
  family: "Takeoff and cutting",
  summary: "Gross and net area of one face of a wall, with a gable on top where there is one.",
  params: {
    length: wallLength,
    height: wallHeight,
    gableRise,
    openings: noOpenings(),
  },
  returns: tableOf("one row: gross area, net area, area of the openings", [
    ["gross", "ft2"],
    ["net", "ft2"],
    ["openings", "ft2"],
  ]),
  sources: ["Plane geometry"],
  example: {
    args: { length: 32, height: "9'-0\"", gableRise: 8, openings: [["window", 3, 4, 2]] },
    gives: [[416, 392, 24]],
    within: 0,
    source: "exact arithmetic: 32 x 9 + 32 x 8 / 2 = 416; less 2 x 3 x 4",
  },
  run: (a, tape) => wallAreaRow(wallArea(wallOf(a), a.openings, tape)),
});

const sheetsCountFunction = cellFunction({
  name: "SHEETS_COUNT",
  family: "Takeoff and cutting",
  summary: "Sheets to cover an area, by area alone, rounded up.",
  params: {
    area: quantity("ft2", { says: "area to cover", min: 0, max: 1e7 }),
    sheet: sheetArea,
    waste,
  },
  returns: quantityOf("sheets", "whole sheets"),
  sources: ["Plane geometry; waste is a share of the area (common practice)"],
  cautions: ["By area alone: what sizes and joints allow is not looked at. SHEETS_NEST and WALL_COURSES do that."],
  example: {
    args: { area: 1000, sheet: "4x8", waste: 0.1 },
    gives: 35,
    within: 0,
    source: "exact arithmetic: 1000 x 1.1 / 32 = 34.4, rounded up",
  },
  run: (a, tape) => sheetsCount(a.area, a.sheet, a.waste, tape),
});

const bead = cellFunction({
  name: "BEAD",
  family: "Takeoff and cutting",
  summary: "Cartridges or sausages of sealant for a run of bead, by the volume of the bead.",
  params: {
    run: list(length("ft", { says: "length of bead", min: 0, max: 1e6 }), {
      says: "length of bead: one length, or a range of lengths that are added up",
    }),
    width: length("in", {
      says: "width of the joint, or diameter of a round bead where no depth is given",
      min: 0.03125,
      max: 6,
      usual: { min: 0.125, max: 2, ask: "is it in inches?" },
    }),
    depth: optional(
      length("in", { says: "depth of sealant in the joint", min: 0.03125, max: 6 }),
      undefined,
      "a round bead of that diameter",
    ),
    container: optional(
      quantity("fl oz", {
        says: "fill of one cartridge or sausage in US fl oz, or text such as 600 ml",
        min: 0.1,
        max: 7000,
      }),
      10.1,
      "a cartridge of 10.1 fl oz",
    ),
    waste,
  },
  returns: quantityOf("containers", "whole cartridges or sausages"),
  sources: [
    "Volume of the bead; NIST Handbook 44, Appendix C: 1 US gallon = 231 in3 = 128 fl oz",
    "Allow 5 to 15 % waste for tooling, skips and what stays in the container (common practice, no source)",
  ],
  example: {
    args: { run: 240, width: 0.25, depth: 0.25 },
    gives: 10,
    within: 0,
    source: "supplier page rule (10.1 fl oz: feet per tube = 18 / (12 x section)): 24.0 ft a tube, 240 / 24.0 = 10",
  },
  run(a, tape) {
    const runFt = a.run.reduce((sum, ft) => sum + ft, 0);
    tape?.step("L", "sum of the runs", runFt, "ft", "");
    const section: BeadSection =
      a.depth === undefined
        ? { kind: "round", diameterIn: a.width }
        : { kind: "joint", widthIn: a.width, depthIn: a.depth };
    return beadContainers(runFt, section, a.container, a.waste, tape);
  },
});

export const areaFunctions = [wallAreaFunction, sheetsCountFunction, bead] as const;
