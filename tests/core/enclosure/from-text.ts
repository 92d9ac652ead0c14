import type { Layer } from "../../../src/core/enclosure/layers/layer.ts";
import { resolveLayer } from "../../../src/core/enclosure/layers/layer.ts";
import { layerPerm, layerR } from "../../../src/core/enclosure/layers/r-value.ts";
import type { IndoorAir, IndoorCondition } from "../../../src/core/enclosure/moisture/indoor.ts";
import type { Tape } from "../../../src/core/kit/tape.ts";
import { readInsideFilm, readOutsideFilm } from "../../../src/functions/enclosure/read/film.ts";
import { type LayerRow, readAssembly, readLayer } from "../../../src/functions/enclosure/read/layer.ts";

/** Walls written as a user writes them, for tests of the core: the readers turn the texts into the core's own figures. */

export type { LayerRow };
export const assemble = readAssembly;
export const insideFilm = readInsideFilm;
export const outsideFilm = readOutsideFilm;
export const rOf = (row: LayerRow, tape?: Tape): number => layerR(readLayer(row), tape);
export const permOf = (row: LayerRow, rhShare: number, tape?: Tape): number => layerPerm(readLayer(row), rhShare, tape);
export const layerOf = (row: LayerRow, tape?: Tape): Layer => resolveLayer(readLayer(row), "horizontal", tape);

/** Rows of given R in h ft2 F/Btu. */
export const ofR = (rs: readonly (number | string)[]): LayerRow[] =>
  rs.map((r, i) => ({ row: i + 1, material: `layer ${i + 1}`, thicknessIn: undefined, resistance: String(r) }));

export const CLASS_2_OF_2001: IndoorCondition | readonly IndoorAir[] = { kind: "class", level: 2, margin2001: true };
