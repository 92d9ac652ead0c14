import { expect, test } from "vitest";
import { asProperties, fromProperties } from "../../src/workbook/file/kept.ts";
import { isSeen, readSeen, seenText, stillThere, tick } from "../../src/workbook/seen.ts";

const low = { sentence: "The slope is low.", cells: 3 };
const high = { sentence: "The roof is high.", cells: 1 };

test("a tick lasts through its text, and a second one takes it away", () => {
  const seen = readSeen(seenText(tick(tick(new Map(), low), high)));
  expect([isSeen(seen, low), isSeen(seen, high)]).toEqual([true, true]);
  expect(isSeen(tick(seen, low), low)).toBe(false);
  expect(isSeen(tick(seen, low), high)).toBe(true);
});

test("a sentence that changed or came to more cells is no longer seen; one in fewer cells is", () => {
  const seen = tick(new Map(), low);
  expect(isSeen(seen, { ...low, sentence: "The slope is lower." })).toBe(false);
  expect(isSeen(seen, { ...low, cells: 4 })).toBe(false);
  expect(isSeen(seen, { ...low, cells: 2 })).toBe(true);
});

test("ticks of what is no longer there are dropped, so they do not come back with it", () => {
  const seen = stillThere(tick(tick(new Map(), low), high), [high]);
  expect(seen.size).toBe(1);
  expect(isSeen(seen, low)).toBe(false);
  expect(stillThere(seen, [{ ...high, cells: 2 }]).size).toBe(0);
});

test.each([undefined, "", "rubbish", "a:b c", "=1+1"])("what cannot be read is no tick: %s", (text) => {
  expect(readSeen(text).size).toBe(0);
});

test("texts travel in a file's properties, long ones in parts of 255 characters", () => {
  const kept = { seen: "x".repeat(600), other: "y", "with 2": "z" };
  const properties = asProperties(kept);
  expect(Object.values(properties).every((text) => text.length <= 255)).toBe(true);
  expect(Object.keys(properties)).toHaveLength(5);
  expect(fromProperties({ ...properties, Sillwork: "0.1.0", Author: "x" })).toEqual(kept);
  expect(fromProperties(undefined)).toEqual({});
});
