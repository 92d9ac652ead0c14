import { checks, inputs, results, sheet, table, top } from "../kit/layout.ts";

const LVL = ["LVL of the maker", "LVL", 2600, 1550, 285, 750, 2510, 2000000, 1016500, 0.5];

/** The panel between columns, columns, rafters, ridge beam and posts, screws. */
export const structure = sheet(
  "Structure",
  "The panel between columns, columns, rafters, ridge beam, posts and screws: first checks for the engineer.",
  [
    top("Panel, columns, beams and screws", "First checks, allowable stress. The engineer of record decides."),
    table(
      "PanelValues",
      "Panel, of a foot of width, as its report gives them",
      ["value", "along", "across", "unit"],
      [
        ["E", 1800000, 400000, "psi"],
        ["Fb", 1600, 500, "psi"],
        ["Fv", 130, 130, "psi"],
        ["Fs", 130, 90, "psi"],
        ["G", 80000, 25000, "psi"],
        ["S", 4.5, 4.5, "in3/ft"],
        ["I", 3.375, 3.375, "in4/ft"],
        ["Q", 12, 12, "in2/ft"],
        ["thickness", 1.5, 1.5, "in"],
      ],
      1,
    ),
    table(
      "OwnWood",
      "Material of the rafters and the ridge beam, by the maker's report",
      ["material", "kind", "Fb", "Ft", "Fv", "Fcp", "Fc", "E", "Emin", "G"],
      [LVL],
      1,
    ),
    table(
      "PostWood",
      "Material of the posts: 5 x 5 and larger, Douglas fir-larch No. 1, from memory; check it against the supplement",
      ["material", "kind", "Fb", "Ft", "Fv", "Fcp", "Fc", "E", "Emin", "G"],
      [["Douglas fir-larch No. 1 post", "sawn", 1200, 825, 170, 625, 1000, 1600000, 580000, 0.5]],
      0,
    ),
    table(
      "ScrewMembers",
      "Panel screw: panel on the column",
      ["member", "thickness in", "gravity"],
      [
        ["side", 1.5, 0.5],
        ["main", 1.5, 0.42],
      ],
      0,
    ),
    table(
      "WallCase",
      "What goes with the wind on the walls",
      ["Basis", "Value"],
      [
        ["load duration", "wind"],
        ["deflection limit", "L/180"],
        ["ply fastening", "nailed"],
      ],
      0,
    ),
    table(
      "RoofCase",
      "What goes with the snow on the roof, whose loads stand at allowable level here",
      ["Basis", "Value"],
      [
        ["load duration", "snow"],
        ["deflection limit", "L/240"],
        ["load level", "allowable"],
      ],
      0,
    ),
    inputs("Inputs here", [{ label: "Post length", name: "PostLength", value: 16.4, unit: "ft" }]),
    results("Spans, from the building", [
      { label: "Column length", name: "ColumnFt", formula: "=SILL.LENGTH(INDEX(Walls,2,3))", unit: "ft" },
      { label: "Rafter span", name: "RafterSpan", formula: "=FloorWidth/2", unit: "ft", note: "on the plan" },
      { label: "Ridge beam span", name: "RidgeSpan", formula: "=FloorLength/3", unit: "ft", note: "three spans" },
      {
        label: "Roof on a long wall",
        name: "RoofOnWall",
        formula: '=RafterSpan/2+SILL.LENGTH(VLOOKUP("Roof overhang",Basis,2,FALSE))',
        unit: "ft",
        note: "half of the rafter and the overhang",
      },
    ]),
    results("Loads on them", [
      {
        label: "Greatest wind on a panel",
        name: "PanelWind",
        formula: '=MAX(ABS(SILL.WIND_CLADDING("wall",5,32,Basis)))',
        unit: "psf",
        format: "0.0",
        note: "strength level, end of a wall",
      },
      {
        label: "Wind on a column",
        name: "ColumnWind",
        formula: '=8*MAX(ABS(SILL.WIND_CLADDING("wall",4,80,Basis)))',
        unit: "plf",
        format: "0",
        note: "8 ft of wall, strength level",
      },
      {
        label: "Roof on a column",
        name: "ColumnAxial",
        formula: "=8*RoofOnWall*(RoofDead+0.75*0.7*BalancedSnow)",
        unit: "lb",
        format: "#,##0",
        note: "D + 0.525 S, 8 ft of wall",
      },
      {
        label: "Load on a rafter",
        name: "RafterLoad",
        formula: "=4*(RoofDead+0.7*RoofSnow)",
        unit: "plf",
        format: "0",
        note: "D + 0.7 S",
      },
      {
        label: "Load on the ridge beam",
        name: "RidgeLoad",
        formula: "=RafterSpan*(RoofDead+0.7*BalancedSnow)",
        unit: "plf",
        format: "0",
      },
      { label: "Load on a post", name: "PostLoad", formula: "=RidgeSpan*RidgeLoad", unit: "lb", format: "#,##0" },
    ]),
    results("Single results", [
      {
        label: "Widest column spacing for the panel",
        formula: '=INDEX(SILL.PANEL_SPAN(PanelValues,PanelWind,2,"along",WallCase,Basis),2,2)',
        unit: "in",
        format: "0",
        note: "columns stand 96 in apart",
      },
      {
        label: "A post carries",
        name: "PostCapacity",
        formula: '=SILL.WOOD_COLUMN("5.5 x 5.5",PostWood,PostLength,RoofCase,Basis)',
      },
      { label: "Post, load over capacity", formula: "=PostLoad/PostCapacity", format: "0.00" },
      {
        label: "A panel screw, sideways",
        name: "ScrewLateral",
        formula: '=SILL.FASTENER_LATERAL("wood screw",0.242,ScrewMembers,WallCase,Basis)',
      },
    ]),
    table(
      "Worst",
      "The worst ratio of each table below",
      ["member", "ratio"],
      [
        ["panel", "=INDEX(PanelRatio,2,5)"],
        ["column", "=INDEX(ColumnRatio,2,5)"],
        ["rafter", "=INDEX(RafterRatio,2,5)"],
        ["ridge beam", "=INDEX(RidgeRatio,2,5)"],
      ],
      0,
    ),
    checks([
      {
        label: "Post",
        formula: '=IF(PostLoad<=PostCapacity,"ok","above its capacity: choose a larger post")',
      },
      {
        label: "Panel, column, rafter, beam",
        formula: '=IF(COUNT(Worst)<4,"no result",IF(MAX(Worst)<=1,"ok","above its capacity"))',
      },
    ]),
  ],
  [
    {
      heading: "Panel of a wall, two spans of 8 ft",
      name: "PanelRatio",
      formula: '=SILL.PANEL_CHECK(PanelValues,96,PanelWind,2,"along",WallCase,Basis)',
      room: 9,
    },
    {
      heading: "Column, three 2x6",
      name: "ColumnRatio",
      formula: '=SILL.WOOD_BEAMCOLUMN("3-2x6","SPF No. 2",ColumnFt,ColumnAxial,ColumnWind,WallCase,Basis)',
      room: 9,
    },
    {
      heading: "Rafter 3 1/2 x 11 7/8",
      name: "RafterRatio",
      formula: '=SILL.WOOD_CHECK("3.5 x 11.875",OwnWood,RafterSpan,RafterLoad,RoofCase,Basis)',
      room: 9,
    },
    {
      heading: "Ridge beam 5 1/4 x 18",
      name: "RidgeRatio",
      formula: '=SILL.WOOD_CHECK("5.25 x 18",OwnWood,RidgeSpan,RidgeLoad,3,RoofCase,Basis)',
      room: 9,
    },
  ],
);
