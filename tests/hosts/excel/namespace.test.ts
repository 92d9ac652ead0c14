import { afterEach, expect, test, vi } from "vitest";
import type { WorkbookTemplate } from "../../../src/templates/kit/template.ts";

afterEach(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

async function templatesUnder(namespace: string): Promise<readonly WorkbookTemplate[]> {
  vi.resetModules();
  vi.stubGlobal("SILLWORK_NAMESPACE", namespace);
  return (await import("../../../src/templates/index.ts")).templates;
}

const cells = (templates: readonly WorkbookTemplate[]) =>
  templates.flatMap(({ sheets }) => sheets.flatMap(({ rows }) => rows.flat()));

test("a trial copy puts templates in that call its own functions, with the same formats", async () => {
  const installed = cells(await templatesUnder("SILL"));
  const trial = cells(await templatesUnder("SILLTRY"));
  const calls = (list: typeof trial) => list.filter((cell) => /SILL(TRY)?\./.test(String(cell?.is)));
  expect(calls(trial).length).toBeGreaterThan(100);
  expect(calls(trial).filter((cell) => /\bSILL\./.test(String(cell?.is)))).toEqual([]);
  expect(trial.map((cell) => cell?.format)).toEqual(installed.map((cell) => cell?.format));
  const plain = trial.map((cell) => String(cell?.is).replaceAll("SILLTRY.", "SILL."));
  expect(plain).toEqual(installed.map((cell) => String(cell?.is)));
});
