import type { Tape } from "../kit/tape.ts";

/** Room for the rounding of decimal fractions: 3200 x 1.1 / 32 is 110 packs, not 111. */
const ROUNDING = 1e-9;

/**
 * Least whole number of packs that holds a quantity.
 * @param quantity 0 or more
 * @param pack quantity in one pack, above 0, same unit
 */
export function wholePacks(quantity: number, pack: number): number {
  const packs = quantity / pack;
  return Math.max(0, Math.ceil(packs - ROUNDING * Math.max(1, packs)));
}

/**
 * A measured quantity with waste on top, then rounded up to whole packs. Waste is added to the quantity: 100 with 10 % waste is 110.
 * @param quantity measured, 0 or more
 * @param waste share of the quantity, 0 or more
 * @param pack quantity in one pack, above 0
 * @param unit unit of `quantity` and `pack`
 * @param packName what one pack is, for the working: "sheets"
 */
export function packsWithWaste(
  quantity: number,
  waste: number,
  pack: number,
  unit: string,
  packName: string,
  tape?: Tape,
): number {
  const total = quantity * (1 + waste);
  const packs = wholePacks(total, pack);
  tape?.step("Q", `measured quantity x (1 + waste ${waste})`, total, unit, "");
  tape?.step("N", `Q / ${Number(pack.toPrecision(8))} ${unit} each, rounded up`, packs, packName, "");
  return packs;
}
