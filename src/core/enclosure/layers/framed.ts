import { BadInput, OutOfRange, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { W_MK_IN_BTU_IN } from "../air/si.ts";
import { type Assembly, assemble } from "./assembly.ts";
import type { Film } from "./films.ts";
import type { Layer, LayerInput } from "./layer.ts";
import { writeLayers } from "./r-value.ts";
import type { HeatPath } from "./u-factor.ts";

/** A framing row whose layer goes through unbroken. */
export const UNBROKEN = "same";
/** A row of the framing beside the layers. */
export type FramingInput = LayerInput | typeof UNBROKEN;

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
 * @param share part of the area that is framing, 0 where it is not known
 * @throws BadInput where the rows do not match or come without a share; OutOfRange for metal across the insulation
 */
export function framedWall(
  rows: readonly LayerInput[],
  framing: readonly FramingInput[],
  share: number,
  inside: Film,
  outside: Film,
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
  checkBoth(framing.length, share, tape);
  if (framing.length === 0) return { clear, paths: [{ name: "all", share: 1, rIp: clearR }] };
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

/** Rows without their share are refused; a share without rows, as a basis may hold it for other walls, is cautioned against. */
function checkBoth(rows: number, share: number, tape: Tape | undefined): void {
  if (rows > 0 && share === 0) {
    throw new BadInput(
      "Framing share is missing",
      "framing rows are given, and how much of the wall they take stands nowhere",
      "Give it, such as 12%, or a row Framing share; FRAMING_SHARE works it out",
    );
  }
  if (rows === 0 && share > 0) {
    tape?.caution(
      `The framing share of ${plain(share * 100)} % is not used: no framing rows say what it is made of, and U is that of the clear wall.`,
    );
  }
}

/** The rows of the framed part: the layers, with the framing rows in their place. */
function align(rows: readonly LayerInput[], framing: readonly FramingInput[]): readonly LayerInput[] {
  if (framing.length === rows.length) {
    return rows.map((row, i) => {
      const f = framing[i];
      return f === undefined || f === UNBROKEN ? row : beside(f, row);
    });
  }
  const only = framing[0];
  const thicknessIn = only === UNBROKEN ? undefined : only?.thicknessIn;
  const fits = rows.filter((r) => r.thicknessIn !== undefined && r.thicknessIn === thicknessIn);
  if (framing.length === 1 && only !== undefined && only !== UNBROKEN && fits.length === 1) {
    return rows.map((row) => (row === fits[0] ? beside(only, row) : row));
  }
  throw new BadInput(
    framing.length === 1
      ? `The framing row of ${plain(thicknessIn ?? 0)} in fits ${fits.length} layers by its thickness`
      : `The framing has ${framing.length} rows and the layers have ${rows.length}`,
    "framing rows lie beside the layers one by one, or one row replaces the only layer of the same thickness",
    `Give as many rows as the layers, with "${UNBROKEN}" where a layer goes on unbroken`,
  );
}

function beside(framing: LayerInput, row: LayerInput): LayerInput {
  return { ...framing, row: row.row, role: framing.role.kind === "none" ? row.role : framing.role };
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
