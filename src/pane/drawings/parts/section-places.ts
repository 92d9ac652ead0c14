/** Places of layers across a section, and of what is wet in it. */

export interface LayerBand {
  readonly from: number;
  readonly to: number;
  /** drawn wider than it is */
  readonly widened: boolean;
}

/** Layers side by side from left to right, to scale but for thin ones, which get the least width that can be seen. */
export function bands(thickness: readonly number[], left: number, right: number, least: number): readonly LayerBand[] {
  const wide = widths(thickness, right - left, least);
  let from = left;
  return thickness.map((_, i) => {
    const to = from + (wide[i]?.width ?? 0);
    const band = { from, to, widened: wide[i]?.widened === true };
    from = to;
    return band;
  });
}

interface Width {
  readonly width: number;
  readonly widened: boolean;
}

/** Each layer that falls under the least width leaves less for the rest, which may push others under it: until none does. */
function widths(thickness: readonly number[], room: number, least: number): readonly Width[] {
  const floor = Math.min(least, room / Math.max(1, thickness.length));
  const thin = new Set<number>();
  for (;;) {
    const rest = thickness.reduce((sum, t, i) => (thin.has(i) ? sum : sum + t), 0);
    const scale = rest > 1e-9 ? (room - thin.size * floor) / rest : 0;
    const before = thin.size;
    thickness.forEach((t, i) => {
      if (t * scale < floor) thin.add(i);
    });
    if (thin.size === before)
      return thickness.map((t, i) =>
        thin.has(i) ? { width: floor, widened: true } : { width: t * scale, widened: false },
      );
  }
}

export interface FacePlace {
  readonly x: number;
  readonly temperatureF: number;
  readonly dewPointF: number;
  readonly wet: "dry" | "water" | "ice";
}

export interface WetRun {
  readonly from: number;
  readonly to: number;
  readonly state: "water" | "ice";
}

/** Half of the least width of a wet run, so that a single wet face is seen. */
const HALF = 4;

/**
 * Where the section is below its dew point: from where the lines cross before the first wet face to where they cross after the last, at least
 * wide enough to be seen. It is ice where any of its faces is frozen.
 */
export function wetRuns(faces: readonly FacePlace[]): readonly WetRun[] {
  const runs: { from: number; to: number; state: "water" | "ice" }[] = [];
  let open = false;
  faces.forEach((face, i) => {
    if (face.wet === "dry") {
      open = false;
      return;
    }
    const before = faces[i - 1];
    const after = faces[i + 1];
    const from = Math.min(face.x - HALF, before === undefined ? face.x : crossing(before, face));
    const to = Math.max(face.x + HALF, after === undefined ? face.x : crossing(face, after));
    const last = runs.at(-1);
    if (open && last !== undefined) {
      last.to = to;
      if (face.wet === "ice") last.state = "ice";
    } else runs.push({ from, to, state: face.wet });
    open = true;
  });
  return runs;
}

/** Where temperature and dew point cross between two faces; at the wet one when they meet there. */
function crossing(a: FacePlace, b: FacePlace): number {
  const [da, db] = [a.temperatureF - a.dewPointF, b.temperatureF - b.dewPointF];
  const wetOne = a.wet === "dry" ? b : a;
  if (da === db || da > 0 === db > 0) return wetOne.x;
  return a.x + (da / (da - db)) * (b.x - a.x);
}
