import { BadInput } from "../../core/kit/refusal.ts";

/** Days since 1900 from the year 2000 to 2100: what a spreadsheet makes of `1/2` and of `12-6`. */
const FIRST = 36526;
const LAST = 73050;

/** Whether a number may be a date that a spreadsheet made of a fraction or of feet and inches. */
export function isDate(value: number): boolean {
  return Number.isInteger(value) && value >= FIRST && value <= LAST;
}

/** A length that is likely a date: how to write it. */
export function dateForLength(at: string, value: number, unit: string): BadInput {
  return new BadInput(
    `${at} is ${value}`,
    "the spreadsheet makes such a number of what it takes for a date, 1/2 and 12-6 among them",
    `Type the length as text, with ' in front: '1/2" or '12-6; or give its unit: ${value} ${unit}`,
  );
}
