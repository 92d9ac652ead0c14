import { BadInput, Refusal } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { parseQuantity } from "../units/quantity.ts";
import { W_MK_IN_BTU_IN } from "./border.ts";
import { woodConductivityWmK } from "./wood.ts";

/** What the third column of a row of layers says: an R of the whole layer, or a conductivity in Btu in/(h ft2 F). */
export type Resistance = { readonly kind: "R"; readonly rIp: number } | { readonly kind: "k"; readonly kBtuIn: number };

const NUMBER = String.raw`(\d+\.?\d*|\.\d+)`;
const R_VALUE = new RegExp(String.raw`^(?:r\s*-?\s*=?\s*)?${NUMBER}$`, "i");
const PER_INCH = new RegExp(String.raw`^(?:r\s*-?\s*)?${NUMBER}\s*(?:/|per)\s*in(?:ch)?\.?$`, "i");
const RSI_VALUE = new RegExp(String.raw`^rsi\s*-?\s*${NUMBER}$`, "i");
/** Specific gravity, and moisture content in percent: `G 0.5 M 12` */
const WOOD = new RegExp(String.raw`^g\s*=?\s*${NUMBER}(?:[\s,]+m\s*=?\s*${NUMBER}\s*%?)?$`, "i");
/** Moisture content where none is given, percent: indoor wood, and the basis of the Wood Handbook's tables. */
const USUAL_MOISTURE_PCT = 12;
const K_VALUE = new RegExp(String.raw`^k\s*=?\s*${NUMBER}$`, "i");

/**
 * Reads an R or a conductivity: `13`, `R-13`, `RSI 2.3`, `2.3 m2K/W`, `R 4.2/in`, `k 0.25`, `0.25 Btu in/h ft2 F`, `0.036 W/mK`;
 * `G 0.5 M 12` is solid wood by the Wood Handbook equation.
 * @param where "row 4"
 * @throws BadInput for text that is none of these or a conductivity of 0, OutOfRange for wood outside the equation
 */
export function parseResistance(text: string, where: string, tape?: Tape): Resistance {
  const tidy = text.trim();
  const resistance = wood(tidy, tape) ?? read(tidy);
  if (resistance !== undefined && positive(resistance)) return resistance;
  throw new BadInput(
    `The R "${text}" in ${where} cannot be read`,
    "it is an R of the layer (0 or more), an R per inch or a conductivity above 0",
    "Write it like 3.5, R-13, R 4.2/in, k 0.25, 0.036 W/mK, RSI 2.3 or, for wood, G 0.5 M 12",
  );
}

function wood(text: string, tape: Tape | undefined): Resistance | undefined {
  const match = WOOD.exec(text);
  if (match === null) return undefined;
  const moisturePct = match[2] === undefined ? USUAL_MOISTURE_PCT : Number(match[2]);
  return { kind: "k", kBtuIn: woodConductivityWmK(Number(match[1]), moisturePct, tape) / W_MK_IN_BTU_IN };
}

function positive(r: Resistance): boolean {
  return r.kind === "R" ? r.rIp >= 0 && Number.isFinite(r.rIp) : r.kBtuIn > 0 && Number.isFinite(r.kBtuIn);
}

function read(text: string): Resistance | undefined {
  const bare = R_VALUE.exec(text);
  if (bare !== null) return { kind: "R", rIp: Number(bare[1]) };
  const perInch = PER_INCH.exec(text);
  if (perInch !== null) return { kind: "k", kBtuIn: 1 / Number(perInch[1]) };
  const rsi = RSI_VALUE.exec(text);
  if (rsi !== null) return { kind: "R", rIp: parseQuantity(`${rsi[1]} RSI`, "R") };
  const k = K_VALUE.exec(text);
  if (k !== null) return { kind: "k", kBtuIn: Number(k[1]) };
  const rIp = quantity(text, "R");
  if (rIp !== undefined) return { kind: "R", rIp };
  const kBtuIn = quantity(text.replace(/^k\s*=?\s*/i, ""), "Btu in/h ft2 F");
  return kBtuIn === undefined ? undefined : { kind: "k", kBtuIn };
}

function quantity(text: string, unit: string): number | undefined {
  try {
    return parseQuantity(text, unit);
  } catch (refusal) {
    if (refusal instanceof Refusal) return undefined;
    throw refusal;
  }
}
