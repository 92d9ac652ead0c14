import { pack2D } from "binpackingjs/2d";
import { packer } from "guillotine-packer";
import { MaxRectsPacker } from "maxrects-packer";
import { nestSheets } from "../../src/core/cutting/sheets/nest.ts";
import { type ClassInstance, classProblem } from "./cutting-classes.ts";
import { flags, now, search } from "./cutting-report.ts";

interface Size {
  width: number;
  height: number;
}

type Count = (bin: Size, items: Size[], turns: boolean) => number;

/** General packing libraries with their usual settings, items by area, the largest first; their layouts are counted, not checked. */
const peers: Record<string, Count> = {
  "guillotine-packer": (bin, items, turns) =>
    packer({ binWidth: bin.width, binHeight: bin.height, items }, { allowRotation: turns })!.length,
  binpackingjs: (bin, items, turns) =>
    pack2D({
      bins: items.map(() => ({ ...bin })),
      boxes: items.map((i) => ({ ...i, constrainRotation: !turns })),
    }).packedBins.filter((b) => b.boxes.length > 0).length,
  "maxrects-packer": (bin, items, turns) => {
    const p = new MaxRectsPacker(bin.width, bin.height, 0, {
      smart: false,
      pot: false,
      square: false,
      allowRotation: turns,
    });
    p.addArray(items.map((i) => ({ ...i })) as never[]);
    return p.bins.length;
  },
};

/** Sheets and processor time of a library beside ours. */
export interface Beside {
  readonly turns: boolean;
  readonly name: string;
  readonly sheets: number;
  readonly toOurs: number;
  readonly timeToOurs: number;
}

/** Sheets and time of every n-th class instance beside general packing libraries, in the same run on the same machine. */
export function besidePeers(file: unknown, every = flags.every): readonly Beside[] {
  const { instances } = file as { instances: ClassInstance[] };
  const all: Beside[] = [];
  for (const turns of [false, true]) {
    const sums = new Map<string, { sheets: number; ms: number; worst: number }>();
    const add = (name: string, count: () => number): void => {
      const start = now();
      const sheets = count();
      const ms = now() - start;
      const s = sums.get(name) ?? { sheets: 0, ms: 0, worst: 0 };
      sums.set(name, { sheets: s.sheets + sheets, ms: s.ms + ms, worst: Math.max(s.worst, ms) });
    };
    instances.forEach((inst, i) => {
      if (i % every !== flags.offset) return;
      const items = inst.items
        .flatMap(([width, height, quantity]) => Array.from({ length: quantity }, () => ({ width, height })))
        .sort((a, b) => b.width * b.height - a.width * a.height);
      for (const [name, count] of Object.entries(peers)) {
        add(name, () => count({ width: inst.W, height: inst.H }, items, turns));
      }
      const { parts, stocks, options } = classProblem(inst, turns);
      add("ours", () => nestSheets(parts, stocks, { ...options, ...search() }).count);
    });
    const ours = sums.get("ours")!;
    console.log(`\n${turns ? "turning allowed" : "fixed orientation"}: beside general packing libraries`);
    console.log("library              sheets  to ours   cpu ms of all  to ours  max ms");
    for (const [name, s] of sums) {
      if (name !== "ours") {
        all.push({ turns, name, sheets: s.sheets, toOurs: s.sheets / ours.sheets, timeToOurs: s.ms / ours.ms });
      }
      console.log(
        name.padEnd(18) +
          String(s.sheets).padStart(9) +
          (s.sheets / ours.sheets).toFixed(4).padStart(9) +
          s.ms.toFixed(0).padStart(16) +
          (s.ms / ours.ms).toFixed(3).padStart(9) +
          s.worst.toFixed(0).padStart(8),
      );
    }
  }
  return all;
}
