import { BadInput, OutOfRange, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { type Assembly, assemble } from "./assembly.ts";
import { W_MK_IN_BTU_IN } from "./border.ts";
import type { Layer, LayerRow } from "./layer.ts";
import { writeLayers } from "./r-value.ts";
import type { HeatPath } from "./u-factor.ts";

/** Word for a framing row whose layer goes through unbroken. */
const SAME = "same";
/** Conductivity in W/(m K) above which a part beside insulation makes the simple methods fail; ISO 6946 has them for no metal. */
const METAL_W_MK = 1;

/** A wall in parts side by side, and its clear part as layers. */
export interface FramedWall {
  readonly paths: readonly HeatPath[];
  readonly clear: Assembly;
}

/**
 * The parts of a wall that lie side by side: the clear layers and, where there is framing, the framing.
 * @param framing as many rows as the layers ("same" where a layer goes on unbroken), or one row that replaces the only layer of its thickness
 * @param share part of the area that is framing, 0 to below 1
 * @throws BadInput where the rows do not match; OutOfRange for metal across the insulation
 */
export function framedWall(
  rows: readonly LayerRow[],
  framing: readonly LayerRow[],
  share: number,
  inside: string,
  outside: string,
  tape?: Tape,
): FramedWall {
  const clear = assemble(rows, inside, outside, tape);
  writeLayers(clear, tape);
  if (clear.ventilated !== undefined) {
    throw new OutOfRange(
      "A cavity with a small opening lies among the layers",
      "a slightly ventilated cavity is interpolated for R_STACK, not part by part",
      "Call it a ventilated cavity, or leave its role blank to take it as still air",
    );
  }
  const clearR = [clear.inside.rIp, ...clear.layers.map((l) => l.rIp), clear.outside.rIp];
  if (share === 0 || framing.length === 0) return { clear, paths: [{ name: "all", share: 1, rIp: clearR }] };
  const replaced = align(rows, framing);
  const framed = assemble(replaced, inside, outside, tape);
  const framedR = [framed.inside.rIp, ...framed.layers.map((l) => l.rIp), framed.outside.rIp];
  framed.layers.forEach((l, i) => {
    refuseMetal(l, clear.layers[i]);
    const other = clear.layers[i];
    if (other !== undefined && other.rIp !== l.rIp) {
      tape?.step(`R_${l.row} framing`, `${l.name}: ${l.says}`, l.rIp, "h ft2 F/Btu", l.source);
    }
  });
  const paths = [
    { name: "clear", share: 1 - share, rIp: clearR },
    { name: "framing", share, rIp: framedR },
  ];
  return { clear, paths };
}

/** The rows of the framed part: the layers, with the framing rows in their place. */
function align(rows: readonly LayerRow[], framing: readonly LayerRow[]): readonly LayerRow[] {
  if (framing.length === rows.length) {
    return rows.map((row, i) => {
      const f = framing[i] as LayerRow;
      return f.material.trim().toLowerCase() === SAME ? row : { ...f, row: row.row, role: f.role ?? row.role };
    });
  }
  const only = framing[0];
  const fits = rows.filter((r) => r.thicknessIn !== undefined && r.thicknessIn === only?.thicknessIn);
  if (framing.length === 1 && only !== undefined && fits.length === 1) {
    return rows.map((row) => (row === fits[0] ? { ...only, row: row.row, role: only.role ?? row.role } : row));
  }
  throw new BadInput(
    framing.length === 1
      ? `The framing row of ${plain(only?.thicknessIn ?? 0)} in fits ${fits.length} layers by its thickness`
      : `The framing has ${framing.length} rows and the layers have ${rows.length}`,
    "framing rows lie beside the layers one by one, or one row replaces the only layer of the same thickness",
    `Give as many rows as the layers, with "${SAME}" where a layer goes on unbroken`,
  );
}

function refuseMetal(framing: Layer, clear: Layer | undefined): void {
  if (clear === undefined || clear.rIp === framing.rIp || framing.rIp === 0 || framing.thicknessIn === 0) return;
  const kWmK = (framing.thicknessIn / framing.rIp) * W_MK_IN_BTU_IN;
  if (kWmK <= METAL_W_MK) return;
  throw new OutOfRange(
    `The framing in row ${framing.row} conducts ${plain(kWmK)} W/(m K)`,
    "parallel path, isothermal planes and the combined method hold for framing of wood and the like, not for metal across insulation (ISO 6946:2017 6.7.2.1)",
    "Give the layer an effective R from a two-dimensional calculation or a code table",
  );
}
