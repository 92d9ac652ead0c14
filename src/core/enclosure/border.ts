import { convert } from "../units/quantity.ts";

/** Conversions between the units of the trade and those of ISO 6946 and ISO 13788. Factors come from the definitions in core/units. */

/** R: h ft2 F/Btu in one m2 K/W. */
export const R_IP_IN_RSI = convert(1, "RSI", "R");
/** Conductivity: W/(m K) in one Btu in/(h ft2 F). */
export const W_MK_IN_BTU_IN = convert(1, "Btu in/h ft2 F", "W/mK");
/** Transmittance: W/(m2 K) in one Btu/(h ft2 F). */
export const W_M2K_IN_BTU = convert(1, "Btu/h ft2 F", "W/m2K");
/** Permeance: kg/(s m2 Pa) in one perm, mercury at 0 C. */
export const KG_SM2PA_IN_PERM = convert(1, "perm", "ng/sm2Pa") * 1e-12;
export const PA_IN_INHG = convert(1, "inHg", "Pa");
export const M_IN_INCH = 0.0254;

/** Vapor permeability of still air, kg/(m s Pa). ISO 13788:2012 (= DIN 4108-3) takes this one value. */
export const DELTA_0 = 2e-10;

export const cToF = (tempC: number): number => (tempC * 9) / 5 + 32;
export const fToC = (tempF: number): number => ((tempF - 32) * 5) / 9;

/** Vapor-diffusion-equivalent air layer thickness in m of a permeance in perm: sd = delta_0 / W. */
export const sdFromPerm = (perm: number): number => DELTA_0 / (perm * KG_SM2PA_IN_PERM);
/** Permeance in perm of an equivalent air layer of sd m. */
export const permFromSd = (sdM: number): number => DELTA_0 / (sdM * KG_SM2PA_IN_PERM);
