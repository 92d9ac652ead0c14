import { BadInput } from "../../core/kit/refusal.ts";
import { capital, oneCell } from "./cell.ts";
import { isDate } from "./dates.ts";
import type { Param } from "./param.ts";
import { quote } from "./raw.ts";

export interface ChoiceOptions<C extends string> {
  readonly says: string;
  /** other ways to write a choice, in lower case: { "2016": "7-16" } */
  readonly also?: Readonly<Record<string, C>>;
  /** what each choice means, for help */
  readonly means?: Readonly<Record<C, string>>;
  readonly heads?: readonly string[];
}

/** One of a few words, in any case; numbers are read as their digits. */
export function choice<const C extends string>(choices: readonly C[], o: ChoiceOptions<C>): Param<C, C> {
  const words = new Map<string, C>(Object.entries<C>(o.also ?? {}));
  for (const c of [...choices].reverse()) words.set(c.toLowerCase(), c);
  const wants = `one of ${choices.join(", ")}`;
  return {
    kind: "choice",
    says: o.says,
    unit: "",
    choices,
    ...(o.means === undefined ? {} : { choicesSay: choices.map((c) => o.means?.[c] ?? "") }),
    ...(o.heads === undefined ? {} : { heads: o.heads }),
    read(raw, at) {
      const cell = oneCell(raw, at, wants);
      const found = words.get(String(cell).trim().toLowerCase());
      if (found !== undefined) return { value: found, shown: found };
      const date = typeof cell === "number" && isDate(cell);
      throw new BadInput(
        `${capital(at)} is ${quote(cell)}`,
        date ? "the spreadsheet seems to have turned the text into a date" : `it must be ${wants}`,
        date ? `Type it as text, with ' in front: ${wants}` : "Type one of these",
      );
    },
  };
}

/** Free text: a name, a label, a length to be read by the function itself. */
export function text(o: { readonly says: string; readonly heads?: readonly string[] }): Param<string, string | number> {
  return {
    kind: "text",
    says: o.says,
    unit: "",
    ...(o.heads === undefined ? {} : { heads: o.heads }),
    read(raw, at) {
      const cell = oneCell(raw, at, o.says);
      const value = String(cell).trim();
      return { value, shown: value };
    },
  };
}

/** Yes or no, also TRUE and FALSE, 1 and 0. */
export function flag(o: { readonly says: string; readonly heads?: readonly string[] }): Param<boolean, boolean> {
  return {
    kind: "flag",
    says: o.says,
    unit: "",
    choices: ["yes", "no"],
    ...(o.heads === undefined ? {} : { heads: o.heads }),
    read(raw, at) {
      const cell = oneCell(raw, at, "yes or no");
      const key = String(cell).trim().toLowerCase();
      if (["true", "1", "yes", "y"].includes(key)) return { value: true, shown: "yes" };
      if (["false", "0", "no", "n"].includes(key)) return { value: false, shown: "no" };
      throw new BadInput(`${capital(at)} is ${quote(cell)}`, "yes or no is wanted here", "Type yes or no");
    },
  };
}
