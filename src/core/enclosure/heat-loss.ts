import { BadInput, OutOfRange, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { ACH50_LIMIT } from "./tables/energy-code.ts";
import { type Zone, zoneName } from "./zone.ts";

const UA_CLAUSE = "ISO 13789:2017 (transmission) ; ASHRAE Handbook Fundamentals 2021 ch. 18";
/** Sensible heat of air: 60 min/h x 0.075 lb/ft3 x 0.24 Btu/(lb F), Btu min/(h ft3 F). */
export const AIR_HEAT_FACTOR = 60 * 0.075 * 0.24;
const AIR_CLAUSE = "ASHRAE sensible heat factor 60 x 0.075 x 0.24, air near sea level";
const HOURS_A_DAY = 24;
const BTU_IN_MMBTU = 1e6;

/**
 * Heat that an enclosure passes per degree.
 * @param areasFt2 areas, one for each U
 * @param us U in Btu/(h ft2 F)
 * @param bridges linear and point thermal bridges, Btu/(h F), 0 or more
 * @param airflowCfm outdoor air that comes in, cfm, 0 or more
 * @returns Btu/(h F)
 * @throws BadInput where there are not as many areas as U
 * Source: UA = sum(U A) + sum(psi L) + sum(chi); air by the sensible heat factor.
 */
export function lossPerDegree(
  areasFt2: readonly number[],
  us: readonly number[],
  bridges: number,
  airflowCfm: number,
  tape?: Tape,
): number {
  if (areasFt2.length !== us.length && us.length !== 1) {
    throw new BadInput(
      `There are ${areasFt2.length} areas and ${us.length} U-factors`,
      "each area goes with its own U, or all with one",
      "Give as many U-factors as areas",
    );
  }
  const ua = areasFt2.reduce((sum, area, i) => sum + area * (us[i] ?? us[0] ?? 0), 0);
  tape?.step("UA", "sum(U A)", ua, "Btu/(h F)", UA_CLAUSE);
  if (bridges > 0) tape?.step("H_tb", "sum(psi L) + sum(chi), as given", bridges, "Btu/(h F)", UA_CLAUSE);
  const air = AIR_HEAT_FACTOR * airflowCfm;
  if (airflowCfm > 0) tape?.step("H_v", `${AIR_HEAT_FACTOR} x ${plain(airflowCfm)} cfm`, air, "Btu/(h F)", AIR_CLAUSE);
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

/** Pressure of the usual test, Pa. */
const TEST_PA = 50;

/**
 * Air that leaks at a pressure, from the air changes of a pressurization test at 50 Pa: Q = C dP^n.
 * @param ach50 air changes per hour at 50 Pa
 * @param volumeFt3 volume inside the air barrier
 * @param pressurePa 0.1 to 100 Pa
 * @param exponent 0.5 to 1
 * @returns cfm
 * @throws OutOfRange outside those limits
 * Source: power law of ASTM E779; cfm50 = ACH50 V / 60.
 */
export function airLeakageCfm(
  ach50: number,
  volumeFt3: number,
  pressurePa: number,
  exponent: number,
  zone: Zone | undefined,
  tape?: Tape,
): number {
  if (!(exponent >= 0.5 && exponent <= 1)) {
    throw new OutOfRange(
      `The flow exponent is ${plain(exponent)}`,
      "it lies from 0.5 (orifice) to 1 (laminar) (ASTM E779)",
      "Use 0.65 where none was measured",
    );
  }
  const cfm50 = (ach50 * volumeFt3) / 60;
  tape?.step("cfm50", `${plain(ach50)} x ${plain(volumeFt3)} / 60`, cfm50, "cfm", "definition of ACH50");
  if (zone !== undefined) {
    const limit = zone.number <= 2 ? ACH50_LIMIT.warm : ACH50_LIMIT.cold;
    tape?.step("ACH50 limit", `zone ${zoneName(zone)}`, limit, "1/h", ACH50_LIMIT.clause);
    if (ach50 > limit) {
      tape?.caution(
        `ACH50 of ${plain(ach50)} is above the ${limit} of ${ACH50_LIMIT.clause} in zone ${zoneName(zone)}.`,
      );
    }
  }
  const cfm = cfm50 * (pressurePa / TEST_PA) ** exponent;
  tape?.step("Q", `cfm50 (${plain(pressurePa)} / 50)^${plain(exponent)}`, cfm, "cfm", "ASTM E779 power law");
  return cfm;
}
