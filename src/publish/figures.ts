const BEGIN = "<!-- figures: begin -->";
const END = "<!-- figures: end -->";

/** The README with the lines of the benchmark's table that have a goal. */
export function withFigures(readme: string, figures: string): string {
  const from = readme.indexOf(BEGIN);
  const to = readme.indexOf(END);
  if (from < 0 || to < from) throw new Error(`The README lacks ${BEGIN} or ${END}`);
  const lines = figures
    .split("\n")
    .map((line) => line.split("|").map((cell) => cell.trim()))
    .filter(([, what = "", , goal = ""]) => what !== "what" && goal !== "" && !goal.startsWith("-"))
    .map(([, what, found, goal, met]) => `| ${what} | ${found} | ${goal} | ${met} |`);
  const table = ["| what | found | goal | met |", "| --- | --- | --- | --- |", ...lines].join("\n");
  return `${readme.slice(0, from)}${BEGIN}\n${table}\n${readme.slice(to)}`;
}
