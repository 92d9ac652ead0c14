import type { LoadLevel } from "../../kit/load-level.ts";
import type { Building } from "../building.ts";
import type { RoofWind } from "../directionality.ts";
import type { EnclosureClass } from "../enclosure.ts";
import type { Exposure } from "../tables/terrain.ts";

/** What the frame of a building takes from the wind. */
export interface FrameInput extends Building, RoofWind {
  readonly enclosure: EnclosureClass;
  /** exposure, for velocity pressure by height on the windward wall; undefined takes q over the whole wall */
  readonly exposure: Exposure | undefined;
  readonly level: LoadLevel;
  /** roof area that the -1.3 of the windward strip acts on, which reduces it; undefined takes no reduction */
  readonly roofAreaFt2: number | undefined;
  /** topographic factor that q was made with, for what has to be said about it */
  readonly kzt: number;
}

/** A surface with its net pressures, above 0 toward it. */
export interface FrameRow {
  /** wind direction, or load case of the envelope */
  readonly wind: string;
  readonly surface: string;
  /** part of the surface: "0 to 15 ft", "whole", "end zone" */
  readonly part: string;
  /** Cp or GCpf */
  readonly coefficient: number;
  /** with internal pressure outward */
  readonly withPressurePsf: number;
  /** with internal suction */
  readonly withSuctionPsf: number;
}
