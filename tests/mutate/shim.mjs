// What the tests import as "vitest", so far as the tests of core, functions and published rows use it: it collects tests instead of running them.
import { readFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { format } from "node:util";
import {
  ChaiStyleAssertions,
  chai,
  customMatchers,
  GLOBAL_EXPECT,
  getState,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  setState,
} from "@vitest/expect";

for (const plugin of [JestExtend, JestChaiExpect, ChaiStyleAssertions, JestAsymmetricMatchers]) chai.use(plugin);

const expect = (value, message) => {
  setState({ assertionCalls: getState(expect).assertionCalls + 1 }, expect);
  return chai.expect(value, message);
};
Object.assign(expect, chai.expect);
expect.getState = () => getState(expect);
expect.setState = (state) => setState(state, expect);
globalThis[GLOBAL_EXPECT] = expect;
setState(
  { assertionCalls: 0, isExpectingAssertions: false, expectedAssertionsNumber: null, environment: "node" },
  expect,
);
expect.extend = (matchers) => chai.expect.extend(expect, matchers);
expect.extend(customMatchers);

/** The tests of the file that is being read, and the test that runs. */
let collected = [];
let inside = [];
let file = "";
let current = { file: "", name: "" };

/** What is kept of the texts of a file's tests. */
const kept = new Map();
function keptOf({ file: of, name }) {
  if (!kept.has(of)) {
    const all = {};
    const text = readFileSync(join(dirname(of), "__snapshots__", `${basename(of)}.snap`), "utf8");
    new Function("exports", text)(all);
    kept.set(of, all);
  }
  // A text of several lines stands between two ends of line.
  return kept.get(of)[`${name} 1`]?.trim();
}

// For one text a test, never renewed.
chai.use((_, { addMethod }) => {
  addMethod(chai.Assertion.prototype, "toMatchSnapshot", function () {
    chai.expect(`"${this._obj}"`).toBe(keptOf(current));
  });
});

export function collect(read, of) {
  collected = [];
  inside = [];
  file = of;
  read();
  return collected;
}

const test = (name, ...rest) => {
  const run = rest.find((r) => typeof r === "function");
  const own = { file, name: [...inside, name].join(" > ") };
  collected.push({
    name: own.name,
    run: () => {
      current = own;
      return run();
    },
  });
};
const describe = (name, ...rest) => {
  inside.push(name);
  rest.find((r) => typeof r === "function")();
  inside.pop();
};
const each = (one) => (rows) => (name, run, timeout) =>
  rows.forEach((row, i) => {
    const list = Array.isArray(row) ? row : [row];
    one(
      format(name, ...list)
        .slice(0, 200)
        .concat(` #${i}`),
      () => run(...list),
      timeout,
    );
  });
test.each = each(test);
describe.each = each(describe);

export const vitest = { describe, expect, test, it: test };
