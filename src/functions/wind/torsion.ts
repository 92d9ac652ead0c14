import { internalCoefficient } from "../../core/wind/enclosure.ts";
import { baseShear } from "../../core/wind/frame/base-shear.ts";
import { type TorsionLine, type TorsionRow, torsionCases } from "../../core/wind/frame/torsion.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { table } from "../declare/table.ts";
import { familyFunction } from "./family.ts";
import { ASSUMPTIONS, DIRECTIONAL, FRAME_TERMS, frameInput, WALL_LINE } from "./frame.ts";
import { BUILDING, SITE, WIND_CAUTION } from "./terms.ts";

const lines = table(
  {
    ...WALL_LINE,
    position: length("ft", {
      says: "place of the line from the middle of the face that the wind meets, below 0 on one side",
      min: -2500,
      max: 2500,
      heads: ["position ft", "from middle", "place"],
    }),
  },
  {
    says: "wall lines: name | across ridge or along ridge | place from the middle of the face, ft",
    maxRows: 200,
  },
);

const columns = columnsOf<TorsionRow>(
  ["case", "", (r) => r.name],
  ["across", "lb", (r) => r.acrossLb],
  ["along", "lb", (r) => r.alongLb],
  ["moment", "ft lb", (r) => r.momentFtLb],
  ["by line", "lb", (r) => r.lineLb],
  ["level", "", (r) => r.level],
);

const windTorsion = familyFunction({
  name: "WIND_TORSION",
  summary:
    "The four load cases of the wind on the frame, with torsional moment and both axes at once, and what each wall line takes.",
  params: { lines: optional(lines, [], "no wall lines") },
  placed: { velocityPressure: FRAME_TERMS.velocityPressure, windLevel: FRAME_TERMS.windLevel },
  named: { ...SITE, ...BUILDING, enclosure: FRAME_TERMS.enclosure },
  returns: columns.table("a row for each load case, then a row for each wall line in it"),
  sources: [
    "ASCE/SEI 7-10 Fig. 27.4-8 (read in a public copy of the figure); 7-16 and 7-22 Fig. 27.3-8 (number from memory)",
    DIRECTIONAL,
    "Wall lines: statics",
  ],
  assumptions: [...ASSUMPTIONS],
  cautions: [
    WIND_CAUTION,
    "Appendix D frees some buildings from the cases with a moment, among them some of one and two stories: it is not looked at here.",
  ],
  example: {
    args: {
      velocityPressure: 10,
      buildingWidth: 20,
      buildingLength: 40,
      eaveHeight: 10,
      roofShape: "flat",
      asce7Edition: "7-10",
    },
    gives: [
      ["1, across ridge", 6400, 0, 0, "", "strength"],
      ["1, along ridge", 0, 3200, 0, "", "strength"],
      ["2, across ridge", 4800, 0, 28800, "", "strength"],
      ["2, along ridge", 0, 2400, 7200, "", "strength"],
      ["3, both", 4800, 2400, 0, "", "strength"],
      ["4, both", 3603.2, 1801.6, 27024, "", "strength"],
    ],
    within: 0.01,
    source:
      "ASCE/SEI 7-10 Fig. 27.4-8: shares 0.75 and 0.563, eccentricity 0.15 B; least forces 16 x 400 and 16 x 200 and the products by exact arithmetic",
  },
  refuses: [
    { args: { lines: [["west", "across ridge", 5]] }, says: "a moment takes two lines apart from each other" },
    {
      args: {
        lines: [
          ["west", "across ridge", -30],
          ["east", "across ridge", 20],
        ],
      },
      says: "half of the face of 40 ft, counted from its middle",
    },
    { args: { enclosure: "open" }, says: "open buildings have net pressure coefficients CN of their own" },
  ],
  notFor:
    "Wall lines under a flexible floor or roof take WIND_BASESHEAR; flexible, L-shaped or open buildings go to an engineer.",
  run(a, tape) {
    const input = frameInput(a, "frame", undefined, tape);
    internalCoefficient(a.enclosure, a.asce7Edition);
    const own = a.lines.map((l): TorsionLine => ({ name: l.line, wind: l.wind, positionFt: l.position }));
    return spill(
      columns,
      torsionCases(baseShear(input, tape), own, a.asce7Edition, tape),
      "answer",
      "the cases, with their lines",
      tape,
    );
  },
});

export const windTorsionFunctions = [windTorsion] as const;
