import { expect, test } from "vitest";
import type { CellFunction } from "../../src/functions/declare/cell-function.ts";
import { FAMILY_FOLDERS, type FamilyFolder, functionNames, idOf } from "../../src/functions/declare/names.ts";
import { Families, listOf } from "../../src/functions/families.ts";
import { registry } from "../../src/functions/registry.ts";

test("the names that a page knows first are those of the declarations, in their order", () => {
  expect(functionNames).toEqual(registry.map((fn) => fn.name));
  expect(functionNames.map(idOf)).toEqual(registry.map((fn) => fn.id));
});

test("loaded family by family they are the registry, each in its folder", async () => {
  const families = new Families();
  expect([families.loaded, families.whole]).toEqual([[], false]);
  const wind = await families.load("wind");
  expect(families.loaded).toEqual(wind);
  expect(wind.map((fn) => fn.name)).toContain("WIND_KZ");
  await families.loadAll();
  expect(families.whole).toBe(true);
  expect(families.loaded).toEqual(registry);
});

test("a family is fetched once; one that could not be fetched is fetched again when it is asked for again", async () => {
  const fetched: string[] = [];
  const loader = (family: FamilyFolder) => async (): Promise<readonly CellFunction[]> => {
    fetched.push(family);
    if (family === "wind" && fetched.filter((f) => f === "wind").length === 1) throw new Error("no network");
    return [];
  };
  const loaders = Object.fromEntries(FAMILY_FOLDERS.map((family) => [family, loader(family)]));
  const families = new Families(loaders as ConstructorParameters<typeof Families>[0]);
  await expect(families.loadAll()).rejects.toThrow("no network");
  expect(families.whole).toBe(false);
  await families.loadAll();
  expect(families.whole).toBe(true);
  expect(fetched.filter((f) => f === "wind")).toHaveLength(2);
  expect(fetched.filter((f) => f === "wood")).toHaveLength(1);
});

test("functions that are there from the start need no loading", async () => {
  const list = listOf(registry);
  await list.loadAll();
  expect([list.whole, list.loaded, list.names]).toEqual([true, registry, functionNames]);
});
