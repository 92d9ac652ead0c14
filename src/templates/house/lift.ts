import { blankForZero, NOTHING_FOR_ZERO } from "../kit/formats.ts";
import { checks, inputs, results, sheet, table, top } from "../kit/layout.ts";
import { WALL_ROWS } from "./walls.ts";

/** A piece that some walls have none of: its row is blank then. */
const blankIfNone = (piece: string, of: string, weight: string) => [
  `=IF(${of}=0,"","${piece}")`,
  `=IF(${of}=0,"",${weight})`,
  `=IF(${of}=0,"",1)`,
];

/** Weight of each wall, the sling, the crane, wind on the wall in the air and on its braces. */
export const lift = sheet(
  "Lift",
  "Weight of each wall, the sling, the crane, wind in the air and on the braces.",
  [
    top("Lift plan", "Preliminary: the lift is planned by the person who is responsible for it."),
    inputs("Inputs here", [
      {
        label: "Wall to lift",
        name: "LiftWall",
        value: "north",
        note: "one of the sheet Walls; the heaviest is shown below",
      },
      { label: "Windows", name: "WindowPsf", value: 8, unit: "psf" },
      { label: "A column", name: "ColumnPlf", value: 5, unit: "plf" },
      {
        label: "A plate",
        name: "PlatePlf",
        value: 1.66,
        unit: "plf",
        note: "sill and top plate run the full length, the top one along the rake; 1.66 is one ply of 2x6",
      },
      {
        label: "Plies of the sill",
        name: "SillPlies",
        value: 1,
        unit: "",
        note: "the bolts on the sheet Hold-downs go through three: the documents say both, ask which is built",
      },
      { label: "Rise of the bridle", name: "BridleRise", value: 16, unit: "ft" },
      { label: "Radius of the crane", name: "LiftRadius", value: 38, unit: "ft" },
      { label: "Braces apart", name: "BraceFt", value: 8, unit: "ft", note: "along the wall" },
      { label: "Braces attached", name: "BraceUp", value: 7, unit: "ft" },
      { label: "Angle of the braces", name: "BraceAngle", value: 45, unit: "deg" },
    ]),
    table("Headers", "Framing round wide openings, in the wall", ["wall", "weight lb"], [["west", 320]], 3),
    table(
      "Picks",
      "Bridle of two legs, from the center of gravity",
      ["pick", "x ft", "y ft"],
      [
        ["left", -12, 0],
        ["right", 12, 0],
      ],
      2,
    ),
    table(
      "Chart",
      "Crane chart, static gross loads",
      ["radius ft", "capacity lb"],
      [
        [20, 17400],
        [25, 13800],
        [30, 11400],
        [35, 9700],
        [40, 8300],
        [45, 7000],
        [50, 5900],
        [60, 4400],
      ],
      0,
    ),
    table(
      "SetIn",
      "Set into the wall before it is lifted",
      ["piece", "weight lb", "count"],
      [
        blankIfNone("windows", "LiftWindows", "WindowPsf*LiftWindows"),
        ["columns", "=ColumnPlf*VLOOKUP(LiftWall,Frame,3,FALSE)", 1],
        ["sill plate", "=SillPlies*PlatePlf*VLOOKUP(LiftWall,Frame,4,FALSE)", 1],
        ["top plate", "=PlatePlf*VLOOKUP(LiftWall,Frame,5,FALSE)", 1],
        blankIfNone("header and jamb posts", "LiftHeader", "LiftHeader"),
      ],
      4,
    ),
    table(
      "LiftParts",
      "All walls by their parts: layers by net area with the wet allowance, the rest dry",
      ["wall", "layers lb", "windows lb", "columns lb", "plates lb", "header lb"],
      WALL_ROWS.map((r) => [
        `=INDEX(Sizes,${r},1)`,
        `=IFERROR(WetPsf*VLOOKUP(INDEX(Sizes,${r},1),WallAreas,4,FALSE),0)`,
        `=IFERROR(WindowPsf*VLOOKUP(INDEX(Sizes,${r},1),WindowsByWall,3,FALSE),0)`,
        `=ColumnPlf*INDEX(Frame,${r},3)`,
        `=PlatePlf*(SillPlies*INDEX(Frame,${r},4)+INDEX(Frame,${r},5))`,
        `=SUMIF(INDEX(Headers,0,1),INDEX(Sizes,${r},1),INDEX(Headers,0,2))`,
      ]),
      0,
      blankForZero("#,##0"),
    ),
    table(
      "Lifts",
      "All lifts: on the hook, in each leg with the impact factor, and with the rigging as a share of the chart",
      ["wall", "weight lb", "leg lb", "of the chart"],
      WALL_ROWS.map((r) => [
        `=INDEX(Sizes,${r},1)`,
        `=SUM(INDEX(LiftParts,${r},0))`,
        `=SUM(INDEX(LiftParts,${r},0))*LegPerPound`,
        `=IF(INDEX(Sizes,${r},2)=0,0,(SUM(INDEX(LiftParts,${r},0))+Rigging)/LiftCapacity)`,
      ]),
      0,
      NOTHING_FOR_ZERO,
    ),
    results("The wall", [
      { label: "Length", name: "LiftLength", formula: "=SILL.LENGTH(VLOOKUP(LiftWall,Walls,2,FALSE))" },
      { label: "Height", name: "LiftHeight", formula: "=SILL.LENGTH(VLOOKUP(LiftWall,Walls,3,FALSE))" },
      {
        label: "Area of its windows",
        name: "LiftWindows",
        formula: "=VLOOKUP(LiftWall,WindowsByWall,3,FALSE)",
        unit: "ft2",
      },
      {
        label: "Header and jamb posts",
        name: "LiftHeader",
        formula: "=SUMIF(INDEX(Headers,0,1),LiftWall,INDEX(Headers,0,2))",
        unit: "lb",
      },
      {
        label: "Area with its openings",
        name: "LiftArea",
        formula: "=VLOOKUP(LiftWall,WallAreas,2,FALSE)",
        unit: "ft2",
      },
      { label: "Weight", name: "LiftWeight", formula: '=VLOOKUP("total",Weights,4,FALSE)', unit: "lb" },
      {
        label: "A square foot of its layers, wet",
        name: "WetPsf",
        formula: "=VLOOKUP(LiftWall,Weights,3,FALSE)",
        unit: "psf",
      },
      {
        label: "A leg of the sling for each pound on the hook",
        name: "LegPerPound",
        formula: '=VLOOKUP("least rating",Sling,2,FALSE)/LiftWeight',
        unit: "",
        format: "0.0000",
        note: "with the impact factor",
      },
      { label: "Braces", name: "BraceCount", formula: "=ROUNDUP(LiftLength/BraceFt,0)", unit: "", format: "0" },
      { label: "Rigging", name: "Rigging", formula: '=VLOOKUP("Rigging weight",Basis,2,FALSE)', unit: "lb" },
      { label: "Heaviest wall", name: "Heaviest", formula: "=MAX(INDEX(Lifts,0,2))", unit: "lb" },
    ]),
    results("Lift", [
      { label: "Crane", name: "LiftCapacity", formula: "=SILL.LIFT_CRANE(LiftWeight,LiftRadius,Chart,Basis)", more: 4 },
      { label: "Wind in the air", formula: "=SILL.LIFT_WIND(LiftArea,LiftWeight,Basis)", more: 3 },
      {
        label: "Braces of the standing wall",
        formula: "=SILL.LIFT_BRACE(LiftLength,LiftHeight,BraceCount,BraceUp,BraceAngle,Basis)",
        more: 3,
      },
    ]),
    checks([
      {
        label: "The heaviest wall is the one in the lift",
        formula: '=IF(Heaviest>LiftWeight+1,"another wall is heavier: see the table of all lifts","ok")',
      },
    ]),
  ],
  [
    {
      heading: "Weight",
      formula: "=SILL.LIFT_WEIGHT(WallInLift,LayersInLift,OpeningsInLift,SetIn,Basis)",
      name: "Weights",
      room: 14,
    },
    {
      heading: "The wall",
      formula: "=FILTER(Walls,INDEX(Walls,0,1)=LiftWall)",
      name: "WallInLift",
      room: 2,
      columns: 5,
    },
    {
      heading: "Its openings",
      formula: "=FILTER(Openings,INDEX(Openings,0,7)=LiftWall)",
      name: "OpeningsInLift",
      room: 12,
      columns: 7,
    },
    {
      heading: "Its layers: panel, membrane, boards, furring",
      formula: "=CHOOSEROWS(WallLayers,1,4,5,6,7,8)",
      name: "LayersInLift",
      room: 8,
      columns: 6,
    },
    { heading: "Sling", formula: "=SILL.LIFT_SLING(LiftWeight,Picks,BridleRise,Basis)", name: "Sling", room: 8 },
    { heading: "Where to pick", formula: "=SILL.LIFT_PICKS(LiftLength,LiftWeight/LiftLength,2,Basis)", room: 8 },
  ],
);

/** What is hauled, load by load. */
export const truck = sheet(
  "Truck",
  "What is hauled, load by load, last in first out.",
  [
    top("Truck plan", "Order of the loads is the reverse of the order of work."),
    table(
      "Pieces",
      "Pieces to haul",
      ["piece", "weight lb", "length ft", "width ft", "thickness in", "count"],
      [
        ["panel pack of 8", 4608, 32, 4, 12, 4],
        ["columns and plates", 2400, 20, 2, 24, 1],
        ["rafters", 2900, 20, 3.8, 12, 2],
        ["ridge beam part", 630, 24, 0.5, 18, 2],
        ["mineral wool pallet", 896, 8, 4, 48, 7],
        ["polyisocyanurate pallet", 256, 8, 4, 48, 12],
        ["plywood pack", 2544, 8, 4, 28, 1],
        ["windows and doors", 1100, 8, 4, 84, 2],
        ["rolls and screws", 1500, 4, 4, 48, 1],
        ["siding and furring", 4400, 16, 4, 36, 1],
      ],
    ),
  ],
  [{ heading: "Loads", formula: "=SILL.TRUCK_LOADS(Pieces,Basis)", name: "TruckLoads", room: 50 }],
);
