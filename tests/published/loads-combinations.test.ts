import { expect, test } from "vitest";
import type { Edition } from "../../src/core/kit/edition.ts";
import { combine } from "../../src/core/loads/combine.ts";
import type { LoadSymbol, Method } from "../../src/core/loads/tables/combinations.ts";
import { rows } from "./rows.ts";

/** Terms of a printed combination, by load; one for each choice of its "or"s. Tornado is left out. */
type Form = Readonly<Partial<Record<string, number>>>;

/** Reads "1.2D+1.6(Lr or S or R)+(f1 L or 0.5W)". */
function forms(text: string): Form[] {
  const choices = split(
    text
      .replace(/\s*or\s*/g, "|")
      .replace(/f1 ?/g, "0.5")
      .replace(/f2 ?/g, "0.2"),
    "+",
  ).map(term);
  return choices.reduce<Form[]>((sums, options) => sums.flatMap((s) => options.map((o) => add(s, o))), [{}]);
}

function term(text: string): Form[] {
  const bracket = /^([\d.]*)\((.*)\)$/.exec(text);
  if (bracket !== null) {
    const factor = bracket[1] === "" ? 1 : Number(bracket[1]);
    return split(bracket[2] ?? "", "|")
      .flatMap(term)
      .map((form) => Object.fromEntries(Object.entries(form).map(([load, f]) => [load, factor * (f ?? 0)])));
  }
  const [, factor = "", load = ""] = /^([\d.]*) ?([A-Za-z]+)$/.exec(text) ?? [];
  return [{ [load]: factor === "" ? 1 : Number(factor) }];
}

function split(text: string, at: string): string[] {
  const parts = [""];
  let depth = 0;
  for (const c of text) {
    if (c === "(") depth++;
    if (c === ")") depth--;
    if (c === at && depth === 0) parts.push("");
    else parts[parts.length - 1] += c;
  }
  return parts;
}

function add(a: Form, b: Form): Form {
  const sum: Record<string, number> = { ...a } as Record<string, number>;
  for (const [load, f] of Object.entries(b)) sum[load] = (sum[load] ?? 0) + (f ?? 0);
  return sum;
}

/** Loads whose every combination has a value of its own. */
const LOADS: Readonly<Record<LoadSymbol, number>> = {
  D: 1.01,
  L: 10.3,
  Lr: 107,
  S: 1009,
  W: 10007,
  E: 100003,
  R: 1000033,
  H: 0,
};
const sumOf = (form: Form) =>
  Object.entries(form).reduce((sum, [load, f]) => sum + (f ?? 0) * LOADS[load as LoadSymbol], 0);

test.each(rows("loads-combinations.csv").map((r) => [`${r.method} ${r.edition} ${r.printed}`, r] as const))(
  "%s",
  (_n, row) => {
    const printed = forms(row.printed ?? "").filter((f) => !("WT" in f));
    expect(printed.length).toBeGreaterThan(0);
    for (const edition of (row.edition ?? "").split(" ") as Edition[]) {
      const f1 = row.edition === "7-22" ? 1 : 0.5;
      const loads = (Object.keys(LOADS) as LoadSymbol[]).map((load) => ({ load, value: LOADS[load] }));
      const method = row.method as Method;
      const ours = combine({ loads, method, liveFactor: f1, windLevel: "strength", edition }).all.map((c) => c.value);
      for (const form of printed) {
        const want = sumOf(form);
        expect(
          ours.some((value) => Math.abs(value - want) < 1e-6),
          `${JSON.stringify(form)} in ${edition}`,
        ).toBe(true);
      }
    }
  },
);
