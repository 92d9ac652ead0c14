import { bucks } from "../../core/takeoff/bucks.ts";
import { concreteYd3 } from "../../core/takeoff/concrete.ts";
import { flashingTape } from "../../core/takeoff/flashing-tape.ts";
import { orderTable } from "../../core/takeoff/order.ts";
import { screws } from "../../core/takeoff/screws.ts";
import { cellFunction, quantityOf, tableOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { choice, length, number, quantity, text, whole } from "../declare/scalar.ts";
import { table } from "../declare/table.ts";
import { openings, orderReturns, waste } from "./params.ts";

/** What is counted by openings, rows and pours: flashing tape, window bucks, screws, concrete. */

const FAMILY = "Takeoff and cutting";
const PLANE = "Plane geometry";

const tapeFunction = cellFunction({
  name: "TAPE",
  family: FAMILY,
  summary:
    "Flashing tape round openings: sill, jambs and head, each past the corners, in rolls without joints in a piece.",
  params: {
    openings,
    rollLength: length("ft", { says: "length of one roll", min: 1, max: 2000 }),
    sides: optional(
      choice(["all", "sill", "jambs and head"], {
        says: "sides that this tape goes on; sill and the rest are two orders where their widths differ",
        also: { jambs: "jambs and head", "jambs + head": "jambs and head" },
      }),
      "all",
      "the same tape goes on all four sides",
    ),
    pastCorner: optional(
      length("in", { says: "how far each piece runs past both corners, or up the jamb at a sill", min: 0, max: 48 }),
      6,
      "each piece runs 6 in past both corners (common practice, no source)",
    ),
    waste,
  },
  returns: orderReturns("one order row: feet of tape with waste, and rolls"),
  sources: [`${PLANE}; how far tape runs past a corner is the maker's instruction`],
  cautions: ["Order and laps of flashing follow the window's and the tape's own instructions."],
  example: {
    args: { openings: [["window", 3, 4, 2]], rollLength: 75 },
    gives: [["flashing tape", 36, "ft", 1, "roll 75 ft"]],
    within: 1e-9,
    source: "exact arithmetic: 2 x (sill 4 + head 4 + two jambs of 5 ft) = 36 ft",
  },
  run: (a, tape) =>
    orderTable([flashingTape(a.openings, a.sides, a.rollLength, a.pastCorner / 12, a.waste, tape)], tape),
});

const bucksFunction = cellFunction({
  name: "BUCKS",
  family: FAMILY,
  summary: "Cutting list of the window and door bucks that line openings; feed it to STOCK_NEST.",
  params: {
    openings,
    thickness: optional(
      length("in", { says: "thickness of the buck members", min: 0.25, max: 6 }),
      1.5,
      "members are 1-1/2 in thick",
    ),
  },
  returns: tableOf("parts: name, length, quantity", [
    ["name", ""],
    ["length", "in"],
    ["quantity", ""],
  ]),
  sources: [`${PLANE}; head and sill run through, jambs stand between them (common practice, no source)`],
  assumptions: ["Sizes are of the hole that the buck lines; an opening on the foot of the wall has no sill member."],
  example: {
    args: { openings: [["W1", 3, 4, 2, 3]] },
    gives: [
      ["W1 head and sill", 36, 4],
      ["W1 jamb", 45, 4],
    ],
    within: 1e-9,
    source: "exact arithmetic: 3 ft = 36 in; 48 - 2 x 1.5 = 45 in",
  },
  run: (a, tape) => bucks(a.openings, a.thickness, tape),
});

const screwRows = table(
  {
    name: text({ says: "what the row is: edge, field, strip", heads: ["row", "where"] }),
    length: length("ft", { says: "length of the row", min: 0.05, max: 1000, heads: ["run"] }),
    spacing: length("in", { says: "spacing of the screws", min: 0.5, max: 120 }),
    rows: optional(whole({ says: "rows alike on each piece", min: 1, max: 1000 }), 1, "one row"),
    count: optional(
      whole({ says: "pieces alike", min: 1, max: 10_000, heads: ["quantity", "qty", "pieces"] }),
      1,
      "one piece",
    ),
  },
  { says: "rows of screws: name | length | spacing | rows | count; length in ft, spacing in in", maxRows: 500 },
);

const screwsFunction = cellFunction({
  name: "SCREWS",
  family: FAMILY,
  summary: "Screws by rows and spacing, with waste, in boxes that leave the fewest over or cost the least.",
  params: {
    rows: screwRows,
    boxes: table(
      {
        size: whole({ says: "screws in one box", min: 1, max: 100_000, heads: ["box", "count", "quantity"] }),
        price: optional(number({ says: "price of one box", min: 0, max: 1e6, heads: ["cost"] }), undefined, ""),
      },
      { says: "sizes of box: size | price; with a price in every row the cheapest boxes are taken", maxRows: 20 },
    ),
    endDistance: optional(
      length("in", { says: "distance of the first and last screw from the ends of a row", min: 0, max: 24 }),
      0,
      "the first and last screw of a row are at its ends",
    ),
    waste,
  },
  returns: orderReturns("an order row for each size of box that is taken"),
  sources: ["Count of equal spaces: spacing is never exceeded, so a part space counts as one"],
  cautions: ["Spacing comes from the adopted code or a licensed professional, not from here."],
  example: {
    args: {
      rows: [["panel edge", 8, 6, 2, 10]],
      boxes: [[100], [250]],
    },
    gives: [
      ["screws", 100, "screws", 1, "box of 100"],
      ["screws", 250, "screws", 1, "box of 250"],
    ],
    within: 0,
    source: "exact arithmetic: (96 / 6 + 1) x 2 x 10 = 340; 100 + 250 leaves the fewest over",
  },
  run: (a, tape) =>
    orderTable(
      screws(
        a.rows.map((r) => ({
          name: r.name,
          lengthFt: r.length,
          spacingIn: r.spacing,
          rows: r.rows,
          count: r.count,
        })),
        a.endDistance,
        a.boxes,
        a.waste,
        tape,
      ),
      tape,
    ),
});

const concrete = cellFunction({
  name: "CONCRETE",
  family: FAMILY,
  summary: "Concrete to order in cubic yards: slabs, footings, walls and round piers, with waste, rounded up.",
  params: {
    pours: table(
      {
        name: text({ says: "what is poured", heads: ["pour", "part"] }),
        length: length("ft", {
          says: "length, or the diameter of a round pier",
          min: 0.05,
          max: 5000,
          heads: ["diameter"],
        }),
        width: optional(
          length("ft", { says: "width; blank for a round pier", min: 0.05, max: 5000 }),
          undefined,
          "round",
        ),
        depth: length("in", { says: "thickness or depth", min: 0.5, max: 1200, heads: ["thickness", "height"] }),
        count: optional(whole({ says: "how many alike", min: 1, max: 10_000, heads: ["quantity", "qty"] }), 1, "one"),
      },
      { says: "pours: name | length | width | depth | count; depth in in; no width for a round pier", maxRows: 500 },
    ),
    waste,
    increment: optional(
      quantity("yd3", { says: "smallest step of an order", min: 0.01, max: 20 }),
      0.25,
      "orders step by 1/4 cubic yard (common practice, no source)",
    ),
  },
  returns: quantityOf("yd3", "cubic yards to order"),
  sources: [`${PLANE}; 1 yd3 = 27 ft3`],
  cautions: ["Allow for uneven ground and spill in the waste: 5 to 10 % is common practice."],
  example: {
    args: { pours: [["slab", 48, 32, 4]], waste: 0.05 },
    gives: 20,
    within: 0,
    source: "exact arithmetic: 48 x 32 x 4 / 12 / 27 x 1.05 = 19.91, up to 20.00",
  },
  run: (a, tape) =>
    concreteYd3(
      a.pours.map((p) => ({
        name: p.name,
        lengthFt: p.length,
        widthFt: p.width,
        depthFt: p.depth / 12,
        count: p.count,
      })),
      a.waste,
      a.increment,
      tape,
    ),
});

export const supplyFunctions = [tapeFunction, bucksFunction, screwsFunction, concrete] as const;
