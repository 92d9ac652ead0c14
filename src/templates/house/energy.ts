import { results, sheet, table, top } from "../kit/layout.ts";

/** Heat loss of the whole building, and the code by its whole surface. */
export const energy = sheet(
  "Energy",
  "Whole-building heat loss and the code by the whole surface.",
  [
    top("Heat loss of the whole building", "Areas come from the sheet Walls; U of wall and roof from Assemblies."),
    table(
      "Areas",
      "Surfaces",
      ["part", "area ft2", "U", "code part"],
      [
        ["wall", "=NetWallArea", "=WallU", "wood wall"],
        ["roof", "=RoofArea", "=RoofU", "ceiling"],
        ["windows", "=WindowArea", 0.27, "window"],
        ["doors", "=DoorArea", 0.17, "window"],
        ["wide opening", "=OpeningArea-WindowArea-DoorArea", 0.2, "window"],
      ],
      2,
    ),
    results("Heat", [
      { label: "Air change in use", name: "Airflow", formula: "=SILL.AIR_NATURAL(Basis)" },
      { label: "Heat loss on the design day", formula: "=SILL.HEATLOSS(Areas,Airflow,Basis)" },
      { label: "Heat loss of a year", formula: "=SILL.HEATLOSS_YEAR(Areas,Airflow,Basis)" },
      {
        label: "Slab edge, 160 ft, 4 ft deep",
        formula: '=SILL.HEATLOSS_GROUND("slab",160,FloorArea,"R-10 4 ft vertical",Basis)',
        more: 1,
      },
      { label: "Air tightness against the code", formula: "=SILL.AIR_CODE(Basis)", more: 2 },
    ]),
  ],
  [{ heading: "The code by the whole surface", formula: "=SILL.UA_CODE(Areas,Basis)", room: 14 }],
);
