import { optional } from "../declare/param.ts";
import { length, number } from "../declare/scalar.ts";
import { type RowOf, table } from "../declare/table.ts";
import { text } from "../declare/word.ts";
import type { LayerRow } from "./read/layer.ts";

/** Layers thicker than this are more often an R or millimeters in the wrong column. */
const USUAL_IN = { min: 0, max: 12, ask: "is it an R-value, or in millimeters?" };

/** The columns of a range of layers, in their order; a header row with these words may reorder them. */
const columns = {
  material: text({
    says: "material, one of the built-in names (MATERIALS lists them) such as gypsum board, veneer panel, mineral wool board, OSB, air space, or an own name with its own figures",
    heads: ["layer", "name", "materials", "layers"],
  }),
  thickness: optional(
    length("in", {
      says: "thickness; blank for a membrane or paint",
      min: 0,
      max: 120,
      usual: USUAL_IN,
      heads: ["thick", "t", "d"],
    }),
    undefined,
    "",
  ),
  R: optional(
    text({
      says: "R of the layer (13, R-13, RSI 2.3), R per inch (R 4.2/in) or conductivity (k 0.25, 0.036 W/mK; wood by G 0.5 M 12); wins over the built-in figure; none for no R, since a 0 is read as a blank",
      heads: ["r-value", "r value", "resistance"],
    }),
    undefined,
    "",
  ),
  vapor: optional(
    text({
      says: "resistance to vapor: perm of the whole layer (0.5), 2 perm-in, mu 100 or sd 2 m; dry cup where there are two",
      heads: ["vapour", "perm", "perms", "permeance", "vapor dry", "perm dry", "dry cup"],
    }),
    undefined,
    "",
  ),
  role: optional(
    text({
      says: "air barrier, or ventilated cavity (with its openings: ventilated cavity 0.5 in2/ft, over a roof ventilated cavity 1/300)",
      heads: ["use", "function", "note"],
    }),
    undefined,
    "",
  ),
  wet: optional(
    text({
      says: "wet-cup figure, where the vapor column holds the dry-cup one",
      heads: ["vapor wet", "perm wet", "wet cup"],
    }),
    undefined,
    "",
  ),
  k: optional(
    number({
      says: "conductivity, Btu in/(h ft2 F), in place of R",
      above: 0,
      max: 5000,
      usual: { min: 0.1, max: 20, ask: "is it in Btu in/(h ft2 F)?" },
      heads: ["k-value", "conductivity"],
    }),
    undefined,
    "",
  ),
  mu: optional(
    number({ says: "vapor resistance factor, in place of vapor", above: 0, max: 1e9, heads: ["vapor factor"] }),
    undefined,
    "",
  ),
  sd: optional(
    number({ says: "equivalent air layer in m, in place of vapor", above: 0, max: 1e6, heads: ["s_d", "sd-value"] }),
    undefined,
    "",
  ),
  weight: optional(
    text({
      says: "weight, for LOAD_DEAD and LIFT_WEIGHT; not used here",
      heads: ["weight psf", "psf", "dead load"],
    }),
    undefined,
    "",
  ),
};

/** How the three columns for figures under a heading of their own read as the texts of the R and vapor columns. */
function figure(word: string, value: number | undefined): string | undefined {
  return value === undefined ? undefined : `${word} ${value}`;
}

/** A stack of layers, one row each, inside to outside. */
export const layers = (says = "the layers, one row each, from inside to outside") =>
  table(columns, { says, maxRows: 100 });

/** What the readers want of a row. */
export function layerRows(rows: readonly RowOf<typeof columns>[]): readonly LayerRow[] {
  return rows.map((r) => ({
    row: r.row,
    material: r.material,
    thicknessIn: r.thickness,
    resistance: r.R ?? figure("k", r.k),
    vapor: r.vapor ?? figure("mu", r.mu) ?? figure("sd", r.sd),
    vaporWet: r.wet,
    role: r.role,
  }));
}
