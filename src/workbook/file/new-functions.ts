/** Functions that came after the file format was fixed: a file holds them with a prefix, or the host shows #NAME?. */
const PREFIXED = [
  ...[
    "ARRAYTOTEXT",
    "CHOOSECOLS",
    "CHOOSEROWS",
    "CONCAT",
    "DROP",
    "EXPAND",
    "HSTACK",
    "IFNA",
    "IFS",
    "MAXIFS",
    "MINIFS",
  ],
  ...["RANDARRAY", "SEQUENCE", "SORTBY", "SWITCH", "TAKE", "TEXTAFTER", "TEXTBEFORE", "TEXTJOIN", "TEXTSPLIT", "TOCOL"],
  ...["TOROW", "UNIQUE", "VALUETOTEXT", "VSTACK", "WRAPCOLS", "WRAPROWS", "XLOOKUP", "XMATCH"],
];
const WORKSHEET = ["FILTER", "SORT"];

/** Those that give a table, and one value only when the table is that small. */
const TABLES =
  /(?<![\w.])(?:CHOOSECOLS|CHOOSEROWS|DROP|EXPAND|FILTER|HSTACK|RANDARRAY|SEQUENCE|SORT|SORTBY|TAKE|TEXTSPLIT|TOCOL|TOROW|UNIQUE|VSTACK|WRAPCOLS|WRAPROWS)\(/i;

const NEW = new RegExp(String.raw`(?<![\w.])(${[...PREFIXED, ...WORKSHEET].join("|")})(?=\()`, "gi");
const STORED = /_xlfn\.(?:_xlws\.)?/g;
const QUOTED = /("(?:[^"]|"")*"|'(?:[^']|'')*')/;

/** A formula with the file's prefixes before newer functions. */
export function asNewFunctions(formula: string): string {
  return outside(formula, (part) =>
    part.replace(NEW, (name: string) => `_xlfn.${WORKSHEET.includes(name.toUpperCase()) ? "_xlws." : ""}${name}`),
  );
}

/** Whether a formula may spill though it shows one value now: without the flag of one that spills the host would show the first cell of its table for good. */
export function maySpill(formula: string): boolean {
  return formula.split(QUOTED).some((part, i) => i % 2 === 0 && TABLES.test(part));
}

/** A formula of a file without them. */
export function withoutPrefixes(formula: string): string {
  return outside(formula, (part) => part.replace(STORED, ""));
}

function outside(formula: string, change: (part: string) => string): string {
  return formula
    .split(QUOTED)
    .map((part, i) => (i % 2 === 1 ? part : change(part)))
    .join("");
}
