import { checks, inputs, results, sheet, table, top } from "../kit/layout.ts";

/** What stands in the row of a wall, and nothing where the wall is gone from the sheet Walls. */
const there = (row: number, what: string | number) => `=IF(INDEX(Walls,${row},1)="","",${what})`;
const wallName = (row: number) => `=INDEX(Walls,${row},1)&""`;

/** A shear line from the row of its wall on the sheet Walls. */
const line = (row: number, armFt: number, per: string) =>
  [
    wallName(row),
    there(row, `VLOOKUP(INDEX(Walls,${row},1)&" wall: ${per}",BaseShear,4,0)`),
    `=INDEX(Walls,${row},2)&""`,
    `=INDEX(Walls,${row},3)&""`,
    "",
    there(row, 1),
    there(row, armFt),
  ] as const;

/** An opening of the sheet Walls: its name, left edge and width in feet. */
const edges = (row: number) =>
  [
    `=INDEX(Openings,${row},1)&""`,
    ...[6, 2].map((c) => `=SILL.LENGTH(IF(INDEX(Openings,${row},${c})="",0,INDEX(Openings,${row},${c})))`),
  ] as const;
const leftOf = (row: number) => `INDEX(Edges,${row},2)`;
/** Less the right edge of an opening. */
const lessRight = (row: number) => `-${leftOf(row)}-INDEX(Edges,${row},3)`;
/** From the right edge of an opening to the left edge of the next. */
const between = (row: number, next: number) => `=${leftOf(next)}${lessRight(row)}`;

/** An opening in a part of a wall, measured from the right edge of the opening where the part begins. */
const opening = (row: number, from?: number) =>
  [
    `=INDEX(Openings,${row},1)&""`,
    `=INDEX(Openings,${row},2)&""`,
    `=INDEX(Openings,${row},3)&""`,
    `=IF(INDEX(Openings,${row},1)="","",INDEX(Openings,${row},4))`,
    `=INDEX(Openings,${row},5)&""`,
    `=IF(INDEX(Openings,${row},1)="","",${leftOf(row)}${from === undefined ? "" : lessRight(from)})`,
  ] as const;

/** Pieces of full height between the outermost that count, from the left: at least h/3.5 wide. */
const PIECES: readonly (readonly [line: string, width: string])[] = [
  ["south", between(2, 3)],
  ["south", between(3, 4)],
  ["south", between(4, 5)],
  ["south", between(5, 6)],
  ["south", between(6, 7)],
  ["north", `=${leftOf(8)}`],
  ["north", between(8, 9)],
  ["north", `=INDEX(Sizes,3,2)${lessRight(9)}`],
  ["east", between(10, 11)],
  ["east", between(11, 12)],
  ["west", between(13, 14)],
];

/** What a piece counts for, with 2 w/h where it is higher than twice its width. */
const counted = (row: number) => `=INDEX(FullPieces,${row},2)*MIN(1,2*INDEX(FullPieces,${row},2)/ColumnFt)`;

/** A shear line again, as long as what its openings leave: Co times the pieces that count. */
function pierced(row: number) {
  const length = there(row, `INDEX(LeftByOpenings,${row},2)*INDEX(LeftByOpenings,${row},3)`);
  return [
    wallName(row),
    there(row, `INDEX(ShearLines,${row},2)`),
    length,
    there(row, "ColumnFt"),
    "",
    there(row, 1),
    length,
  ] as const;
}

/** The part of a wall that counts. */
const part = (row: number, length: string) => [wallName(row), length, there(row, "ColumnFt")] as const;

/** Co of a part, and the pieces in it that count, ft. */
const left = (row: number, openings: string | undefined) =>
  [
    wallName(row),
    there(row, openings === undefined ? 1 : `SILL.SHEARWALL_OPENINGS(INDEX(Parts,${row},0),${openings},Basis)`),
    `=SUMIF(INDEX(Counted,0,1),INDEX(Walls,${row},1),INDEX(Counted,0,2))`,
  ] as const;

/** The sill of a wall, less an opening that stands on the slab. */
const sill = (row: number, door?: number) =>
  [wallName(row), `=INDEX(Sizes,${row},2)${door === undefined ? "" : `-INDEX(Edges,${door},3)`}`] as const;

/** Shear on a foot of the sill that is there, allowable level. */
const sillLine = (row: number, uplift: string) =>
  [
    wallName(row),
    there(row, `0.6*INDEX(ShearLines,${row},2)/INDEX(Sills,${row},2)`),
    there(row, `INDEX(Sills,${row},2)`),
    uplift === "" ? "" : there(row, uplift),
  ] as const;

/** Shear lines, hold-downs and anchors. */
export const anchorage = sheet(
  "Hold-downs",
  "Shear lines, hold-downs and anchors of the four walls.",
  [
    top(
      "Hold-downs and anchors",
      "Each wall is a line of its own; the force comes from the sheet Wind, strength level.",
      "The whole force acts at the height of the long walls: the wind on their lower half, which goes straight into the slab, stands for the gable above it.",
      "A solid wall of the whole length would carry the first table; with its openings counted (SDPWS 4.3.3.5) it carries the second, by which rod and sill go.",
    ),
    table(
      "ShearLines",
      "Shear lines",
      ["line", "shear lb", "length ft", "height ft", "dead plf", "floor", "arm ft"],
      [
        line(2, 47, "along ridge"),
        line(3, 47, "along ridge"),
        line(4, 31, "across ridge"),
        line(5, 31, "across ridge"),
      ],
      2,
    ),
    table(
      "Edges",
      "Openings of the sheet Walls, left edge and width",
      ["opening", "left ft", "width ft"],
      Array.from({ length: 13 }, (_, i) => edges(i + 2)),
      0,
    ),
    table(
      "Parts",
      "The walls from the first to the last piece of full height that counts, at least h/3.5 wide",
      ["wall", "length ft", "height ft"],
      [
        part(2, between(2, 7)),
        part(3, there(3, "INDEX(Sizes,3,2)")),
        part(4, between(10, 12)),
        part(5, between(13, 14)),
      ],
      0,
    ),
    table(
      "SouthPart",
      "Openings in the south part, from its left end; a window more gets a row here too",
      ["opening", "width ft", "height ft", "count", "sill ft", "left ft"],
      [opening(3, 2), opening(4, 2), opening(5, 2), opening(6, 2)],
      1,
    ),
    table(
      "NorthPart",
      "Openings in the north wall",
      ["opening", "width ft", "height ft", "count", "sill ft", "left ft"],
      [opening(8), opening(9)],
      1,
    ),
    table(
      "EastPart",
      "Openings in the east part, from its left end; the west part has none",
      ["opening", "width ft", "height ft", "count", "sill ft", "left ft"],
      [opening(11, 10)],
      1,
    ),
    table("FullPieces", "Pieces of full height in them", ["line", "width ft"], PIECES, 0),
    table(
      "Counted",
      "What a piece counts for: 2 w/h of itself where it is higher than twice its width",
      ["line", "counted ft"],
      PIECES.map(([line], i) => [line, counted(i + 2)]),
      0,
    ),
    table(
      "LeftByOpenings",
      "What the openings leave",
      ["line", "Co", "counted ft"],
      [left(2, "SouthPart"), left(3, "NorthPart"), left(4, "EastPart"), left(5, undefined)],
      0,
      "#,##0.00",
    ),
    table(
      "PiercedLines",
      "Shear lines, openings counted: as long as Co times the pieces that count",
      ["line", "shear lb", "length ft", "height ft", "dead plf", "floor", "arm ft"],
      [pierced(2), pierced(3), pierced(4), pierced(5)],
      0,
    ),
    table(
      "Sills",
      "Sills, less doors and the wide opening",
      ["line", "length ft"],
      [sill(2, 4), sill(3), sill(4, 11), sill(5, 14)],
      0,
    ),
    table(
      "Capacities",
      "Hold-downs on hand",
      ["size", "capacity lb"],
      [
        ["small", 3000],
        ["medium", 5500],
        ["large", 9000],
      ],
      1,
    ),
    table(
      "Anchors",
      "Anchors, by the office's evaluation report",
      ["anchor", "shear lb", "tension lb", "least spacing in", "least edge in", "plate in2"],
      [["screw anchor 1/2", 1400, 1650, 4, 1.75, 9]],
      1,
    ),
    inputs("Epoxied rod, A307", [
      { label: "Diameter", name: "RodDiameter", value: 0.625, unit: "in" },
      { label: "Depth in the concrete", name: "RodDepth", value: 8, unit: "in" },
      { label: "Distance from the edge", name: "RodEdge", value: 4, unit: "in" },
    ]),
    table(
      "ConcreteCase",
      "What the rod stands in",
      ["Basis", "Value", "Unit"],
      [
        ["concrete strength", 3000, "psi"],
        ["concrete state", "cracked", ""],
      ],
      0,
    ),
    table(
      "AllowableCase",
      "What goes with the anchors of the sill, whose capacities are at allowable level",
      ["Basis", "Value"],
      [
        ["load level", "allowable"],
        ["wind level", "allowable"],
        ["load duration", "wind"],
      ],
      0,
    ),
    results("Forces", [
      {
        label: "Greatest pull of a hold-down",
        name: "HoldDownPull",
        formula: "=MAX(INDEX(PiercedHoldDowns,0,4))",
        unit: "lb",
        format: "#,##0",
        note: "allowable level",
      },
      {
        label: "The same for the rod",
        name: "RodPull",
        formula: "=HoldDownPull/0.6",
        unit: "lb",
        format: "#,##0",
        note: "strength level; the rod is counted as grade 36, futa 58 ksi (A307 has 60)",
      },
      {
        label: "Uplift of the roof on a long wall",
        name: "SillUplift",
        formula: "=MAX(0,INDEX(SILL.WIND_UPLIFT(RoofDead,RoofOnWall,AllowableCase,Basis),2,4))",
        unit: "plf",
        format: "#,##0",
        note: "allowable level, net of 0.6 D",
      },
      {
        label: "Greatest shear of a sill",
        name: "SillShear",
        formula: "=MAX(INDEX(SillLines,0,2))",
        unit: "plf",
        format: "#,##0",
        note: "allowable level",
      },
      {
        label: "Greatest shear of a panel",
        name: "PanelShear",
        formula: "=MAX(INDEX(PiercedHoldDowns,0,3))",
        unit: "plf",
        format: "#,##0",
        note: "allowable level, openings counted; what a panel carries is its report's",
      },
      {
        label: "Panel screws at a joint",
        name: "JointScrews",
        formula: "=2*ScrewLateral",
        unit: "plf",
        format: "#,##0",
        note: "one of the two rows on a column, 6 in apart",
      },
      {
        label: "Sill bolts 1/2 in, spacing",
        formula: "=SILL.ANCHOR_SILL(SillShear,0.5,4.5,0.42,AllowableCase,Basis)",
        unit: "in, and lb each",
        more: 1,
        note: "sill of three plies flat, 4 1/2 in high",
      },
    ]),
    table(
      "SillLines",
      "What the screw anchors of each sill carry",
      ["line", "shear plf", "length ft", "uplift plf"],
      [sillLine(2, "SillUplift"), sillLine(3, "SillUplift"), sillLine(4, ""), sillLine(5, "")],
      0,
    ),
    checks([
      { label: "Epoxied rod", formula: '=IF(MAX(INDEX(Rod,0,3))<=1,"ok","above its capacity")' },
      { label: "Screw anchors", formula: '=IF(MAX(INDEX(SillAnchors,0,7))<=1,"ok","above their capacity")' },
      { label: "Panel screws at a joint", formula: '=IF(PanelShear<=JointScrews,"ok","above their capacity")' },
    ]),
  ],
  [
    {
      heading: "Hold-downs, openings counted",
      formula: "=SILL.HOLDDOWN_SCHEDULE(PiercedLines,Capacities,Basis)",
      name: "PiercedHoldDowns",
      room: 10,
    },
    {
      heading: "Hold-downs of solid walls",
      formula: "=SILL.HOLDDOWN_SCHEDULE(ShearLines,Capacities,Basis)",
      name: "HoldDowns",
      room: 10,
    },
    {
      heading: "Epoxied rod",
      formula: "=SILL.ANCHOR_BOND(RodPull,RodDiameter,RodDepth,RodEdge,ConcreteCase,Basis)",
      name: "Rod",
      room: 6,
    },
    {
      heading: "Screw anchors of the sills",
      formula: "=SILL.ANCHOR_SCHEDULE(SillLines,Anchors,AllowableCase,Basis)",
      name: "SillAnchors",
      room: 8,
    },
  ],
);
