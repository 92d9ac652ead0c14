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

const NEW = new RegExp(String.raw`(?<![\w.])(${[...PREFIXED, ...WORKSHEET].join("|")})(?=\()`, "gi");
const STORED = /_xlfn\.(?:_xlws\.)?/g;
const QUOTED = /("(?:[^"]|"")*"|'(?:[^']|'')*')/;

/** A formula with the file's prefixes before newer functions. */
export function asNewFunctions(formula: string): string {
  return outside(formula, (part) =>
    part.replace(NEW, (name: string) => `_xlfn.${WORKSHEET.includes(name.toUpperCase()) ? "_xlws." : ""}${name}`),
  );
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
