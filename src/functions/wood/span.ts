import { plain } from "../../core/kit/refusal.ts";
import { joistLoads } from "../../core/wood/joist-loads.ts";
import { type AllowedSpan, joistSpans } from "../../core/wood/joist-span.ts";
import { REPETITIVE_MOST_IN } from "../../core/wood/tables/factors.ts";
import { ifGiven } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { length, quantity } from "../declare/scalar.ts";
import { familyFunction } from "./family.ts";
import { material, ownValues, woodFor } from "./material-param.ts";
import {
  CAUTION,
  deflectionLimit,
  designMethod,
  GRADES_FROM_MEMORY,
  loadDuration,
  NDS_SOURCE,
  spans,
  useOf,
  woodService,
  woodStandard,
} from "./params.ts";
import { section } from "./section-param.ts";

const columns = columnsOf<AllowedSpan>(["check", "", (s) => s.check], ["span", "ft", (s) => s.spanIn / 12]);

const psf = (says: string, least: number) =>
  quantity("psf", { says, min: 0, max: 1000, usual: { min: least, max: 300, ask: "is it psf?" } });

export const woodSpan = familyFunction({
  name: "WOOD_SPAN",
  summary: "Greatest clear span of joists, rafters or girders by bending, shear and deflection.",
  params: {
    section,
    material,
    spacing: length("in", {
      says: "spacing of the members, in",
      min: 3,
      max: 240,
      usual: { min: 8, max: 120, ask: "is it the spacing in inches?" },
    }),
    live: psf("live or snow load, not factored, psf; deflection goes by it alone", 5),
    dead: psf("dead load with the member's own weight, psf", 2),
    spans,
  },
  placed: { loadDuration, deflectionLimit, woodService, values: ownValues },
  named: { designMethod, loadLevel: ifGiven("load level"), woodStandard },
  returns: columns.table("the span that each check allows, the least first, none over 26 ft"),
  sources: [
    NDS_SOURCE,
    GRADES_FROM_MEMORY,
    "Model of the span tables, IRC 2018 R802.4.1 and R802.5.1: bending under live and dead load, deflection under live load, not over 26 ft",
  ],
  assumptions: [
    `Repetitive member factor where the spacing is ${REPETITIVE_MOST_IN} in or less.`,
    "Spans are clear spans; bearing is not checked; the compression edge is held by the deck, over inner supports too.",
    "Live and dead load are unfactored; strength design factors them, 1.2 D + 1.6 L.",
  ],
  cautions: [CAUTION],
  example: {
    args: {
      section: "3.5 x 3.5",
      material: [
        ["material", "Fb", "Fv", "E"],
        ["post of the book", 1500, 180, 1_700_000],
      ],
      spacing: 30,
      live: 100,
      dead: 0,
      loadDuration: "construction",
      deflectionLimit: "L/360",
    },
    gives: [
      ["deflection", 60.1 / 12],
      ["bending", 71.7 / 12],
      ["shear", 183.4 / 12],
    ],
    within: 0.1 / 12,
    source: "Formwork textbook (4th ed. 2010), p 331: 250 plf; 60.1 in (digits cut), 71.7 in, 183.4 in",
  },
  refuses: [
    { args: { loadDuration: "wind" }, says: "the live load comes from wind or an earthquake, and its strength" },
    { args: { section: "6" }, says: "it is not read as a section" },
    { args: { deflectionLimit: "6" }, says: "limits from L/120 to L/600 are known" },
    {
      args: {
        material: [
          ["a", "Fb", "Fv", "E"],
          ["post of the book", 1500, 180, 1700000],
        ],
      },
      says: "its columns are material, kind, Fb, Ft, Fv, Fcp, Fc, E, Emin, G",
    },
    { args: { spacing: 0.3 }, says: "it must be from 3 to 240 in" },
    { args: { live: 0, dead: 0 }, says: "there is no load" },
  ],
  notFor:
    "Spans under a point load, of trusses or of I-joists go elsewhere: WOOD_CHECK takes point loads, makers' tables the products.",
  run(a, tape) {
    const use = useOf(a, tape);
    const wood = woodFor(a.material, a.values, a.section, tape);
    const repetitive = a.spacing <= REPETITIVE_MOST_IN;
    const loads = joistLoads({ livePsf: a.live, deadPsf: a.dead, spacingIn: a.spacing }, use, a.loadLevel, tape);
    const found = joistSpans(
      { section: a.section, wood, use, repetitive },
      { ...loads, spans: a.spans, deflectionOver: a.deflectionLimit },
      tape,
    );
    const rows = columns.rows(found);
    tape?.step("spans", `check, span in ft; spacing ${plain(a.spacing)} in`, rows, "", "");
    return rows;
  },
});
