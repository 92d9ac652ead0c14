import { type BeadSection, beadContainers } from "../../core/takeoff/bead.ts";
import { sheetsCount } from "../../core/takeoff/sheets-count.ts";
import { type WallArea, wallAreas } from "../../core/takeoff/wall/wall-area.ts";
import { narrow, orElse } from "../basis/term.ts";
import { quantityOf } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length, quantity } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { list } from "../declare/table.ts";
import { familyFunction } from "./family.ts";
import { PLANE, sheetArea } from "./params.ts";
import { openedWalls, someOpenings, walls } from "./walls.ts";

const AREAS = columnsOf<WallArea>(
  ["wall", "", (r) => r.wall],
  ["gross", "ft2", (r) => r.grossFt2],
  ["openings", "ft2", (r) => r.openingsFt2],
  ["net", "ft2", (r) => r.netFt2],
);

const wallAreaFunction = familyFunction({
  name: "WALL_AREA",
  summary: "Gross and net area of one face of walls, with gables and sheds, wall by wall and together.",
  params: { walls, openings: someOpenings },
  placed: {},
  returns: AREAS.table("a row for each wall: gross area, openings, net area; the last row is the total"),
  sources: [PLANE],
  example: {
    args: {
      walls: [
        ["west", 32, "9'-0\"", 8],
        ["north", 40, 9],
      ],
      openings: [["window", 3, 4, 2, 3, null, "west"]],
    },
    gives: [
      ["west", 416, 24, 392],
      ["north", 360, 0, 360],
      ["total", 776, 24, 752],
    ],
    within: 0,
    source: "exact arithmetic: 32 x 9 + 32 x 8 / 2 = 416, less 2 x 3 x 4; 40 x 9 = 360",
  },
  refuses: [
    { args: { walls: [["north", 40, 9]] }, says: "the walls are north" },
    { args: { openings: [["window", 3, 4, 2, 3, "", 0]] }, says: "there are several: west, north" },
    {
      args: { openings: [["window", 3, 4, 2, 3, 1000, "west"]] },
      says: "west is 32 ft long and 9 ft high with a gable of 8 ft on top",
    },
    {
      args: {
        walls: [
          ["west", 32, 0, 8],
          ["north", 40, 9],
        ],
      },
      says: "it must be from 0.1 to 100 ft",
    },
    {
      args: { walls: [["north", 40, 9, -10, "shed"]] },
      says: "its left end is 9 ft high and the top rises -10 ft from there",
    },
  ],
  notFor: "Curved walls, and faces of a wall that differ, are measured on the drawing.",
  run: (a, tape) =>
    spill(AREAS, wallAreas(openedWalls(a.walls, a.openings), tape), "table", "wall, gross, openings, net", tape),
});

const sheetsCountFunction = familyFunction({
  name: "SHEETS_COUNT",
  summary: "Sheets to cover an area, by area alone, rounded up.",
  params: {
    area: quantity("ft2", {
      says: "area to cover",
      min: 0,
      max: 1e7,
      usual: { min: 1, max: 100_000, ask: "is it in square feet, or its cell blank?" },
    }),
    sheet: sheetArea,
  },
  placed: { sheetWaste: narrow("sheet waste", "waste") },
  returns: quantityOf("sheets", "whole sheets"),
  sources: [`${PLANE}; waste is a share of the area (common practice, no source)`],
  cautions: ["By area alone: what sizes and joints allow is not looked at. LINING with a cutting layout does that."],
  example: {
    args: { area: 1000, sheet: "4x8", sheetWaste: 0.1 },
    gives: 35,
    within: 0,
    source: "exact arithmetic: 1000 x 1.1 / 32 = 34.4, rounded up",
  },
  refuses: [
    { args: { area: -1 }, says: "it must be from 0 to 10000000 ft2" },
    { args: { area: null }, says: "Area is missing" },
    { args: { sheet: "4x800" }, says: "sizes are in feet unless the text names another unit" },
  ],
  notFor: "What sizes, grain and joints allow takes LINING or WALL_COURSES with SHEETS_NEEDED.",
  run: (a, tape) => sheetsCount(a.area, a.sheet, a.sheetWaste, tape),
});

const bead = familyFunction({
  name: "BEAD",
  summary: "Cartridges or sausages of sealant for a run of bead, by the volume of the bead.",
  params: {
    run: list(
      length("ft", { says: "length of bead", min: 0, max: 1e6, usual: { min: 0, max: 20_000, ask: "is it in feet?" } }),
      {
        says: "length of bead: one length, or a range of lengths that are added up",
      },
    ),
    width: length("in", {
      says: "width of the joint, or diameter of a round bead where no depth is given",
      min: 0.03125,
      max: 6,
      usual: { min: 0.125, max: 2, ask: "is it in inches?" },
    }),
    depth: optional(
      length("in", {
        says: "depth of sealant in the joint",
        min: 0.03125,
        max: 6,
        usual: { min: 0.125, max: 2, ask: "is it in inches?" },
      }),
      undefined,
      "a round bead of that diameter",
    ),
  },
  placed: { sealantWaste: narrow("sealant waste", "waste"), cartridgeFill: orElse("cartridge fill") },
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
  refuses: [
    { args: { width: 25 }, says: "it must be from 0.03125 to 6 in" },
    { args: { width: null }, says: "Width is missing" },
  ],
  notFor: "Fire-rated and structural joints are sized by their listing, not by the volume of a bead.",
  run(a, tape) {
    const runFt = a.run.reduce((sum, ft) => sum + ft, 0);
    tape?.step("L", "sum of the runs", runFt, "ft", "");
    const section: BeadSection =
      a.depth === undefined
        ? { kind: "round", diameterIn: a.width }
        : { kind: "joint", widthIn: a.width, depthIn: a.depth };
    return beadContainers(runFt, section, a.cartridgeFill, a.sealantWaste, tape);
  },
});

export const areaFunctions = [wallAreaFunction, sheetsCountFunction, bead] as const;
