import { describe, expect, test } from "vitest";
import { find } from "../../src/functions/find/find.ts";
import { FILLERS, TRADE_WORDS } from "../../src/functions/find/trade-words.ts";
import { registry } from "../../src/functions/registry.ts";

const names = (query: string) => find(registry, query).map(({ name }) => name);

describe("what an estimator asks for", () => {
  test.each([
    ["drywall", "LINING"],
    ["nails", "FASTENER_WITHDRAWAL"],
    ["how many sheets", "SHEETS_COUNT"],
    ["how many sheets do I need?", "SHEETS_NEEDED"],
    ["caulk", "BEAD"],
    ["house wrap", "ROLLS"],
    ["tie down", "HOLDDOWN_SCHEDULE"],
    ["crane", "LIFT_CRANE"],
    ["condensation", "DEW_PROFILE"],
    ["stud", "WALL_COLUMNS"],
    ["=SILL.WIND_KZ(", "WIND_KZ"],
    ["snow", "LOAD_SNOW"],
    ["window bucks", "BUCKS"],
    ["mold", "TEMPERATURE_FACTOR"],
    ["waste", "SHEETS_LAYOUT"],
    ["pitch", "SLOPE"],
    ["profit", "COST_MARGIN"],
  ])("%s is found among the first", (query, name) => expect(names(query).slice(0, 8)).toContain(name));

  test("every word of the trade finds something, and none is a word that says nothing", () => {
    for (const word of Object.keys(TRADE_WORDS)) {
      expect(names(word).length, word).toBeGreaterThan(0);
      expect(FILLERS.has(word), word).toBe(false);
    }
  });

  test("every function is found by its own name first", () => {
    for (const { name } of registry) expect(names(name)[0], name).toBe(name);
  });
});
