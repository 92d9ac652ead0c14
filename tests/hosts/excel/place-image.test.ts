import { expect, test } from "vitest";
import { placeImage } from "../../../src/hosts/excel/place-image.ts";
import type { PlacedImage } from "../../../src/workbook/host.ts";

interface FakeShape {
  name: string;
  left: number;
  top: number;
  width: number;
  height: number;
  altTextDescription: string;
  lockAspectRatio: boolean;
  png: string;
  delete(): void;
}

/** A worksheet's shapes and the sizes that are asked of it; changing one side of a locked shape changes the other, as in Excel. */
function fakeSheet() {
  const items: FakeShape[] = [];
  const addImage = (png: string): FakeShape => {
    const size = { width: 100, height: 100 };
    const shape: FakeShape = {
      name: `Picture ${items.length + 1}`,
      left: 0,
      top: 0,
      altTextDescription: "",
      lockAspectRatio: true,
      png,
      get width() {
        return size.width;
      },
      set width(value) {
        if (this.lockAspectRatio) size.height *= value / size.width;
        size.width = value;
      },
      get height() {
        return size.height;
      },
      set height(value) {
        if (this.lockAspectRatio) size.width *= value / size.height;
        size.height = value;
      },
      delete: () => items.splice(items.indexOf(shape), 1),
    };
    items.push(shape);
    return shape;
  };
  const context = { sync: async () => {} };
  const shapes = { items, addImage, load: () => {}, context };
  const sheet = {
    shapes,
    context,
    getCell: (row: number) => ({ top: row * 15, load: () => {} }),
    getUsedRange: () => ({ left: 0, width: 480, load: () => {} }),
  };
  return { items, sheet: sheet as unknown as Excel.Worksheet };
}

const image: PlacedImage = { name: "Wall", alt: "A wall.", png: "AAAA", width: 640, height: 400 };
const near = { sheet: "A", row: 4, column: 1 };

test("an image stands right of the cells, at the height of its cell, with its words and its size", async () => {
  const { items, sheet } = fakeSheet();
  await placeImage(sheet, near, image);
  const { delete: _, ...shape } = items[0] as FakeShape;
  expect(shape).toEqual({
    name: "Wall",
    left: 492,
    top: 60,
    width: 480,
    height: 300,
    altTextDescription: "A wall.",
    lockAspectRatio: true,
    png: "AAAA",
  });
});

test("placed again it takes the place of the one before, wherever that was moved; others stay", async () => {
  const { items, sheet } = fakeSheet();
  await placeImage(sheet, near, image);
  await placeImage(sheet, near, { ...image, name: "Other" });
  Object.assign(items[0] as FakeShape, { left: 30, top: 700 });
  await placeImage(sheet, near, { ...image, png: "BBBB" });
  expect(items.map(({ name, png, left, top }) => [name, png, left, top])).toEqual([
    ["Other", "AAAA", 492, 60],
    ["Wall", "BBBB", 30, 700],
  ]);
});

test("where Excel takes no image, the earlier one stays", async () => {
  const { items, sheet } = fakeSheet();
  await placeImage(sheet, near, image);
  sheet.shapes.addImage = () => {
    throw new Error("Excel refused");
  };
  await expect(placeImage(sheet, near, { ...image, png: "BBBB" })).rejects.toThrow("Excel refused");
  expect(items.map(({ png }) => png)).toEqual(["AAAA"]);
});
