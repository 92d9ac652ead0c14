import { inputs, results, sheet, table, top } from "../kit/layout.ts";

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
        note: "one of the sheet Walls; north is the heaviest",
      },
      { label: "Windows", name: "WindowPsf", value: 8, unit: "psf" },
      { label: "A column", name: "ColumnPlf", value: 5, unit: "plf" },
      { label: "A plate", name: "PlatePlf", value: 1.66, unit: "plf", note: "sill and top plate run the full length" },
      { label: "Rise of the bridle", name: "BridleRise", value: 16, unit: "ft" },
      { label: "Radius of the crane", name: "LiftRadius", value: 38, unit: "ft" },
      { label: "Braces", name: "BraceCount", value: 6, unit: "", note: "8 ft apart along the wall" },
      { label: "Braces attached", name: "BraceUp", value: 7, unit: "ft" },
      { label: "Angle of the braces", name: "BraceAngle", value: 45, unit: "deg" },
    ]),
    table(
      "SetIn",
      "Set into the wall before it is lifted",
      ["piece", "weight lb", "count"],
      [
        ["windows", "=WindowPsf*LiftWindows", 1],
        ["column", "=ColumnPlf*LiftHeight", "=COUNTIF(INDEX(Columns,0,1),LiftWall)"],
        ["sill or top plate", "=PlatePlf*LiftLength", 2],
      ],
      4,
    ),
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
    results("The wall", [
      { label: "Length", name: "LiftLength", formula: "=SILL.LENGTH(VLOOKUP(LiftWall,Walls,2,FALSE))" },
      { label: "Height", name: "LiftHeight", formula: "=SILL.LENGTH(VLOOKUP(LiftWall,Walls,3,FALSE))" },
      {
        label: "Area of its windows",
        name: "LiftWindows",
        formula: "=IFERROR(SUM(INDEX(SILL.WALL_AREA(WallInLift,WindowsInLift),0,3))/2,0)",
        unit: "ft2",
      },
      {
        label: "Area with its openings",
        name: "LiftArea",
        formula: "=VLOOKUP(LiftWall,WallAreas,2,FALSE)",
        unit: "ft2",
      },
      { label: "Weight", name: "LiftWeight", formula: '=VLOOKUP("total",Weights,4,FALSE)', unit: "lb" },
    ]),
    results("Lift", [
      { label: "Crane", formula: "=SILL.LIFT_CRANE(LiftWeight,LiftRadius,Chart,Basis)", more: 4 },
      { label: "Wind in the air", formula: "=SILL.LIFT_WIND(LiftArea,LiftWeight,Basis)", more: 3 },
      {
        label: "Braces of the standing wall",
        formula: "=SILL.LIFT_BRACE(LiftLength,LiftHeight,BraceCount,BraceUp,BraceAngle,Basis)",
        more: 3,
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
      heading: "Its windows",
      formula: '=FILTER(WindowRows,INDEX(WindowRows,0,7)=LiftWall,"none")',
      name: "WindowsInLift",
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
    { heading: "Sling", formula: "=SILL.LIFT_SLING(LiftWeight,Picks,BridleRise,Basis)", room: 8 },
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
