import { BadInput } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import type { Climate, MonthClimate } from "./climate.ts";
import { checkMonths } from "./climate.ts";
import { saturationPressurePa } from "./saturation.ts";
import type { MonthAir } from "./wetting-year.ts";

/**
 * Upper limits of the excess of indoor over outdoor vapor pressure at 0 C and below, Pa, by humidity class. From there the excess falls
 * in a straight line to 0 at 20 C. ISO 13788:2012 Annex A, from memory.
 */
const CLASS_EXCESS_PA: Readonly<Record<string, number>> = { "1": 270, "2": 540, "3": 810, "4": 1080 };
const CLASS_CLAUSE = "ISO 13788:2012 Annex A";
/** The 2001 edition multiplied the excess by this margin for design. */
const MARGIN_2001 = 1.1;
const CLASS_INDOOR_C = 20;
const EN_15026 = "EN 15026:2007 Annex C";

/** Indoor air of a month, from its outdoor air. */
type Indoor = (outdoor: MonthClimate, index: number) => { readonly tempC: number; readonly vaporPa: number };

export interface IndoorRow {
  readonly row: number;
  /** `class 2`, `class 2 2001`, `EN 15026`, `EN 15026 high`, or any label where temperature and humidity are given */
  readonly name: string;
  readonly tempC: number | undefined;
  /** share, above 0 to 1 */
  readonly rhShare: number | undefined;
}

/** The condition as text, for help. */
export const INDOOR_SAYS =
  'indoor air: "class 1" to "class 4" (ISO 13788), "class 2 2001" (with its 1.10), "EN 15026" or "EN 15026 high"; or one row or twelve rows of label, temperature, humidity';

/**
 * Monthly air on both sides of a wall.
 * @throws BadInput for a condition that cannot be read
 * Source: ISO 13788:2012 Annex A (humidity classes); EN 15026:2007 Annex C (by outdoor temperature).
 */
export function monthlyAir(climate: Climate, rows: readonly IndoorRow[], tape?: Tape): readonly MonthAir[] {
  const indoor = readIndoor(rows, tape);
  return climate.months.map((m, i) => {
    const inside = indoor(m, i);
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

function readIndoor(rows: readonly IndoorRow[], tape: Tape | undefined): Indoor {
  const [first] = rows;
  if (first !== undefined && rows.length === 1) {
    if (first.tempC !== undefined && first.rhShare !== undefined) return constant([first]);
    return named(first.name, tape);
  }
  checkMonths(rows);
  return constant(rows);
}

function constant(rows: readonly IndoorRow[]): Indoor {
  const air = rows.map((r) => {
    if (r.tempC === undefined || r.rhShare === undefined) {
      throw new BadInput(
        `Row ${r.row} of the indoor air lacks a temperature or a humidity`,
        "each row is a label, a temperature and a relative humidity",
        "Fill in the row",
      );
    }
    return { tempC: r.tempC, vaporPa: r.rhShare * saturationPressurePa(r.tempC, "ISO 13788") };
  });
  return (_, i) => (air[i % air.length] ?? air[0]) as { tempC: number; vaporPa: number };
}

function named(text: string, tape: Tape | undefined): Indoor {
  const tidy = text.trim().toLowerCase().replace(/\s+/g, " ");
  const byClass = /^(?:iso )?class ([1-4])( 2001| x ?1\.10?)?$/.exec(tidy);
  if (byClass !== null) {
    const limit = CLASS_EXCESS_PA[byClass[1] ?? ""] ?? 0;
    const excess = byClass[2] === undefined ? limit : limit * MARGIN_2001;
    tape?.assume(`indoor air 68 F; vapor excess ${excess} Pa at 32 F and below, 0 at 68 F (${CLASS_CLAUSE})`);
    tape?.caution(`The limits of the humidity classes (${CLASS_CLAUSE}) are from memory.`);
    return (m) => ({
      tempC: CLASS_INDOOR_C,
      vaporPa: outdoorPa(m) + excess * Math.min(1, Math.max(0, 1 - m.tempC / CLASS_INDOOR_C)),
    });
  }
  const en = /^en ?15026( high)?$/.exec(tidy);
  if (en !== null) {
    const more = en[1] === undefined ? 0 : 0.05;
    tape?.assume(
      `indoor air 68 F up to 50 F outdoors, 77 F from 68 F on; ${35 + more * 100} % at 14 F to ${65 + more * 100} % at 68 F (${EN_15026})`,
    );
    tape?.caution(`The indoor climate of ${EN_15026} is from memory.`);
    return (m) => {
      const tempC = 20 + 5 * Math.min(1, Math.max(0, (m.tempC - 10) / 10));
      const rh = 0.35 + more + 0.3 * Math.min(1, Math.max(0, (m.tempC + 10) / 30));
      return { tempC, vaporPa: rh * saturationPressurePa(tempC, "ISO 13788") };
    };
  }
  throw new BadInput(
    `The indoor condition "${text}" is not known`,
    "it is a humidity class, EN 15026, or a temperature with a humidity",
    'Use "class 2", "EN 15026", or a row such as {"heated",70,40}',
  );
}
