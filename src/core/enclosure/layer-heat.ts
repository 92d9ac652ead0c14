import { BadInput, Refusal } from "../refusal.ts";
import { parseQuantity } from "../units/quantity.ts";

/** What the third column of a row of layers says: an R of the whole layer, or a conductivity in Btu in/(h ft2 F). */
export type Resistance = { readonly kind: "R"; readonly rIp: number } | { readonly kind: "k"; readonly kBtuIn: number };

const NUMBER = String.raw`(\d+\.?\d*|\.\d+)`;
const R_VALUE = new RegExp(String.raw`^(?:r\s*-?\s*=?\s*)?${NUMBER}$`, "i");
const PER_INCH = new RegExp(String.raw`^(?:r\s*-?\s*)?${NUMBER}\s*(?:/|per)\s*in(?:ch)?\.?$`, "i");
const RSI_VALUE = new RegExp(String.raw`^rsi\s*-?\s*${NUMBER}$`, "i");
const K_VALUE = new RegExp(String.raw`^k\s*=?\s*${NUMBER}$`, "i");

/**
 * Reads an R or a conductivity: `13`, `R-13`, `RSI 2.3`, `2.3 m2K/W`, `R 4.2/in`, `k 0.25`, `0.25 Btu in/h ft2 F`, `0.036 W/mK`.
 * @param where "row 4"
 * @throws BadInput for text that is neither, a negative R or a conductivity of 0
 */
export function parseResistance(text: string, where: string): Resistance {
  const tidy = text.trim();
  const resistance = read(tidy);
  if (resistance !== undefined && positive(resistance)) return resistance;
  throw new BadInput(
    `The R "${text}" in ${where} cannot be read`,
    "it is an R of the layer (0 or more), an R per inch or a conductivity above 0",
    "Write it like 3.5, R-13, R 4.2/in, k 0.25, 0.036 W/mK or RSI 2.3",
  );
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
