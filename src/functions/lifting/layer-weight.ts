import { plain } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import type { WeighedLayer } from "../../core/lifting/weight.ts";
import { deadLoad } from "../../core/loads/dead.ts";
import { isNone } from "../declare/scalar.ts";

/** No layer of a panelized wall weighs more. */
const HEAVY_PSF = 20;

/** A row of a stack of layers as far as its weight goes. */
interface LayerRow {
  readonly material: string;
  readonly thickness: number | undefined;
  /** psf, or a density such as 35 pcf; none for nothing */
  readonly weight: string | undefined;
  readonly row: number;
}

/** The weight of a layer as LOAD_DEAD has it; an air space weighs what its row says, else nothing. */
export function weighed(layer: LayerRow, tape: Tape | undefined): WeighedLayer {
  const { material, thickness: thicknessIn, weight, row } = layer;
  if (isNone(weight)) return { material, psf: 0 };
  if (weight === undefined && /^air\b/i.test(material)) {
    tape?.assume(`The ${material} in row ${row} of layers weighs nothing: give its strips in the weight column.`);
    return { material, psf: 0 };
  }
  const psf = deadLoad([{ material, thicknessIn, weight, row }], [], 0, tape);
  if (psf > HEAVY_PSF)
    tape?.caution(`${material} in row ${row} of layers weighs ${plain(psf)} psf: is it a density in pcf?`);
  return { material, psf };
}
