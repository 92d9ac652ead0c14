import { liftWeight, type WeightRow } from "../../core/lifting/weight.ts";
import { TOTAL, wallAreas } from "../../core/takeoff/wall/wall-area.ts";
import { orElse } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { spill } from "../declare/spill.ts";
import { layers } from "../enclosure/layers.ts";
import { openedWalls, someOpenings, walls } from "../takeoff/walls.ts";
import { familyFunction } from "./family.ts";
import { weighed } from "./layer-weight.ts";
import { pieces } from "./pieces.ts";
import { LIFT_CAUTIONS } from "./words.ts";

const columns = columnsOf<WeightRow>(
  ["wall", "", (r) => r.wall],
  ["area", "ft2", (r) => r.areaFt2],
  ["psf", "psf", (r) => r.psf],
  ["weight", "lb", (r) => r.weightLb],
);

export const weight = familyFunction({
  name: "LIFT_WEIGHT",
  summary: "Weight of walls to lift from net areas and layers, with what is set in and rain that they hold.",
  params: {
    walls,
    layers: layers("the layers that are on the wall when it is lifted, one row each, with their weight"),
    openings: someOpenings,
    added: optional(pieces, [], "nothing is set in"),
  },
  placed: { wetAllowance: orElse("wet allowance") },
  returns: columns.table(
    "net area, weight of a square foot with its water and weight of each wall; then what is set in; last the total",
  ),
  sources: [
    "exact arithmetic on the weights given; built-in weights as LOAD_DEAD (HUD guide Table 3.2, ASCE/SEI 7 Table C3-1)",
    "US Navy rigging manuals print round densities for rigging (wood 50, concrete 150, steel 490 pcf): not used here",
  ],
  assumptions: [
    "Layers count by net area, the wet allowance on them alone; plates, columns, bucks and windows count only where they are given as added pieces.",
  ],
  cautions: [...LIFT_CAUTIONS, "Weigh the first lift: makers' weights, moisture and what clings to the wall differ."],
  example: {
    args: {
      walls: [["south", 40, 10]],
      layers: [
        ["veneer panel", 1.5, null, null, null, null, null, null, null, "36 pcf"],
        ["mineral wool board", 6, null, null, null, null, null, null, null, "3.5"],
      ],
      openings: [["window", 4, 5, 2]],
      added: [["window", 160, null, null, null, 2]],
      wetAllowance: 0.05,
    },
    gives: [
      ["south", 360, 8.4, 3024],
      ["window", 0, 0, 320],
      ["total", 360, 3344 / 360, 3344],
    ],
    within: 1e-9,
    source: "exact arithmetic: (36 x 1.5 / 12 + 3.5) x 1.05 x (400 - 40) + 2 x 160",
  },
  refuses: [
    { args: { walls: [["south", 3, 10]] }, says: "south is 3 ft long and 10 ft high" },
    { args: { openings: [["window", 4, 5, 24]] }, says: "the wall has 400 ft2" },
    { args: { openings: [["window", 4, 5, 2, "", "", 3]] }, says: "the walls are south" },
    { args: { wetAllowance: -1 }, says: "it must be from 0 to 0.5" },
    {
      args: { layers: [["air space", 1]], openings: null, added: null },
      says: "no wall area, layer or piece has weight",
    },
  ],
  notFor: "A truck scale or a load cell beats any sum: weigh the first wall of a kind.",
  run(a, tape) {
    const areas = wallAreas(openedWalls(a.walls, a.openings), tape).filter((r) => r.wall !== TOTAL);
    const faces = areas.map((r) => ({ wall: r.wall, netFt2: r.netFt2 }));
    const stack = a.layers.map((layer) => weighed(layer, tape));
    const added = a.added.map((p) => ({ piece: p.piece, weightLb: p.weight, count: p.count }));
    const rows = liftWeight(faces, stack, added, a.wetAllowance, tape);
    return spill(columns, rows, "W", "area, psf, weight; total", tape);
  },
});
