import { cautionRecalled } from "../../kit/known.ts";
import { plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { saturationPressurePa } from "../air/saturation.ts";
import type { Climate, MonthClimate } from "../climate/climate.ts";
import type { MonthAir } from "./wetting-year.ts";

/**
 * Upper limits of the excess of indoor over outdoor vapor pressure at 0 C and below, Pa, by humidity class. From there the excess falls
 * in a straight line to 0 at 20 C. ISO 13788:2012 Annex A, from memory.
 */
const CLASS_EXCESS_PA = { 1: 270, 2: 540, 3: 810, 4: 1080 } as const;
const CLASS_CLAUSE = "ISO 13788:2012 Annex A";
/** The 2001 edition multiplied the excess by this margin for design. */
const MARGIN_2001 = 1.1;
const EN_15026 = "EN 15026:2007 Annex C";

/** An air-conditioned house keeps one condition through the summer. Common practice: 75 F and 50 %. */
const COOLED = { tempC: 23.9, rhShare: 0.5 };
const HEATED_C = 20;

/** Indoor air by a rule that follows the outdoor air. */
export type IndoorCondition =
  | { readonly kind: "class"; readonly level: 1 | 2 | 3 | 4; readonly margin2001: boolean }
  | { readonly kind: "EN 15026"; readonly high: boolean }
  /** heated as class 2 and never above 75 F and 50 %, as air conditioning holds it */
  | { readonly kind: "air conditioned" };

/** Indoor air that is given: one condition for the year, or one for each month. */
export interface IndoorAir {
  readonly tempC: number;
  /** share, above 0 to 1 */
  readonly rhShare: number;
}

interface Air {
  readonly tempC: number;
  readonly vaporPa: number;
}

/**
 * Monthly air on both sides of a wall.
 * @param indoor a rule, or one or twelve rows of air
 * Source: ISO 13788:2012 Annex A (humidity classes); EN 15026:2007 Annex C (by outdoor temperature).
 */
export function monthlyAir(
  climate: Climate,
  indoor: IndoorCondition | readonly IndoorAir[],
  tape?: Tape,
): readonly MonthAir[] {
  if ("kind" in indoor) say(indoor, tape);
  return climate.months.map((m, i) => {
    const inside = "kind" in indoor ? byRule(indoor, m) : given(indoor, i);
    const most = saturationPressurePa(inside.tempC, "ISO 13788");
    if (inside.vaporPa > most) {
      tape?.caution(`In ${m.name} the indoor air would be above saturation; 100 % relative humidity is taken instead.`);
    }
    return {
      name: m.name,
      seconds: m.seconds,
      insideC: inside.tempC,
      insidePa: Math.min(inside.vaporPa, most),
      outsideC: m.tempC,
      // Means of vapor pressure may pass the saturation of the mean temperature by a little.
      outsidePa: outdoorPa(m),
    };
  });
}

function outdoorPa(m: MonthClimate): number {
  return Math.min(m.vaporPa, saturationPressurePa(m.tempC, "ISO 13788"));
}

function given(rows: readonly IndoorAir[], month: number): Air {
  const row = rows[month % rows.length] as IndoorAir;
  return { tempC: row.tempC, vaporPa: row.rhShare * saturationPressurePa(row.tempC, "ISO 13788") };
}

function byRule(rule: IndoorCondition, m: MonthClimate): Air {
  if (rule.kind === "class") return byClass(rule.level, rule.margin2001, m);
  if (rule.kind === "EN 15026") return byOutdoorTemperature(rule.high, m);
  const heated = byClass(2, false, m);
  const cooledPa = COOLED.rhShare * saturationPressurePa(COOLED.tempC, "ISO 13788");
  if (m.tempC >= HEATED_C) return { tempC: COOLED.tempC, vaporPa: Math.min(heated.vaporPa, cooledPa) };
  return { tempC: heated.tempC, vaporPa: Math.min(heated.vaporPa, cooledPa) };
}

function byClass(level: 1 | 2 | 3 | 4, margin2001: boolean, m: MonthClimate): Air {
  const excess = excessPa(level, margin2001);
  return {
    tempC: HEATED_C,
    vaporPa: outdoorPa(m) + excess * Math.min(1, Math.max(0, 1 - m.tempC / HEATED_C)),
  };
}

const excessPa = (level: 1 | 2 | 3 | 4, margin2001: boolean) => CLASS_EXCESS_PA[level] * (margin2001 ? MARGIN_2001 : 1);

function byOutdoorTemperature(high: boolean, m: MonthClimate): Air {
  const tempC = HEATED_C + 5 * Math.min(1, Math.max(0, (m.tempC - 10) / 10));
  const rh = 0.35 + more(high) + 0.3 * Math.min(1, Math.max(0, (m.tempC + 10) / 30));
  return { tempC, vaporPa: rh * saturationPressurePa(tempC, "ISO 13788") };
}

const more = (high: boolean) => (high ? 0.05 : 0);

function say(rule: IndoorCondition, tape: Tape | undefined): void {
  if (rule.kind === "EN 15026") {
    const extra = more(rule.high) * 100;
    tape?.assume(
      `indoor air 68 F up to 50 F outdoors, 77 F from 68 F on; ${35 + extra} % at 14 F to ${65 + extra} % at 68 F (${EN_15026})`,
    );
    cautionRecalled(tape, "The indoor climate", EN_15026);
    return;
  }
  const excess = rule.kind === "class" ? excessPa(rule.level, rule.margin2001) : excessPa(2, false);
  tape?.assume(`indoor air 68 F; vapor excess ${plain(excess)} Pa at 32 F and below, 0 at 68 F (${CLASS_CLAUSE})`);
  cautionRecalled(tape, "The limits of the humidity classes", CLASS_CLAUSE);
  if (rule.kind === "air conditioned") {
    tape?.assume(
      "air conditioning holds 75 F where the month's mean is 68 F or more, and never over 50 % at 75 F (common practice)",
    );
  }
}
