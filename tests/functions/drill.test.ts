import { describe, expect, test } from "vitest";
import { sentence } from "../../src/core/kit/refusal.ts";
import { positional, refusedArguments } from "../../src/functions/declare/formula.ts";
import { functionNamed, registry } from "../../src/functions/registry.ts";
import { explain, invoke } from "../../src/functions/run/invoke.ts";
import { basisRows } from "../../src/pane/cautions/basis-sheet.ts";
import { Gathering } from "../../src/pane/cautions/findings.ts";
import { Survey } from "../../src/pane/cautions/survey.ts";
import { ended } from "../../src/pane/parts/ended.ts";
import { result, workingBody } from "../../src/pane/working/working-parts.ts";
import { Ledger } from "../../src/workbook/ledger.ts";
import { markup } from "../pane/drawings/markup.ts";
import { DRILLS, type Drill } from "./drills.ts";

const FAMILIES = ["Wind", "Loads", "Wood members", "Fasteners and furring", "Anchorage", "Lifting and hauling"];
const MOISTURE = /^(DEW_|TEMPERATURE_FACTOR|PERM_LAYER|RETARDER_|ROOF_UNVENTED)/;

/** The call with the mistake in it. */
function planted({ fn: name, args, says }: Drill) {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`no ${name}`);
  return { fn, raw: positional(fn, refusedArguments(fn, { args, says })) };
}

/** The worksheet of cautions of a workbook that holds this one cell. */
function basisSheet(drill: Drill): readonly (readonly unknown[])[] {
  const { fn, raw } = planted(drill);
  const ledger = new Ledger();
  ledger.record({ sheet: "Sheet1", row: 1, column: 1 }, { id: fn.id, args: raw, outcome: invoke(fn, raw) });
  const survey = new Survey(() => registry);
  survey.start(ledger.entries());
  survey.work(() => true);
  const gathering = new Gathering();
  for (const cell of survey.cells) gathering.add(cell);
  return basisRows({
    found: gathering.findings(),
    cells: survey.cells,
    looked: undefined,
    basis: undefined,
    named: [],
  });
}

describe.each(DRILLS.map((d) => [`${d.fn}: ${d.mistake}`, d] as const))("%s", (_, drill) => {
  const { fn, raw } = planted(drill);
  const { outcome, cautions } = explain(fn, raw);

  test("the cell refuses, or the pane cautions, in words about the mistake", () => {
    // What stands on every use of a function is no word about this mistake.
    const about = outcome.ok ? cautions.filter((c) => !fn.cautions.includes(c)).join(" ") : sentence(outcome.said);
    expect(about).toContain(drill.says);
    expect(drill.says).not.toBe("");
  });

  test("the pane shows it, above what holds for every use", () => {
    const working = explain(fn, raw);
    const shown = outcome.ok
      ? markup(workingBody(fn, working, raw, () => undefined))
      : markup(result(fn, outcome, working));
    expect(shown).toMatch(outcome.ok ? /sw-caution/ : /sw-error/);
    const [part] = outcome.ok
      ? cautions.filter((c) => c.includes(drill.says))
      : Object.values(outcome.said).filter((p) => p.includes(drill.says));
    // A part of a refusal begins a sentence of its own there.
    expect(shown).toContain(markup(outcome.ok ? part : ended(part ?? outcome.said.what)));
  });

  test("the basis sheet says it, with the cell", () => {
    const rows = basisSheet(drill).filter((row) => String(row[1]).includes(drill.says));
    expect(rows[0]?.[0]).toMatch(outcome.ok ? /^Caution for these cells$/ : /^Error #/);
    expect(rows[0]?.[3]).toBe("Sheet1!B2");
  });
});

test("each structural, moisture and lifting function has a drill", () => {
  const drilled = new Set(DRILLS.map((d) => d.fn));
  const all = registry.filter((fn) => FAMILIES.includes(fn.family) || MOISTURE.test(fn.name));
  expect(all.filter((fn) => !drilled.has(fn.name)).map((fn) => fn.name)).toEqual([]);
});
