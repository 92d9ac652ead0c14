import { results, sheet, table, top } from "../kit/layout.ts";

const line = (name: string, length: string, arm: string, per: string) =>
  [name, `=VLOOKUP("${name} wall: ${per}",BaseShear,4,FALSE)`, length, "9'-10 1/2\"", "", 1, arm] as const;

/** Shear lines, hold-downs and anchors. */
export const anchorage = sheet(
  "Hold-downs",
  "Shear lines, hold-downs and anchors of the four walls.",
  [
    top(
      "Hold-downs and anchors",
      "Each wall is a line of its own; the force comes from the sheet Wind, strength level.",
    ),
    table(
      "ShearLines",
      "Shear lines",
      ["line", "shear lb", "length ft", "height ft", "dead plf", "floor", "arm ft"],
      [
        line("south", "47'-9\"", "47'-0\"", "along ridge"),
        line("north", "47'-9\"", "47'-0\"", "along ridge"),
        line("east", "32'-0\"", "31'-0\"", "across ridge"),
        line("west", "32'-0\"", "31'-0\"", "across ridge"),
      ],
      2,
    ),
    table(
      "Capacities",
      "Hold-downs on hand",
      ["size", "capacity lb"],
      [
        ["small", 3000],
        ["medium", 5500],
        ["large", 9000],
      ],
      1,
    ),
    table(
      "Anchors",
      "Anchors, by the office's evaluation report",
      ["anchor", "shear lb", "tension lb", "least spacing in", "least edge in", "plate in2"],
      [["screw anchor 1/2", 1400, 1650, 4, 1.75, 9]],
      1,
    ),
    results("Epoxied rod at a large hold-down", [
      {
        label: "5/8 in A307, 8 in deep, 4 in from the edge",
        formula: "=INDEX(SILL.ANCHOR_BOND(4000,0.625,8,4,Basis),2,2)",
        unit: "lb",
        format: "#,##0",
        note: "strength level, the least of its checks",
      },
    ]),
  ],
  [
    {
      heading: "Hold-downs",
      formula: "=SILL.HOLDDOWN_SCHEDULE(ShearLines,Capacities,Basis)",
      name: "HoldDowns",
      room: 10,
    },
  ],
);
