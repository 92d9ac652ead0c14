import { cautionRecalled } from "../../kit/known.ts";
import { BadInput, plain, within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { type Zone, zoneName } from "../climate/zone.ts";
import {
  CLIMATE_FACTOR,
  HEIGHT_FACTOR,
  INFILTRATION_ZONE,
  NATURAL_RULE,
  SHIELDING_FACTOR,
  type Shielding,
} from "../tables/air.ts";
import { CODE_SOURCE, type CodeEdition } from "../tables/energy-code.ts";
import { TEST_PA } from "./air-tightness.ts";
import { codeValue } from "./energy-code.ts";

const MINUTES_AN_HOUR = 60;
const POWER_LAW = "ASTM E779 power law";

/** Flow at 50 Pa, cfm: ACH50 V / 60. */
function cfm50Of(ach50: number, volumeFt3: number, tape: Tape | undefined): number {
  const cfm50 = (ach50 * volumeFt3) / MINUTES_AN_HOUR;
  tape?.step("cfm50", `${plain(ach50)} x ${plain(volumeFt3)} / 60`, cfm50, "cfm", "definition of ACH50");
  return cfm50;
}

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
  tape?: Tape,
): number {
  within("The flow exponent", exponent, 0.5, 1, "", "ASTM E779: 0.5 for an orifice, 1 for laminar flow");
  within("The pressure", pressurePa, 0.1, 100, "Pa", POWER_LAW);
  const cfm = cfm50Of(ach50, volumeFt3, tape) * (pressurePa / TEST_PA) ** exponent;
  tape?.caution(
    "This is the flow of a test pressure, not the natural one that HEATLOSS takes: AIR_NATURAL gives that.",
  );
  tape?.step("Q", `cfm50 (${plain(pressurePa)} / 50)^${plain(exponent)}`, cfm, "cfm", POWER_LAW);
  return cfm;
}

export const NATURAL_METHODS = ["factor", "twenty"] as const;
export type NaturalMethod = (typeof NATURAL_METHODS)[number];

/** What the natural rate goes by beside the test. */
export interface House {
  /** 1 to 3 */
  readonly stories: number;
  readonly shielding: Shielding;
  /** undefined: the plain 20 in place of a climate factor */
  readonly zone: Zone | undefined;
}

/**
 * Air that comes in by wind and warmth in the mean of a year, from a pressurization test: ACH50 / N.
 * Method "factor": N by climate, height and shielding. Method "twenty": N = 20.
 * @returns cfm
 * @throws BadInput for stories that the rule does not know
 * Source: rule of a US national laboratory; its factors are from memory.
 */
export function naturalCfm(ach50: number, volumeFt3: number, method: NaturalMethod, house: House, tape?: Tape): number {
  const n = method === "twenty" ? NATURAL_RULE.plainN : factorN(house, tape);
  const ach = ach50 / n;
  tape?.step("ACH", `${plain(ach50)} / ${plain(n)}`, ach, "1/h", NATURAL_RULE.clause);
  const cfm = (ach * volumeFt3) / MINUTES_AN_HOUR;
  tape?.caution(
    `The rule gives a yearly mean, ${NATURAL_RULE.accuracy}; a design hour of wind and cold lies well above it.`,
  );
  tape?.step("Q", `ACH x ${plain(volumeFt3)} / 60`, cfm, "cfm", "definition of an air change");
  return cfm;
}

function factorN({ stories, shielding, zone }: House, tape: Tape | undefined): number {
  const height = HEIGHT_FACTOR.find(([s]) => s === stories)?.[1];
  if (height === undefined) {
    throw new BadInput(
      `The house has ${plain(stories)} stories`,
      `the rule knows ${HEIGHT_FACTOR.map(([s]) => s).join(", ")}`,
      "Give one of these, or use the method twenty",
    );
  }
  const climate = zone === undefined ? NATURAL_RULE.plainN : CLIMATE_FACTOR[INFILTRATION_ZONE[zone.number] ?? 2];
  if (zone === undefined) tape?.assume("no climate zone: the plain 20 in place of a climate factor");
  else {
    tape?.assume(
      `infiltration zone ${INFILTRATION_ZONE[zone.number]} stands in for climate zone ${zoneName(zone)} (common practice, no source)`,
    );
  }
  cautionRecalled(tape, "The factors of climate, height and shielding", "the rule");
  const n = climate * height * SHIELDING_FACTOR[shielding];
  tape?.step("N", `${climate} x ${height} x ${SHIELDING_FACTOR[shielding]}`, n, "", NATURAL_RULE.clause);
  return n;
}

/** A test result against the code. */
export interface AirVerdict {
  /** greatest ACH50 */
  readonly limit: number;
  readonly found: number;
  readonly verdict: "met" | "not met";
}

/**
 * Air leakage of a test against the greatest of the energy code.
 * @param volumeFt3 volume inside the air barrier, for the limit in cfm; undefined where it is not known
 * @throws as codeValue
 * Source: IECC 2012 to 2024 R402.4.1; New York 2025 Table R402.5.1.3.
 */
export function airAgainstCode(
  ach50: number,
  volumeFt3: number | undefined,
  zone: Zone,
  edition: CodeEdition,
  tape?: Tape,
): AirVerdict {
  const limit = Number(codeValue("ACH50", zone, "air leakage", edition, tape));
  if (volumeFt3 !== undefined) {
    const most = (limit * volumeFt3) / MINUTES_AN_HOUR;
    tape?.step("cfm50 limit", `${plain(limit)} x ${plain(volumeFt3)} / 60`, most, "cfm", CODE_SOURCE[edition].ACH50);
  }
  return againstLimit(ach50, limit);
}

/** A test result against a limit, both in air changes an hour at 50 Pa. */
export function againstLimit(ach50: number, limit: number): AirVerdict {
  return { limit, found: ach50, verdict: ach50 <= limit ? "met" : "not met" };
}
