import { results, sheet, table, top } from "../kit/layout.ts";

/** Wind on the building: cladding by zone and area, the frame, sideways force. */
export const wind = sheet(
  "Wind",
  "Every cladding pressure, the frame and sideways force on the building, strength level.",
  [
    top(
      "Wind on the building",
      "Strength level throughout. Select the first cell of a table to see how it comes about, with the outline of the building.",
    ),
    table(
      "WindLines",
      "Lines of resistance",
      ["line", "wind", "tributary ft"],
      [
        ["south wall", "along", "=FloorWidth/2"],
        ["north wall", "along", "=FloorWidth/2"],
        ["east wall", "across", "=FloorLength/2"],
        ["west wall", "across", "=FloorLength/2"],
      ],
      1,
    ),
    results("Pressures", [
      { label: "Velocity pressure q", name: "VelocityPressure", formula: "=SILL.WIND_PRESSURE(Basis)" },
      { label: "End-zone width a", formula: "=SILL.WIND_EDGE(Basis)" },
      {
        label: "Panel between columns, middle of a wall",
        name: "PanelToward",
        formula: '=SILL.WIND_CLADDING("wall",4,32,Basis)',
        more: 1,
        note: "toward the wall, then away from it; 8 ft x 4 ft of panel",
      },
      { label: "Panel between columns, end of a wall", formula: '=SILL.WIND_CLADDING("wall",5,32,Basis)', more: 1 },
    ]),
  ],
  [
    { heading: "Cladding by surface, zone and area", formula: "=SILL.WIND_CLADDING_SCHEDULE(Basis)", room: 60 },
    { heading: "Main frame", formula: "=SILL.WIND_FRAME(Basis)", room: 30 },
    { heading: "Sideways force", formula: "=SILL.WIND_BASESHEAR(WindLines,Basis)", name: "BaseShear", room: 12 },
  ],
);
