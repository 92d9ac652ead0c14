import { BadInput } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import type { WeighedLayer } from "../../core/lifting/weight.ts";
import { deadLoad } from "../../core/loads/dead.ts";
import { parseQuantity } from "../../core/units/quantity.ts";
import { isNone } from "../declare/scalar.ts";

/** A row of a stack of layers as far as its weight goes. */
interface LayerRow {
  readonly material: string;
  readonly thickness: number | undefined;
  /** psf, or a density such as 35 pcf; none for nothing */
  readonly weight: string | undefined;
  readonly row: number;
}

const DENSITY = /pcf|lbs?\s*\/\s*(ft3|ft\^3|cu\s*ft)|kg\s*\/\s*(m3|m\^3)/i;
const MOST_PSF = 200;

/** The weight of a layer: its own figure, else the built-in one; an air space weighs what its row says, else nothing. */
export function weighed(layer: LayerRow, tape: Tape | undefined): WeighedLayer {
  return { material: layer.material, psf: psfOf(layer, tape) };
}

function psfOf(layer: LayerRow, tape: Tape | undefined): number {
  const { material, thickness, weight, row } = layer;
  if (weight === undefined) {
    if (!/^air\b/i.test(material)) return builtIn(layer, tape);
    tape?.assume(`The ${material} in row ${row} of layers weighs nothing: give its strips in the weight column.`);
    return 0;
  }
  if (isNone(weight)) return 0;
  const psf = DENSITY.test(weight) ? byVolume(weight, thickness, layer) : parseQuantity(weight, "psf");
  if (psf >= 0 && psf <= MOST_PSF) return psf;
  throw new BadInput(
    `The weight ${weight} of ${material} in row ${row} of layers comes to ${psf} psf`,
    `a layer weighs from 0 to ${MOST_PSF} psf`,
    "Write psf as a number, or a density with its unit: 35 pcf",
  );
}

function byVolume(weight: string, thicknessIn: number | undefined, { material, row }: LayerRow): number {
  if (thicknessIn !== undefined && thicknessIn > 0) return (parseQuantity(weight, "pcf") * thicknessIn) / 12;
  throw new BadInput(
    `${material} in row ${row} of layers has no thickness`,
    `its weight ${weight} is that of a volume`,
    "Fill in its thickness in inches, or give its weight in psf",
  );
}

function builtIn({ material, thickness, row }: LayerRow, tape: Tape | undefined): number {
  return deadLoad([{ material, thicknessIn: thickness, psf: undefined, row }], [], 0, tape);
}
