/**
 * Reads an insulation of slabs and basements into the words of the tables: `R-10 2 ft vertical`, `r10, vertical, 24 in`, `interior R-19`, `R-19 perimeter`, `R-30 floor`, `none`.
 * What names no such thing is given back as it is, for the refusal to quote.
 */
export function readGroundInsulation(text: string): string {
  const tidy = text.trim().toLowerCase().replace(/[,;]+/g, " ").replace(/\s+/g, " ");
  if (/^(none|no|uninsulated|0|r-?0)$/.test(tidy)) return "none";
  const r = /\br-? ?(\d+(?:\.\d+)?)/.exec(tidy)?.[1];
  const side = /\b(interior|inside|exterior|outside)\b/.exec(tidy)?.[1];
  if (r !== undefined && side !== undefined) return `R-${r} ${side.startsWith("in") ? "interior" : "exterior"}`;
  const under = /\b(perimeter|edge|floor|joists?)\b/.exec(tidy)?.[1];
  if (r !== undefined && under !== undefined)
    return `R-${r} ${/^(perimeter|edge)$/.test(under) ? "perimeter" : "floor"}`;
  const run = /\b(vertical|horizontal)\b/.exec(tidy)?.[1];
  const depth = /(\d+(?:\.\d+)?) ?(ft|feet|'|in|inches|")/.exec(tidy);
  if (r === undefined || run === undefined || depth === null) return text.trim();
  const ft = /^(ft|feet|')$/.test(depth[2] ?? "") ? Number(depth[1]) : Number(depth[1]) / 12;
  return `R-${r} ${ft} ft ${run}`;
}
