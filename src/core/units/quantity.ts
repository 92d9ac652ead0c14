import { create, createUnitDependencies, unitDependencies } from "mathjs";
import { BadInput } from "../kit/refusal.ts";
import { INCHES_IN, lengthUnit } from "./length.ts";

/**
 * Quantities other than lengths. The reading and converting is the units library's; this file adds the trade's units, each from its
 * definition, and the words that builders write for units.
 */
const math = create({ ...unitDependencies, ...createUnitDependencies });

/** Definitions: NIST SP 811 (2008) B.8 unless said otherwise. */
const TRADE_UNITS: Readonly<Record<string, string>> = {
  mph: "1 mile/hour",
  // Built on the exact pound-force; the library's own kip, psi and acre are rounded.
  kip: "1000 lbf",
  psi: "1 lbf/inch^2",
  acre: "43560 ft^2",
  knot: "1852 m/hour",
  psf: "1 lbf/ft^2",
  ksf: "1000 lbf/ft^2",
  ksi: "1000 lbf/inch^2",
  plf: "1 lbf/ft",
  klf: "1000 lbf/ft",
  pcf: "1 lbm/ft^3",
  pli: "1 lbf/inch",
  inHg: "3386.389 Pa", // mercury at 0 C
  perm: "1 grain/(hour ft^2 inHg)",
  perminch: "1 grain inch/(hour ft^2 inHg)",
  ngperm: "1e-12 kg/(s m^2 Pa)",
  // A Fahrenheit difference is 5/9 K; the library's own degF carries the offset of a reading.
  Rip: "0.5555555555555556 hour ft^2 K/BTU",
  Rsi: "1 m^2 K/W",
  Uip: "1.8 BTU/(hour ft^2 K)",
  Usi: "1 W/(m^2 K)",
  condInch: "1.8 BTU inch/(hour ft^2 K)", // conductivity by the inch
  condFoot: "1.8 BTU/(hour ft K)",
  condSi: "1 W/(m K)",
  Fdiff: "0.5555555555555556 K",
  boardfoot: "144 inch^3",
  square: "100 ft^2", // roofing and siding, common practice
  cfm: "1 ft^3/minute",
  btuh: "1 BTU/hour",
};
for (const [name, definition] of Object.entries(TRADE_UNITS)) math.createUnit(name, { definition }, { override: true });

/** What people write -> what the library reads. Keys without spaces, dots, degree signs, in lower case. */
const WORDS: Readonly<Record<string, string>> = {
  f: "degF",
  degf: "degF",
  fahrenheit: "degF",
  c: "degC",
  degc: "degC",
  celsius: "degC",
  k: "K",
  kelvin: "K",
  deltaf: "Fdiff",
  fdiff: "Fdiff",
  deltac: "K",
  deltak: "K",
  r: "Rip",
  rip: "Rip",
  "r-value": "Rip",
  "hft2f/btu": "Rip",
  "hrft2f/btu": "Rip",
  "ft2hf/btu": "Rip",
  "ft2hrf/btu": "Rip",
  rsi: "Rsi",
  "m2k/w": "Rsi",
  u: "Uip",
  "btu/hft2f": "Uip",
  "btu/(hft2f)": "Uip",
  "btu/hrft2f": "Uip",
  "btu/(hrft2f)": "Uip",
  "w/m2k": "Usi",
  "w/(m2k)": "Usi",
  "btuin/hft2f": "condInch",
  "btuin/(hft2f)": "condInch",
  "btuin/hrft2f": "condInch",
  "btu/hftf": "condFoot",
  "btu/(hftf)": "condFoot",
  "btu/hrftf": "condFoot",
  "w/mk": "condSi",
  "w/(mk)": "condSi",
  perm: "perm",
  perms: "perm",
  "perm-in": "perminch",
  "perm-inch": "perminch",
  permin: "perminch",
  perminch: "perminch",
  "ng/(sm2pa)": "ngperm",
  "ng/sm2pa": "ngperm",
  "ng/pasm2": "ngperm",
  ng: "ngperm",
  mph: "mph",
  "mi/h": "mph",
  "m/s": "m/s",
  "km/h": "km/hour",
  kmh: "km/hour",
  knot: "knot",
  knots: "knot",
  kt: "knot",
  psf: "psf",
  "lb/ft2": "psf",
  "lbf/ft2": "psf",
  ksf: "ksf",
  psi: "psi",
  "lb/in2": "psi",
  "lbf/in2": "psi",
  ksi: "ksi",
  pa: "Pa",
  kpa: "kPa",
  mpa: "MPa",
  inhg: "inHg",
  mmhg: "mmHg",
  "n/m2": "Pa",
  "kn/m2": "kPa",
  "n/mm2": "MPa",
  plf: "plf",
  "lb/ft": "plf",
  "lbf/ft": "plf",
  klf: "klf",
  pli: "pli",
  "lb/in": "pli",
  "kn/m": "kN/m",
  "n/m": "N/m",
  pcf: "pcf",
  "lb/ft3": "pcf",
  "kg/m3": "kg/m^3",
  "kg/m2": "kg/m^2",
  lb: "lbm",
  lbs: "lbm",
  pound: "lbm",
  pounds: "lbm",
  lbf: "lbf",
  kip: "kip",
  kips: "kip",
  kg: "kg",
  n: "N",
  kn: "kN",
  ton: "ton",
  tons: "ton",
  tonne: "tonne",
  tonnes: "tonne",
  oz: "oz",
  sqft: "ft^2",
  ft2: "ft^2",
  sqin: "inch^2",
  in2: "inch^2",
  sqm: "m^2",
  m2: "m^2",
  mm2: "mm^2",
  cm2: "cm^2",
  acre: "acre",
  acres: "acre",
  square: "square",
  squares: "square",
  boardfoot: "boardfoot",
  boardfeet: "boardfoot",
  boardft: "boardfoot",
  bdft: "boardfoot",
  bf: "boardfoot",
  fbm: "boardfoot",
  ft3: "ft^3",
  cuft: "ft^3",
  yd3: "yard^3",
  cuyd: "yard^3",
  cy: "yard^3",
  in3: "inch^3",
  m3: "m^3",
  l: "litre",
  litre: "litre",
  liter: "litre",
  gal: "gallon",
  gallon: "gallon",
  gallons: "gallon",
  floz: "floz",
  ml: "ml",
  btu: "BTU",
  "btu/h": "btuh",
  "btu/hr": "btuh",
  btuh: "btuh",
  w: "W",
  kw: "kW",
  kwh: "kWh",
  j: "J",
  kj: "kJ",
  mj: "MJ",
  cfm: "cfm",
  "ft3/min": "cfm",
  "m3/h": "m^3/hour",
  "l/s": "litre/s",
  deg: "deg",
  degree: "deg",
  degrees: "deg",
  rad: "rad",
  "ft-lb": "ft lbf",
  ftlb: "ft lbf",
  "in-lb": "inch lbf",
  inlb: "inch lbf",
  "ft-kip": "ft kip",
  knm: "kN m",
  nm: "N m",
  h: "hour",
  hr: "hour",
  hour: "hour",
  hours: "hour",
  min: "minute",
  minute: "minute",
  minutes: "minute",
  s: "s",
  day: "day",
  days: "day",
};

function unitWord(word: string): string | undefined {
  const key = word
    .replaceAll("²", "2")
    .replaceAll("³", "3")
    .replace(/[\s.·*^°_]/g, "")
    .replace(/\u0394/g, "delta")
    .toLowerCase();
  if (Object.hasOwn(WORDS, key)) return WORDS[key];
  const length = lengthUnit(word);
  return length === undefined ? undefined : { in: "inch", ft: "ft", yd: "yard", mm: "mm", cm: "cm", m: "m" }[length];
}

/** True where `word` is a unit that can be read here. */
export function isUnit(word: string): boolean {
  return unitWord(word) !== undefined;
}

/**
 * Converts a value between units of the same kind. A pound converts as a mass or as a force, whichever the other side is, under standard gravity.
 * Temperatures convert as readings; `delta F` and `delta C` are differences.
 *
 * @throws BadInput for an unknown unit, or two that do not measure the same thing
 */
export function convert(value: number, from: string, to: string): number {
  const source = unitWord(from);
  const target = unitWord(to);
  for (const [word, known] of [
    [from, source],
    [to, target],
  ]) {
    if (known === undefined)
      throw new BadInput(
        `"${word}" is not a unit that is known here`,
        "units are written as the trade writes them",
        "Use one such as ft, in, m, mm, mph, psf, plf, psi, kPa, lb, kip, kN, F, C, perm, R, RSI, board foot or square",
      );
  }
  for (const [s, t] of asMassOrForce(source as string, target as string)) {
    const unit = math.unit(value, s);
    if (unit.equalBase(math.unit(t))) return unit.toNumber(t);
  }
  throw new BadInput(
    `${from} does not convert to ${to}`,
    "the two measure different things",
    `Give a unit of the same kind as ${from}`,
  );
}

/** The pair as read, then with the pound as a force on either side. */
function asMassOrForce(from: string, to: string): readonly (readonly [string, string])[] {
  const force = (unit: string) => (unit === "lbm" ? "lbf" : unit);
  const pairs: (readonly [string, string])[] = [
    [from, to],
    [force(from), force(to)],
  ];
  if (to === "kg" && ["lbf", "kip", "N", "kN"].includes(from)) pairs.push([from, "kgf"]);
  if (from === "kg" && ["lbf", "kip", "N", "kN"].includes(to)) pairs.push(["kgf", to]);
  return pairs;
}

const NUMBER_AND_UNIT = /^([-+]?(?:\d{1,3}(?:,\d{3})+|\d+)?(?:\.\d+)?(?:e[-+]?\d+)?)\s*(.*)$/i;

/**
 * Reads a number, with or without a unit, from text: `24`, `1,200 lb`, `2.4 kPa`.
 * @param bareUnit unit of a bare number and of the result
 * @throws BadInput when the text is no number, or its unit does not measure the same thing as `bareUnit`
 */
export function parseQuantity(text: string, bareUnit: string): number {
  const match = NUMBER_AND_UNIT.exec(text.replace(/[−–]/g, "-").replaceAll("\u00a0", " ").trim());
  const digits = match?.[1]?.replaceAll(",", "") ?? "";
  const value = Number(digits);
  if (digits === "" || !Number.isFinite(value)) {
    const like = bareUnit === "" ? "a plain number such as 24" : `a number of ${bareUnit}, or a number with its unit`;
    throw new BadInput(`"${text}" is not a number`, "decimals take a . and thousands may take a ,", `Write ${like}`);
  }
  const unit = match?.[2]?.trim() ?? "";
  if (unit === "") return value;
  if (bareUnit === "") {
    throw new BadInput(`"${text}" carries a unit`, "this input is a plain number without one", "Leave the unit away");
  }
  return convert(value, unit, bareUnit);
}

/** Inches to another unit of length by name. */
export function fromInches(inches: number, unit: keyof typeof INCHES_IN): number {
  return inches / INCHES_IN[unit];
}
