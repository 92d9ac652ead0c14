import { cautionRecalled } from "../../kit/known.ts";
import { BadInput, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { KG_M3_IN_PCF } from "../air/si.ts";
import type { Layer } from "../layers/layer.ts";
import { MASS_BY_NAME, MASS_CLAUSE, MASS_HEAT_CAPACITY, specificHeat } from "../tables/heat-capacity.ts";

const IN_IN_FT = 12;

/** Whether the code counts a wall as a mass wall. */
export interface MassWall {
  readonly mass: "yes" | "no";
  /** Btu/(ft2 F) */
  readonly heatCapacity: number;
  readonly clause: string;
}

/**
 * Heat capacity of a wall, and whether it is a mass wall: by 6 Btu/(ft2 F) or more, or by being of concrete, block, solid or mass timber.
 * @throws BadInput for a layer whose density is not known
 * Source: IECC R402.2.5, from memory.
 */
export function massWall(layers: readonly Layer[], tape?: Tape): MassWall {
  let heatCapacity = 0;
  for (const layer of layers) heatCapacity += capacityOf(layer, tape);
  tape?.step("HC", "sum(density x specific heat x thickness)", heatCapacity, "Btu/(ft2 F)", MASS_CLAUSE);
  cautionRecalled(tape, `${MASS_CLAUSE} and the specific heats`, "the code");
  const named = layers.find((l) => MASS_BY_NAME.some((n) => n === l.material));
  if (heatCapacity >= MASS_HEAT_CAPACITY) {
    return { mass: "yes", heatCapacity, clause: `${MASS_CLAUSE}: ${MASS_HEAT_CAPACITY} Btu/(ft2 F) or more` };
  }
  if (named !== undefined) return { mass: "yes", heatCapacity, clause: `${MASS_CLAUSE}: a wall of ${named.material}` };
  if (layers.some((l) => l.wood !== undefined)) {
    tape?.caution(
      `${MASS_CLAUSE} also names solid timber and mass timber without a thickness: ask the official whether the panel counts as such.`,
    );
  }
  return { mass: "no", heatCapacity, clause: `${MASS_CLAUSE}: under ${MASS_HEAT_CAPACITY} Btu/(ft2 F)` };
}

function capacityOf(layer: Layer, tape: Tape | undefined): number {
  if (layer.thicknessIn === 0 || layer.material === "air space" || layer.material === "reflective air space") return 0;
  if (layer.densityKgM3 === undefined || layer.material === undefined) {
    throw new BadInput(
      `The density of the ${layer.name} in row ${layer.row} is not known`,
      "heat capacity goes by density, specific heat and thickness",
      "Use a built-in material (MATERIALS lists them), or leave the layer out where it is light",
    );
  }
  const pcf = layer.densityKgM3 / KG_M3_IN_PCF;
  const c = specificHeat({ name: layer.material, ...(layer.wood === undefined ? {} : { wood: layer.wood }) });
  const capacity = (pcf * c * layer.thicknessIn) / IN_IN_FT;
  const rule = `${layer.name}: ${plain(pcf)} pcf x ${c} x ${plain(layer.thicknessIn)} / 12`;
  tape?.step(`HC_${layer.row}`, rule, capacity, "Btu/(ft2 F)", "from memory");
  return capacity;
}
