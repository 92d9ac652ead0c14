import { loadDurationFactor, timeEffectFactor } from "../kit/load-duration.ts";
import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { solveBeam } from "./beam/beam.ts";
import { greatestDeflection } from "./beam/beam-extremes.ts";
import { ALIKE, equalSpans, uniform } from "./beam/spans.ts";
import { type Check, checkOf, worstFirst } from "./check.ts";
import { type AllowedSpan, type SpanFactors, spanFactors } from "./joist-span.ts";
import type { PanelCase, PanelValue } from "./panel-case.ts";
import { panelPicture } from "./picture-of-panel.ts";
import {
  ADDED_TO_CLEAR_IN,
  GRAVITY_IN_S2,
  LIVELY_HZ,
  PANEL_WIDTH_IN,
  PLYWOOD_SHEAR,
  SHEAR_FORM,
} from "./tables/panel.ts";
import { CD_SOURCE, LAMBDA_SOURCE, RESISTANCE, RESISTANCE_SOURCE } from "./tables/resistance.ts";
import type { Use } from "./use.ts";

const MEANS: Readonly<Record<PanelValue, string>> = {
  E: "modulus of elasticity, psi",
  G: "shear modulus, psi, or none to leave shear deflection out",
  Fb: "bending strength, psi",
  Fv: "shear strength, psi",
  Fs: "rolling shear strength, psi",
  I: "moment of inertia, in4 per ft of width",
  S: "section modulus, in3 per ft of width",
  Q: "Ib/Q, in2 per ft of width",
  C: "plywood's shear factor",
  thickness: "thickness, in",
  "support width": "width of a support, in",
};

/** What a solid panel of one direction of grain would have, to help with a missing I, S or Q. */
function solid(name: PanelValue, thicknessIn: number | undefined): string {
  if (thicknessIn === undefined) return "";
  const t = thicknessIn;
  const value = { I: t ** 3, S: 2 * t ** 2, Q: 8 * t }[name as "I" | "S" | "Q"];
  return value === undefined ? "" : `; for a solid section of ${plain(t)} in it would be ${plain(value)}`;
}

/** A value that the calculation cannot do without. */
function need(c: PanelCase, name: PanelValue): number {
  const value = c.values[name];
  if (value !== undefined && value > 0) return value;
  throw new BadInput(
    `The panel's ${name} ${c.grain} the grain is missing`,
    `the check needs it (${MEANS[name]})`,
    `Add a row ${name} from the panel's evaluation report${solid(name, c.values.thickness)}`,
  );
}

/** A strength of the panel with its factors. */
function strength(c: PanelCase, name: "Fb" | "Fs" | "Fv", tape?: Tape): number {
  const reference = need(c, name);
  if (c.use.method === "allowable") {
    const cd = loadDurationFactor(c.use.duration);
    tape?.step("CD", `load duration: ${c.use.duration}`, cd, "", CD_SOURCE);
    tape?.step(`${name}'`, `${plain(reference)} x CD ${plain(cd)}`, reference * cd, "psi", "NDS 9.3");
    return reference * cd;
  }
  const { kf, phi } = RESISTANCE[name] as { kf: number; phi: number };
  const lambda = timeEffectFactor(c.use.duration);
  tape?.step("lambda", `time effect: ${c.use.duration}`, lambda, "", LAMBDA_SOURCE);
  const value = reference * kf * phi * lambda;
  tape?.step(`${name}'`, `${plain(reference)} x KF ${kf} x phi ${phi} x lambda`, value, "psi", RESISTANCE_SOURCE);
  return value;
}

/** Clear span between supports of some width. */
function clearSpan(c: PanelCase): number {
  const clear = c.spanIn - (c.values["support width"] ?? 0);
  if (clear > 0) return clear;
  throw new BadInput(
    `The supports are ${plain(c.values["support width"] ?? 0)} in wide`,
    `they leave no clear span at ${plain(c.spanIn)} in center to center`,
    "Check the span and the support width",
  );
}

/** Span that bending deflection goes by. */
function sagSpan(c: PanelCase): number {
  return Math.min(c.spanIn, clearSpan(c) + ADDED_TO_CLEAR_IN);
}

function perInch(psf: number): number {
  return psf / PANEL_WIDTH_IN;
}

function bending(c: PanelCase, k: SpanFactors, tape?: Tape): Check {
  const s = need(c, "S");
  const moment = k.moment * perInch(c.psf) * c.spanIn ** 2;
  tape?.step(
    "M",
    `${plain(k.moment)} w L^2, w ${plain(c.psf)} psf, L ${plain(c.spanIn)} in`,
    moment,
    "lb in/ft",
    "statics",
  );
  return bendingOfStrip(moment, s, strength(c, "Fb", tape), tape);
}

/**
 * Bending of a strip of a panel one foot wide: its stress over its strength.
 * @param momentLbIn of the strip
 * @param sIn3 section modulus of the strip
 * @param fbPsi bending strength with its factors
 * Source: NDS 2018 Eq. 3.3-2 and 9.2.
 */
export function bendingOfStrip(momentLbIn: number, sIn3: number, fbPsi: number, tape?: Tape): Check {
  tape?.step("fb", `M / S, S ${plain(sIn3)} in3/ft`, momentLbIn / sIn3, "psi", "NDS Eq. 3.3-2");
  return checkOf("bending", momentLbIn / sIn3, fbPsi, "psi", "NDS 9.2", tape);
}

function shear(c: PanelCase, k: SpanFactors, tape?: Tape): Check[] {
  const names = (["Fs", "Fv"] as const).filter((name) => (c.values[name] ?? 0) > 0);
  if (names.length === 0) need(c, "Fs");
  const q = need(c, "Q");
  const force = k.shear * perInch(c.psf) * clearSpan(c);
  tape?.step("V", `${plain(k.shear)} w L, clear span ${plain(clearSpan(c))} in`, force, "lb/ft", "statics");
  tape?.step("fs", `V / (Ib/Q), Ib/Q ${plain(q)} in2/ft`, force / q, "psi", "NDS 9.2");
  return names.map((name) => {
    const what = name === "Fs" ? "rolling shear" : "shear";
    return checkOf(what, force / q, strength(c, name, tape), "psi", "NDS 9.2", tape);
  });
}

/** Greatest deflection, in, with the shear part by G or by plywood's factor C. */
function deflection(c: PanelCase, k: SpanFactors, tape?: Tape): number {
  const ei = need(c, "E") * need(c, "I");
  const w = perInch(c.servicePsf);
  const span = sagSpan(c);
  const bent = (k.deflection * w * span ** 4) / ei;
  tape?.step(
    "bending deflection",
    `${plain(k.deflection)} w L^4 / (E I), E I ${plain(ei)} lb in2/ft, L ${plain(span)} in`,
    bent,
    "in",
    "elastic line",
  );
  const factor = c.values.C;
  if (factor !== undefined && factor > 0) {
    const t = need(c, "thickness");
    const clear = clearSpan(c);
    const part = (factor * c.servicePsf * t ** 2 * clear ** 2) / (PLYWOOD_SHEAR.over * (ei / PLYWOOD_SHEAR.eShare));
    tape?.step(
      "shear deflection",
      `C w t^2 L^2 / (1270 (E/1.1) I), C ${plain(factor)}, L ${plain(clear)} in`,
      part,
      "in",
      "formwork textbook (4th ed. 2010) after the plywood trade association",
    );
    return bent + part;
  }
  if (c.values.G === 0) {
    tape?.caution(
      "Shear deflection is left out, as the panel's row G says none: thick panels on short spans deflect more.",
    );
    return bent;
  }
  const ga = (need(c, "G") * PANEL_WIDTH_IN * need(c, "thickness")) / SHEAR_FORM;
  const beam = equalSpans(span, c.spans, { bending: ei, shear: ga }, [uniform(span * c.spans, w)]);
  const whole = Math.abs(greatestDeflection(solveBeam(beam)).value);
  tape?.step(
    "deflection with shear",
    `of the shear-flexible beam, G A / 1.2 = ${plain(ga)} lb/ft`,
    whole,
    "in",
    "elastic line (Timoshenko)",
  );
  return whole;
}

function sag(c: PanelCase, k: SpanFactors, tape?: Tape): Check {
  const found = deflection(c, k, tape);
  tape?.step("deflection", `under ${plain(c.servicePsf)} psf`, found, "in", "elastic line");
  const limit = c.spanIn / c.deflectionOver;
  return checkOf("deflection", found, limit, "in", `L/${plain(c.deflectionOver)}`, tape);
}

/**
 * Bending, rolling shear or shear, and deflection of a panel that lies across its supports, the worst first.
 * @throws BadInput naming the value that the panel's row lacks; in wet service, for which the report has values
 * Source: statics of equal spans (exact); NDS chapter 9; formwork textbook (4th ed. 2010) for plywood's shear deflection.
 */
export function panelChecks(c: PanelCase, tape?: Tape): Check[] {
  return checksOf(c, spanFactors(c.spans), tape);
}

function checksOf(c: PanelCase, k: SpanFactors, tape?: Tape): Check[] {
  refuseWet(c.use);
  const checks = [bending(c, k, tape), ...shear(c, k, tape), sag(c, k, tape)];
  warn(c, checks, tape);
  const sorted = worstFirst(checks);
  tape?.show(panelPicture(c, sorted));
  return sorted;
}

function refuseWet(use: Use): void {
  if (!use.wet) return;
  throw new BadInput(
    "The panel is asked for wet service",
    "wet service factors of panels stand in their reports",
    "Give the values for wet use in the panel's rows, and say dry",
  );
}

function warn(c: PanelCase, checks: readonly Check[], tape?: Tape): void {
  tape?.assume(
    `The panel spans with its face grain ${c.grain} the span, ${c.spans} equal spans, fastened at every support, strips 24 in wide and more.`,
  );
  tape?.assume("A wind reduced for deflection is not used: deflection goes by the whole pressure at service level.");
  if (c.use.duration !== "live") return;
  if (c.spans > 1) tape?.caution(ALIKE);
  const found = checks.find((check) => check.check === "deflection");
  if (found !== undefined && tape !== undefined) vibration(found.demand, tape);
}

/** Says how lively a floor panel is: its frequency if the whole pressure were its weight. */
function vibration(deflectionIn: number, tape: Tape): void {
  const hertz = frequency(deflectionIn);
  tape.step(
    "f1",
    "(pi/2) sqrt(5 g / (384 deflection)), the whole load as weight",
    hertz,
    "Hz",
    "mechanics of a simple beam",
  );
  tape.caution(
    `Vibration of the floor is not checked. With the whole load on it the panel would swing at about ${hertz.toFixed(1)} Hz${hertz < LIVELY_HZ ? `, under the ${LIVELY_HZ} Hz below which floors are felt (EN 1995-1-1 7.3.3, from memory)` : ""}: keep the deflection small, or ask for the report's floor spans.`,
  );
}

/**
 * Lowest frequency of a simple beam from its deflection under its own mass, Hz.
 * Source: mechanics of vibration of a uniform beam, (pi/2) sqrt(E I / (m L^4)).
 */
export function frequency(deflectionIn: number): number {
  return (Math.PI / 2) * Math.sqrt((5 * GRAVITY_IN_S2) / (384 * deflectionIn));
}

/** Greatest span that is tried, in: nothing is promised beyond. */
const MOST_PANEL_SPAN_IN = 240;
/** Least clear span that is tried, in. */
const LEAST_CLEAR_IN = 1;

/**
 * Greatest spans of a panel by each check, the least first; none over 240 in.
 * @param c its span is not used
 * @throws BadInput for a pressure that no span carries
 * Source: as the checks; the span is found by halving.
 */
export function panelSpans(c: PanelCase, tape?: Tape): AllowedSpan[] {
  const k = spanFactors(c.spans);
  const start = LEAST_CLEAR_IN + (c.values["support width"] ?? 0);
  const names = checksOf({ ...c, spanIn: start }, k).map((check) => check.check);
  const sorted = names
    .map((check) => ({ check, spanIn: greatestSpan(c, k, check, start) }))
    .sort((a, b) => a.spanIn - b.spanIn);
  const least = sorted[0]?.spanIn ?? 0;
  checksOf({ ...c, spanIn: least }, k, tape);
  for (const s of sorted)
    tape?.step(`L ${s.check}`, `span at which ${s.check} just holds`, s.spanIn, "in", "by halving");
  tape?.step("L", `the least: ${sorted[0]?.check}`, least, "in", "");
  return sorted;
}

/** The ratio of one check alone. */
function ratioOf(c: PanelCase, k: SpanFactors, check: string): number {
  if (check === "bending") return bending(c, k).ratio;
  if (check === "deflection") return sag(c, k).ratio;
  return shear(c, k).find((found) => found.check === check)?.ratio ?? 0;
}

/** By halving: every ratio rises with the span. */
function greatestSpan(c: PanelCase, k: SpanFactors, check: string, startIn: number): number {
  const ratio = (spanIn: number) => ratioOf({ ...c, spanIn }, k, check);
  if (ratio(startIn) > 1) {
    throw new BadInput(
      `The panel does not carry ${plain(c.psf)} psf over any span`,
      `${check} fails at ${plain(startIn)} in`,
      "Check the pressure and the panel's values",
    );
  }
  let [low, high] = [startIn, MOST_PANEL_SPAN_IN];
  if (ratio(high) <= 1) return high;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (ratio(middle) > 1) high = middle;
    else low = middle;
  }
  return low;
}

/** Halvings of 240 in: to a part of a trillion. */
const HALVINGS = 50;
