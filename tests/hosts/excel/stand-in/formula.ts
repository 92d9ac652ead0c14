/** Formulas of the stand-in workbook: the part of the spreadsheet's language that the templates and the tests use. */

export type Node =
  | { readonly is: "value"; readonly value: number | string | boolean }
  | { readonly is: "error"; readonly error: string }
  | { readonly is: "array"; readonly rows: readonly (readonly Node[])[] }
  | {
      readonly is: "cells";
      readonly sheet?: string;
      readonly first: string;
      readonly last?: string;
      readonly spill?: true;
    }
  | { readonly is: "name"; readonly name: string }
  | { readonly is: "call"; readonly name: string; readonly args: readonly (Node | undefined)[] }
  | { readonly is: "unary"; readonly sign: string; readonly of: Node }
  | { readonly is: "binary"; readonly sign: string; readonly left: Node; readonly right: Node };

const TOKEN =
  /\s*(?:("(?:[^"]|"")*")|(#[A-Z/0-9]+[!?]?)|((?:'(?:[^']|'')+'|[A-Za-z_][\w.]*)!)?(\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+|#)?)(?![\w.(])|(\d+\.?\d*(?:E[+-]?\d+)?|\.\d+)|([A-Za-z_][\w.]*)|(<=|>=|<>|[-+*/^&=<>(){},;%]))/iy;

interface Token {
  readonly kind: "text" | "error" | "cells" | "number" | "word" | "sign";
  readonly text: string;
  readonly sheet?: string;
}

function tokensOf(text: string): Token[] {
  const tokens: Token[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.length) {
    const match = TOKEN.exec(text);
    if (match === null) throw new Error(`The stand-in cannot read ${text}`);
    const [, quoted, error, sheet, cells, number, word, sign] = match;
    if (quoted !== undefined) tokens.push({ kind: "text", text: quoted.slice(1, -1).replaceAll('""', '"') });
    else if (error !== undefined) tokens.push({ kind: "error", text: error });
    else if (cells !== undefined) {
      const named =
        sheet === undefined ? {} : { sheet: sheet.slice(0, -1).replace(/^'|'$/g, "").replaceAll("''", "'") };
      tokens.push({ kind: "cells", text: cells.replaceAll("$", "").toUpperCase(), ...named });
    } else if (number !== undefined) tokens.push({ kind: "number", text: number });
    else if (word !== undefined) tokens.push({ kind: "word", text: word });
    else tokens.push({ kind: "sign", text: sign ?? "" });
  }
  return tokens;
}

/** Signs from the weakest to the strongest. */
const LEVELS = [["=", "<>", "<", ">", "<=", ">="], ["&"], ["+", "-"], ["*", "/"], ["^"]];

/** @param formula with its "=" */
export function parse(formula: string): Node {
  const tokens = tokensOf(formula.slice(1));
  let at = 0;
  const peek = (): string => (tokens[at]?.kind === "sign" ? (tokens[at]?.text ?? "") : "");
  const take = (sign: string): void => {
    if (peek() !== sign) throw new Error(`${formula}: ${sign} is missing`);
    at++;
  };
  const level = (depth: number): Node => {
    const signs = LEVELS[depth];
    if (signs === undefined) return unary();
    let left = level(depth + 1);
    while (signs.includes(peek())) {
      const sign = peek();
      at++;
      left = { is: "binary", sign, left, right: level(depth + 1) };
    }
    return left;
  };
  const unary = (): Node => {
    if (peek() === "-" || peek() === "+") {
      const sign = peek();
      at++;
      return { is: "unary", sign, of: unary() };
    }
    let node = primary();
    while (peek() === "%") {
      at++;
      node = { is: "unary", sign: "%", of: node };
    }
    return node;
  };
  const args = (): (Node | undefined)[] => {
    take("(");
    const found: (Node | undefined)[] = [];
    while (peek() !== ")") {
      found.push(peek() === "," ? undefined : level(0));
      if (peek() !== ",") break;
      at++;
      if (peek() === ")") found.push(undefined);
    }
    take(")");
    return found;
  };
  const array = (): Node => {
    const rows: Node[][] = [[]];
    take("{");
    while (true) {
      rows.at(-1)?.push(unary());
      if (peek() === "}") break;
      if (peek() === ";") rows.push([]);
      at++;
    }
    take("}");
    return { is: "array", rows };
  };
  const primary = (): Node => {
    const token = tokens[at];
    if (peek() === "{") return array();
    if (peek() === "(") {
      at++;
      const node = level(0);
      take(")");
      return node;
    }
    at++;
    switch (token?.kind) {
      case "text":
        return { is: "value", value: token.text };
      case "number":
        return { is: "value", value: Number(token.text) };
      case "error":
        return { is: "error", error: token.text };
      case "cells": {
        const [first = "", last] = token.text.replace("#", "").split(":");
        const sheet = token.sheet === undefined ? {} : { sheet: token.sheet };
        const more = {
          ...(last === undefined ? {} : { last }),
          ...(token.text.endsWith("#") ? { spill: true as const } : {}),
        };
        return { is: "cells", ...sheet, first, ...more };
      }
      case "word":
        if (peek() === "(") return { is: "call", name: token.text.toUpperCase(), args: args() };
        if (/^(true|false)$/i.test(token.text)) return { is: "value", value: /^true$/i.test(token.text) };
        return { is: "name", name: token.text };
      default:
        throw new Error(`The stand-in cannot read ${formula}`);
    }
  };
  const whole = level(0);
  if (at < tokens.length) throw new Error(`The stand-in cannot read ${formula}`);
  return whole;
}

/** The parts of a formula, its own whole among them. */
export function nodesOf(node: Node): Node[] {
  switch (node.is) {
    case "call":
      return [node, ...node.args.flatMap((arg) => (arg === undefined ? [] : nodesOf(arg)))];
    case "unary":
      return [node, ...nodesOf(node.of)];
    case "binary":
      return [node, ...nodesOf(node.left), ...nodesOf(node.right)];
    case "array":
      return [node, ...node.rows.flat()];
    default:
      return [node];
  }
}
