import { nestSheets } from "../../src/core/cutting/sheets/nest.ts";
import { faults } from "../core/cutting/verify.ts";
import { flags, type Row, report, search, timed } from "./cutting-report.ts";

export interface ClassInstance {
  id: string;
  W: number;
  H: number;
  items: [number, number, number][];
  best: { of: number; rf: number; og3: number; rg3: number };
}

/** An instance as a problem for the engine: sizes as inches, no kerf. */
export const classProblem = (inst: ClassInstance, turns: boolean) => ({
  parts: inst.items.map(([lengthIn, widthIn, quantity], k) => ({ id: `p${k}`, lengthIn, widthIn, quantity, turns })),
  stocks: [{ id: "s", lengthIn: inst.W, widthIn: inst.H, cost: 1, quantity: null }],
  options: { kerfIn: 0, trimIn: 0, goal: "sheets" as const },
});

/** The 500 instances of Berkey, Wang 1987 and Martello, Vigo 1998. */
export function classes(file: unknown, turns: boolean): readonly Row[] {
  const { instances } = file as { instances: ClassInstance[] };
  const rows: Row[] = [];
  instances.forEach((inst, i) => {
    if (
      i % flags.every !== flags.offset ||
      (flags.only !== "" &&
        !flags.only.split(",").some((o) => inst.id === o || (o.length < 4 && inst.id.startsWith(o))))
    )
      return;
    const problem = classProblem(inst, turns);
    const { parts, stocks } = problem;
    const options = { ...problem.options, ...search() };
    const { found: nesting, ms } = timed(() => nestSheets(parts, stocks, options));
    rows.push({
      group: inst.id.slice(0, 3),
      id: inst.id,
      best: turns ? Math.min(inst.best.rg3, Number.POSITIVE_INFINITY) : inst.best.og3,
      ours: nesting.count,
      bound: nesting.bound,
      proven: nesting.proven,
      ms,
      cutShort: nesting.cutShort,
      wrong: faults(nesting, parts, stocks, options),
    });
  });
  return report(
    `${turns ? "turning allowed" : "fixed orientation"}: 500 class instances, best known 3-stage guillotine`,
    rows,
  );
}
