// What the tests import as "vitest", so far as the tests of core, functions and published rows use it: it collects tests instead of running them.
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

/** The tests of the file that is being read. */
let collected = [];
let inside = [];

export function collect(read) {
  collected = [];
  inside = [];
  read();
  return collected;
}

const test = (name, ...rest) => {
  const run = rest.find((r) => typeof r === "function");
  collected.push({ name: [...inside, name].join(" > "), run });
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
