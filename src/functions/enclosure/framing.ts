import { type FramedArea, framingShare } from "../../core/enclosure/layers/framing-share.ts";
import { quantityOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { length, number } from "../declare/scalar.ts";
import { table } from "../declare/table.ts";
import { text } from "../declare/word.ts";
import { openedWalls, someOpenings, walls } from "../takeoff/walls.ts";
import { familyFunction } from "./family.ts";

const members = table(
  {
    member: text({ says: "name, such as column, plate, beam", heads: ["name", "part"] }),
    width: length("in", {
      says: "width seen from the front",
      above: 0,
      max: 240,
      usual: { min: 0.75, max: 24, ask: "is it in inches?" },
      heads: ["w", "face", "face width"],
    }),
    count: number({ says: "how many", above: 0, max: 10000, heads: ["number", "n", "qty"] }),
    length: optional(
      length("ft", { says: "length of each; blank for the height of the wall", above: 0, max: 10000, heads: ["l"] }),
      undefined,
      "",
    ),
  },
  { says: "columns, plates, beams and other framing, one row each kind", maxRows: 200, unlike: true },
);

const framingShareFunction = familyFunction({
  name: "FRAMING_SHARE",
  summary: "Part of the walls' area that their own columns, plates and beams take up, for U_FACTOR.",
  params: { walls, members, openings: someOpenings },
  returns: quantityOf("", "framing area over wall area without openings"),
  sources: ["ISO 6946:2017 6.7.2.2 (area fractions); plane geometry"],
  assumptions: ["Members that overlap in the elevation count twice, which is on the safe side."],
  example: {
    args: {
      walls: [["north", 40, 10]],
      members: [
        ["post", 6, 6],
        ["plate", 1.5, 2, 40],
      ],
    },
    gives: 0.1,
    within: 1e-12,
    source: "exact arithmetic: (6 x 0.5 x 10 + 2 x 0.125 x 40) / 400",
  },
  refuses: [
    {
      args: {
        walls: [
          ["north", 40, 10],
          ["south", 40, 9],
        ],
      },
      says: "the walls are of unlike height",
    },
    { args: { walls: [["north", 3, 10]] }, says: "framing is a part of the wall" },
    { args: { walls: [["north", 40, 10, -1]] }, says: "a gable rises to its peak" },
    {
      args: {
        walls: [
          ["north", 40, 10],
          ["north", 40, 10],
        ],
      },
      says: "columns and openings go by the name of their wall",
    },
    { args: { openings: [["x", 1, 1, 1, 1, 1, 1]] }, says: "the walls are north" },
    { args: { walls: [["north", 0, 10]] }, says: "it must be from 0.1 to 2000 ft" },
    { args: { openings: [["window", 20, 9, 10, 0]] }, says: "the share is taken of the walls without openings" },
  ],
  notFor: "A share for an energy permit may be fixed by the code whatever is built: look there first.",
  run(a, tape) {
    const opened = openedWalls(a.walls, a.openings);
    const faces = opened.map(({ wall }): FramedArea => wall);
    const holes = opened.flatMap(({ openings }) =>
      openings.map((o) => ({ name: o.name, areaFt2: o.widthFt * o.heightFt * o.count })),
    );
    const parts = a.members.map((m) => ({
      row: m.row,
      name: m.member,
      widthIn: m.width,
      count: m.count,
      lengthFt: m.length,
    }));
    return framingShare(faces, parts, holes, tape);
  },
});

export const enclosureFramingFunctions = [framingShareFunction] as const;
