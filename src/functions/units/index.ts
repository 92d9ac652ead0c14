import { OutOfRange, within } from "../../core/kit/refusal.ts";
import { formatLength, INCHES_IN, parseLength } from "../../core/units/length.ts";
import { convert, fromInches } from "../../core/units/quantity.ts";
import { slopeAs } from "../../core/units/slope.ts";
import { quantityOf, textOf } from "../declare/cell-function.ts";
import { dateForLength, isDate } from "../declare/dates.ts";
import { optional } from "../declare/param.ts";
import { length, number, slope, whole } from "../declare/scalar.ts";
import { choice, text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";

const FOOT = "NIST SP 811 (2008) Appendix B.8: 1 ft = 0.3048 m exactly, 1 in = 25.4 mm exactly";

/** As long as any length that is written here. */
const LONGEST_FT = 1e6;

/** Refuses a bare whole number that is a date's: a length that somebody typed as a fraction. */
function refuseDate(text: string, unit: string): void {
  const bare = /^\d+$/.test(text) ? Number(text) : 0;
  if (isDate(bare)) throw dateForLength("The text", bare, unit);
}

const lengthFunction = familyFunction({
  name: "LENGTH",
  summary: "A length written in feet and inches, or in any unit of length, as a number.",
  params: {
    text: text({ says: "the length as text, or a number of the unit" }),
    unit: optional(
      choice(["ft", "in", "yd", "m", "cm", "mm"], { says: "unit of the result" }),
      "ft",
      "the result is in ft",
    ),
  },
  returns: quantityOf("", "the length in the unit asked for, ft unless told"),
  sources: [FOOT],
  example: {
    args: { text: "12'-6 1/2\"" },
    gives: 12.541666666666666,
    within: 1e-12,
    source: "exact arithmetic: 12 + 6.5/12",
  },
  refuses: [
    { args: { text: "tall" }, says: "is not a length" },
    { args: { unit: "tall" }, says: "it must be one of ft, in, yd, m, cm, mm" },
    { args: { text: null }, says: "Text is missing" },
  ],
  notFor: "Areas, weights and pressures have units of their own: CONVERT changes those.",
  run({ text, unit }, tape) {
    const inches = parseLength(text, unit);
    refuseDate(text, unit);
    within("The length", fromInches(inches, "ft"), -LONGEST_FT, LONGEST_FT, "ft", "longer is no building");
    tape?.step("inches", text, inches, "in", FOOT);
    const value = fromInches(inches, unit);
    tape?.step("length", `inches / ${INCHES_IN[unit]}`, value, unit, FOOT);
    return value;
  },
});

const ftin = familyFunction({
  name: "FTIN",
  summary: "A length as feet, inches and a fraction of an inch.",
  params: {
    length: length("ft", {
      says: "the length",
      min: -1e6,
      max: 1e6,
      usual: { min: -5000, max: 5000, ask: "is it in feet?" },
    }),
    denominator: optional(
      whole({ says: "finest fraction of an inch, as its denominator", min: 1, max: 128 }),
      16,
      "rounded to 1/16 in",
    ),
  },
  returns: textOf("feet and inches, such as 12'-6 1/2\""),
  sources: [FOOT],
  example: { args: { length: 12.5416666 }, gives: "12'-6 1/2\"", within: 0, source: "exact arithmetic" },
  refuses: [
    { args: { length: "tall" }, says: "is not a length" },
    { args: { length: null }, says: "Length is missing" },
  ],
  notFor: "A length that a formula goes on calculating with stays a number; feet and inches are a text for people.",
  run({ length, denominator }, tape) {
    const inches = length * INCHES_IN.ft;
    tape?.step("inches", "12 x length", inches, "in", FOOT);
    const value = formatLength(inches, denominator);
    tape?.step("length", `rounded to 1/${denominator} in, half away from zero`, value, "", FOOT);
    return value;
  },
});

const convertFunction = familyFunction({
  name: "CONVERT",
  summary:
    "A value in another unit: lengths, areas, loads, pressures, heat, temperatures, R, U, perm, board feet, squares.",
  params: {
    value: number({ says: "the value to convert", min: -1e15, max: 1e15 }),
    from: text({ says: "its unit, such as psf, plf, ksi, perm, R, therm, oz/ft2, board foot, square, F" }),
    to: text({ says: "the unit wanted" }),
  },
  returns: quantityOf("", "the value in the unit wanted"),
  sources: [
    "NIST SP 811 (2008) Appendix B.8 and B.9; perm from grain, hour, square foot and inch of mercury at 0 C",
    "A therm is 100,000 Btu (International Table) and a year 365 days (common practice, no source)",
  ],
  assumptions: ["A pound is taken as a mass or as a force under standard gravity, whichever the other unit is."],
  example: {
    args: { value: 1, from: "psf", to: "Pa" },
    gives: 47.88026,
    within: 0.000005,
    source: "NIST SP 811 (2008) Appendix B.8, pound-force per square foot",
  },
  refuses: [
    { args: { to: "ft" }, says: "does not convert" },
    { args: { to: null }, says: "To is missing" },
    { args: { to: "furlongish" }, says: "units are written as the trade writes them" },
  ],
  notFor: "A temperature difference is no temperature reading: 10 C warmer is 18 F warmer, not 50 F.",
  run({ value, from, to }, tape) {
    const result = convert(value, from, to);
    if (!Number.isFinite(result)) {
      throw new OutOfRange(`${value} ${from} is too large in ${to}`, "the number cannot be held", "Use a larger unit");
    }
    tape?.step("result", `${value} ${from}`, result, to, "NIST SP 811 (2008) B.8, B.9");
    return result;
  },
});

const slopeFunction = familyFunction({
  name: "SLOPE",
  summary:
    "A roof slope in degrees, as rise over run, or as the rake factor (length along the slope over level length).",
  params: {
    slope: slope({ says: "the slope as 6:12, 6/12, 50% or 26.57 deg" }),
    as: optional(
      choice(["degrees", "ratio", "rake"], {
        says: "form of the result",
        also: { deg: "degrees", "rake factor": "rake", factor: "rake" },
        means: {
          degrees: "angle from level",
          ratio: "rise over run",
          rake: "length along the slope over level length",
        },
      }),
      "degrees",
      "the result is in degrees",
    ),
  },
  returns: quantityOf("", "degrees, rise over run, or the rake factor"),
  sources: ["Plane trigonometry"],
  example: { args: { slope: "6:12" }, gives: 26.56505, within: 0.000005, source: "exact arithmetic: atan(0.5)" },
  refuses: [
    { args: { slope: 1 }, says: "it may be degrees, a rise in 12 or a share, and a slope typed as 6:12" },
    { args: { as: "tall" }, says: "it must be one of degrees, ratio, rake" },
    { args: { slope: "95 deg" }, says: "a slope lies from 0 (level) to below 90 degrees" },
  ],
  notFor:
    "The ridge, hip and valley of a roof have slopes of their own; a hip runs flatter than the roofs that meet in it.",
  run: ({ slope, as }, tape) => slopeAs(slope, as, tape),
});

export const unitFunctions = [lengthFunction, ftin, convertFunction, slopeFunction] as const;
