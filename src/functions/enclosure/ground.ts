import { GROUND_KINDS, type GroundLoss, groundLoss } from "../../core/enclosure/loss/ground.ts";
import { BASEMENT_SOURCE, CRAWL_SOURCE, OPEN_FLOOR_SOURCE, SLAB_SOURCE } from "../../core/enclosure/tables/ground.ts";
import { needed } from "../basis/term.ts";
import { preliminary } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length, quantity } from "../declare/scalar.ts";
import { choice, text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { readGroundInsulation } from "./read/ground.ts";
import { shown } from "./shown.ts";

const columns = columnsOf<GroundLoss>(["heat loss", "Btu/h", (r) => r.btuH], ["F", "Btu/(h ft F)", (r) => r.fFactor]);

const heatLossGround = familyFunction({
  name: "HEATLOSS_GROUND",
  summary: "Heat that a slab on grade, a basement or a crawl space loses, by printed factors.",
  params: {
    kind: choice(GROUND_KINDS, {
      says: "what stands on or in the ground",
      also: {
        "slab on grade": "slab",
        "slab-on-grade": "slab",
        "unheated slab": "slab",
        crawl: "crawl space",
        crawlspace: "crawl space",
        "heated crawl space": "crawl space",
        "conditioned crawl space": "crawl space",
        "open crawlspace": "open crawl space",
        "exposed floor": "open crawl space",
        piers: "open crawl space",
      },
    }),
    perimeter: length("ft", {
      says: "length of the edge outdoors",
      above: 0,
      max: 1e5,
      usual: { min: 10, max: 800, ask: "is it in feet?" },
    }),
    area: optional(
      quantity("ft2", {
        says: "area of basement walls below grade, or of the floor over a crawl space",
        above: 0,
        max: 1e6,
      }),
      undefined,
      "",
    ),
    insulation: optional(
      text({
        says: "insulation: R-10 2 ft vertical, R-10 4 ft horizontal (slab); R-19 interior, R-10 exterior (basement); R-19 perimeter (crawl space); R-30 floor (open crawl space); none",
      }),
      "none",
      "no insulation",
    ),
  },
  placed: { indoorTemperature: needed("indoor temperature"), outdoorTemperature: needed("outdoor temperature") },
  oneRow: true,
  returns: columns.table("one row"),
  sources: [SLAB_SOURCE, BASEMENT_SOURCE, CRAWL_SOURCE, OPEN_FLOOR_SOURCE],
  assumptions: [
    "Only printed rows are used. Vented and unheated crawl spaces under an insulated floor have none here: take the floor as a part of HEATLOSS.",
  ],
  cautions: [preliminary("heat loss")],
  example: {
    args: {
      kind: "slab",
      perimeter: 100,
      insulation: "R-10 2 ft vertical",
      indoorTemperature: 70,
      outdoorTemperature: 20,
    },
    gives: [[2700, 0.54]],
    within: 1e-6,
    source: `${SLAB_SOURCE}: F 0.54 with R-10 to 2 ft, vertical; 0.54 x 100 x 50 by arithmetic`,
  },
  refuses: [
    { args: { kind: "basement", insulation: "R-12 exterior", area: 700 }, says: "was read with its wall only" },
    {
      args: { kind: "basement", insulation: "R-19 interior", area: 5000 },
      says: "the table holds depths from 2 to 7 ft",
    },
    { args: { kind: "basement", insulation: "R-19 interior" }, says: "the area over the perimeter is their depth" },
    {
      args: { kind: "crawl space", insulation: "R-19 perimeter", area: 1000 },
      says: "even a round one of that edge has",
    },
    {
      args: { kind: "crawl space", insulation: "R-19 perimeter" },
      says: "its heat goes by the area of the floor above it",
    },
    { args: { kind: "basement" }, says: "only printed rows are used, never a value between them" },
    { args: { indoorTemperature: 210 }, says: "it must be from -60 to 200 F" },
  ],
  notFor: "Vented crawl spaces, heated slabs on a cold joint and deep basements beyond the printed rows go elsewhere.",
  run(a, tape) {
    const ground = {
      kind: a.kind,
      perimeterFt: a.perimeter,
      areaFt2: a.area,
      insulation: readGroundInsulation(a.insulation),
    };
    const loss = groundLoss(ground, a.indoorTemperature, a.outdoorTemperature, tape);
    return shown(columns, [loss], tape, { symbol: "q, F", rule: "heat loss and edge factor" });
  },
});

export const enclosureGroundFunctions = [heatLossGround] as const;
