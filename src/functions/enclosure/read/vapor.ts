import type { OwnVapor, VaporFigure } from "../../../core/enclosure/layers/layer-vapor.ts";
import { BadInput } from "../../../core/kit/refusal.ts";
import { NUMBER, quantityIn } from "./figure.ts";

const MU = new RegExp(String.raw`^mu\s*=?\s*${NUMBER}$`, "i");
const SD = new RegExp(String.raw`^sd\s*=?\s*${NUMBER}\s*(m|ft|in)?$`, "i");
const M_IN: Readonly<Record<string, number>> = { m: 1, ft: 0.3048, in: 0.0254 };

/**
 * Reads a resistance to vapor: `0.5` or `0.5 perm` (of the whole layer), `2 perm-in`, `mu 100`, `sd 2 m`, `57 ng/s m2 Pa`.
 * @param wet the wet-cup figure where there is one; the first is then the dry-cup figure
 * @param where "row 4"
 * @throws BadInput for text that is none of these
 */
export function readVapor(text: string, wet: string | undefined, where: string): OwnVapor {
  return { dry: readFigure(text, where), wet: wet === undefined ? undefined : readFigure(wet, where) };
}

function readFigure(text: string, where: string): VaporFigure {
  const figure = read(text.trim());
  if (figure !== undefined && figure.value > 0 && Number.isFinite(figure.value)) return figure;
  throw new BadInput(
    `The vapor figure "${text}" in ${where} cannot be read`,
    "it is a permeance, a permeability, a mu or an sd, above 0",
    "Write it like 0.5 (perm of the whole layer), 2 perm-in, mu 100 or sd 2 m",
  );
}

function read(text: string): VaporFigure | undefined {
  const mu = MU.exec(text);
  if (mu !== null) return { kind: "mu", value: Number(mu[1]) };
  const sd = SD.exec(text);
  if (sd !== null) return { kind: "sd", value: Number(sd[1]) * (M_IN[(sd[2] ?? "m").toLowerCase()] ?? 1) };
  const perm = quantityIn(text, "perm");
  if (perm !== undefined) return { kind: "perm", value: perm };
  const permIn = quantityIn(text, "perm-in");
  return permIn === undefined ? undefined : { kind: "perm-in", value: permIn };
}
