import type { Cell } from "../../core/kit/tape.ts";
import { inputs, results, sheet, table, top } from "../kit/layout.ts";

const HEAD = ["material", "thickness in", "R", "vapor", "role", "weight psf"];
const BATTENS = "ventilated cavity";

const wallLayers: readonly (readonly Cell[])[] = [
  ["plywood", "1/2", 0.62, "", "", 1.5],
  ["air space", "1 1/2", 0.9, "", "", 0.2],
  ["veneer panel", "1 1/2", 1.8, "1 perm", "", 4.5],
  ["self-adhered membrane", "", "none", "0.05 perm", "air barrier", 0.3],
  ["mineral wool board", 3, 12.6, "", "", 1.75],
  ["mineral wool board", 3, 12.6, "", "", 1.75],
  ["air space", "3/4", "", "", BATTENS, 0.4],
  ["wood siding", "3/4", "", "", "", 1.75],
];

const roofLayers: readonly (readonly Cell[])[] = [
  ["veneer panel", "1 1/2", 1.8, "1 perm", "", 4.5],
  ["self-adhered membrane", "", "none", "0.05 perm", "air barrier", 0.3],
  ["polyisocyanurate board", 9, 51.3, "", "", 1.5],
  ["air space", "1 1/2", "", "", BATTENS, 0.5],
  ["metal roofing", "", "none", "", "", 1.2],
];

/** Wall and roof, inside to outside: R, U, the code and the dew point. */
export const assemblies = sheet(
  "Assemblies",
  "Wall and roof, inside to outside: R and U, what the code asks and the dew point on the design day.",
  [
    top(
      "Wall and roof, inside to outside",
      "One layer a row. R and vapor are the project's own; where they are blank the built-in materials stand in.",
    ),
    table("WallLayers", "Wall", HEAD, wallLayers, 2),
    table("RoofLayers", "Roof", HEAD, roofLayers, 2),
    table(
      "WallFraming",
      "Framing beside the wall's layers, one by one: the bucks stand in the place of the boards",
      ["material", "thickness in", "R"],
      wallLayers.map(([material]) => (material === "mineral wool board" ? ["wood buck", 3, 3.75] : ["same", "", ""])),
      2,
    ),
    inputs("Films and screws", [
      { label: "Still air inside a wall", name: "WallFilm", value: 0.68, unit: "h ft2 F/Btu" },
      { label: "Still air under the roof", name: "RoofFilm", value: 0.61, unit: "h ft2 F/Btu" },
      { label: "Moving air outside", name: "OutsideFilm", value: 0.17, unit: "h ft2 F/Btu" },
      {
        label: "Furring screw, No. 14",
        name: "FurringScrew",
        value: 0.242,
        unit: "in",
        note: "diameter, carbon steel",
      },
      { label: "Wall that a furring screw holds", name: "FurringScrewArea", value: 2.667, unit: "ft2" },
    ]),
    table(
      "WallScrews",
      "Screws through the boards, by row of the layers above",
      ["fixing", "diameter in", "per ft2", "layer row"],
      [
        ["steel screw", "=FurringScrew", "=1/FurringScrewArea", 6],
        ["steel screw", "=FurringScrew", "=1/FurringScrewArea", 7],
      ],
      0,
      "0.000",
    ),
    results("Wall", [
      {
        label: "R of the layers, with films",
        formula: "=SILL.R_STACK(WallLayers,WallFilm,OutsideFilm)",
        note: "by ISO 6946: outside, 0.68 of still air behind the ventilated cavity; with 0.17 in its place R is 0.51 less",
      },
      {
        label: "U with bucks",
        name: "WallU",
        formula: "=SILL.U_FACTOR(WallLayers,WallFraming,WallScrews,WallFilm,OutsideFilm,Basis)",
      },
      { label: "U that the code asks for", formula: '=SILL.U_CODE("wood wall",Basis)' },
      { label: "First wet face on the design day", formula: "=SILL.DEW_LAYER(WallLayers,Basis)" },
      {
        label: "Indoor temperature",
        name: "IndoorTemperature",
        formula: '=VLOOKUP("Indoor temperature",Basis,2,FALSE)',
        unit: "F",
      },
      {
        label: "Indoor humidity",
        name: "IndoorHumidity",
        formula: '=VLOOKUP("Indoor humidity",Basis,2,FALSE)',
        unit: "%",
      },
      { label: "Indoor dew point", formula: "=SILL.DEW_POINT(IndoorTemperature,IndoorHumidity)" },
    ]),
    results("Roof", [
      {
        label: "R of the layers, with films",
        formula: "=SILL.R_STACK(RoofLayers,RoofFilm,OutsideFilm)",
        note: "0.61 inside, and as much in the ventilated cavity outside; with 0.17 there R is 0.44 less",
      },
      {
        label: "U",
        name: "RoofU",
        formula: "=1/SILL.R_STACK(RoofLayers,RoofFilm,OutsideFilm)",
        unit: "Btu/(h ft2 F)",
        format: "0.000",
      },
      { label: "U that the code asks for", formula: '=SILL.U_CODE("ceiling",Basis)' },
      { label: "First wet face on the design day", formula: "=SILL.DEW_LAYER(RoofLayers,Basis)" },
    ]),
  ],
  [
    { heading: "R by layer, wall", formula: "=SILL.R_SCHEDULE(WallLayers,WallFilm,OutsideFilm,Basis)", room: 14 },
    { heading: "Through the wall on the design day", formula: "=SILL.DEW_PROFILE(WallLayers,Basis)", room: 14 },
  ],
);

/** Wall and roof over the year: wetting and drying, and the wood in them. */
export const moisture = sheet(
  "Moisture",
  "Wall and roof over the twelve months: wetting and drying, and the moisture of the wood in them.",
  [
    top(
      "Twelve months of wetting and drying",
      "The layers stand on the sheet Assemblies; climate and indoor moisture come from the basis.",
      "The indoor temperature of the basis holds all year: where July stays moist the house is as cool as that and open to the outdoor air.",
    ),
  ],
  [
    { heading: "Insulation outside the air barrier", formula: "=SILL.DEW_OUTSIDESHARE(WallLayers,Basis)", room: 8 },
    { heading: "The wall's year", formula: "=SILL.DEW_MONTHS(WallLayers,Basis)", room: 18 },
    { heading: "The roof's year", formula: "=SILL.DEW_MONTHS(RoofLayers,Basis)", room: 18 },
    { heading: "Wood in the wall", formula: "=SILL.DEW_WOOD(WallLayers,Basis)", room: 40 },
    { heading: "Wood in the roof", formula: "=SILL.DEW_WOOD(RoofLayers,Basis)", room: 40 },
  ],
);
