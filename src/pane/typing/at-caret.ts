import { type CellFunction, NAMESPACE } from "../../functions/declare/cell-function.ts";
import { find } from "../../functions/find/find.ts";

/** What stands at the caret of a formula that is being typed. */
export type AtCaret =
  | {
      /** a name is being typed, with or without the namespace */
      readonly kind: "name";
      readonly typed: string;
      readonly found: readonly CellFunction[];
    }
  | {
      readonly kind: "call";
      readonly fn: CellFunction;
      /** number of the argument at the caret, from 0 */
      readonly place: number;
      /** the call as far as it is typed, with the brackets that are still missing */
      readonly call: string;
    };

/** An opened bracket or brace before the caret. */
interface Open {
  readonly at: number;
  readonly sign: string;
  /** the name before the bracket, "" where there is none */
  readonly name: string;
  place: number;
}

/** Names offered at once. */
const MOST_NAMES = 6;
const SHORTEST_NAME = 2;

/** Looks at a formula before the caret: the innermost call of ours that is still open there, or the name that is being typed. */
export function atCaret(text: string, caret: number, functions: readonly CellFunction[]): AtCaret | undefined {
  if (!text.startsWith("=")) return undefined;
  const before = text.slice(0, caret);
  const opened = openBefore(before);
  if (opened === undefined) return undefined;
  const name = /(?<![\w.$!'])[A-Z][\w.]*$/i.exec(before)?.[0];
  const found = name === undefined ? [] : namesFor(name, functions);
  if (name !== undefined && found.length > 0) return { kind: "name", typed: name, found };
  for (const { at, name: called, place } of opened.toReversed()) {
    const fn = functions.find((f) => `${NAMESPACE}.${f.name}` === called.toUpperCase());
    if (fn !== undefined) return { kind: "call", fn, place, call: `=${called}${closed(text.slice(at))}` };
  }
  return undefined;
}

/** Functions for a name that is being typed: by their beginning behind SILL., else by the trade's words. */
function namesFor(typed: string, functions: readonly CellFunction[]): readonly CellFunction[] {
  const spaced = new RegExp(`^${NAMESPACE}\\.?`, "i");
  const named = typed.length > 1 && `${NAMESPACE}.`.startsWith(typed.toUpperCase());
  if (named) return functions.slice(0, MOST_NAMES);
  const bare = typed.replace(spaced, "").toUpperCase();
  if (bare.length < SHORTEST_NAME && !spaced.test(typed)) return [];
  const starting = functions.filter((fn) => fn.name.startsWith(bare));
  const found = starting.length > 0 ? starting : bare.length > SHORTEST_NAME ? find(functions, bare) : [];
  return found.slice(0, MOST_NAMES);
}

/** The brackets that are open at the end of a text; undefined inside a quoted text. */
function openBefore(text: string): Open[] | undefined {
  const open: Open[] = [];
  let quote = "";
  for (const [i, c] of [...text].entries()) {
    if (quote !== "") quote = c === quote ? "" : quote;
    else if (c === '"' || c === "'") quote = c;
    else if (c === "(" || c === "{") {
      const name = /[A-Z_][\w.]*$/i.exec(text.slice(0, i))?.[0] ?? "";
      open.push({ at: i, sign: c, name: c === "(" ? name : "", place: 0 });
    } else if (c === ")" || c === "}") open.pop();
    else if (c === ",") {
      const last = open.at(-1);
      if (last?.sign === "(") last.place++;
    }
  }
  return quote === '"' && open.length === 0 ? undefined : open;
}

/** From an opening bracket to its closing one, or to the end with what is missing there. */
function closed(text: string): string {
  const missing: string[] = [];
  let quote = "";
  for (const [i, c] of [...text].entries()) {
    if (quote !== "") quote = c === quote ? "" : quote;
    else if (c === '"' || c === "'") quote = c;
    else if (c === "(") missing.unshift(")");
    else if (c === "{") missing.unshift("}");
    else if (c === ")" || c === "}") {
      missing.shift();
      if (missing.length === 0) return text.slice(0, i + 1);
    }
  }
  return text + quote + missing.join("");
}
