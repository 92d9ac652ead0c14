import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { adjust, assumeCommon, type Member, showAdjusted } from "./adjust.ts";
import { solveBeam } from "./beam/beam.ts";
import { greatestDeflection, greatestMoment, greatestShear } from "./beam/beam-extremes.ts";
import { ALIKE, equalSpans, uniform } from "./beam/spans.ts";
import { bendingStiffness, bendingStress, SHEAR_SHAPE } from "./member-check.ts";
import { sectionProperties, showSection } from "./section.ts";
import { MOST_SPAN_FT } from "./tables/factors.ts";

/** Joists, rafters or girders side by side under uniform load, by clear span. */
export interface JoistCase {
  /** whole load on one member at the level of the design method, lb/in */
  readonly lbPerIn: number;
  /** load that deflection is checked for, lb/in */
  readonly serviceLbPerIn: number;
  readonly spans: number;
  /** allowed deflection: span over this */
  readonly deflectionOver: number;
}

/** The span that one check allows. */
export interface AllowedSpan {
  readonly check: string;
  readonly spanIn: number;
}

/** Of equal spans under one uniform load: moment w L^2, shear w L and deflection w L^4 / EI take these factors. */
export interface SpanFactors {
  readonly moment: number;
  readonly shear: number;
  readonly deflection: number;
}

/** From the exact answer of a beam of unit spans. Source: statics. */
export function spanFactors(spans: number): SpanFactors {
  const unit = solveBeam(equalSpans(1, spans, { bending: 1 }, [uniform(spans, 1)]));
  return {
    moment: Math.abs(greatestMoment(unit).value),
    shear: Math.abs(greatestShear(unit).value),
    deflection: Math.abs(greatestDeflection(unit).value),
  };
}

/**
 * Greatest clear spans by bending, shear and deflection, the least first, none over 26 ft.
 * The shear is taken at the depth from the support: w (kL - d).
 * Source: NDS 3.3 to 3.5; the limit of 26 ft is that of the span tables of IRC 2018 (R802.4.1, R802.5.1).
 */
export function joistSpans(member: Member, c: JoistCase, tape?: Tape): AllowedSpan[] {
  assumeCommon(member, tape);
  showSection(member.section, tape);
  const k = spanFactors(c.spans);
  tape?.step(
    "k",
    `${c.spans} equal spans: M = ${plain(k.moment)} w L^2, V = ${plain(k.shear)} w L, deflection`,
    k.deflection,
    "w L^4/EI",
    "statics",
  );
  const spans = [bendingSpan(member, c, k, tape), shearSpan(member, c, k, tape), deflectionSpan(member, c, k, tape)];
  if (c.spans > 1) tape?.caution(ALIKE);
  const most = MOST_SPAN_FT * 12;
  if (spans.every((s) => s.spanIn > most)) {
    tape?.caution(
      `Strength and stiffness would allow more than ${MOST_SPAN_FT} ft, where the span tables of the residential code end.`,
    );
  }
  const sorted = spans.map((s) => ({ ...s, spanIn: Math.min(s.spanIn, most) })).sort((a, b) => a.spanIn - b.spanIn);
  tape?.step(
    "L",
    `the least: ${sorted[0]?.check}, not over ${MOST_SPAN_FT} ft`,
    sorted[0]?.spanIn ?? 0,
    "in",
    "IRC 2018 R802.4.1",
  );
  return sorted;
}

function bendingSpan(member: Member, c: JoistCase, k: SpanFactors, tape?: Tape): AllowedSpan {
  const { modulusIn3 } = sectionProperties(member.section);
  const fb = bendingStress(member, 0, tape);
  const spanIn = Math.sqrt((fb * modulusIn3) / (k.moment * c.lbPerIn));
  tape?.step(
    "L bending",
    `sqrt(Fb' S / (${plain(k.moment)} w)), S ${plain(modulusIn3)} in3, w ${plain(c.lbPerIn)} lb/in`,
    spanIn,
    "in",
    "NDS 3.3",
  );
  return { check: "bending", spanIn };
}

function shearSpan(member: Member, c: JoistCase, k: SpanFactors, tape?: Tape): AllowedSpan {
  const { areaIn2 } = sectionProperties(member.section);
  const fv = adjust("Fv", member, tape);
  showAdjusted(fv, tape);
  const shear = (fv.adjustedPsi * areaIn2) / SHEAR_SHAPE;
  const spanIn = (shear / c.lbPerIn + member.section.depthIn) / k.shear;
  tape?.step("L shear", `(Fv' A / (1.5 w) + d) / ${plain(k.shear)}`, spanIn, "in", "NDS 3.4.3.1");
  return { check: "shear", spanIn };
}

function deflectionSpan(member: Member, c: JoistCase, k: SpanFactors, tape?: Tape): AllowedSpan {
  const ei = bendingStiffness(member, tape);
  const spanIn =
    c.serviceLbPerIn === 0
      ? Number.POSITIVE_INFINITY
      : Math.cbrt(ei / (k.deflection * c.serviceLbPerIn * c.deflectionOver));
  if (Number.isFinite(spanIn)) {
    tape?.step(
      "L deflection",
      `cbrt(E'I / (${plain(k.deflection)} w ${plain(c.deflectionOver)})), w ${plain(c.serviceLbPerIn)} lb/in`,
      spanIn,
      "in",
      "elastic line",
    );
  }
  return { check: "deflection", spanIn };
}
