/** Notes, while the published checks run, how far each answer lies from its row. Imported for what it does. */
import { mkdirSync, writeFileSync } from "node:fs";
import { basename } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect } from "vitest";
import type { Row } from "../published/rows.ts";

/** One comparison: the miss as a share of what it may be. */
interface Miss {
  readonly file: string;
  /** of the row in its file, from 1 */
  readonly row: number;
  readonly share: number;
}

const misses: Miss[] = [];
/** The row that the running test looked at last. */
let current: { readonly file: string; readonly row: number } | undefined;

(globalThis as { auditRow?: (row: Row, file: string, index: number) => Row }).auditRow = (row, file, index) =>
  new Proxy(row, {
    get(target, name) {
      if (typeof name === "string") current = { file, row: index + 1 };
      return Reflect.get(target, name) as string;
    },
  });

function note(share: number): void {
  if (current !== undefined && Number.isFinite(share)) misses.push({ ...current, share });
}

const said = (pass: boolean, text: string) => ({ pass, message: () => text });

expect.extend({
  toBeLessThanOrEqual(received: number, limit: number) {
    if (!this.isNot && limit > 0) note(received / limit);
    return said(received <= limit, `${received} is not at most ${limit}`);
  },
  toBeCloseTo(received: number, wanted: number, digits = 2) {
    const half = 10 ** -digits / 2;
    const off = Math.abs(received - wanted);
    if (!this.isNot) note(off / half);
    return said(off < half, `${received} is not ${wanted} to ${digits} digits`);
  },
  toBe(received: unknown, wanted: unknown) {
    const same = Object.is(received, wanted);
    if (!this.isNot && same && typeof wanted === "number") note(0);
    return said(same, `${String(received)} is not ${String(wanted)}`);
  },
});

const folder = fileURLToPath(new URL("../../.cache/audit/", import.meta.url));

afterAll(() => {
  const file = basename(expect.getState().testPath ?? "unknown", ".test.ts");
  mkdirSync(folder, { recursive: true });
  writeFileSync(`${folder}${file}.json`, JSON.stringify(misses));
});
