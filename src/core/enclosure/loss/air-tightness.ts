import { BadInput, plain, within } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";

/** Pressure that air changes are told at, Pa. */
export const TEST_PA = 50;
const MINUTES_AN_HOUR = 60;
/** Flow exponent of houses where the report tells none. Common practice. */
export const USUAL_EXPONENT = 0.65;
/** Air at 20 C and sea level, kg/m3: what leakage areas are reckoned with. */
const AIR_KG_M3 = 1.204;
const M2_IN_IN2 = 0.0254 ** 2;
const CFM_IN_M3_S = 0.3048 ** -3 * 60;
const POWER_LAW = "ASTM E779 power law";

/** A result of a pressurization test, in the ways that reports print it. */
export type AirTightness =
  /** air changes an hour at 50 Pa */
  | { readonly kind: "changes"; readonly ach50: number }
  /** flow of the whole house at a pressure */
  | { readonly kind: "flow"; readonly cfm: number; readonly pa: number }
  /** flow over the area of the enclosure at a pressure */
  | { readonly kind: "per area"; readonly cfmFt2: number; readonly pa: number }
  /** a hole of this area with this discharge factor passes as much at the pressure */
  | { readonly kind: "hole"; readonly in2: number; readonly pa: number; readonly discharge: number };

/** What a result may have to be divided by or multiplied with. */
export interface TestedHouse {
  readonly volumeFt3: number | undefined;
  /** area of the enclosure inside the air barrier, all six sides */
  readonly areaFt2: number | undefined;
  readonly exponent: number;
}

/**
 * Air changes an hour at 50 Pa of a test result.
 * @throws BadInput where the volume or the area that it takes is not known; OutOfRange outside 0 to 50 an hour
 * Source: definitions; power law of ASTM E779; leakage areas by Q = Cd A sqrt(2 dP / rho).
 */
export function ach50Of(test: AirTightness, house: TestedHouse, tape?: Tape): number {
  if (test.kind === "changes") return test.ach50;
  const cfm = flowOf(test, house.areaFt2, tape);
  if (house.volumeFt3 === undefined) {
    throw new BadInput(
      "House volume is missing",
      "the air tightness is a flow, and air changes are a flow over the volume",
      "Give it, or a row House volume",
    );
  }
  const cfm50 = cfm * (TEST_PA / test.pa) ** house.exponent;
  if (test.pa !== TEST_PA) {
    tape?.step(
      "cfm50",
      `${plain(Number(cfm.toPrecision(4)))} (50 / ${plain(test.pa)})^${plain(house.exponent)}`,
      cfm50,
      "cfm",
      POWER_LAW,
    );
  }
  const ach50 = (cfm50 * MINUTES_AN_HOUR) / house.volumeFt3;
  within("The air change", ach50, 0, 50, "1/h", "tests of houses at 50 Pa");
  tape?.step("ACH50", `cfm50 x 60 / ${plain(house.volumeFt3)}`, ach50, "1/h", "definition of ACH50");
  return ach50;
}

/** Flow of the whole house at the pressure of the result, cfm. */
function flowOf(
  test: Exclude<AirTightness, { kind: "changes" }>,
  areaFt2: number | undefined,
  tape: Tape | undefined,
): number {
  if (test.kind === "flow") return test.cfm;
  if (test.kind === "per area") {
    if (areaFt2 === undefined) {
      throw new BadInput(
        "Enclosure area is missing",
        "the air tightness is a flow over the area of walls, roof and floor inside the air barrier",
        "Give a row Enclosure area",
      );
    }
    const cfm = test.cfmFt2 * areaFt2;
    tape?.step("Q", `${plain(test.cfmFt2)} x ${plain(areaFt2)} ft2 at ${plain(test.pa)} Pa`, cfm, "cfm", "definition");
    return cfm;
  }
  const speed = test.discharge * Math.sqrt((2 * test.pa) / AIR_KG_M3);
  const cfm = test.in2 * M2_IN_IN2 * speed * CFM_IN_M3_S;
  tape?.step(
    "Q",
    `${plain(test.discharge)} A sqrt(2 dP / 1.204) at ${plain(test.pa)} Pa`,
    cfm,
    "cfm",
    "flow through a sharp hole",
  );
  return cfm;
}
