import type { CellFunction } from "../functions/declare/cell-function.ts";
import { isOptional } from "../functions/declare/param.ts";

const BEGIN = "<!-- functions: begin -->";
const END = "<!-- functions: end -->";

/** The table of functions for the README, family by family. */
function functionTable(functions: readonly CellFunction[]): string {
  const families = [...new Set(functions.map((fn) => fn.family))];
  return families
    .map((family) => {
      const lines = functions.filter((fn) => fn.family === family).map((fn) => `| \`${call(fn)}\` | ${fn.summary} |`);
      return [`### ${family}`, "| function | gives |", "| --- | --- |", ...lines].join("\n");
    })
    .join("\n\n");
}

function call(fn: CellFunction): string {
  const words = fn.params.map(({ name, param }) => (isOptional(param) ? `[${name}]` : name));
  return `${fn.name}(${words.join(", ")})`;
}

/** The README with the table between its two marks made anew. */
export function withFunctionTable(readme: string, functions: readonly CellFunction[]): string {
  const from = readme.indexOf(BEGIN);
  const to = readme.indexOf(END);
  if (from < 0 || to < from) throw new Error(`The README lacks ${BEGIN} or ${END}`);
  return `${readme.slice(0, from)}${BEGIN}\n${functionTable(functions)}\n${readme.slice(to)}`;
}
