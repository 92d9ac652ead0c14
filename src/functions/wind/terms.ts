import { ifGiven, orElse } from "../basis/term.ts";
import { preliminary } from "../declare/cell-function.ts";

/** Terms from which the velocity pressure is made; a function places some of them and takes the rest by name. */
export const SITE = {
  windSpeed: ifGiven("wind speed"),
  exposure: ifGiven("exposure"),
  meanRoofHeight: ifGiven("mean roof height"),
  topographicFactor: orElse("topographic factor"),
  directionalityFactor: orElse("directionality factor"),
  groundElevation: orElse("ground elevation"),
  asce7Edition: orElse("ASCE 7 edition"),
} as const;

/** Terms that say what the building is; the mean roof height is made from them. */
export const BUILDING = {
  buildingWidth: ifGiven("building width"),
  buildingLength: ifGiven("building length"),
  eaveHeight: ifGiven("eave height"),
  roofSlope: ifGiven("roof slope"),
  roofShape: orElse("roof shape"),
} as const;

export const WIND_CAUTION = preliminary("wind");
