import { inputs, results, sheet, table, top } from "../kit/layout.ts";

/** Dead load and snow of the roof, and the combinations on a rafter. */
export const loads = sheet(
  "Loads",
  "Dead load, snow and the combinations on the roof.",
  [
    top("Snow and loads on the roof"),
    inputs("Inputs here", [
      { label: "Rafters", name: "RafterDead", value: 2.9, unit: "psf", note: "on the plan" },
      { label: "Lights and other", name: "OtherDead", value: 1, unit: "psf", note: "on the plan" },
      { label: "Rafter spacing", name: "RafterSpacing", value: 4, unit: "ft" },
    ]),
    results("Roof", [
      {
        label: "Layers of the roof",
        name: "LayerDead",
        formula: '=SILL.LOAD_DEAD(RoofLayers,VLOOKUP("Roof slope",Basis,2,FALSE))',
        note: "on the plan",
      },
      {
        label: "Dead load in all",
        name: "RoofDead",
        formula: "=LayerDead+RafterDead+OtherDead",
        unit: "psf",
        format: "0.0",
      },
      {
        label: "Snow that governs",
        name: "RoofSnow",
        formula: "=MAX(INDEX(Snow,0,2))",
        unit: "psf",
        format: "0.0",
        note: "strength level, as the standard of 2022 has it",
      },
      {
        label: "Balanced snow",
        name: "BalancedSnow",
        formula: '=VLOOKUP("balanced, design",Snow,2,FALSE)',
        unit: "psf",
        format: "0.0",
        note: "strength level",
      },
      {
        label: "Live load of the roof",
        name: "RoofLive",
        formula: '=SILL.LOAD_LIVE("roof",RafterSpacing*FloorWidth/2,Basis)',
        note: "what a rafter carries; not reduced for the slope; snow governs",
      },
      {
        label: "Wind that lifts the roof",
        name: "RoofWind",
        formula: "=MIN(INDEX(SILL.WIND_FRAME(Basis),0,5))",
        unit: "psf",
        format: "0.0",
        note: "main frame, internal pressure with it, strength level",
      },
      {
        label: "Roof on a long wall",
        name: "RoofOnWall",
        formula: '=FloorWidth/4+SILL.LENGTH(VLOOKUP("Roof overhang",Basis,2,FALSE))',
        unit: "ft",
        note: "half of the rafter, whose other half is on the ridge beam, and the overhang",
      },
    ]),
    table(
      "RoofLoads",
      "Loads on the roof, psf on the plan",
      ["load", "value"],
      [
        ["D", "=RoofDead"],
        ["Lr", "=RoofLive"],
        ["S", "=RoofSnow"],
        ["W", "=RoofWind"],
      ],
      2,
    ),
  ],
  [
    {
      heading: "Uplift at the bearing of the roof",
      formula: "=SILL.WIND_UPLIFT(RoofDead,RoofOnWall,Basis)",
      room: 6,
    },
    { heading: "Snow on the roof", formula: "=SILL.LOAD_SNOW(Basis)", name: "Snow", room: 12 },
    { heading: "Combinations on the roof, psf", formula: "=SILL.LOAD_COMBINE(RoofLoads,Basis)", room: 24 },
  ],
);
