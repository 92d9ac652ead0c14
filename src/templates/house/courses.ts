import { results, sheet, table, top } from "../kit/layout.ts";

/** Panels of all walls in courses, cut to the openings, and what they leave. */
export const courses = sheet(
  "Courses",
  "Panels of all walls in courses, cut to the openings, and what they leave.",
  [
    top(
      "Courses of panels",
      "Select the first cell of the table to see the elevations. Joints stand on columns, never above each other.",
    ),
    results("Panels", [
      {
        label: "Panels for the walls",
        name: "WallPanels",
        formula: "=MAX(INDEX(Courses,0,7))",
        unit: "panels",
        format: "0",
      },
    ]),
  ],
  [
    { heading: "Courses", formula: "=SILL.WALL_COURSES(Walls,Columns,Openings,Basis)", name: "Courses", room: 80 },
    {
      heading: "What the panels leave",
      formula: "=SILL.WALL_OFFCUTS(Walls,Columns,Openings,Basis)",
      name: "Offcuts",
      room: 60,
    },
  ],
);

/** Lining sheets and bucks, cut from what is bought. */
export const cutting = sheet(
  "Cutting",
  "Lining sheets and window bucks: how many to buy and how to cut them.",
  [
    top("Cutting lists", "The parts come from the walls and openings; prices are typed here."),
    table(
      "LiningStock",
      "Lining sheets",
      ["stock", "length in", "width in", "price"],
      [["plywood 4 x 8", 96, 48, 34]],
      1,
    ),
    table("BuckStock", "Buck stock", ["stock", "length in", "price"], [["2x10, 16 ft", 192, 31]], 1),
    results("Lining", [
      {
        label: "Size of a sheet",
        name: "LiningSize",
        formula: '=INDEX(LiningStock,2,3)/12&"x"&INDEX(LiningStock,2,2)/12',
        unit: "ft",
      },
    ]),
    results("To buy", [
      {
        label: "Lining sheets",
        name: "LiningSheets",
        formula: "=SILL.SHEETS_NEEDED(LiningParts,LiningStock,Basis)",
        unit: "sheets",
        format: "0",
      },
      {
        label: "Proven least",
        formula: "=SILL.SHEETS_BOUND(LiningParts,LiningStock,Basis)",
        unit: "sheets",
        format: "0",
      },
      {
        label: "Lengths of buck stock",
        name: "BuckLengths",
        formula: "=SILL.STOCK_NEEDED(BuckParts,BuckStock,Basis)",
        unit: "lengths",
        format: "0",
      },
    ]),
  ],
  [
    { heading: "Lining parts", formula: "=SILL.LINING(Walls,LiningSize,Openings)", name: "LiningParts", room: 80 },
    { heading: "Cutting of the lining", formula: "=SILL.SHEETS_LAYOUT(LiningParts,LiningStock,Basis)", room: 180 },
    { heading: "Bucks", formula: "=SILL.BUCKS(Openings,Basis)", name: "BuckParts", room: 40 },
    { heading: "Cutting of the bucks", formula: "=SILL.STOCK_LAYOUT(BuckParts,BuckStock,Basis)", room: 80 },
  ],
);
