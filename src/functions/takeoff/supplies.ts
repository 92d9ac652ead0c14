import { type BuckPart, bucks } from "../../core/takeoff/bucks.ts";
import { concreteYd3 } from "../../core/takeoff/concrete.ts";
import { flashingTape } from "../../core/takeoff/flashing-tape.ts";
import { screws } from "../../core/takeoff/screws.ts";
import { narrow, orElse } from "../basis/term.ts";
import { quantityOf } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length, number, whole } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { table } from "../declare/table.ts";
import { choice } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { ORDER, orderOf, PLANE } from "./params.ts";
import { openingOf, openings, rowName } from "./walls.ts";

/** What is counted by openings, rows and pours: flashing tape, window bucks, screws, concrete. */

const tapeFunction = familyFunction({
  name: "TAPE",
  summary:
    "Flashing tape round openings: sill, jambs and head, each past the corners, in rolls without joints in a piece.",
  params: {
    openings,
    rollLength: length("ft", {
      says: "length of one roll",
      min: 1,
      max: 2000,
      usual: { min: 10, max: 300, ask: "is it in feet?" },
    }),
    sides: optional(
      choice(["all", "sill", "jambs and head"], {
        says: "sides that this tape goes on; sill and the rest are two orders where their widths differ",
        also: { jambs: "jambs and head", "jambs + head": "jambs and head" },
      }),
      "all",
      "the same tape goes on all sides",
    ),
  },
  placed: {
    tapeWaste: narrow("tape waste", "waste"),
    pastCorner: orElse("past corner", 6, "each piece runs {} in past both corners (common practice, no source)"),
  },
  returns: ORDER.table("one order row: feet of tape with waste, and rolls"),
  sources: [`${PLANE}; how far tape runs past a corner is the maker's instruction`],
  assumptions: ["An opening on the foot of the wall has no sill tape, and its jambs end at the foot."],
  cautions: ["Order and laps of flashing follow the window's and the tape's own instructions."],
  example: {
    args: { openings: [["window", 3, 4, 2, 3]], rollLength: 75 },
    gives: [["flashing tape", 36, "ft", 1, "roll 75 ft"]],
    within: 1e-9,
    source: "exact arithmetic: 2 x (sill 4 + head 4 + two jambs of 5 ft) = 36 ft",
  },
  refuses: [
    { args: { rollLength: 1 }, says: "a roll holds 1 ft, and a piece is not joined" },
    {
      args: { openings: [["window", 3, 4, 2, ""]] },
      says: "it decides the result: a door has 0, a window its height above the",
    },
    { args: { rollLength: 0.75 }, says: "it must be from 1 to 2000 ft" },
  ],
  notFor: "Round windows and sloped heads follow their maker's sheet.",
  run: (a, tape) =>
    orderOf(
      [flashingTape(a.openings.map(openingOf), a.sides, a.rollLength, a.pastCorner / 12, a.tapeWaste, tape)],
      tape,
    ),
});

const PARTS = columnsOf<BuckPart>(
  ["part", "", (p) => p.name],
  ["length", "in", (p) => p.lengthIn],
  ["width", "in", () => ""],
  ["count", "", (p) => p.count],
);

const bucksFunction = familyFunction({
  name: "BUCKS",
  summary: "Parts of the window and door bucks that line openings, to be cut from lengths.",
  params: { openings },
  placed: { buckThickness: orElse("buck thickness", 1.5, "members are {} in thick") },
  returns: PARTS.table("a row for each kind of part: part, length, width (blank), count"),
  sources: [`${PLANE}; head and sill run through, jambs stand between them (common practice, no source)`],
  assumptions: ["Sizes are of the hole that the buck lines; an opening on the foot of the wall has no sill member."],
  example: {
    args: { openings: [["W1", 3, 4, 2, 3]] },
    gives: [
      ["W1 head and sill", 36, "", 4],
      ["W1 jamb", 45, "", 4],
    ],
    within: 1e-9,
    source: "exact arithmetic: 3 ft = 36 in; 48 - 2 x 1.5 = 45 in",
  },
  refuses: [
    { args: { openings: [["W1", 3, 0.25, 1, 3]] }, says: "leave nothing for the jambs" },
    {
      args: { openings: [["W1", 3, 4, 2, ""]] },
      says: "it decides the result: a door has 0, a window its height above the",
    },
    { args: { buckThickness: 12 }, says: "it must be above 0 in and at most 6 in" },
  ],
  notFor: "Round and raked openings, and bucks that carry load, are drawn one by one.",
  run: (a, tape) =>
    spill(PARTS, bucks(a.openings.map(openingOf), a.buckThickness, tape), "table", "part, length, count", tape),
});

const screwRows = table(
  {
    row: rowName({ says: "what the row is: edge, field, strip", heads: ["name", "where"] }),
    length: length("ft", {
      says: "length of the row",
      min: 0.05,
      max: 1000,
      usual: { min: 0.25, max: 80, ask: "is it in feet?" },
      heads: ["run"],
    }),
    spacing: length("in", {
      says: "spacing of the screws",
      min: 0.5,
      max: 120,
      usual: { min: 2, max: 48, ask: "is it in inches?" },
    }),
    rows: optional(whole({ says: "rows alike on each piece", min: 1, max: 1000 }), 1, "one row"),
    count: optional(
      whole({ says: "pieces alike", min: 1, max: 10_000, heads: ["quantity", "qty", "pieces"] }),
      1,
      "one piece",
    ),
  },
  { says: "rows of screws: row | length | spacing | rows | count; length in ft, spacing in in", maxRows: 500 },
);

const boxes = table(
  {
    pack: rowName({ says: "name of the box, such as box of 250", heads: ["box", "name"] }),
    holds: whole({ says: "screws in one box", min: 1, max: 100_000, heads: ["size", "count"] }),
    price: optional(number({ says: "price of one box", min: 0, max: 1e6, heads: ["cost"] }), undefined, ""),
  },
  { says: "boxes: pack | holds | price; with a price in every row the cheapest boxes are taken", maxRows: 20 },
);

const screwsFunction = familyFunction({
  name: "SCREWS",
  summary: "Screws by rows and spacing, with waste, in boxes that leave the fewest over or cost the least.",
  params: { rows: screwRows, boxes },
  placed: {
    screwWaste: narrow("screw waste", "waste"),
    screwEndDistance: orElse("screw end distance", 0, "the first and last screw of a row are at its ends"),
  },
  returns: ORDER.table("an order row for each size of box that is taken; the quantities add up to what is needed"),
  sources: ["Count of equal spaces: spacing is never exceeded, so a part space counts as one"],
  cautions: ["Spacing comes from the adopted code or a licensed professional, not from here."],
  example: {
    args: {
      rows: [["panel edge", 8, 6, 2, 10]],
      boxes: [
        ["box of 100", 100],
        ["box of 250", 250],
      ],
    },
    gives: [
      ["screws", 250, "screws", 1, "box of 250"],
      ["screws", 90, "screws", 1, "box of 100"],
    ],
    within: 0,
    source: "exact arithmetic: (96 / 6 + 1) x 2 x 10 = 340; 100 + 250 leaves the fewest over",
  },
  refuses: [
    { args: { rows: [["strip", 1000, 0.5, 1000, 10]] }, says: "boxes are worked out for up to 1000000" },
    { args: { screwWaste: -1 }, says: "it must be from 0 to 1" },
    { args: { rows: [["", 8, 6, 2, 10]] }, says: "Row in row 1 of rows is missing" },
  ],
  notFor: "How many a connection needs takes the FASTENER functions or an engineer: this counts rows that are given.",
  run: (a, tape) =>
    orderOf(
      screws(
        a.rows.map((r) => ({
          name: r.row,
          lengthFt: r.length,
          spacingIn: r.spacing,
          rows: r.rows,
          count: r.count,
        })),
        a.screwEndDistance,
        a.boxes.map((b) => ({ name: b.pack, size: b.holds, price: b.price })),
        a.screwWaste,
        tape,
      ),
      tape,
    ),
});

const pours = table(
  {
    pour: rowName({ says: "what is poured", heads: ["name", "part"] }),
    length: length("ft", {
      says: "length, or the diameter of a round pier",
      min: 0.05,
      max: 5000,
      usual: { min: 0.5, max: 400, ask: "is it in feet?" },
      heads: ["diameter"],
    }),
    width: optional(
      length("ft", {
        says: "width; blank for a round pier",
        min: 0.05,
        max: 5000,
        usual: { min: 0.25, max: 200, ask: "is it in feet?" },
      }),
      undefined,
      "a round pier",
    ),
    depth: length("in", {
      says: "thickness or depth",
      min: 0.5,
      max: 1200,
      usual: { min: 2, max: 60, ask: "is it in inches?" },
      heads: ["thickness", "height"],
    }),
    count: optional(whole({ says: "how many alike", min: 1, max: 10_000, heads: ["quantity", "qty"] }), 1, "one"),
  },
  {
    says: "pours: pour | length | width | depth | count; depth in in; no width for a round pier",
    maxRows: 500,
    unlike: true,
  },
);

const concrete = familyFunction({
  name: "CONCRETE",
  summary: "Concrete to order in cubic yards: slabs, footings, walls and round piers, with waste, rounded up.",
  params: { pours },
  placed: {
    concreteWaste: narrow("concrete waste", "waste"),
    concreteStep: orElse("concrete step", 0.25, "orders step by {} cubic yard (common practice, no source)"),
  },
  returns: quantityOf("yd3", "cubic yards to order"),
  sources: [`${PLANE}; 1 yd3 = 27 ft3`],
  cautions: ["Allow for uneven ground and spill in the waste: 5 to 10 % is common practice."],
  example: {
    args: { pours: [["slab", 48, 32, 4]], concreteWaste: 0.05 },
    gives: 20,
    within: 0,
    source: "exact arithmetic: 48 x 32 x 4 / 12 / 27 x 1.05 = 19.91, up to 20.00",
  },
  refuses: [
    { args: { concreteStep: 40 }, says: "it must be from 0.01 to 20 yd3" },
    { args: { pours: [["", 48, 32, 4]] }, says: "Pour in row 1 of pours is missing" },
  ],
  notFor: "Stairs, slabs on metal deck and ground that has not been leveled are measured on the drawing.",
  run: (a, tape) =>
    concreteYd3(
      a.pours.map((p) => ({
        name: p.pour,
        lengthFt: p.length,
        widthFt: p.width,
        depthFt: p.depth / 12,
        count: p.count,
      })),
      a.concreteWaste,
      a.concreteStep,
      tape,
    ),
});

export const supplyFunctions = [tapeFunction, bucksFunction, screwsFunction, concrete] as const;
