import { codeValue } from "../../core/enclosure/loss/energy-code.ts";
import { type MassWall, massWall } from "../../core/enclosure/loss/mass-wall.ts";
import { MASS_CLAUSE } from "../../core/enclosure/tables/heat-capacity.ts";
import { Refusal } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import { orElse } from "../basis/term.ts";
import { preliminary } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { familyFunction } from "./family.ts";
import { layerRows, layers } from "./layers.ts";
import { readAssembly } from "./read/layer.ts";
import { shown } from "./shown.ts";
import { climateZone, countyTerms, mapOf, type ZoneArguments, zoneIfGiven } from "./terms/zone-terms.ts";

const columns = columnsOf<MassWall>(
  ["mass wall", "", (r) => r.mass],
  ["heat capacity", "Btu/(ft2 F)", (r) => r.heatCapacity],
  ["clause", "", (r) => r.clause],
);

/** What the code asks of either kind of wall, for the working; a row that is not kept is left out. */
function bothRows(a: ZoneArguments & { readonly energyCode: Parameters<typeof codeValue>[3] }, tape: Tape | undefined) {
  const zone = zoneShown(a, tape);
  if (zone === undefined) return;
  for (const kind of ["R", "U"] as const) {
    for (const part of ["mass wall", "wood wall"]) {
      try {
        codeValue(kind, zone, part, a.energyCode, tape);
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
      }
    }
  }
}

/** The zone, for the working alone: a county that is not known leaves the verdict as it is, and is said. */
function zoneShown(a: Parameters<typeof bothRows>[0], tape: Tape | undefined) {
  if (tape === undefined) return undefined;
  try {
    return zoneIfGiven(a, mapOf(a.energyCode), tape);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    tape.caution(`The code's rows for this wall are not shown. ${error.what}: ${error.why}.`);
    return undefined;
  }
}

const massWallFunction = familyFunction({
  name: "MASS_WALL",
  summary: "Whether the energy code counts a wall as a mass wall, with its heat capacity and the clause.",
  params: { layers: layers() },
  placed: { climateZone, energyCode: orElse("energy code") },
  named: countyTerms,
  oneRow: true,
  returns: columns.table("one row"),
  sources: [`${MASS_CLAUSE} and the specific heats: from memory`],
  cautions: [preliminary("energy code")],
  example: {
    args: { layers: [["concrete", 8]] },
    gives: [["yes", 18.65, "IECC R402.2.5: 6 Btu/(ft2 F) or more"]],
    within: 0.05,
    source:
      "arithmetic: 2240 kg/m3 = 139.8 pcf x 0.20 Btu/(lb F) x 8/12 ft = 18.6 Btu/(ft2 F) (specific heat from memory)",
  },
  refuses: [
    { args: { layers: [["a wall", 8]] }, says: "it is none of the built-in materials" },
    { args: { layers: [["concrete", 0]] }, says: "its R comes from thickness and conductivity" },
    {
      args: { layers: [["concrete", 8, -1]] },
      says: "it is an R of the layer (0 or more), an R per inch or a conductivity above 0",
    },
    {
      args: { layers: [["concrete", 8, 1000]] },
      says: "the method holds from 0 to 200 h ft2 F/Btu (layers of a building)",
    },
    { args: { layers: [["concrete", -1]] }, says: "it must be from 0 to 120 in" },
    { args: { layers: [["my block", 8, "R 2"]] }, says: "heat capacity goes by density, specific heat and thickness" },
  ],
  notFor: "Commercial buildings have their own definition; how fast a heavy wall answers the day needs a simulation.",
  run(a, tape) {
    bothRows(a, tape);
    const { layers: stack } = readAssembly(layerRows(a.layers), "wall", "winter", tape);
    const says = { symbol: "mass wall", rule: "by heat capacity, or by what it is made of", clause: MASS_CLAUSE };
    return shown(columns, [massWall(stack, tape)], tape, says);
  },
});

export const enclosureMassFunctions = [massWallFunction] as const;
