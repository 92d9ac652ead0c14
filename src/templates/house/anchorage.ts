import { NOTHING_FOR_ZERO } from "../kit/formats.ts";
import { checks, inputs, results, sheet, table, top } from "../kit/layout.ts";
import { OPENING_PLACES, WALL_ROWS } from "./walls.ts";

/** What stands in the row of a wall, and nothing where the wall is gone from the sheet Walls. */
const there = (row: number, what: string | number) => `=IF(INDEX(Walls,${row},1)="","",${what})`;
const wallName = (row: number) => `=INDEX(Walls,${row},1)&""`;

/** A shear line from the row of its wall on the sheet Walls. */
const line = (row: number, arm: string, per: string) =>
  [
    wallName(row),
    there(row, `VLOOKUP(INDEX(Walls,${row},1)&" wall: ${per}",BaseShear,4,0)`),
    `=INDEX(Walls,${row},2)&""`,
    `=INDEX(Walls,${row},3)&""`,
    "",
    there(row, 1),
    there(row, arm),
  ] as const;

/** Rows of the walls that are shear lines. */
const LINES = [2, 3, 4, 5];

/** The piece of full height that ends at an opening; it begins at the nearest opening before it, or at the end of the wall. */
const pieceBefore = (n: number) => [
  `=INDEX(OpenWall,${n})`,
  `=MAXIFS(OpenRight,OpenWall,INDEX(OpenWall,${n}),OpenLeft,"<"&INDEX(OpenLeft,${n})-0.001)`,
  `=INDEX(OpenLeft,${n})`,
];
/** The last piece of a wall, from its last opening to its right end: the whole wall where it has none. */
const lastPiece = (row: number) => [
  `=INDEX(Sizes,${row},1)`,
  `=MAXIFS(OpenRight,OpenWall,INDEX(Sizes,${row},1))`,
  `=INDEX(Sizes,${row},2)`,
];
/** How wide a piece is, and what it counts for: 2 w/h of itself where it is higher than twice its width, nothing where it is too narrow. */
const counted = (n: number) => [
  `=INDEX(PieceTo,${n})-INDEX(PieceFrom,${n})`,
  `=IF(INDEX(PieceFt,${n})<LeastPiece,0,INDEX(PieceFt,${n})*MIN(1,2*INDEX(PieceFt,${n})/ColumnFt))`,
];
const PIECES = [...OPENING_PLACES.map(pieceBefore), ...WALL_ROWS.map(lastPiece)].map((piece, i) => [
  ...piece,
  ...counted(i + 1),
]);

/** Where the part of a wall that counts begins and ends. */
const partEnds = (row: number) => [
  wallName(row),
  `=MINIFS(PieceFrom,PieceWall,INDEX(Sizes,${row},1),PieceCounted,">0")`,
  `=MAXIFS(PieceTo,PieceWall,INDEX(Sizes,${row},1),PieceCounted,">0")`,
];

/** The part of a wall that counts, as a wall. */
const part = (row: number) => [
  wallName(row),
  there(row, `INDEX(PartTo,${row - 1})-INDEX(PartFrom,${row - 1})`),
  there(row, "ColumnFt"),
];

/** Where the part begins and ends that an opening may lie in. */
const partOf = (n: number) => [
  `=INDEX(OpenWall,${n})`,
  `=SUMIF(PartWall,INDEX(OpenWall,${n}),PartFrom)`,
  `=SUMIF(PartWall,INDEX(OpenWall,${n}),PartTo)`,
];
/** An opening in the part of its wall, from the part's left end, and nothing where it lies beside it. */
const inside = (n: number) => {
  const ifInside = (what: string) => `=IF(INDEX(InsideLeft,${n})>0,${what},"")`;
  return [
    ...[1, 2, 3, 4, 5].map((column) => ifInside(`INDEX(Openings,${n + 1},${column})${column === 4 ? "" : '&""'}`)),
    `=IF(INDEX(OpenLeft,${n})<INDEX(EndsAt,${n}),MAX(0,INDEX(OpenLeft,${n})-INDEX(BeginsAt,${n})),0)`,
    ifInside(`INDEX(OpenWall,${n})`),
  ];
};

/** Openings inside the part of a wall. */
const insideOf = (row: number) => ({
  heading: `Openings in the part of the wall in row ${row - 1}`,
  formula: there(row, `FILTER(Inside,INDEX(Inside,0,7)=INDEX(Walls,${row},1),"")`),
  name: `InWall${row - 1}`,
  room: 12,
  columns: 7,
});

/** Co of a part, and the pieces in it that count, ft. */
const left = (row: number) =>
  [
    wallName(row),
    `=IF(INDEX(Walls,${row},1)="",0,COUNTIF(INDEX(Inside,0,7),INDEX(Walls,${row},1)))`,
    `=IF(INDEX(InCount,${row - 1})=0,1,SILL.SHEARWALL_OPENINGS(INDEX(Parts,${row},0),InWall${row - 1}))`,
    `=SUMIF(PieceWall,INDEX(Sizes,${row},1),PieceCounted)`,
  ] as const;

/** A shear line again, as long as what its openings leave: Co times the pieces that count. Nothing where none does. */
function pierced(row: number) {
  const counts = (what: string | number) => `=IF(INDEX(LeftFt,${row - 1})=0,"",${what})`;
  const length = counts(`INDEX(LeftCo,${row - 1})*INDEX(LeftFt,${row - 1})`);
  return [
    counts(`INDEX(Sizes,${row},1)`),
    counts(`INDEX(ShearLines,${row},2)`),
    length,
    counts("ColumnFt"),
    "",
    counts(1),
    length,
  ] as const;
}

/** The sill of a wall, less what stands on the slab. */
const sill = (row: number) =>
  [wallName(row), `=INDEX(Sizes,${row},2)-SUMIFS(OpenWidth,OpenWall,INDEX(Sizes,${row},1),OpenSill,0)`] as const;

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
    inputs("Arms of the walls", [
      {
        label: "A long wall",
        name: "LongArm",
        value: "47'-0\"",
        unit: "ft",
        note: "from the hold-down to the middle of what is pressed at the other end",
      },
      { label: "A gable wall", name: "GableArm", value: "31'-0\"", unit: "ft" },
    ]),
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
    inputs("Sill", [
      { label: "Sill bolt", name: "SillBolt", value: 0.5, unit: "in" },
      { label: "Sill, height", name: "SillHigh", value: 4.5, unit: "in", note: "three plies of 2x6, flat" },
      { label: "Its gravity", name: "SillGravity", value: 0.42, unit: "", note: "SPF" },
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
    table(
      "ShearLines",
      "Shear lines",
      ["line", "shear lb", "length ft", "height ft", "dead plf", "floor", "arm ft"],
      [
        line(2, "LongArm", "along ridge"),
        line(3, "LongArm", "along ridge"),
        line(4, "GableArm", "across ridge"),
        line(5, "GableArm", "across ridge"),
      ],
      2,
    ),
    results("Pieces of full height between openings", [
      {
        label: "Least width that counts",
        name: "LeastPiece",
        formula: "=ColumnFt/3.5-0.001",
        unit: "ft",
        format: "0.00",
        note: "h/3.5, less a thousandth of a foot, so that a piece of just that width counts",
      },
    ]),
    table(
      "FullPieces",
      "Pieces of full height: before each opening, then the last one of each wall; a blank is 0",
      ["wall", "from ft", "to ft", "width ft", "counted ft"],
      PIECES,
      0,
      NOTHING_FOR_ZERO,
      {
        wall: "PieceWall",
        "from ft": "PieceFrom",
        "to ft": "PieceTo",
        "width ft": "PieceFt",
        "counted ft": "PieceCounted",
      },
    ),
    table(
      "PartEnds",
      "The walls from the first to the last piece that counts",
      ["wall", "from ft", "to ft"],
      LINES.map(partEnds),
      0,
      "#,##0.00",
      { wall: "PartWall", "from ft": "PartFrom", "to ft": "PartTo" },
    ),
    table(
      "Parts",
      "The same as walls of their own",
      ["wall", "length ft", "height ft"],
      LINES.map(part),
      0,
      "#,##0.00",
    ),
    table(
      "PartOf",
      "For each opening, where the part of its wall begins and ends",
      ["wall", "from ft", "to ft"],
      OPENING_PLACES.map(partOf),
      0,
      NOTHING_FOR_ZERO,
      { "from ft": "BeginsAt", "to ft": "EndsAt" },
    ),
    table(
      "Inside",
      "Openings in the parts, from the left end of the part; those beside the parts are left out",
      ["opening", "width ft", "height ft", "count", "sill ft", "left ft", "wall"],
      OPENING_PLACES.map(inside),
      0,
      { count: "0" },
      { "left ft": "InsideLeft" },
    ),
    table(
      "LeftByOpenings",
      "What the openings leave",
      ["line", "openings", "Co", "counted ft"],
      LINES.map(left),
      0,
      { openings: "0", Co: "0.00", "counted ft": "0.00" },
      { line: "LeftWall", openings: "InCount", Co: "LeftCo", "counted ft": "LeftFt" },
    ),
    table(
      "PiercedLines",
      "Shear lines, openings counted: as long as Co times the pieces that count",
      ["line", "shear lb", "length ft", "height ft", "dead plf", "floor", "arm ft"],
      LINES.map(pierced),
      0,
    ),
    table("Sills", "Sills, less doors and the wide opening", ["line", "length ft"], LINES.map(sill), 0),
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
        formula: "=12/PanelPitch*ScrewLateral",
        unit: "plf",
        format: "#,##0",
        note: "one row on a column",
      },
      {
        label: "Sill bolts, spacing",
        formula: "=SILL.ANCHOR_SILL(SillShear,SillBolt,SillHigh,SillGravity,AllowableCase,Basis)",
        unit: "in, and lb each",
        more: 1,
        note: "the sheet Lift weighs a sill of one ply: the documents say both, ask which is built",
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
      {
        label: "Pieces of full height",
        formula: '=IF(SUMPRODUCT((LeftWall<>"")*(LeftFt=0))=0,"ok","a wall has none that counts")',
      },
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
    ...LINES.map(insideOf),
  ],
);
