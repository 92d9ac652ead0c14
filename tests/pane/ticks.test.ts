import { expect, test } from "vitest";
import type { Findings, FoundSentence } from "../../src/pane/cautions/findings.ts";
import { Ticks } from "../../src/pane/cautions/ticks.ts";
import type { Host } from "../../src/workbook/host.ts";

const found = (sentence: string, cells: number): FoundSentence => ({
  sentence,
  functions: ["X"],
  cells: Array.from({ length: cells }, (_, row) => ({ sheet: "A", row, column: 0 })),
});
const findings = (...cautions: FoundSentence[]): Findings => ({
  ...{ cells: 9, errors: [], mixed: [], inputCautions: cautions, standingCautions: [], assumptions: [], sources: [] },
});

function workbook() {
  const texts = new Map<string, string>();
  const host = {
    kept: async (key: string) => texts.get(key),
    keep: async (key: string, text: string) => void texts.set(key, text),
  } as unknown as Host;
  return { texts, host };
}

test("a tick is kept in the workbook and there when it is opened again", async () => {
  const { host } = workbook();
  const first = new Ticks(() => {});
  await first.read(host);
  await first.tick(found("The slope is low.", 3));
  const later = new Ticks(() => {});
  await later.read(host);
  expect(later.has(found("The slope is low.", 3))).toBe(true);
  expect(later.has(found("The slope is low.", 4))).toBe(false);
  await later.read(workbook().host);
  expect(later.has(found("The slope is low.", 3))).toBe(false);
});

test("it is dropped when its caution changes, so that it does not come back when the caution does", async () => {
  const { host, texts } = workbook();
  const ticks = new Ticks(() => {});
  await ticks.read(host);
  await ticks.tick(found("Low by 3.", 1));
  await ticks.tick(found("High.", 1));
  await ticks.drop(findings(found("Low by 4.", 1), found("High.", 1)));
  expect(ticks.has(found("Low by 3.", 1))).toBe(false);
  expect(ticks.has(found("High.", 1))).toBe(true);
  expect(texts.get("seen")?.split(" ")).toHaveLength(1);
});

test("a host that refuses keeps the tick in sight and says why", async () => {
  const said: string[] = [];
  const ticks = new Ticks((sentence) => said.push(sentence));
  const keep = async () => Promise.reject(new Error("Press Enter or Esc."));
  await ticks.read({ ...workbook().host, keep } as Host);
  await ticks.tick(found("High.", 1));
  expect(ticks.has(found("High.", 1))).toBe(true);
  expect(said).toEqual(["The tick is not kept in the workbook: Press Enter or Esc."]);
});
