import { openingsFactor } from "../../core/anchorage/openings-factor.ts";
import { BadInput } from "../../core/kit/refusal.ts";
import { orElse } from "../basis/term.ts";
import { capital } from "../declare/cell.ts";
import { quantityOf } from "../declare/cell-function.ts";
import { mapped } from "../declare/scalar.ts";
import { openedWalls, openings, walls } from "../takeoff/walls.ts";
import { familyFunction } from "./family.ts";
import { CAUTION } from "./params.ts";

/** One wall of level top. */
const wall = mapped(
  walls,
  (rows, at) => {
    const [only, other] = rows;
    if (only === undefined || other !== undefined) {
      throw new BadInput(
        `${capital(at)} has ${rows.length} rows`,
        "one wall is wanted here",
        "Point at the row of one wall",
      );
    }
    if (only.riseFt !== 0) {
      throw new BadInput(
        `The wall ${only.name} has a rise`,
        "the method is for walls of one height (SDPWS 4.3.5.3)",
        "Give the height of the sheathed wall under the gable, without the rise",
      );
    }
    return only;
  },
  "one wall: wall | length | height; lengths in ft or as text",
);

const factor = familyFunction({
  name: "SHEARWALL_OPENINGS",
  summary: "Shear capacity factor Co of a wall with openings that is not designed for the forces round them.",
  params: { wall, openings },
  placed: { shearWallStandard: orElse("shear wall standard") },
  returns: quantityOf("", "factor Co on the shear capacity of the pieces of full height"),
  sources: [
    "SDPWS 2015 and 2008 4.3.3.5: the equation read in a plan reviewer's message on the NEHRP 2000 commentary, the table from memory",
    "IBC 2006 2305.3.8.2, read: an opening without sheathing above or below counts as high as the wall",
  ],
  assumptions: [
    "The 2021 edition has another equation, which is not held: it is refused.",
    "The force at the ends is v h with v = V / (Co sum L_i), the height of the wall in it.",
  ],
  cautions: [CAUTION],
  example: {
    args: { wall: [["north", 40, 9]], openings: [["all", 20, 6]] },
    gives: 0.67,
    within: 0.005,
    source: "SDPWS 2015 Table 4.3.3.5, from memory: half of the length sheathed, openings two thirds of the height",
  },
  refuses: [
    { args: { shearWallStandard: "2021" }, says: "that edition has a new equation for Co, which is not held" },
    { args: { wall: [["north", 3, 9]] }, says: "the openings leave none wide enough" },
    { args: { wall: [["north", 40, 3]] }, says: "the method holds from 4 to 20 ft (SDPWS 2015 4.3.5.3)" },
    { args: { wall: [["north", 40, 9, 3]] }, says: "the method is for walls of one height (SDPWS 4.3.5.3)" },
    { args: { wall: [["north", 0, 9]] }, says: "it must be from 0.1 to 2000 ft" },
    { args: { openings: [["all", 20, 6, 1, null, 30]] }, says: "the wall is 40 ft long" },
    {
      args: { openings: [["all", 20, 6, 1, null, 0.5]] },
      says: "the method wants one at each end, at least 2.57143 ft wide here",
    },
    { args: { openings: [["all", 20, 12]] }, says: "the wall is 9 ft high" },
    {
      args: {
        openings: [
          ["a", 10, 6, 1, null, 2],
          ["b", 10, 6, 1, null, 5],
        ],
      },
      says: "it lies over the opening before it",
    },
    { args: { openings: [["all", 8, 6, 2, null, 5]] }, says: "openings alike cannot all be in one place" },
  ],
  notFor: "Walls by SDPWS 2021, and walls strapped round their openings, are other methods: an engineer has them.",
  run(a, tape) {
    const [opened] = openedWalls([a.wall], a.openings);
    const { lengthFt, heightFt } = a.wall;
    return openingsFactor({ lengthFt, heightFt, openings: opened?.openings ?? [] }, a.shearWallStandard, tape);
  },
});

export const openingFunctions = [factor] as const;
