// What `npm run new` writes. Each place to fill in is a sentence in capitals that a check stops at.

export const FUNCTION = {
  core: ({ name, fn, title }) => `import { within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";

export interface ${title}Input {
  readonly widthFt: number;
}

/**
 * WHAT ${name} COMPUTES, in one sentence.
 * @param widthFt WHAT IT IS, its limits in ft
 * @throws OutOfRange outside them
 * Source: DOCUMENT, EDITION, CLAUSE.
 */
export function ${fn}({ widthFt }: ${title}Input, tape?: Tape): number {
  within("The width", widthFt, 0, 1000, "ft", "DOCUMENT, EDITION, CLAUSE");
  const value = widthFt;
  tape?.step("A", "FORMULA", value, "ft", "DOCUMENT, EDITION, CLAUSE");
  return value;
}
`,
  declaration: ({ name, family, file, fn }) => `import { ${fn} } from "../../core/${family}/${file}.ts";
import { quantityOf } from "../declare/cell-function.ts";
import { length } from "../declare/scalar.ts";
import { familyFunction } from "./family.ts";

export const ${fn}Function = familyFunction({
  name: "${name}",
  summary: "WHAT IT GIVES, in one sentence.",
  params: { width: length("ft", { says: "WHAT IT IS", above: 0, max: 1000 }) },
  placed: {},
  returns: quantityOf("ft", "WHAT IT IS"),
  sources: ["DOCUMENT, EDITION, CLAUSE"],
  example: { args: { width: 12 }, gives: Number.NaN, within: 0, source: "WHERE THE ANSWER IS PRINTED" },
  refuses: [{ args: { width: 1200 }, says: "A PART OF THE SENTENCE" }],
  notFor: "WHEN TO GO ELSEWHERE",
  run: ({ width }, tape) => ${fn}({ widthFt: width }, tape),
});
`,
  test: ({ name, family, file, fn }) => `import fc from "fast-check";
import { expect, test } from "vitest";
import { ${fn} } from "../../../src/core/${family}/${file}.ts";

test("${name}: A SHAPE THAT PHYSICS GIVES, such as never falling", () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 500, noNaN: true }), (widthFt) => {
      expect(${fn}({ widthFt: widthFt * 2 })).toBe("FILL IN");
    }),
  );
});
`,
  rows: () => "source,width_ft,value,within,note\n",
  published: ({ name, family, file, fn }) => `import { expect, test } from "vitest";
import { ${fn} } from "../../src/core/${family}/${file}.ts";
import { rows } from "./rows.ts";

const ROWS = rows("${family}-${file}.csv");

test("${name} has printed rows, or its sources say that there are none", () => expect(ROWS.length).toBeGreaterThan(0));

test.each(ROWS)("$source", (row) => {
  const value = ${fn}({ widthFt: Number(row.width_ft) });
  expect(Math.abs(value - Number(row.value))).toBeLessThanOrEqual(Number(row.within));
});
`,
};

export const FAMILY = {
  family: ({ title }) => `import { declaring } from "../declare/cell-function.ts";

/** Declares a function of this family. */
export const familyFunction = declaring("${title}");
`,
  index: ({ name }) => `import type { CellFunction } from "../declare/cell-function.ts";

/** The functions of this family, in the order in which lists show them. */
export const ${name}Functions: readonly CellFunction[] = [];
`,
  tables: ({ name }) =>
    `Published tables of ${name}: data with its source (document, edition, table), one table a file.\n`,
};

export const PICTURE = {
  data: ({ name, title }) => `import type { PictureBase } from "../kit/picture.ts";

/** WHAT THERE IS TO SEE, in plain numbers and texts. */
export interface ${title}Picture extends PictureBase {
  readonly kind: "${name}";
}
`,
  drawing: ({ name, fn, title, family }) => `import type { SVGTemplateResult } from "lit-html";
import type { ${title}Picture } from "../../core/${family}/${name}-picture.ts";
import { frame, write } from "./parts/frame.ts";

/** WHAT THE DRAWING SHOWS. */
export function ${fn}(picture: ${title}Picture, width: number): SVGTemplateResult {
  return frame(picture, "${name.replaceAll("-", " ")}", width, 120, [write("FILL IN", 8, 20)]);
}
`,
};

export const TEMPLATE = {
  file: ({ name, fn }) => {
    const title = name.replaceAll("-", " ").replace(/^./, (c) => c.toUpperCase());
    return `import { sheet, top } from "./kit/layout.ts";

/** WHAT THE SHEET IS FOR, in one sentence. */
export const ${fn} = sheet("${title}", "WHAT THE SHEET IS FOR, in one sentence.", [
  top("${title}", "WHAT TO TYPE HERE."),
]);
`;
  },
};
