import { expect, test } from "vitest";
import type { ExcelFunction } from "../../../src/hosts/excel/functions.ts";
import { associateLate } from "../../../src/hosts/excel/late-functions.ts";

function known(load: () => Promise<ReadonlyMap<string, ExcelFunction>>) {
  const functions = new Map<string, ExcelFunction>();
  associateLate({ associate: (id, fn) => functions.set(id, fn) }, ["ADD", "WHERE"], load, (s) => new Error(s));
  const call = (id: string, ...given: unknown[]) => (functions.get(id) as ExcelFunction)(...given);
  return { ids: [...functions.keys()], call };
}

const CALCULATIONS: ReadonlyMap<string, ExcelFunction> = new Map<string, ExcelFunction>([
  ["ADD", (a, b) => Number(a) + Number(b)],
  ["WHERE", (...given) => String((given.at(-1) as { address: string }).address)],
]);

test("every id is there before the calculations; an early call waits for them, later ones do not", async () => {
  let loads = 0;
  const { ids, call } = known(async () => {
    loads++;
    return CALCULATIONS;
  });
  expect(ids).toEqual(["ADD", "WHERE"]);
  const early = call("ADD", 1, 2);
  expect(early).toBeInstanceOf(Promise);
  expect(await early).toBe(3);
  expect(call("ADD", 2, 3)).toBe(5);
  expect(loads).toBe(1);
});

test("the address is read when the call comes, since the host may take the object back", async () => {
  const { call } = known(async () => CALCULATIONS);
  const invocation = { address: "Sheet1!B2" };
  const early = call("WHERE", invocation);
  invocation.address = "gone";
  expect(await early).toBe("Sheet1!B2");
});

test("where they cannot be loaded the cell says so, and the next call tries again", async () => {
  let tries = 0;
  const { call } = known(async () => {
    if (++tries < 3) throw new Error("offline");
    return CALCULATIONS;
  });
  await expect(call("ADD", 1, 1)).rejects.toThrow(/could not be loaded.*Check the connection/);
  await expect(call("ADD", 1, 1)).rejects.toThrow(/could not be loaded/);
  expect(await call("ADD", 1, 1)).toBe(2);
});
