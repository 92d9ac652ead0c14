// Places of a module where one change may alter an answer: constants, operators, comparisons, dropped terms.
import { parse } from "acorn";
import { transform } from "esbuild";

const SWAPS = {
  "+": "-",
  "-": "+",
  "*": "/",
  "/": "*",
  "<": "<=",
  "<=": "<",
  ">": ">=",
  ">=": ">",
  "===": "!==",
  "!==": "===",
  "&&": "||",
  "||": "&&",
};
/** Terms that may be dropped. */
const TERMS = new Set(["+", "-", "*", "/"]);
const BOUNDS = { min: "max", max: "min" };

/** @returns {Promise<{ code: string, sites: { start: number, end: number, text: string, kind: string, was: string, place: string }[] }>} */
export async function sitesOf(source) {
  const { code } = await transform(source, { loader: "ts", target: "es2022" });
  const tree = parse(code, { ecmaVersion: "latest", sourceType: "module" });
  const sites = [];
  const line = (at) =>
    code
      .slice(code.lastIndexOf("\n", at - 1) + 1, (code.indexOf("\n", at) + code.length + 1) % (code.length + 1))
      .trim();
  const add = (kind, node, text) => {
    const was = code.slice(node.start, node.end);
    const start = code.lastIndexOf("\n", node.start - 1) + 1;
    sites.push({
      kind,
      start: node.start,
      end: node.end,
      text,
      was,
      place: `${line(node.start)} @${node.start - start}`,
    });
  };
  walk(tree, (node, parent) => {
    // esbuild writes undefined as void 0, and void 1 is undefined too
    if (parent.type === "UnaryExpression" && parent.operator === "void") return;
    if (node.type === "Literal" && typeof node.value === "number" && parent.type !== "Property")
      add("constant", node, other(node.value));
    if (
      node.type === "Literal" &&
      typeof node.value === "number" &&
      parent.type === "Property" &&
      parent.value === node
    )
      add("constant", node, other(node.value));
    if (
      (node.type === "BinaryExpression" || node.type === "LogicalExpression") &&
      SWAPS[node.operator] !== undefined &&
      !isText(node)
    ) {
      const a = code.slice(node.left.start, node.left.end);
      const b = code.slice(node.right.start, node.right.end);
      add(/[<>=]/.test(node.operator) ? "comparison" : "operator", node, `(${a}) ${SWAPS[node.operator]} (${b})`);
      if (TERMS.has(node.operator)) add("dropped term", node, `(${a})`);
    }
    if (
      node.type === "UnaryExpression" &&
      (node.operator === "-" || node.operator === "!") &&
      node.argument.type !== "Literal"
    ) {
      add("operator", node, `(${code.slice(node.argument.start, node.argument.end)})`);
    }
    if (node.type === "MemberExpression" && node.object.name === "Math" && BOUNDS[node.property.name] !== undefined) {
      add("operator", node, `Math.${BOUNDS[node.property.name]}`);
    }
  });
  return { code, sites };
}

function other(value) {
  if (value === 0) return "1";
  return Number.isInteger(value) && Math.abs(value) < 10 ? String(value + 1) : `(${value} * 1.1)`;
}

function isText(node) {
  const literal = (n) => n.type === "TemplateLiteral" || (n.type === "Literal" && typeof n.value === "string");
  return node.operator === "+" && (literal(node.left) || literal(node.right));
}

/** What only the working and the sentences say is no answer. */
function isWords(node) {
  if (node.type === "NewExpression" && /^(BadInput|OutOfRange|Error|NeedsTable)$/.test(node.callee.name ?? ""))
    return true;
  if (node.type === "TemplateLiteral") return true;
  return (
    node.type === "CallExpression" && node.callee.type === "MemberExpression" && node.callee.object.name === "tape"
  );
}

function walk(node, visit, parent = node) {
  if (node === null || typeof node !== "object" || typeof node.type !== "string") return;
  if (isWords(node) || node.type === "ImportDeclaration") return;
  visit(node, parent);
  for (const [key, child] of Object.entries(node)) {
    if (
      key === "type" ||
      (key === "property" && node.computed === false) ||
      (key === "key" && node.type === "Property")
    )
      continue;
    if (Array.isArray(child)) for (const c of child) walk(c, visit, node);
    else walk(child, visit, node);
  }
}
