import { expect, test } from "vitest";
import { Tape } from "../../src/core/kit/tape.ts";
import { adjust } from "../../src/core/wood/adjust.ts";
import { type BeamLoad, solveBeam } from "../../src/core/wood/beam/beam.ts";
import { greatestDeflection, greatestMoment, greatestShear } from "../../src/core/wood/beam/beam-extremes.ts";
import { equalSpans, uniform } from "../../src/core/wood/beam/spans.ts";
import { beamColumnChecks } from "../../src/core/wood/beam-column.ts";
import { bearingFactor } from "../../src/core/wood/bearing.ts";
import { columnAnswer } from "../../src/core/wood/column.ts";
import { joistSpans } from "../../src/core/wood/joist-span.ts";
import type { ValueName } from "../../src/core/wood/material.ts";
import { beamChecks, bendingCheck, shearCheck } from "../../src/core/wood/member-check.ts";
import { frequency, panelChecks } from "../../src/core/wood/panel.ts";
import { nominalSection, sectionProperties } from "../../src/core/wood/section.ts";
import { beamEuler, beamFactor, beamLength, columnEuler } from "../../src/core/wood/stability.ts";
import { rows } from "./rows.ts";
import { actual, asd, expectPrint, member, oldForm, own } from "./wood-known.ts";

const plf = (w: number) => w / 12;
const beam = (spanIn: number, spans: number, loads: BeamLoad[], ei = 1) =>
  solveBeam(equalSpans(spanIn, spans, { bending: ei }, loads));
const even = (spanIn: number, spans: number, w: number, ei = 1) =>
  beam(spanIn, spans, [uniform(spanIn * spans, w)], ei);
const point = (atIn: number, lb: number): BeamLoad => ({ kind: "point", atIn, lb });

const adjusted = (name: ValueName, psi: number, duration: number, wet = false, section = actual(1.5, 5.5)) =>
  adjust(name, member(section, own({ [name]: psi }), asd(duration, wet))).adjustedPsi;

const EI_115 = 1.6e6 * 79.39;
const pair115 = [point(36, 200), point(72, 200)];

/** Spans of a member with adjusted stresses given, w in plf. */
function spans(values: Partial<Record<ValueName, number>>, b: number, d: number, w: number, count: number) {
  const m = member(actual(b, d), own({ Fb: 1e6, Fv: 1e6, E: 1e9, Emin: 5e8, ...values }), asd(1));
  const found = joistSpans(m, { lbPerIn: plf(w), serviceLbPerIn: plf(w), spans: count, deflectionOver: 360 });
  return (check: string) => found.find((s) => s.check === check)?.spanIn ?? 0;
}
const form11 = spans({ Fb: 1875, Fv: 225, E: 1.7e6 }, 3.5, 3.5, 250, 1);
const form11c = spans({ Fb: 1328, Fv: 212.1875 }, 3.5, 5.5, 520, 3);
const form11shear = spans({ Fb: 1328, Fv: 212.1875 }, 3.5, 5.5, 520, 2);
const studs = spans({ Fb: 1875 }, 1.5, 3.5, 825, 3);
const studsShear = spans({ Fv: 218 }, 1.5, 3.5, 825, 2);

const bearing = () => {
  const m = member(actual(2.5, 7.25), own({ Fb: 1e4, Fv: 1e3, Fcp: 565, E: 1e6, Emin: 5e5 }), asd(1));
  const checks = beamChecks(m, {
    spanIn: 48,
    spans: 1,
    loads: [uniform(48, 100)],
    deflectionLoads: [uniform(48, 100)],
    deflectionOver: 360,
    bearingIn: 3.5,
    unbracedIn: 0,
  });
  return 2400 / (checks.find((c) => c.check === "bearing")?.ratio ?? 0);
};

const panelAt = (psf: number, duration: number) => {
  const values = { E: 1.65e6, Fb: 1930, Fs: 72, I: 0.199, S: 0.455, Q: 7.187, G: 0 };
  const checks = panelChecks({
    values: duration === 1 ? values : { ...values, Fb: 1650, Fs: 53 },
    grain: "along",
    spanIn: 24,
    spans: 3,
    psf,
    servicePsf: psf,
    deflectionOver: 360,
    use: asd(duration),
  });
  return (check: string) => checks.find((c) => c.check === check);
};

const column = (b: number, d: number, strongIn: number, fc: number, emin: number, weakIn = 0, duration = 1) =>
  columnAnswer(member(actual(b, d), own({ Fc: fc, Emin: emin }), asd(duration)), {
    strongIn,
    weakIn,
    fastening: "none",
  });
/** Buckling across the smaller size, as the printed examples have it. */
const post = (small: number, large: number, lengthIn: number, fc: number, emin: number) =>
  column(large, small, lengthIn, fc, emin);
const cp = (c: ReturnType<typeof column>) => c.fcPrimePsi / c.fcStarPsi;
const book132 = () => post(3.5, 5.5, 72, 1600, 580_000);
const shore = () => column(1.5, 5.5, 144, 1350, 580_000, 72, 1.15);
const stud24 = () => post(1.5, 3.5, 60, 975, oldForm(1.4e6));
const gere = (feet: number) => post(3.5, 7.25, feet * 12, 1000, oldForm(1.3e6));
const breyer = () => post(5.5, 5.5, 168, 900, oldForm(1.6e6));

const tall = (axialPlf: number, psf: number, duration: number) => {
  const wood = own({ Fb: 675, Fc: 725, Fv: 135, Emin: 440_000, E: 1.2e6 });
  const m = member(actual(1.5, 5.5, 2), wood, asd(duration), true);
  const checks = beamColumnChecks(m, {
    lengthIn: 231,
    bracing: { strongIn: 231, weakIn: 0, fastening: "none" },
    axialLb: (axialPlf * 16) / 12,
    lateralLbPerIn: plf((psf * 16) / 12),
    serviceLbPerIn: plf((psf * 16) / 12),
    deflectionOver: 180,
  });
  const of = (check: string) => {
    const found = checks.find((c) => c.check === check);
    if (found === undefined) throw new Error(check);
    return found;
  };
  return of;
};
const plate = (fcp: number) => {
  const cb = bearingFactor(3, true);
  return ((323 + 0.75 * 538) * (16 / 12)) / (16.5 * cb * fcp);
};

const glulam = () => {
  const tape = new Tape();
  const fbe = beamEuler(actual(6.75, 30), 240, 690_000, tape);
  const of = (symbol: string) => Number(tape.steps.find((s) => s.symbol === symbol)?.value);
  return { fbe, le: of("le"), rb: of("RB") };
};

// Europe's example in newtons and millimeters: the statics are the same in any units.
const joist = sectionProperties(actual(45, 240));
const joistLoad = 0.4 * 4.035;
const joistEi = 13_800 * joist.inertiaIn4;
const header = () => even(2300, 1, 22.3);
const stress = (m: number) => m / joist.modulusIn3;

const ANSWERS: Readonly<Record<string, () => number>> = {
  "form 5-1: M three equal loads at quarter points": () =>
    greatestMoment(beam(96, 1, [point(24, 190), point(48, 190), point(72, 190)])).value,
  "form 5-3: M multiple spans": () => -greatestMoment(even(30, 3, plf(500))).value,
  "form 5-6: V modified at d from support": () => Math.abs(greatestShear(even(72, 1, plf(450)), 5.5).value),
  "form 5-6: fv modified": () => {
    const v = greatestShear(even(72, 1, plf(450)), 5.5).value;
    return shearCheck(member(actual(3.5, 5.5), own({ Fv: 135 }), asd(1)), v).demand;
  },
  "form 5-6: Fv' 7-day load": () => adjusted("Fv", 135, 1.25),
  "form p 115: deflection two symmetric point loads": () => greatestDeflection(beam(108, 1, pair115, EI_115)).value,
  "form p 115: deflection uniform": () => greatestDeflection(even(108, 1, plf(150), EI_115)).value,
  "form p 115: deflection total": () =>
    greatestDeflection(beam(108, 1, [...pair115, uniform(108, plf(150))], EI_115)).value,
  "form 5-14: allowable pressure by bending, three spans or more": () => 100 / (panelAt(100, 1)("bending")?.ratio ?? 0),
  "form 5-14: margin": () => 1 / (panelAt(175, 1)("bending")?.ratio ?? 0),
  "form 11-2: span by bending, single span": () => form11("bending"),
  "form 11-2: span by shear": () => form11("shear"),
  "form 11-2: span by l/360": () => form11("deflection"),
  "form 11: Fb' short duration, wet": () => adjusted("Fb", 1250, 1.25, true),
  "form 11: Fv'": () => adjusted("Fv", 175, 1.25, true),
  "form 11: E'": () => adjusted("E", 1.6e6, 1.25, true),
  "form 11: span by bending, continuous": () => form11c("bending"),
  "form 11: span by shear, continuous": () => form11shear("shear"),
  "form 4: Fb' duration, wet, flat use": () => adjusted("Fb", 1500, 1.25, true, nominalSection("6x2", 1, 6, 2)),
  "form bearing: bearing load": bearing,
  "form wall studs: span by bending": () => studs("bending"),
  "form wall studs: span by shear": () => studsShear("shear"),
  "form wall sheathing: Fb' 7-day": () => panelAt(1, 1.25)("bending")?.capacity ?? 0,
  "form wall sheathing: rolling shear Fs' 7-day": () => panelAt(1, 1.25)("rolling shear")?.capacity ?? 0,
  "bearing washer: allowable with bearing-area factor": () => 490 * bearingFactor(3.5, true),
  "form p 132: CP": () => cp(book132()),
  "form p 132: Fc'": () => book132().fcPrimePsi,
  "form p 132: P": () => book132().capacityLb,
  "shore 1.5x5.5: FcE": () => columnEuler(72, 1.5, 580_000, "weak"),
  "shore 1.5x5.5: Fc*": () => shore().fcStarPsi,
  "shore 1.5x5.5: ratio": () => columnEuler(72, 1.5, 580_000, "weak") / shore().fcStarPsi,
  "shore 1.5x5.5: CP": () => cp(shore()),
  "shore 1.5x5.5: Fc'": () => shore().fcPrimePsi,
  "shore 1.5x5.5: P": () => shore().capacityLb / 1000,
  "2x4 wall stud blocked mid: FcE": () => columnEuler(60, 1.5, oldForm(1.4e6), "weak"),
  "2x4 wall stud blocked mid: CP": () => cp(stud24()),
  "2x4 wall stud blocked mid: Fc'": () => stud24().fcPrimePsi,
  "3.5x7.25 6 ft: CP": () => cp(gere(6)),
  "3.5x7.25 6 ft: P allowable": () => gere(6).capacityLb / 1000,
  "3.5x7.25 8 ft: CP": () => cp(gere(8)),
  "3.5x7.25 8 ft: P allowable": () => gere(8).capacityLb / 1000,
  "3.5x7.25 10 ft: CP": () => cp(gere(10)),
  "3.5x7.25 10 ft: P allow kip": () => gere(10).capacityLb / 1000,
  "column 6x6: FcE/Fc*": () => columnEuler(168, 5.5, oldForm(1.6e6), "strong") / 900,
  "column 6x6: CP": () => cp(breyer()),
  "column 6x6: Fc'": () => breyer().fcPrimePsi,
  "tall stud: D + 0.6W": () => tall(323, 15, 1.6)("combined").ratio,
  "tall stud: D + 0.75(0.6W) + 0.75S": () => tall(323 + 0.75 * 538, 0.75 * 15, 1.6)("combined").ratio,
  "tall stud: D + 0.75S axial only": () => tall(323 + 0.75 * 538, 0, 1.15)("compression").ratio,
  "tall stud: D + L axial only": () => tall(323, 0, 1)("compression").ratio,
  "tall stud: deflection": () => tall(323, 15, 1.6)("deflection").demand,
  "tall stud: limit L/180": () => tall(323, 15, 1.6)("deflection").capacity,
  "tall stud: plate bearing use, 405 psi": () => plate(405),
  "tall stud: plate bearing use, 625 psi": () => plate(625),
  "glulam 6.75x30: le": () => glulam().le,
  "glulam 6.75x30: RB": () => glulam().rb,
  "glulam 6.75x30: FbE": () => glulam().fbe,
  "beam stability: CL at FbE/Fb*=2.83": () => beamFactor(2.83),
  "effective length: uniform load, lu/d 6, over lu": () => beamLength(60, 10) / 60,
  "effective length: uniform load, lu/d 8, le less 3 d, over lu": () => (beamLength(80, 10) - 30) / 80,
  "effective length: equal end moments, lu/d 15, over lu": () => beamLength(150, 10) / 150,
  "ec5 joist: A": () => joist.areaIn2,
  "ec5 joist: W": () => joist.modulusIn3,
  "ec5 joist: I": () => joist.inertiaIn4,
  "ec5 joist: EI": () => joistEi,
  "ec5 joist: M": () => greatestMoment(even(4.5, 1, joistLoad)).value,
  "ec5 joist: bending stress": () => stress(1e6 * greatestMoment(even(4.5, 1, joistLoad)).value),
  "ec5 joist: V": () => Math.abs(greatestShear(even(4.5, 1, joistLoad)).value),
  "ec5 joist: shear stress": () =>
    (1.5 * 1000 * Math.abs(greatestShear(even(4.5, 1, joistLoad)).value)) / joist.areaIn2,
  "ec5 joist: f1": () => {
    const weight = 120 * 0.4 * 9.80665e-3;
    return frequency(greatestDeflection(even(4500, 1, weight, joistEi)).value / 25.4);
  },
  "ec5 header: V": () => Math.abs(greatestShear(header()).value) / 1000,
  "ec5 header: V reduced at d from support": () => Math.abs(greatestShear(header(), 300).value) / 1000,
  "ec5 stud: A": () => sectionProperties(actual(45, 120)).areaIn2,
  "ec5 stud: W": () => sectionProperties(actual(45, 120)).modulusIn3,
  "ec5 stud: sigma_m": () =>
    bendingCheck(member(actual(45, 120), own({ Fb: 1, Emin: 1 }), asd(1)), 22.25e3 * 30, 0).demand,
};

const printed = rows("wood-examples.csv");

test.each(printed.map((r) => [`${r.case}: ${r.quantity}`, r] as const))("%s", (name, row) => {
  const answer = ANSWERS[name];
  expect(answer, "a row without a calculation").toBeDefined();
  expectPrint(answer?.() ?? Number.NaN, row);
});

test("every calculation has its printed row", () => {
  expect(Object.keys(ANSWERS).sort()).toEqual(printed.map((r) => `${r.case}: ${r.quantity}`).sort());
});
