import { boards } from "../../core/takeoff/boards.ts";
import { furring } from "../../core/takeoff/furring.ts";
import { orderTable } from "../../core/takeoff/order.ts";
import { LAPS, rolls } from "../../core/takeoff/rolls.ts";
import { ventScreen } from "../../core/takeoff/vent-screen.ts";
import { cellFunction } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { choice, length, whole } from "../declare/scalar.ts";
import { list } from "../declare/table.ts";
import { gableRise, noOpenings, orderReturns, sheetSides, wallHeight, wallLength, wallOf, waste } from "./params.ts";

/** What goes on a wall layer by layer: membrane, insulation boards, furring, vent screen. */

const FAMILY = "Takeoff and cutting";
const PLANE = "Plane geometry";

const rollsFunction = cellFunction({
  name: "ROLLS",
  family: FAMILY,
  summary:
    "Rolls of membrane for a wall: courses with side laps, end laps at each change of roll, returns and openings.",
  params: {
    length: { ...wallLength, says: "length of the wall, or of all walls round the building" },
    height: wallHeight,
    rollWidth: length("ft", { says: "width of the roll", min: 0.5, max: 40 }),
    rollLength: length("ft", { says: "length of the roll", min: 5, max: 2000 }),
    openings: noOpenings(),
    gableRise,
    sideLap: optional(
      length("in", { says: "overlap of a course on the one below", min: 0, max: 48 }),
      2,
      "courses overlap 2 in (IRC R703.2)",
    ),
    endLap: optional(
      length("in", { says: "overlap where one roll ends and the next begins", min: 0, max: 48 }),
      6,
      "roll ends overlap 6 in (IRC R703.2)",
    ),
    cornerReturn: optional(
      length("in", { says: "membrane carried round each end of the wall", min: 0, max: 120 }),
      0,
      "no membrane is carried round the ends of the wall",
    ),
    openingReturn: optional(
      length("in", { says: "membrane folded into an opening at each jamb", min: 0, max: 48 }),
      0,
      "none is kept to fold into openings that take a whole course",
    ),
    waste,
  },
  returns: orderReturns("one order row: run of membrane with waste and laps, and rolls"),
  sources: [LAPS, PLANE],
  assumptions: [
    "Courses run level from the foot up, each as long as the wall at its lower edge; openings are rolled over and cut out, and only one that takes the whole height of a course shortens it.",
  ],
  example: {
    args: { length: 160, height: 9, rollWidth: 5, rollLength: 100, waste: 0.1 },
    gives: [["membrane", 353.5, "ft", 4, "roll 5 x 100 ft"]],
    within: 1e-9,
    source:
      "exact arithmetic: 2 courses x 160 ft x 1.1 = 352; (352 - 0.5) / 99.5 = 3.53, 4 rolls with 3 laps of 0.5 ft",
  },
  run(a, tape) {
    const rules = {
      rollWidthFt: a.rollWidth,
      rollLengthFt: a.rollLength,
      sideLapFt: a.sideLap / 12,
      endLapFt: a.endLap / 12,
      cornerReturnFt: a.cornerReturn / 12,
      openingReturnFt: a.openingReturn / 12,
    };
    return orderTable([rolls(wallOf(a), a.openings, rules, a.waste, tape)], tape);
  },
});

const boardsFunction = cellFunction({
  name: "BOARDS",
  family: FAMILY,
  summary: "Insulation boards for a wall, layer by layer with staggered joints, offcuts used again.",
  params: {
    length: wallLength,
    height: wallHeight,
    board: sheetSides,
    layers: list(length("in", { says: "thickness of a layer", min: 0.125, max: 24 }), {
      says: "thickness of each layer from the wall out, one value a layer: 2, or a range of two 2s",
      max: 8,
    }),
    openings: noOpenings(),
    gableRise,
    waste,
    bundle: optional(whole({ says: "boards in one bundle", min: 1, max: 1000 }), 1, "boards are sold singly"),
  },
  returns: orderReturns("an order row for each thickness: boards with waste, and bundles"),
  sources: [PLANE],
  assumptions: [
    "Rows run along the wall with end joints staggered by half a board; every other layer is shifted by a quarter of a board and half a row.",
    "A board with a notch for an opening is a whole piece; pieces that an opening cuts off or cuts through are cut shorter. Offcuts are used again within their layer.",
  ],
  example: {
    args: { length: 16, height: 8, board: "4x8", layers: [[2, 2]] },
    gives: [["board 4 x 8 ft x 2 in", 8, "boards", 8, "board"]],
    within: 0,
    source: "exact arithmetic: 2 layers x 16 x 8 / 32 = 8 boards, reached with every offcut used",
  },
  run: (a, tape) => orderTable(boards(wallOf(a), a.openings, a.board, a.layers, a.bundle, a.waste, tape), tape),
});

const furringFunction = cellFunction({
  name: "FURRING",
  family: FAMILY,
  summary: "Furring strips for a wall: upright at a spacing, added at ends and beside openings, cut from stock strips.",
  params: {
    length: wallLength,
    height: wallHeight,
    spacing: length("in", {
      says: "spacing of the strips on centre",
      min: 3,
      max: 120,
      usual: { min: 12, max: 48, ask: "is it in inches?" },
    }),
    strip: length("ft", { says: "length of a stock strip", min: 1, max: 60 }),
    openings: noOpenings(),
    gableRise,
    endExtra: optional(
      whole({ says: "strips added at each end of the wall", min: 0, max: 4 }),
      0,
      "no strips are added at the ends of the wall",
    ),
    jambExtra: optional(
      whole({ says: "strips added along each side of an opening", min: 0, max: 4 }),
      1,
      "one strip is added along each side of an opening",
    ),
    waste,
  },
  returns: orderReturns("one order row: feet of strip with waste, and stock strips"),
  sources: [PLANE],
  assumptions: [
    "A piece longer than a stock strip is made of whole strips butted end to end. Saw cuts are part of the waste.",
  ],
  cautions: ["Spacing and screws of furring over foam come from the adopted code and the cladding's own instructions."],
  example: {
    args: { length: 32, height: 9, spacing: 16, strip: 10 },
    gives: [["furring", 225, "ft", 25, "strip 10 ft"]],
    within: 1e-9,
    source: "exact arithmetic: 32 ft / 16 in = 24 bays, 25 strips of 9 ft",
  },
  run(a, tape) {
    const rules = {
      spacingFt: a.spacing / 12,
      stripFt: a.strip,
      extraPerEnd: a.endExtra,
      extraPerJamb: a.jambExtra,
    };
    return orderTable([furring(wallOf(a), a.openings, rules, a.waste, tape)], tape);
  },
});

const screen = cellFunction({
  name: "SCREEN",
  family: FAMILY,
  summary: "Vent screen for the cavity behind cladding: foot and top of the wall, over heads and under sills.",
  params: {
    length: { ...wallLength, says: "length of the wall, or of all walls round the building" },
    piece: length("ft", { says: "length of one piece or roll", min: 1, max: 2000 }),
    openings: noOpenings(),
    edges: optional(
      choice(["both", "bottom", "top"], {
        says: "ends of the cavity that get a screen",
        means: { both: "where it opens down and up", bottom: "where it opens down", top: "where it opens up" },
      }),
      "both",
      "the cavity is screened below and above",
    ),
    waste,
  },
  returns: orderReturns("one order row: feet of screen with waste, and pieces"),
  sources: [`${PLANE}; where a vented cavity is screened is common practice, no source`],
  example: {
    args: { length: 32, piece: 10, openings: [["window", 3, 4, 2, 3]] },
    gives: [["vent screen", 76, "ft", 8, "piece 10 ft"]],
    within: 1e-9,
    source: "exact arithmetic: foot 32 + top 32 + two heads and two sills of 3 ft = 76; 7.6 pieces",
  },
  run: (a, tape) => orderTable([ventScreen(a.length, a.openings, a.edges, a.piece, a.waste, tape)], tape),
});

export const layerFunctions = [rollsFunction, boardsFunction, furringFunction, screen] as const;
