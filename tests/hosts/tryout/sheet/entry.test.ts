import { expect, test } from "vitest";
import { staysText } from "../../../../src/hosts/tryout/sheet/entry.ts";

test.each(["12'6", "12'-6 1/2\"", "9″", "1/2", "3 1/2", "3-1/2", "6:12", "6.5 : 12", "7-16", "7-22", "-1/2", "12’6”"])(
  "%s stays text",
  (typed) => expect(staysText(typed)).toBe(true),
);

test.each([
  "12",
  "-3.5",
  "40%",
  "$1,200",
  "2026-11-25",
  "11/25/2026",
  "6:12 AM",
  "6:12:30",
  "wall",
  "1e-3",
  "=1/2",
  "",
])("%s is left to the spreadsheet", (typed) => expect(staysText(typed)).toBe(false));
