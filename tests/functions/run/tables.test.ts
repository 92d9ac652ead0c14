import { afterEach, describe, expect, test, vi } from "vitest";
import type { CellFunction } from "../../../src/functions/declare/cell-function.ts";

const COUNTIES = "../../../src/core/enclosure/tables/counties.ts";
const PLACE = ["DeKalb", "AL"];
const NOT_LOADED = {
  ok: false,
  code: "#N/A",
  said: {
    what: "The table of county zones could not be loaded",
    why: expect.any(String),
    todo: expect.stringMatching(/^Check the connection/),
  },
  needs: "county zones",
};

/** The modules as a page has them that has loaded no table. */
async function freshPage() {
  vi.resetModules();
  const { functionNamed } = await import("../../../src/functions/registry.ts");
  const data = await import("../../../src/functions/run/tables-on-demand.ts");
  const calls = await import("../../../src/functions/run/invoke.ts");
  return { ...data, ...calls, zone: functionNamed("CLIMATE_ZONE") as CellFunction };
}

afterEach(() => {
  vi.doUnmock(COUNTIES);
  vi.useRealTimers();
});

describe("a table that is loaded when it is first needed", () => {
  test("the first call waits for it, later ones do not", async () => {
    const { answered, explained, zone } = await freshPage();
    const [first, second] = [answered(zone, PLACE), explained(zone, PLACE)];
    expect(first).toBeInstanceOf(Promise);
    expect(await first).toEqual({ ok: true, value: "3A" });
    expect((await second).outcome).toEqual({ ok: true, value: "3A" });
    expect((await second).steps.at(-1)?.value).toBe("3A");
    expect(answered(zone, PLACE)).toEqual({ ok: true, value: "3A" });
  });

  test("a wrong argument is refused without it", async () => {
    const { answered, zone } = await freshPage();
    expect(answered(zone, [null, "AL"])).toMatchObject({ ok: false, code: "#VALUE!" });
  });

  test("nobody takes its absence for a fault of the program or of the inputs", async () => {
    const { invoke, explain, zone } = await freshPage();
    expect(invoke(zone, PLACE)).toEqual(NOT_LOADED);
    expect(explain(zone, PLACE).outcome).toEqual(NOT_LOADED);
  });

  test("where it cannot be loaded the cell says so, at once while it rests, and a later call tries again", async () => {
    vi.useFakeTimers();
    vi.doMock(COUNTIES, () => {
      throw new Error("no connection");
    });
    const { answered, zone } = await freshPage();
    expect(await answered(zone, PLACE)).toEqual(NOT_LOADED);
    expect(answered(zone, PLACE)).toEqual(NOT_LOADED);
    vi.doUnmock(COUNTIES);
    await vi.advanceTimersByTimeAsync(6000);
    expect(await answered(zone, PLACE)).toEqual({ ok: true, value: "3A" });
  });
});
