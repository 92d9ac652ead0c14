import { plain, within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";

const UA_CLAUSE = "ISO 13789:2017 (transmission); ASHRAE Handbook Fundamentals 2021 ch. 18";
/** Sensible heat of air at sea level: 60 min/h x 0.075 lb/ft3 x 0.24 Btu/(lb F), Btu min/(h ft3 F). */
const AIR_HEAT_FACTOR = 60 * 0.075 * 0.24;
const AIR_CLAUSE = "ASHRAE sensible heat factor 60 x 0.075 x 0.24";
/** Pressure of the standard atmosphere at a height Z in ft, over that at sea level: (1 - 6.8754e-6 Z)^5.2559. */
const ATMOSPHERE = {
  perFt: 6.8754e-6,
  exponent: 5.2559,
  lowestFt: -1000,
  highestFt: 15000,
  clause: "ASHRAE Handbook Fundamentals 2021 ch. 1 eq. 3",
};
const HOURS_A_DAY = 24;
const BTU_IN_MMBTU = 1e6;

/** A part of an enclosure with its U. */
export interface AreaPart {
  readonly name: string;
  readonly areaFt2: number;
  /** Btu/(h ft2 F) */
  readonly u: number;
}

/** Density of air at a height above sea level over that at sea level, at the same temperature. */
export function airDensityRatio(elevationFt: number, tape?: Tape): number {
  const { perFt, exponent, lowestFt, highestFt, clause } = ATMOSPHERE;
  within("The elevation", elevationFt, lowestFt, highestFt, "ft", clause);
  const ratio = (1 - perFt * elevationFt) ** exponent;
  if (elevationFt !== 0) tape?.step("p/p_0", `(1 - ${perFt} x ${plain(elevationFt)})^${exponent}`, ratio, "", clause);
  return ratio;
}

/**
 * Heat that an enclosure passes per degree.
 * @param bridges linear and point thermal bridges, Btu/(h F); below 0 where inside corners were counted from outside
 * @param airflowCfm outdoor air that comes in, cfm, 0 or more
 * @param elevationFt height above sea level, by which air thins
 * @returns Btu/(h F)
 * Source: UA = sum(U A) + sum(psi L) + sum(chi); air by the sensible heat factor.
 */
export function lossPerDegree(
  parts: readonly AreaPart[],
  bridges: number,
  airflowCfm: number,
  elevationFt: number,
  tape?: Tape,
): number {
  let ua = 0;
  for (const p of parts) {
    ua += p.areaFt2 * p.u;
    tape?.step(`UA ${p.name}`, `${plain(p.areaFt2)} x ${plain(p.u)}`, p.areaFt2 * p.u, "Btu/(h F)", UA_CLAUSE);
  }
  tape?.step("UA", "sum(U A)", ua, "Btu/(h F)", UA_CLAUSE);
  if (bridges !== 0) tape?.step("H_tb", "sum(psi L) + sum(chi), as given", bridges, "Btu/(h F)", UA_CLAUSE);
  if (airflowCfm === 0) return ua + bridges;
  const air = AIR_HEAT_FACTOR * airDensityRatio(elevationFt, tape) * airflowCfm;
  tape?.step("H_v", `${plain(air / airflowCfm)} x ${plain(airflowCfm)} cfm`, air, "Btu/(h F)", AIR_CLAUSE);
  return ua + bridges + air;
}

/** Heat loss rate, Btu/h; below 0 where heat comes in. */
export function heatLoss(btuHF: number, insideF: number, outsideF: number, tape?: Tape): number {
  const q = btuHF * (insideF - outsideF);
  tape?.step("q", `${plain(btuHF)} x (${plain(insideF)} - ${plain(outsideF)})`, q, "Btu/h", UA_CLAUSE);
  return q;
}

/**
 * Heat loss of a heating season by degree-days: 24 HDD UA.
 * @param hdd65F heating degree-days, base 65 F, F day
 * @returns million Btu a year
 */
export function yearlyHeatLoss(btuHF: number, hdd65F: number, tape?: Tape): number {
  const year = (HOURS_A_DAY * hdd65F * btuHF) / BTU_IN_MMBTU;
  const clause = "degree-day method, base 65 F (ASHRAE Handbook Fundamentals 2021 ch. 19)";
  tape?.step("Q", `24 x ${plain(hdd65F)} x ${plain(btuHF)} / 10^6`, year, "MMBtu/yr", clause);
  return year;
}
