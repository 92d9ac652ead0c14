import { checks, inputs, results, sheet, table, top } from "../kit/layout.ts";

/** The crew, the tasks, and ways to set the windows. */
export const labor = sheet(
  "Labor",
  "The crew, the tasks, and ways to set the windows.",
  [
    top("Labor", "Hours a unit are this crew's own."),
    table(
      "Crew",
      "Crew",
      ["worker", "number", "wage $/h"],
      [
        ["lead", 1, 41],
        ["carpenter", 3, 33],
        ["helper", 1, 24],
      ],
      1,
    ),
    table(
      "Tasks",
      "Tasks",
      ["task", "quantity", "rate h/unit"],
      [
        ["columns and plates", 24, 0.8],
        ["panels on the deck", 15, 3],
        ["wall membrane", 1600, 0.01],
        ["boards", 3200, 0.012],
        ["furring", 1000, 0.018],
        ["windows on the deck", "=WindowCount", 1.6],
        ["lift and brace", 4, 14],
        ["rafters and ridge", 28, 1.5],
        ["roof panels", 17, 3.4],
        ["roof membrane and boards", 1950, 0.045],
        ["doors and wide opening", 3, 4],
        ["siding", 1600, 0.045],
        ["strips and lining", 1600, 0.03],
      ],
    ),
    table(
      "Ways",
      "Ways to set the windows",
      ["way", "hours each", "set-up h", "crew size", "machine $/h"],
      [
        ["flat on the deck", 1.6, 9, 2, ""],
        ["standing", 2.7, 2, 2, 48],
      ],
      1,
    ),
    table(
      "CrewBasis",
      "The crew's mean wage; hours each of the ways are means of all windows, so nothing is learned on them again",
      ["Basis", "Value", "Unit"],
      [
        ["crew wage", "=INDEX(CrewRate,2,2)", "$/h"],
        ["learning rate", 1, ""],
      ],
      0,
    ),
    inputs("Learning", [{ label: "The first window", name: "FirstWindow", value: 2, unit: "h" }]),
    results("Crew", [
      { label: "Windows", name: "WindowCount", formula: "=SUM(INDEX(WindowRows,0,4))", unit: "", format: "0" },
      {
        label: "All windows, faster with each",
        name: "LearnedHours",
        formula: "=SILL.LABOR_LEARNING(FirstWindow,WindowCount,Basis)",
      },
      {
        label: "The mean of them",
        formula: "=LearnedHours/WindowCount",
        unit: "h",
        format: "0.00",
        note: "the hours each of the ways and tasks",
      },
      {
        label: "Standing to flat, hours each",
        formula: "=INDEX(Ways,3,2)/INDEX(Ways,2,2)",
        unit: "",
        format: "0.0",
        note: "of this crew; the trade says four to one (common practice)",
      },
    ]),
  ],
  [
    { heading: "Rate of the crew", formula: "=SILL.LABOR_RATE(Crew,Basis)", name: "CrewRate", room: 4 },
    {
      heading: "Hours, days and cost",
      formula: "=SILL.LABOR_SCHEDULE(Tasks,CrewBasis,Basis)",
      name: "Schedule",
      room: 22,
    },
    {
      heading: "Windows: flat on the deck or standing",
      formula: "=SILL.LABOR_COMPARE(WindowCount,Ways,CrewBasis,Basis)",
      name: "WindowWays",
      room: 8,
    },
  ],
);

/** Cost lines, risk and the price. */
export const bid = sheet(
  "Bid",
  "Cost lines, risk and the price.",
  [
    top("Bid build-up", "The bid takes the contingency share of the basis; the simulated one stands beside it."),
    table(
      "CostLines",
      "Cost lines, the office's first-day figures",
      ["line", "amount $", "kind", "low $", "high $"],
      [
        ["shell labor", 23400, "labor", 21000, 28500],
        ["materials", 77930, "material", 74000, 86000],
        ["crane and lift", 3750, "equipment", 3200, 5200],
        ["freight", 2100, "equipment", 1800, 2900],
        ["slab and foundation", 21400, "subcontract", 20000, 25000],
        ["steel roofing", 15100, "subcontract", 14300, 17600],
      ],
    ),
    results("Price", [
      {
        label: "Cost lines together",
        name: "CostTotal",
        formula: "=SUM(INDEX(CostLines,0,2))",
        unit: "$",
        format: "#,##0",
      },
      { label: "Price", name: "Price", formula: "=MAX(INDEX(Bid,0,5))", unit: "$", format: "#,##0" },
      { label: "Price a square foot of floor", formula: "=SILL.COST_PERAREA(Price,FloorArea)" },
    ]),
    checks([
      {
        label: "The price is above the cost",
        formula: '=IF(Price>CostTotal,"ok","the price is below the cost lines")',
      },
    ]),
  ],
  [
    { heading: "Build-up", formula: "=SILL.COST_BID(CostLines,Basis)", name: "Bid", room: 20 },
    { heading: "Contingency by simulation", formula: "=SILL.COST_CONTINGENCY(CostLines,Basis)", room: 10 },
  ],
);
