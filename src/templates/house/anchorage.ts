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

/** Shear lines, hold-downs and anchors. */
export const anchorage = sheet(
  "Hold-downs",
  "Shear lines, hold-downs and anchors of the four walls.",
  [
    top(
      "Hold-downs and anchors",
      "Each wall is a line of its own; the force comes from the sheet Wind, strength level.",
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
        formula: "=MAX(INDEX(HoldDowns,0,4))",
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
        note: "strength level",
      },
      {
        label: "Uplift of the roof on a long wall",
        name: "SillUplift",
        formula: "=MAX(0,INDEX(SILL.WIND_UPLIFT(RoofDead,RafterSpan,AllowableCase,Basis),2,4))",
        unit: "plf",
        format: "#,##0",
        note: "allowable level, net of 0.6 D",
      },
      {
        label: "Greatest shear of a sill",
        name: "SillShear",
        formula: "=MAX(INDEX(HoldDowns,0,3))",
        unit: "plf",
        format: "#,##0",
        note: "allowable level",
      },
      {
        label: "Sill bolts 1/2 in, spacing",
        formula: "=SILL.ANCHOR_SILL(SillShear,0.5,4.5,0.42,AllowableCase,Basis)",
        unit: "in, and lb each",
        more: 1,
      },
    ]),
    table(
      "SillLines",
      "What the screw anchors of each sill carry",
      ["line", "shear plf", "length ft", "uplift plf"],
      [
        ["south", "=INDEX(HoldDowns,2,3)", "=INDEX(Walls,2,2)", "=SillUplift"],
        ["north", "=INDEX(HoldDowns,3,3)", "=INDEX(Walls,3,2)", "=SillUplift"],
        ["east", "=INDEX(HoldDowns,4,3)", "=INDEX(Walls,4,2)", ""],
        ["west", "=INDEX(HoldDowns,5,3)", "=INDEX(Walls,5,2)", ""],
      ],
      0,
    ),
    checks([
      { label: "Epoxied rod", formula: '=IF(MAX(INDEX(Rod,0,3))<=1,"ok","above its capacity")' },
      { label: "Screw anchors", formula: '=IF(MAX(INDEX(SillAnchors,0,7))<=1,"ok","above their capacity")' },
    ]),
  ],
  [
    {
      heading: "Hold-downs",
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
