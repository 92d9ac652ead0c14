/**
 * Conversions between the units of the trade and those of ISO 6946 and ISO 13788, each from its definition (NIST SP 811, 2008, B.8).
 * They stand here as plain numbers, so that a calculation needs no library of units.
 */
const BTU_J = 1055.05585262;
const GRAIN_KG = 6.479891e-5;
const HOUR_S = 3600;
const POUND_KG = 0.45359237;
const OUNCES_IN_POUND = 16;
const F_IN_K = 5 / 9;
export const M_IN_INCH = 0.0254;
export const M_IN_FT = 0.3048;
const FT2_M2 = M_IN_FT ** 2;
/** Mercury at 0 C, the pressure that a perm is defined with. */
export const PA_IN_INHG = 3386.389;

/** Transmittance: W/(m2 K) in one Btu/(h ft2 F). */
export const W_M2K_IN_BTU = BTU_J / (HOUR_S * FT2_M2 * F_IN_K);
/** R: h ft2 F/Btu in one m2 K/W. */
export const R_IP_IN_RSI = W_M2K_IN_BTU;
/** Conductivity: W/(m K) in one Btu in/(h ft2 F). */
export const W_MK_IN_BTU_IN = W_M2K_IN_BTU * M_IN_INCH;
/** Linear transmittance: W/(m K) in one Btu/(h ft F). */
export const W_MK_IN_BTU_FT = W_M2K_IN_BTU * M_IN_FT;
/** Permeance: kg/(s m2 Pa) in one perm, mercury at 0 C. */
export const KG_SM2PA_IN_PERM = GRAIN_KG / (HOUR_S * FT2_M2 * PA_IN_INHG);
/** Water on a face: oz/ft2 in one kg/m2. */
export const OZ_FT2_IN_KG_M2 = (FT2_M2 * OUNCES_IN_POUND) / POUND_KG;
/** Density: kg/m3 in one pcf. */
export const KG_M3_IN_PCF = POUND_KG / M_IN_FT ** 3;

/** Vapor permeability of still air, kg/(m s Pa). ISO 13788:2012 (= DIN 4108-3) takes this one value. */
export const DELTA_0 = 2e-10;

export const cToF = (tempC: number): number => (tempC * 9) / 5 + 32;
export const fToC = (tempF: number): number => ((tempF - 32) * 5) / 9;

/** Vapor-diffusion-equivalent air layer thickness in m of a permeance in perm: sd = delta_0 / W. */
export const sdFromPerm = (perm: number): number => DELTA_0 / (perm * KG_SM2PA_IN_PERM);
/** Permeance in perm of an equivalent air layer of sd m. */
export const permFromSd = (sdM: number): number => DELTA_0 / (sdM * KG_SM2PA_IN_PERM);
