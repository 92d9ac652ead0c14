import { blankForZero, NOTHING_FOR_ZERO } from "../kit/formats.ts";
import { checks, inputs, results, sheet, table, top } from "../kit/layout.ts";

const opening = (name: string, size: readonly [string, string], sill: string, left: string, wall: string) =>
  [name, ...size, 1, sill, left, wall] as const;

const WINDOW = ["4'-0\"", "4'-6\""] as const;
const NARROW = ["3'-0\"", "4'-6\""] as const;
const HIGH = ["3'-0\"", "2'-0\""] as const;
const DOOR = ["3'-4\"", "6'-11\""] as const;
const SILL = "2'-9\"";
const FLOOR = "0'-0\"";

/** Area of some of the openings, which WALL_AREA gives by wall with their total below. */
const areaOf = (openings: string): string => `=SUM(INDEX(SILL.WALL_AREA(Walls,${openings}),0,3))/2`;
/** The openings whose names begin with a word. */
const rowsOf = (word: string): string => `=FILTER(Openings,LEFT(INDEX(Openings,0,1),${word.length})="${word}")`;

/** Rows of the table of walls, those to spare too. */
export const WALL_ROWS = Array.from({ length: 8 }, (_, i) => i + 2);

/** Rows of the table of openings to spare. */
const SPARE_OPENINGS = 4;
const OPENINGS = [
  opening("window S1", WINDOW, SILL, "2'-0\"", "south"),
  opening("window S2", WINDOW, SILL, "10'-0\"", "south"),
  opening("door S", DOOR, FLOOR, "18'-4\"", "south"),
  opening("window S3", WINDOW, SILL, "26'-0\"", "south"),
  opening("window S4", WINDOW, SILL, "34'-0\"", "south"),
  opening("window S5", WINDOW, SILL, "42'-0\"", "south"),
  opening("window N1", HIGH, "6'-0\"", "10'-6\"", "north"),
  opening("window N2", HIGH, "6'-0\"", "34'-6\"", "north"),
  opening("window E1", NARROW, SILL, "2'-6\"", "east"),
  opening("door E", DOOR, FLOOR, "18'-4\"", "east"),
  opening("window E2", NARROW, SILL, "26'-6\"", "east"),
  opening("window W1", NARROW, SILL, "2'-6\"", "west"),
  opening("wide opening W", ["12'-0\"", "8'-6\""], FLOOR, "18'-0\"", "west"),
];
/** Places of the openings in their table, those to spare too, from 1. */
export const OPENING_PLACES = Array.from({ length: OPENINGS.length + SPARE_OPENINGS }, (_, i) => i + 1);

/** A length of a table in feet, 0 where nothing stands. */
const feetOf = (table: string, row: number, column: number): string => {
  const cell = `INDEX(${table},${row},${column})`;
  return `=SILL.LENGTH(IF(${cell}="",0,${cell}))`;
};

/** What the table of sizes has of the wall of each column. */
const ofItsWall = (column: number, part = ""): string =>
  `=IFERROR(IF(INDEX(Columns,0,1)="","",VLOOKUP(INDEX(Columns,0,1),Sizes,${column},FALSE)${part}),"")`;
/** Columns beside the list of columns, row by row: eave and rise of the wall, the part of the rise there, and how long the column is. */
const COLUMN_LENGTHS = [
  { heading: "Eave, ft", formula: ofItsWall(3), name: "ColumnEave" },
  { heading: "Rise, ft", formula: ofItsWall(4), name: "ColumnRise" },
  {
    heading: "Off the middle, ft",
    formula: `=IFERROR(IF(ColumnMiddle="","",ABS(INDEX(Columns,0,2)-ColumnMiddle)),"")`,
    name: "ColumnOff",
  },
  { heading: "Half the wall, ft", formula: ofItsWall(2, "/2"), name: "ColumnMiddle" },
  {
    heading: "Column to the rake, ft",
    formula: `=IFERROR(ColumnEave+ColumnRise*(1-ColumnOff/ColumnMiddle),"")`,
    name: "ColumnTop",
  },
].map((spill) => ({ ...spill, room: 60 }));

/** Walls and openings: typed once, used by every takeoff. */
export const walls = sheet(
  "Walls",
  "Walls and openings: typed once, used by every takeoff; areas and columns of each wall.",
  [
    top(
      "Walls and openings",
      "One wall and one opening a row; spare rows are there to type into. Left edges from the left end of the wall, seen from outside; sills from the top of the slab.",
    ),
    table(
      "Walls",
      "Walls",
      ["wall", "length ft", "height ft", "rise ft", "top"],
      [
        ["south", "47'-9\"", "9'-10 1/2\""],
        ["north", "47'-9\"", "9'-10 1/2\""],
        ["east", "32'-0\"", "9'-10 1/2\"", "8'-0\"", "gable"],
        ["west", "32'-0\"", "9'-10 1/2\"", "8'-0\"", "gable"],
      ],
    ),
    table(
      "Openings",
      "Openings, rough size in the panel",
      ["opening", "width ft", "height ft", "count", "sill ft", "left ft", "wall"],
      OPENINGS,
      SPARE_OPENINGS,
    ),
    inputs("Panel screws on the columns", [
      { label: "Apart", name: "PanelPitch", value: 6, unit: "in" },
      { label: "Rows on a column", name: "PanelRows", value: 2, unit: "" },
    ]),
    table(
      "RoofPlanes",
      "Roof planes: length, and height along the slope",
      ["wall", "length ft", "height ft"],
      [
        ["south plane", "50'-0\"", "19'-4 9/16\""],
        ["north plane", "50'-0\"", "19'-4 9/16\""],
      ],
      1,
    ),
    table(
      "Sizes",
      "The walls in feet",
      ["wall", "length ft", "height ft", "rise ft"],
      WALL_ROWS.map((r) => [`=INDEX(Walls,${r},1)&""`, ...[2, 3, 4].map((c) => feetOf("Walls", r, c))]),
      0,
      NOTHING_FOR_ZERO,
    ),
    table(
      "OpeningSizes",
      "The openings in feet, row by row",
      ["opening", "wall", "left ft", "width ft", "sill ft", "right ft"],
      OPENING_PLACES.map((n) => [
        `=INDEX(Openings,${n + 1},1)&""`,
        `=INDEX(Openings,${n + 1},7)&""`,
        ...[6, 2, 5].map((c) => feetOf("Openings", n + 1, c)),
        `=INDEX(OpenLeft,${n})+INDEX(OpenWidth,${n})`,
      ]),
      0,
      NOTHING_FOR_ZERO,
      {
        wall: "OpenWall",
        "left ft": "OpenLeft",
        "width ft": "OpenWidth",
        "sill ft": "OpenSill",
        "right ft": "OpenRight",
      },
    ),
    table(
      "Frame",
      "The frame of each wall: columns from the slab to the eave or the rake, plates not taken off; sill plates through doors",
      ["wall", "columns", "columns ft", "sill plate ft", "top plate ft"],
      WALL_ROWS.map((r) => [
        `=INDEX(Sizes,${r},1)`,
        `=SUMPRODUCT((INDEX(Columns,0,1)=INDEX(Sizes,${r},1))*ISNUMBER(INDEX(Columns,0,2)))`,
        `=SUMIF(INDEX(Columns,0,1),INDEX(Sizes,${r},1),ColumnTop)`,
        `=INDEX(Sizes,${r},2)`,
        `=SQRT(INDEX(Sizes,${r},2)^2+4*INDEX(Sizes,${r},4)^2)`,
      ]),
      0,
      { columns: blankForZero("0") },
    ),
    results("All walls", [
      { label: "Net area", name: "NetWallArea", formula: '=VLOOKUP("total",WallAreas,4,FALSE)', unit: "ft2" },
      { label: "Area of openings", name: "OpeningArea", formula: '=VLOOKUP("total",WallAreas,3,FALSE)', unit: "ft2" },
      { label: "Windows", name: "WindowArea", formula: '=VLOOKUP("total",WindowsByWall,3,FALSE)', unit: "ft2" },
      { label: "Doors", name: "DoorArea", formula: areaOf("DoorRows"), unit: "ft2" },
      { label: "Roof", name: "RoofArea", formula: "=SUM(INDEX(SILL.WALL_AREA(RoofPlanes),0,4))/2", unit: "ft2" },
      { label: "Columns", name: "ColumnCount", formula: "=SUM(INDEX(Frame,0,2))", unit: "", format: "0" },
      { label: "Columns together", formula: "=SUM(INDEX(Frame,0,3))", unit: "ft", format: "0.00" },
      { label: "Sill plates", name: "SillFeet", formula: "=SUM(INDEX(Frame,0,4))", unit: "ft", format: "0.00" },
      { label: "Top plates, along the rakes", formula: "=SUM(INDEX(Frame,0,5))", unit: "ft", format: "0.00" },
    ]),
    checks([
      {
        label: "Rows of walls in feet",
        formula: '=IF(ROWS(Walls)=ROWS(Sizes),"ok","rows came in: the walls in feet need as many")',
      },
      {
        label: "Rows of openings in feet",
        formula: '=IF(ROWS(Openings)=ROWS(OpeningSizes),"ok","rows came in: those in feet are fewer")',
      },
    ]),
  ],
  [
    { heading: "Areas", formula: "=SILL.WALL_AREA(Walls,Openings)", name: "WallAreas", room: 14 },
    { heading: "Columns", formula: "=SILL.WALL_COLUMNS(Walls,Openings,Basis)", name: "Columns", room: 60 },
    ...COLUMN_LENGTHS,
    { heading: "The windows", formula: rowsOf("window"), name: "WindowRows", room: 24, columns: 7 },
    { heading: "The doors", formula: rowsOf("door"), name: "DoorRows", room: 12, columns: 7 },
    {
      heading: "Areas with the windows alone",
      formula: "=SILL.WALL_AREA(Walls,WindowRows)",
      name: "WindowsByWall",
      room: 14,
    },
  ],
);
