import { type Assembly, assemble } from "../../../core/enclosure/layers/assembly.ts";
import type { LayerInput } from "../../../core/enclosure/layers/layer.ts";
import { NO_ROLE } from "../../../core/enclosure/layers/layer-role.ts";
import type { Tape } from "../../../core/kit/tape.ts";
import { readInsideFilm, readOutsideFilm } from "./film.ts";
import { type NamedMaterial, namedMaterial, unknownMaterial } from "./material.ts";
import { readResistance } from "./resistance.ts";
import { readRole } from "./role.ts";
import { readVapor } from "./vapor.ts";

/** One row of a range of layers, with its texts as they stand in the cells. */
export interface LayerRow {
  /** row of the range, from 1 */
  readonly row: number;
  readonly material: string;
  readonly thicknessIn: number | undefined;
  /** R of the layer, R per inch or conductivity: "3.5", "R 4.2/in", "k 0.25", "0.036 W/mK" */
  readonly resistance?: string | undefined;
  /** "0.5", "2 perm-in", "mu 100", "sd 2 m" */
  readonly vapor?: string | undefined;
  /** wet-cup figure, in the same forms */
  readonly vaporWet?: string | undefined;
  /** "air barrier", "ventilated cavity" */
  readonly role?: string | undefined;
}

/**
 * Understands the texts of a row. A thickness or an R in the name ("5/8 drywall", "R-13 batt") counts where its column is blank.
 * @throws BadInput naming the row: unknown material without figures of its own, unreadable figure
 */
export function readLayer(row: LayerRow, tape?: Tape): LayerInput {
  const where = `row ${row.row}`;
  const named = namedMaterial(row.material);
  const resistance = row.resistance === undefined ? undefined : readResistance(row.resistance, where);
  const vapor = row.vapor === undefined ? undefined : readVapor(row.vapor, row.vaporWet, where);
  // A sheet of the office's own, with a permeance and no thickness, is a membrane: it needs no R.
  const sheet = vapor !== undefined && (row.thicknessIn ?? 0) === 0;
  if (named === undefined && resistance === undefined && !sheet) throw unknownMaterial(row.material, where);
  const input: LayerInput = {
    row: row.row,
    name: row.material,
    thicknessIn: row.thicknessIn,
    material: named?.material,
    resistance,
    vapor,
    role: row.role === undefined ? NO_ROLE : readRole(row.role, where),
  };
  return named === undefined ? input : withName(input, named, tape);
}

function withName(input: LayerInput, { thicknessIn, rIp }: NamedMaterial, tape: Tape | undefined): LayerInput {
  if (rIp !== undefined && input.resistance === undefined) {
    tape?.assume(`${input.name} in row ${input.row}: R ${rIp}, as its name says`);
    return { ...input, resistance: { kind: "R", rIp } };
  }
  if (thicknessIn !== undefined && (input.thicknessIn ?? 0) === 0) {
    tape?.assume(`${input.name} in row ${input.row}: ${thicknessIn} in, as its name says`);
    return { ...input, thicknessIn };
  }
  return input;
}

/** A stack between its films, from cell texts. */
export function readAssembly(rows: readonly LayerRow[], inside: string, outside: string, tape?: Tape): Assembly {
  const film = readInsideFilm(inside);
  return assemble(
    rows.map((row) => readLayer(row, tape)),
    film,
    readOutsideFilm(outside, film),
    tape,
  );
}
