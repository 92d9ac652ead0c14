import { checks, inputs, results, sheet, table, top } from "../kit/layout.ts";

/** A shear line from the row of its wall on the sheet Walls. */
const line = (name: string, row: number, arm: string, per: string) =>
  [
    name,
    `=VLOOKUP("${name} wall: ${per}",BaseShear,4,FALSE)`,
    `=INDEX(Walls,${row},2)`,
    `=INDEX(Walls,${row},3)`,
    "",
    1,
    arm,
  ] as const;

/** Pieces of full height between the outermost that count, from the left: at least h/3.5 wide. */
const PIECES: readonly (readonly [line: string, width: string])[] = [
  ...["4'-0\"", "4'-4\"", "4'-4\"", "4'-0\"", "4'-0\""].map((width) => ["south", width] as const),
  ...["10'-6\"", "21'-0\"", "10'-3\""].map((width) => ["north", width] as const),
  ...["12'-10\"", "4'-10\""].map((width) => ["east", width] as const),
  ["west", "12'-6\""],
];

/** What a piece counts for, with 2 w/h where it is higher than twice its width. */
const counted = (row: number) =>
  `=SILL.LENGTH(INDEX(FullPieces,${row},2))*MIN(1,2*SILL.LENGTH(INDEX(FullPieces,${row},2))/ColumnFt)`;

/** A shear line again, as long as what its openings leave: Co times the pieces that count. */
function pierced(name: string, row: number) {
  const length = `=INDEX(LeftByOpenings,${row},2)*INDEX(LeftByOpenings,${row},3)`;
  return [name, `=INDEX(ShearLines,${row},2)`, length, "=ColumnFt", "", 1, length] as const;
}

/** Co of a part, and the pieces in it that count, ft. */
const left = (name: string, factor: string | number) =>
  [name, factor, `=SUMIF(INDEX(Counted,0,1),"${name}",INDEX(Counted,0,2))`] as const;
const factor = (openings: string, row: number) => `=SILL.SHEARWALL_OPENINGS(INDEX(Parts,${row},0),${openings},Basis)`;

/** Shear on a foot of the sill that is there, allowable level. */
const sillLine = (name: string, row: number, uplift: string) =>
  [
    name,
    `=0.6*INDEX(ShearLines,${row},2)/SILL.LENGTH(INDEX(Sills,${row},2))`,
    `=INDEX(Sills,${row},2)`,
    uplift,
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
        line("south", 2, "47'-0\"", "along ridge"),
        line("north", 3, "47'-0\"", "along ridge"),
        line("east", 4, "31'-0\"", "across ridge"),
        line("west", 5, "31'-0\"", "across ridge"),
      ],
      2,
    ),
    table(
      "Parts",
      "The walls from the first to the last piece of full height that counts, at least h/3.5 wide",
      ["wall", "length ft", "height ft"],
      [
        ["south", "36'-0\"", "=ColumnFt"],
        ["north", "47'-9\"", "=ColumnFt"],
        ["east", "21'-0\"", "=ColumnFt"],
        ["west", "12'-6\"", "=ColumnFt"],
      ],
      0,
    ),
    table(
      "SouthPart",
      "Openings in the south part, from its left end",
      ["opening", "width ft", "height ft", "count", "sill ft", "left ft"],
      [
        ["window S2", "4'-0\"", "4'-6\"", 1, "2'-9\"", "4'-0\""],
        ["door S", "3'-4\"", "6'-11\"", 1, "0'-0\"", "12'-4\""],
        ["window S3", "4'-0\"", "4'-6\"", 1, "2'-9\"", "20'-0\""],
        ["window S4", "4'-0\"", "4'-6\"", 1, "2'-9\"", "28'-0\""],
      ],
      1,
    ),
    table(
      "NorthPart",
      "Openings in the north wall",
      ["opening", "width ft", "height ft", "count", "sill ft", "left ft"],
      [
        ["window N1", "3'-0\"", "2'-0\"", 1, "6'-0\"", "10'-6\""],
        ["window N2", "3'-0\"", "2'-0\"", 1, "6'-0\"", "34'-6\""],
      ],
      1,
    ),
    table(
      "EastPart",
      "Openings in the east part, from its left end; the west part has none",
      ["opening", "width ft", "height ft", "count", "sill ft", "left ft"],
      [["door E", "3'-4\"", "6'-11\"", 1, "0'-0\"", "12'-10\""]],
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
      [
        left("south", factor("SouthPart", 2)),
        left("north", factor("NorthPart", 3)),
        left("east", factor("EastPart", 4)),
        left("west", 1),
      ],
      0,
      "#,##0.00",
    ),
    table(
      "PiercedLines",
      "Shear lines, openings counted: as long as Co times the pieces that count",
      ["line", "shear lb", "length ft", "height ft", "dead plf", "floor", "arm ft"],
      [pierced("south", 2), pierced("north", 3), pierced("east", 4), pierced("west", 5)],
      0,
    ),
    table(
      "Sills",
      "Sills, less doors and the wide opening",
      ["line", "length ft"],
      [
        ["south", "44'-5\""],
        ["north", "47'-9\""],
        ["east", "28'-8\""],
        ["west", "20'-0\""],
      ],
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
      [
        sillLine("south", 2, "=SillUplift"),
        sillLine("north", 3, "=SillUplift"),
        sillLine("east", 4, ""),
        sillLine("west", 5, ""),
      ],
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
