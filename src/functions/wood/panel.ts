import type { LoadDuration } from "../../core/kit/load-duration.ts";
import type { LoadLevel } from "../../core/kit/load-level.ts";
import { BadInput, plain } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import type { Check } from "../../core/wood/check.ts";
import type { AllowedSpan } from "../../core/wood/joist-span.ts";
import { panelChecks, panelSpans } from "../../core/wood/panel.ts";
import type { Grain, PanelCase } from "../../core/wood/panel-case.ts";
import { levels } from "../../core/wood/use.ts";
import { ifGiven } from "../basis/term.ts";
import { oneCell } from "../declare/cell.ts";
import { preliminary } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional, type Param } from "../declare/param.ts";
import { length, quantity } from "../declare/scalar.ts";
import { choice } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { panel, panelValues } from "./panel-param.ts";
import { deflectionLimit, designMethod, loadDuration, spans, useOf, woodService, woodStandard } from "./params.ts";

const pressure = quantity("psf", {
  says: "pressure on the panel, toward or away, psf",
  min: -10_000,
  max: 10_000,
  usual: { min: 4, max: 300, eitherSign: true, ask: "is it psf?" },
});
const spanInches = length("in", {
  says: "span, center to center of the supports, in",
  min: 2,
  max: 240,
  usual: { min: 12, max: 144, ask: "is it the span in inches, not feet?" },
});

/** A span, and whether a unit was written behind it. */
interface PanelSpan {
  readonly inches: number;
  readonly bare: boolean;
}

const panelSpanIn: Param<PanelSpan, number | string> = {
  ...spanInches,
  read(raw, at, notes) {
    const { value, shown } = spanInches.read(raw, at, notes);
    const cell = oneCell(raw, at, "the span in inches");
    return { value: { inches: value, bare: typeof cell === "number" || /^[\d.\s]+$/.test(String(cell)) }, shown };
  },
};

/** Spans under a foot carry hundreds of psf in print; under an everyday pressure they are feet. */
const FEET = { underIn: 12, underPsf: 100 } as const;

/** Inches of a span. @throws BadInput for a bare number that must be feet */
function inchesOf({ inches, bare }: PanelSpan, psf: number): number {
  if (!bare || inches >= FEET.underIn || Math.abs(psf) >= FEET.underPsf) return inches;
  throw new BadInput(
    `Span is ${plain(inches)} in under ${plain(Math.abs(psf))} psf`,
    "a panel's span is in inches, and this looks like feet",
    `Give ${plain(inches * 12)} for ${plain(inches)} ft, or text such as ${plain(inches)} in`,
  );
}

const grain = optional(
  choice(["along", "across"], {
    says: "direction of the span: along the face grain, or across it",
    means: { along: "face grain spans from support to support", across: "face grain lies along the supports" },
  }),
  "along",
  "face grain along the span",
);
const placed = { deflectionLimit, loadDuration, woodService };
const named = { designMethod, loadLevel: ifGiven("load level"), woodStandard };

const SOURCES = [
  "Statics and elastic line of equal spans, exact; shear deflection by G (Timoshenko)",
  "Plywood's shear deflection by C: formwork textbook (4th ed. 2010), Tables 4-13, 4-16 and 9-7, after the plywood trade association; E/1.1 in it is inferred from the printed tables",
  "NDS 2018 chapter 9 and Appendix N, from memory",
] as const;
const ASSUMPTIONS = [
  "The panel's values are those of its evaluation report, of a foot of width; two editions of a table are not mixed.",
  "Equal bays under one pressure; only load duration is laid on the strengths.",
] as const;
const CAUTIONS = [
  preliminary("wood panel"),
  "A panel's report rules: fastening, edge support, openings and joints are not checked.",
] as const;

interface PanelArguments {
  readonly panel: Parameters<typeof panelValues>[0];
  readonly pressure: number;
  readonly spans: number;
  readonly grain: Grain;
  readonly deflectionLimit: number;
  readonly loadDuration: LoadDuration | number;
  readonly woodService: "dry" | "wet";
  readonly designMethod: LoadLevel;
  readonly loadLevel: LoadLevel | undefined;
  readonly woodStandard: string;
}

function caseOf(a: PanelArguments, spanIn: number, tape?: Tape): PanelCase {
  if (a.pressure === 0) throw new BadInput("Pressure is 0", "there is nothing to check", "Give the pressure in psf");
  const use = useOf(a, tape);
  const { design, service } = levels("The pressure", Math.abs(a.pressure), "psf", use, a.loadLevel, tape);
  return {
    values: panelValues(a.panel, a.grain),
    grain: a.grain,
    spanIn,
    spans: a.spans,
    psf: design,
    servicePsf: service,
    deflectionOver: a.deflectionLimit,
    use,
  };
}

const checkColumns = columnsOf<Check>(
  ["check", "", (c) => c.check],
  ["demand", "", (c) => c.demand],
  ["capacity", "", (c) => c.capacity],
  ["unit", "", (c) => c.unit],
  ["ratio", "", (c) => c.ratio],
);

/** Concrete-form plywood 3/4 in, Class I, of the printed tables, with the strengths that they stand on. */
const PLYWOOD = [
  ["value", "along", "across", "unit"],
  ["E", 1_650_000, 1_650_000, "psi"],
  ["Fb", 1930, 1930, "psi"],
  ["Fs", 72, 72, "psi"],
  ["I", 0.199, 0.092, "in4/ft"],
  ["S", 0.455, 0.306, "in3/ft"],
  ["Q", 7.187, 4.063, "in2/ft"],
  ["C", 120, 60, ""],
  ["thickness", 0.75, 0.75, "in"],
  ["support width", 1.5, 1.5, "in"],
] as const;

/** Check and span meet the same panels, loads and levels. */
const REFUSES = [
  { args: { woodService: "wet" }, says: "wet service factors of panels stand in their reports" },
  { args: { loadDuration: "wind" }, says: "the pressure comes from wind or an earthquake, and its strength level" },
  {
    args: { loadLevel: "strength" },
    says: "only wind and seismic forces go from one level to the other by one factor",
  },
  {
    args: { designMethod: "strength" },
    says: "strength design takes the time effect factor by the kind of load (NDS",
  },
  { args: { spans: 6 }, says: "it must be from 1 to 3" },
] as const;

export const panelCheck = familyFunction({
  name: "PANEL_CHECK",
  summary: "A panel over one, two or three bays under wind or live load: bending, rolling shear, deflection.",
  params: {
    panel,
    span: panelSpanIn,
    pressure,
    spans,
    grain,
  },
  placed,
  named,
  returns: checkColumns.table("a row a check, the worst first; up to a ratio of 1 it is enough"),
  sources: SOURCES,
  assumptions: ASSUMPTIONS,
  cautions: CAUTIONS,
  example: {
    args: {
      panel: PLYWOOD,
      span: 24,
      pressure: 175,
      spans: 3,
      deflectionLimit: "L/240",
      loadDuration: 1,
    },
    gives: [
      ["deflection", 0.0977, 0.1, "in", 0.977],
      ["bending", 1846.2, 1930, "psi", 0.957],
      ["rolling shear", 27.4, 72, "psi", 0.38],
    ],
    within: 0.06,
    source:
      "Formwork textbook (4th ed. 2010), Ex. 5-14: bending allows 183 psf, 1.05 times 175 psf; the rest exact arithmetic",
  },
  refuses: [
    {
      args: {
        panel: [...PLYWOOD.slice(0, -1), ["support width", 24, 24, "in"]],
      },
      says: "they leave no clear span",
    },
    ...REFUSES,
    {
      args: {
        panel: [
          ["value", "along", "across", "unit"],
          ["E", 1_650_000, 1_650_000, "psi"],
        ],
      },
      says: "the check needs it (section modulus, in3 per ft of width)",
    },
  ],
  notFor: "Panels fastened as a diaphragm, point loads and unequal bays follow the panel's report and an engineer.",
  run(a, tape) {
    const rows = checkColumns.rows(panelChecks(caseOf(a, inchesOf(a.span, a.pressure), tape), tape));
    tape?.step("checks", "check, demand, capacity, unit, ratio", rows, "", "");
    return rows;
  },
});

const spanColumns = columnsOf<AllowedSpan>(["check", "", (s) => s.check], ["span", "in", (s) => s.spanIn]);

export const panelSpan = familyFunction({
  name: "PANEL_SPAN",
  summary: "Greatest span of a panel, and so of column spacing, for a pressure.",
  params: { panel, pressure, spans, grain },
  placed,
  named,
  returns: spanColumns.table("the span that each check allows, center to center, the least first; none over 240 in"),
  sources: SOURCES,
  assumptions: ASSUMPTIONS,
  cautions: CAUTIONS,
  example: {
    args: {
      panel: PLYWOOD,
      pressure: 730,
      spans: 3,
      deflectionLimit: "L/270",
      loadDuration: 1,
    },
    gives: [
      ["bending", 12],
      ["deflection", 13.78],
      ["rolling shear", 15.68],
    ],
    within: 0.05,
    source: "Formwork textbook (4th ed. 2010), Table 4-13: 730 psf at 12 in, bending; the rest exact arithmetic",
  },
  refuses: [...REFUSES, { args: { pressure: 8760, grain: "across" }, says: "rolling shear fails at 2.5 in" }],
  notFor:
    "Diaphragms, point loads and unequal bays follow the panel's report; the span here is for even pressure only.",
  run(a, tape) {
    const rows = spanColumns.rows(panelSpans(caseOf(a, 0, tape), tape));
    tape?.step("spans", "check, span in in", rows, "", "");
    return rows;
  },
});
