import { inputs, results, sheet, table, top } from "../kit/layout.ts";

/** Heat loss of the whole building, and the code by its whole surface. */
export const energy = sheet(
  "Energy",
  "Whole-building heat loss and the code by the whole surface.",
  [
    top(
      "Heat loss of the whole building",
      "Walls and openings come from the sheet Walls; the roof is what stands over the floor, without overhangs; U of wall and roof from Assemblies.",
    ),
    table(
      "Areas",
      "Surfaces",
      ["part", "area ft2", "U", "code part"],
      [
        ["wall", "=NetWallArea", "=WallU", "wood wall"],
        ["roof", '=FloorArea*SILL.SLOPE(VLOOKUP("Roof slope",Basis,2,FALSE),"rake")', "=RoofU", "ceiling"],
        ["windows", "=WindowArea", 0.27, "window"],
        ["doors", "=DoorArea", 0.17, "window"],
        ["wide opening", "=ROUND(OpeningArea-WindowArea-DoorArea,4)", 0.2, "window"],
      ],
      2,
    ),
    inputs("Slab edge", [
      {
        label: "Its insulation, as the table has it",
        name: "SlabInsulation",
        value: "R-10 4 ft vertical",
        note: "R-10 is the next below the board's R 12.3",
      },
    ]),
    results("Heat", [
      { label: "Air change in use", name: "Airflow", formula: "=SILL.AIR_NATURAL(Basis)" },
      {
        label: "Slab edge on the design day",
        formula: '=SILL.HEATLOSS_GROUND("slab",SlabFt,FloorArea,SlabInsulation,Basis)',
        more: 1,
      },
      {
        label: "Slab edge, for a degree",
        name: "SlabLoss",
        formula: '=SlabFt*INDEX(SILL.HEATLOSS_GROUND("slab",SlabFt,FloorArea,SlabInsulation,Basis),1,2)',
        unit: "Btu/(h F)",
        format: "0.0",
      },
      {
        label: "Heat loss on the design day",
        formula: "=SILL.HEATLOSS(Areas,Airflow,SlabLoss,Basis)",
        note: "surfaces, air and slab edge",
      },
      {
        label: "Heat loss of a year",
        formula: "=SILL.HEATLOSS_YEAR(Areas,Airflow,SlabLoss,Basis)",
        note: "surfaces, air and slab edge",
      },
      { label: "Air tightness against the code", formula: "=SILL.AIR_CODE(Basis)", more: 2 },
    ]),
  ],
  [{ heading: "The code by the whole surface", formula: "=SILL.UA_CODE(Areas,Basis)", room: 14 }],
);
