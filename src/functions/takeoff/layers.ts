import { boards } from "../../core/takeoff/boards.ts";
import { furring } from "../../core/takeoff/furring.ts";
import { LAPS, rolls } from "../../core/takeoff/rolls.ts";
import { ventScreen } from "../../core/takeoff/vent-screen.ts";
import { type LiningPart, lining } from "../../core/takeoff/wall/lining.ts";
import { narrow, needed, orElse } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { length } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { list } from "../declare/table.ts";
import { familyFunction } from "./family.ts";
import { boardSides, ORDER, orderOf, PLANE } from "./params.ts";
import { openedWalls, someOpenings, walls } from "./walls.ts";

/** What goes on walls layer by layer: membrane, insulation boards, furring, vent screen, lining. */

const rollsFunction = familyFunction({
  name: "ROLLS",
  summary:
    "Rolls of membrane for walls: courses with side laps, end laps at each change of roll, returns and openings.",
  params: {
    walls,
    rollWidth: length("in", {
      says: "width of the roll",
      min: 6,
      max: 480,
      usual: { min: 18, max: 168, ask: "is it in inches?" },
    }),
    rollLength: length("ft", {
      says: "length of the roll",
      min: 5,
      max: 2000,
      usual: { min: 25, max: 500, ask: "is it in feet?" },
    }),
    openings: someOpenings,
  },
  placed: {
    membraneWaste: narrow("membrane waste", "waste"),
    sideLap: orElse("side lap", 2, "courses overlap {} in (IRC R703.2)"),
    endLap: orElse("end lap", 6, "roll ends overlap {} in (IRC R703.2)"),
    cornerReturn: orElse("corner return", 0, "no membrane is carried round the ends of the walls"),
    openingReturn: orElse("opening return", 0, "none is kept to fold into openings that take a whole course"),
  },
  returns: ORDER.table("one order row: run of membrane with waste and laps, and rolls"),
  sources: [LAPS, PLANE],
  assumptions: [
    "Courses run level from the foot up, each as long as the wall at its lower edge; openings are rolled over and cut out, and only one that takes the whole height of a course shortens it.",
  ],
  example: {
    args: { walls: [["all round", 160, 9]], rollWidth: 60, rollLength: 100, membraneWaste: 0.1 },
    gives: [["membrane", 353.5, "ft", 4, "roll 60 in x 100 ft"]],
    within: 1e-9,
    source:
      "exact arithmetic: 2 courses x 160 ft x 1.1 = 352; (352 - 0.5) / 99.5 = 3.53, 4 rolls with 3 laps of 0.5 ft",
  },
  refuses: [
    { args: { rollWidth: 60000 }, says: "the spreadsheet makes such a number of what it takes for a date, 1/2" },
    { args: { walls: [["all round", 160, 9, -1]] }, says: "a gable rises to its peak" },
    {
      args: {
        walls: [
          ["all round", 160, 9],
          ["all round", 160, 9],
        ],
      },
      says: "columns and openings go by the name of their wall",
    },
    { args: { openings: [["x", 1, 1, 1, 1, 1, 1]] }, says: "the walls are all round" },
    { args: { rollWidth: 5 }, says: "it must be from 6 to 480 in" },
    { args: { rollWidth: 6, sideLap: 5 }, says: "each lap is at most half of the roll that way" },
  ],
  notFor: "Roofs, and membranes hung upright, have other laps: their maker's sheet says how.",
  run(a, tape) {
    const rules = {
      rollWidthFt: a.rollWidth / 12,
      rollLengthFt: a.rollLength,
      sideLapFt: a.sideLap / 12,
      endLapFt: a.endLap / 12,
      cornerReturnFt: a.cornerReturn / 12,
      openingReturnFt: a.openingReturn / 12,
    };
    return orderOf([rolls(openedWalls(a.walls, a.openings), rules, a.membraneWaste, tape)], tape);
  },
});

const boardsFunction = familyFunction({
  name: "BOARDS",
  summary: "Insulation boards for walls, layer by layer with staggered joints, offcuts used again.",
  params: {
    walls,
    board: boardSides,
    thicknesses: list(
      length("in", {
        says: "thickness of a layer",
        min: 0.125,
        max: 24,
        usual: { min: 0.375, max: 12, ask: "is it in inches?" },
      }),
      {
        says: "thickness of each layer from the wall out, one value a layer: 2, or a range of two 2s",
        max: 8,
      },
    ),
    openings: someOpenings,
  },
  placed: {
    boardWaste: narrow("board waste", "waste"),
    boardBundle: orElse("board bundle", 1, "boards are sold singly"),
  },
  returns: ORDER.table(
    "an order row for each thickness: boards by the layout, at least the area with waste, and bundles",
  ),
  sources: [PLANE],
  assumptions: [
    "Rows run along the wall with end joints staggered by half a board; every other layer is shifted by a quarter of a board and half a row.",
    "A board with a notch for an opening is a whole piece; pieces that an opening cuts off or cuts through are cut shorter. Offcuts are used again within their layer.",
    "The layout holds its own cutting waste: the waste share is on the area, net of openings of known place, and the larger of the two is ordered.",
  ],
  example: {
    args: { walls: [["north", 16, 8]], board: "4x8", thicknesses: [[2, 2]] },
    gives: [["board 4 x 8 ft x 2 in", 8, "boards", 8, "board"]],
    within: 0,
    source: "exact arithmetic: 2 layers x 16 x 8 / 32 = 8 boards, reached with every offcut used",
  },
  refuses: [
    { args: { board: "6" }, says: "a size is two sides above 0 with an x between them" },
    { args: { walls: [["north", 16, 8, -1]] }, says: "a gable rises to its peak" },
    {
      args: {
        walls: [
          ["north", 16, 8],
          ["north", 16, 8],
        ],
      },
      says: "columns and openings go by the name of their wall",
    },
    { args: { openings: [["x", 1, 1, 1, 1, 1, 1]] }, says: "the walls are north" },
    { args: { boardWaste: -1 }, says: "it must be from 0 to 1" },
    { args: { walls: [["south", 2000, 90]] }, says: "a layout is worked out for up to 4000" },
  ],
  notFor: "Tapered roof insulation follows its maker's layout; loose fill and batts go by area.",
  run(a, tape) {
    const rules = { ...a.board, thicknessesIn: a.thicknesses, perBundle: a.boardBundle };
    return orderOf(boards(openedWalls(a.walls, a.openings), rules, a.boardWaste, tape), tape);
  },
});

const furringFunction = familyFunction({
  name: "FURRING",
  summary: "Furring strips for walls: upright at a spacing, added at ends and beside openings, cut from stock strips.",
  params: {
    walls,
    strip: length("ft", { says: "length of a stock strip", min: 1, max: 60 }),
    openings: someOpenings,
  },
  placed: {
    furringSpacing: needed("furring spacing"),
    stripWaste: narrow("strip waste", "waste"),
    endStrips: orElse("end strips", 0, "no strips are added at the ends of the walls"),
    jambStrips: orElse("jamb strips", 1, "one strip is added along each side of an opening"),
  },
  returns: ORDER.table("one order row: feet of strip with waste, and stock strips"),
  sources: [PLANE],
  assumptions: [
    "A piece longer than a stock strip is made of whole strips butted end to end. Saw cuts are part of the waste.",
    "Strips beside an opening are as high as the wall; one of the spacing that stands at the edge counts as one of them.",
  ],
  cautions: ["Spacing and screws of furring over foam come from the adopted code and the cladding's own instructions."],
  example: {
    args: { walls: [["south", 32, 9]], strip: 10, furringSpacing: 16 },
    gives: [["furring", 225, "ft", 25, "strip 10 ft"]],
    within: 1e-9,
    source: "exact arithmetic: 32 ft / 16 in = 24 bays, 25 strips of 9 ft",
  },
  refuses: [
    { args: { furringSpacing: 4, walls: [["south", 2000, 9]] }, says: "so many strips are no furring" },
    { args: { walls: [["south", 32, 9, -1]] }, says: "a gable rises to its peak" },
    {
      args: {
        walls: [
          ["south", 32, 9],
          ["south", 32, 9],
        ],
      },
      says: "columns and openings go by the name of their wall",
    },
    { args: { openings: [["x", 1, 1, 1, 1, 1, 1]] }, says: "the walls are south" },
    { args: { furringSpacing: 1.6 }, says: "it must be from 4 to 96 in" },
  ],
  notFor: "Furring laid level, and cladding that needs a strip at every joint, is counted from the drawing.",
  run(a, tape) {
    const rules = {
      spacingFt: a.furringSpacing / 12,
      stripFt: a.strip,
      extraPerEnd: a.endStrips,
      extraPerJamb: a.jambStrips,
    };
    return orderOf([furring(openedWalls(a.walls, a.openings), rules, a.stripWaste, tape)], tape);
  },
});

const screen = familyFunction({
  name: "SCREEN",
  summary:
    "Vent screen for the cavity behind cladding: foot of the walls, top along the rakes, over heads, under sills.",
  params: {
    walls,
    piece: length("ft", { says: "length of one piece or roll", min: 1, max: 2000 }),
    openings: someOpenings,
  },
  placed: { screenWaste: narrow("screen waste", "waste"), screenedEdges: orElse("screened edges") },
  returns: ORDER.table("one order row: feet of screen with waste, and pieces"),
  sources: [`${PLANE}; where a vented cavity is screened is common practice, no source`],
  assumptions: [
    "The cavity ends at openings: it is screened over their heads where it opens down, under sills where it opens up; the word foot and top leaves openings out.",
  ],
  example: {
    args: { walls: [["south", 32, 9]], piece: 10, openings: [["window", 3, 4, 2, 3]] },
    gives: [["vent screen", 76, "ft", 8, "piece 10 ft"]],
    within: 1e-9,
    source: "exact arithmetic: foot 32 + top 32 + two heads and two sills of 3 ft = 76; 7.6 pieces",
  },
  refuses: [
    { args: { walls: [["south", 32, 3]] }, says: "south is 32 ft long and 3 ft high" },
    { args: { walls: [["south", 32, 9, -1]] }, says: "a gable rises to its peak" },
    { args: { openings: [["window", 3, 4, 1000, 3]] }, says: "the wall has 288 ft2" },
    {
      args: { openings: [["window", 3, 4, 2, ""]] },
      says: "it decides the result: a door has 0, a window its height above the",
    },
    { args: { piece: 0.1 }, says: "it must be from 1 to 2000 ft" },
    {
      args: {
        openings: [
          ["a", 20, 7, 1, 0],
          ["b", 20, 7, 1, 0],
        ],
      },
      says: "south is 32 ft long",
    },
  ],
  notFor: "Soffit and ridge vents are sized by free area, which the code sets.",
  run: (a, tape) =>
    orderOf([ventScreen(openedWalls(a.walls, a.openings), a.screenedEdges, a.piece, a.screenWaste, tape)], tape),
});

const PARTS = columnsOf<LiningPart>(
  ["part", "", (p) => p.name],
  ["length", "in", (p) => p.lengthIn],
  ["width", "in", (p) => p.widthIn],
  ["count", "", (p) => p.count],
  ["grain", "", () => "along"],
  ["mark", "", (p) => p.mark],
);

const liningFunction = familyFunction({
  name: "LINING",
  summary: "Parts of sheet lining for walls, cut round their openings and under rakes, to be cut from sheets.",
  params: { walls, sheet: boardSides, openings: someOpenings },
  placed: {},
  returns: PARTS.table("a row for each size of part on each wall: part, length upright, width, count, grain, mark"),
  sources: [`${PLANE}; sheets upright from the left end and the foot of the wall (common practice, no source)`],
  assumptions: [
    "A part with a notch for an opening, and one under a rake, count as the rectangle that they are cut from. Sizes are rounded down to 1/16 in.",
  ],
  example: {
    args: { walls: [["north", 8, 9]], sheet: "4x8", openings: [["window", 4, 4, 1, 3, 4]] },
    gives: [
      ["north lining 1", 96, 48, 1, "along", "N 1"],
      ["north lining 2", 36, 48, 1, "along", "N 2"],
      ["north lining 3", 12, 48, 3, "along", "N 3"],
    ],
    within: 0,
    source:
      "exact arithmetic: one whole sheet; 3 ft under the window and 8 - 7 = 1 ft over it; two strips of 1 ft above 8 ft",
  },
  refuses: [
    { args: { sheet: "6" }, says: "a size is two sides above 0 with an x between them" },
    { args: { walls: [["north", 3, 9]] }, says: "north is 3 ft long and 9 ft high" },
    { args: { walls: [["north", 8, 9, -1]] }, says: "a gable rises to its peak" },
    { args: { openings: [["window", 4, 4, 3, 3, 4]] }, says: "openings alike cannot all be in one place" },
    { args: { walls: [["north", 0, 9]] }, says: "it must be from 0.1 to 2000 ft" },
    { args: { walls: [["south", 2000, 90]] }, says: "a lining is worked out for up to 3000" },
  ],
  notFor:
    "Sheets whose joints must fall on studs in a set pattern, such as fire-rated lining, are laid out on the drawing.",
  run: (a, tape) =>
    spill(PARTS, lining(openedWalls(a.walls, a.openings), a.sheet, tape), "table", "part, length, width, count", tape),
});

export const layerFunctions = [rollsFunction, boardsFunction, furringFunction, screen, liningFunction] as const;
