/** What units are made of; a base of the table stands in brackets. Temperature is a difference here. */
export const BASES: readonly string[] = ["[length]", "[mass]", "[time]", "[temperature]", "[angle]", "[money]"];
/** The unit of each base that factors are counted in. */
export const BASE_UNITS = ["m", "kg", "s", "K", "deg", "$"] as const;

export interface UnitRow {
  /** ways to write it, in lower case without spaces and dots */
  readonly words: string;
  /** how many of `of` one of it is: a decimal or a fraction, exact */
  readonly is: string;
  /** a base, "" for a pure number, or units of this table */
  readonly of: string;
}

const row = (words: string, is: string, of: string): UnitRow => ({ words, is, of });

/**
 * Units of the trade, each by its definition: NIST SP 811 (2008) Appendix B.8 and NIST Handbook 44 Appendix C, exact but for the
 * mercury and water columns, which are conventional values. What no document defines is said beside it.
 */
export const UNITS: readonly UnitRow[] = [
  row("m|meter|meters|metre|metres", "1", "[length]"),
  row("mm", "0.001", "m"),
  row("cm", "0.01", "m"),
  row("km|kilometer|kilometers", "1000", "m"),
  row("in|inch|inches|\"|''", "0.0254", "m"),
  row("ft|foot|feet|'", "0.3048", "m"),
  row("yd|yard|yards", "3", "ft"),
  row("mi|mile|miles", "5280", "ft"),
  row("mil|mils", "0.001", "in"),

  row("sqft|sf", "1", "ft2"),
  row("sqin", "1", "in2"),
  row("sqyd", "1", "yd2"),
  row("sqm", "1", "m2"),
  row("acre|acres", "43560", "ft2"),
  // Roofing and siding; common practice, no source.
  row("square|squares", "100", "ft2"),
  row("cuft|cf", "1", "ft3"),
  row("cuin", "1", "in3"),
  row("cuyd|cy", "1", "yd3"),
  row("boardfoot|boardfeet|boardft|bdft|bf|fbm", "144", "in3"),
  row("mbf", "1000", "bf"),
  row("l|liter|liters|litre|litres", "0.001", "m3"),
  row("ml", "0.001", "l"),
  row("gal|gallon|gallons", "231", "in3"),
  row("quart|quarts|qt", "1/4", "gal"),
  row("pint|pints", "1/8", "gal"),
  row("floz|fluidounce|fluidounces", "1/128", "gal"),

  row("s|sec|second|seconds", "1", "[time]"),
  row("min|minute|minutes", "60", "s"),
  row("h|hr|hrs|hour|hours", "3600", "s"),
  row("day|days|d", "24", "h"),
  row("week|weeks|wk", "7", "day"),
  // Of 365 days; common practice for yearly heat.
  row("yr|year|years", "365", "day"),

  row("mph", "1", "mi/h"),
  row("kmh|kph", "1", "km/h"),
  row("knot|knots|kt", "1852", "m/h"),
  row("fps", "1", "ft/s"),
  row("fpm", "1", "ft/min"),
  row("cfm", "1", "ft3/min"),
  row("gpm", "1", "gal/min"),

  row("kg|kilogram|kilograms", "1", "[mass]"),
  row("g|gram|grams", "0.001", "kg"),
  row("mg", "1e-6", "kg"),
  row("ng", "1e-12", "kg"),
  row("lb|lbs|lbm|pound|pounds", "0.45359237", "kg"),
  row("oz|ounce|ounces", "1/16", "lb"),
  row("gr|grain|grains", "1/7000", "lb"),
  row("ton|tons", "2000", "lb"),
  row("t|tonne|tonnes", "1000", "kg"),
  row("pcf", "1", "lb/ft3"),

  row("n|newton|newtons", "1", "kg m/s2"),
  row("kn", "1000", "n"),
  row("mn", "1e6", "n"),
  row("lbf|poundforce", "4.4482216152605", "n"),
  row("kip|kips", "1000", "lbf"),
  row("pa", "1", "n/m2"),
  row("hpa|mbar", "100", "pa"),
  row("kpa", "1000", "pa"),
  row("bar", "1e5", "pa"),
  row("mpa", "1e6", "pa"),
  row("gpa", "1e9", "pa"),
  row("atm", "101325", "pa"),
  row("psf", "1", "lbf/ft2"),
  row("ksf", "1000", "psf"),
  row("psi", "1", "lbf/in2"),
  row("ksi", "1000", "psi"),
  row("inhg", "3386.389", "pa"), // at 0 C
  row("mmhg", "133.3224", "pa"),
  row("inwg|inwc|inh2o|inofwater|inwater|iwg|inchofwater|inchesofwater", "249.08891", "pa"), // at 4 C
  row("plf", "1", "lbf/ft"),
  row("klf", "1000", "plf"),
  row("pli", "1", "lbf/in"),
  row("ftlb|ftlbf|footpound|footpounds", "1", "ft lbf"),
  row("inlb|inlbf", "1", "in lbf"),
  row("nm", "1", "n m"),
  row("knm", "1", "kn m"),

  row("j|joule|joules", "1", "n m"),
  row("kj", "1000", "j"),
  row("mj", "1e6", "j"),
  row("gj", "1e9", "j"),
  row("btu|btus", "1055.05585262", "j"), // International Table
  // Heating trade: M is a thousand and MM a million.
  row("mbtu|kbtu", "1000", "btu"),
  row("mmbtu", "1e6", "btu"),
  row("therm|therms", "1e5", "btu"),
  row("w|watt|watts", "1", "j/s"),
  row("kw", "1000", "w"),
  row("wh", "1", "w h"),
  row("kwh", "1000", "w h"),
  row("btuh", "1", "btu/h"),
  row("mbh", "1000", "btuh"),
  row("hp", "550", "ft lbf/s"),

  // Degrees beside other units are differences; readings stand in quantity.ts.
  row("k|c|degc|celsius|kelvin|deltac|deltak|cdiff|kdiff", "1", "[temperature]"),
  row("f|degf|fahrenheit|deltaf|fdiff", "5/9", "[temperature]"),
  row("r|rip|r-value|rvalue|hft2f/btu|hrft2f/btu|ft2hf/btu|ft2hrf/btu", "1", "h ft2 f/btu"),
  row("rsi|m2k/w", "1", "m2 k/w"),
  row("u|uip|u-value|uvalue|btu/hft2f|btu/(hft2f)|btu/hrft2f|btu/(hrft2f)", "1", "btu/(h ft2 f)"),
  row("usi|w/m2k|w/(m2k)", "1", "w/(m2 k)"),
  row("btuin/hft2f|btuin/(hft2f)|btuin/hrft2f", "1", "btu in/(h ft2 f)"),
  row("btu/hftf|btu/(hftf)|btu/hrftf", "1", "btu/(h ft f)"),
  row("w/mk|w/(mk)", "1", "w/(m k)"),
  row("hdd", "1", "f day"),

  row("perm|perms", "1", "gr/(h ft2 inhg)"),
  row("perm-in|perm-inch|permin|perminch|permsin", "1", "perm in"),
  // Nanograms over a second, a square meter and a pascal, as the trade shortens it.
  row("ng/(sm2pa)|ng/sm2pa|ng/pasm2", "1", "ng/(s m2 pa)"),
  row("ng/(smpa)|ng/smpa", "1", "ng/(s m pa)"),
  row("kg/(sm2pa)", "1", "kg/(s m2 pa)"),
  row("kg/(smpa)", "1", "kg/(s m pa)"),

  row("deg|degree|degrees", "1", "[angle]"),
  // 180 / pi to the digits of a double.
  row("rad|radian|radians", "57.29577951308232", "deg"),

  row("$|dollar|dollars|usd", "1", "[money]"),
  row("unit|units|each|ea|piece|pieces", "1", ""),
];

/** Names of what is measured, by units that measure it. */
export const KINDS: readonly (readonly [kind: string, unit: string])[] = [
  ["a pure number", ""],
  ["a length", "ft"],
  ["an area", "ft2"],
  ["a volume", "ft3"],
  ["a second moment of area", "in4"],
  ["a time", "h"],
  ["a rate in time", "1/h"],
  ["a speed", "mph"],
  ["a flow", "cfm"],
  ["a mass", "lb"],
  ["a mass on a length", "lb/ft"],
  ["a mass on an area", "lb/ft2"],
  ["a density", "pcf"],
  ["a force", "lbf"],
  ["a pressure", "psf"],
  ["a load on a length", "plf"],
  ["a weight by volume", "lbf/ft3"],
  ["an energy or a moment", "btu"],
  ["a power", "btuh"],
  ["a heat flow through an area", "btu/(h ft2)"],
  ["an R-value", "r"],
  ["a U-value", "u"],
  ["a conductivity", "w/(m k)"],
  ["a heat loss for each degree", "btu/(h f)"],
  ["a heat capacity", "btu/(lb f)"],
  ["a heat capacity of an area", "btu/(ft2 f)"],
  ["a permeance", "perm"],
  ["a permeability", "perm in"],
  ["a vapor flow", "gr/(h ft2)"],
  ["a temperature difference", "deltaf"],
  ["degree days", "f day"],
  ["an angle", "deg"],
  ["an amount of money", "$"],
  ["a wage", "$/h"],
  ["a price for a length", "$/ft"],
  ["a price for an area", "$/ft2"],
  ["a price for a volume", "$/yd3"],
];
