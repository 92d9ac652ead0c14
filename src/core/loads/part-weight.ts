import { BadInput, within } from "../kit/refusal.ts";

/** Metals and glass, which come in thin sheets, weigh more. */
const SHEETS_PCF = 130;

/**
 * Weight of a part as a row of layers gives it: psf as a number or text (15, "15 psf"), or a density as text ("35 pcf") that its thickness makes psf.
 * @param thicknessIn thickness of the part, wanted for a density only
 * @returns psf, the words for the working, and whether it is a density of what is not made in thin sheets
 * @throws BadInput for other texts, and for a density without thickness
 */
export function partWeight(
  text: string,
  thicknessIn: number | undefined,
  part: string,
): { readonly psf: number; readonly says: string; readonly byInch: boolean } {
  const [, digits, unit = "psf"] =
    /^(\d+(?:\.\d+)?|\.\d+)\s*(psf|pcf|lb\/ft2|lb\/ft3)?$/.exec(text.trim().toLowerCase()) ?? [];
  if (digits === undefined) {
    throw new BadInput(
      `The weight of ${part} is "${text}"`,
      "it is psf as a number, or a density such as 35 pcf",
      "Write one of these",
    );
  }
  const number = Number(digits);
  if (unit === "psf" || unit === "lb/ft2") {
    within(`The weight of ${part}`, number, 0, 1000, "psf", "a part of a building");
    return { psf: number, says: "own figure", byInch: false };
  }
  if (thicknessIn === undefined) {
    throw new BadInput(
      `${part} has a density but no thickness`,
      `${text} makes a weight only with a thickness`,
      "Give its thickness in inches",
    );
  }
  within(`The density of ${part}`, number, 0, 1000, "pcf", "a part of a building");
  const says = `${digits} pcf x ${thicknessIn} in / 12`;
  return { psf: (number * thicknessIn) / 12, says, byInch: number < SHEETS_PCF };
}
