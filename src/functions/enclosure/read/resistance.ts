import type { Resistance } from "../../../core/enclosure/layers/layer-heat.ts";
import { BadInput } from "../../../core/kit/refusal.ts";
import { NUMBER, quantityIn } from "./figure.ts";

const R_VALUE = new RegExp(String.raw`^(?:r\s*-?\s*=?\s*)?${NUMBER}$`, "i");
const PER_INCH = new RegExp(String.raw`^(?:r\s*-?\s*)?${NUMBER}\s*(?:/|per)\s*in(?:ch)?\.?$`, "i");
const RSI_VALUE = new RegExp(String.raw`^rsi\s*-?\s*${NUMBER}$`, "i");
const K_VALUE = new RegExp(String.raw`^k\s*=?\s*${NUMBER}$`, "i");
/** Specific gravity, and moisture content in percent: `G 0.5 M 12` */
const WOOD = new RegExp(String.raw`^g\s*=?\s*${NUMBER}(?:[\s,]+m\s*=?\s*${NUMBER}\s*%?)?$`, "i");
/** Moisture content where none is given, percent: indoor wood, and the basis of the Wood Handbook's tables. */
const USUAL_MOISTURE_PCT = 12;

/**
 * Reads an R or a conductivity: `13`, `R-13`, `RSI 2.3`, `2.3 m2K/W`, `R 4.2/in`, `k 0.25`, `0.25 Btu in/h ft2 F`, `0.036 W/mK`;
 * `G 0.5 M 12` is solid wood by the Wood Handbook equation; `none` is R 0, since a 0 cannot be told from a blank cell.
 * @param where "row 4"
 * @throws BadInput for text that is none of these, or a conductivity of 0
 */
export function readResistance(text: string, where: string): Resistance {
  const resistance = read(text.trim());
  if (resistance !== undefined && possible(resistance)) return resistance;
  throw new BadInput(
    `The R "${text}" in ${where} cannot be read`,
    "it is an R of the layer (0 or more), an R per inch or a conductivity above 0",
    "Write it like 3.5, R-13, R 4.2/in, k 0.25, 0.036 W/mK, RSI 2.3, none for no R or, for wood, G 0.5 M 12",
  );
}

function possible(r: Resistance): boolean {
  if (r.kind === "R") return r.rIp >= 0 && Number.isFinite(r.rIp);
  return r.kind === "wood" || (r.kBtuIn > 0 && Number.isFinite(r.kBtuIn));
}

function read(text: string): Resistance | undefined {
  if (/^none$/i.test(text)) return { kind: "R", rIp: 0 };
  const wood = WOOD.exec(text);
  if (wood !== null) {
    const moisturePct = wood[2] === undefined ? USUAL_MOISTURE_PCT : Number(wood[2]);
    return { kind: "wood", specificGravity: Number(wood[1]), moisturePct };
  }
  const bare = R_VALUE.exec(text);
  if (bare !== null) return { kind: "R", rIp: Number(bare[1]) };
  const perInch = PER_INCH.exec(text);
  if (perInch !== null) return { kind: "k", kBtuIn: 1 / Number(perInch[1]) };
  const k = K_VALUE.exec(text);
  if (k !== null) return { kind: "k", kBtuIn: Number(k[1]) };
  return withUnit(text);
}

function withUnit(text: string): Resistance | undefined {
  const rsi = RSI_VALUE.exec(text);
  const rIp = quantityIn(rsi === null ? text : `${rsi[1]} RSI`, "R");
  if (rIp !== undefined) return { kind: "R", rIp };
  const kBtuIn = quantityIn(text.replace(/^k\s*=?\s*/i, ""), "Btu in/h ft2 F");
  return kBtuIn === undefined ? undefined : { kind: "k", kBtuIn };
}
