import type { Tape } from "../kit/tape.ts";
import { packsWithWaste } from "./packs.ts";

/**
 * Sheets to cover an area, by area alone: area with waste, over the sheet's area, rounded up.
 * The count that a cutting layout needs is never below the one without waste.
 * @param areaFt2 0 or more
 * @param sheetFt2 area of one sheet, above 0
 * @param waste share of the area, 0 or more
 */
export function sheetsCount(areaFt2: number, sheetFt2: number, waste: number, tape?: Tape): number {
  return packsWithWaste(areaFt2, waste, sheetFt2, "ft2", "sheets", tape);
}
