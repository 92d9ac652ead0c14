import { recalled } from "../kit/known.ts";
import { type Duration, loadDurationFactor, timeEffectFactor } from "../kit/load-duration.ts";
import type { LoadLevel } from "../kit/load-level.ts";
import { BadInput, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import type { FastenerType } from "./tables/fasteners.ts";

const SERVICES = ["dry", "wet"] as const;
export type Service = (typeof SERVICES)[number];

/** What acts on the reference value of a connection. */
export interface Conditions {
  readonly duration: Duration;
  readonly service: Service;
  readonly method: LoadLevel;
  /** edition of the wood standard: "2018" */
  readonly edition: string;
}

export type Resistance = "lateral" | "withdrawal" | "pull-through";

/** Largest load duration factor of a connection, and the strength design pair KF and phi. NDS 2015 Table 11.3.1, read. */
const MOST_CD = 1.6;
const FORMAT_FACTOR = 3.32;
const RESISTANCE_FACTOR = 0.65;

/** Wet service factors CM. NDS 2018 Table 11.3.3, from memory. */
const WET = 0.7;
const WET_NAIL_WITHDRAWAL = 0.25;

/** Wet service factor CM of a fastener. NDS 2018 Table 11.3.3: made dry, wet in service. */
export function wetFactor(type: FastenerType | undefined, resistance: Resistance, service: Service): number {
  if (service === "dry") return 1;
  return type === "nail" && resistance === "withdrawal" ? WET_NAIL_WITHDRAWAL : WET;
}

/** A place in the edition of the wood standard. */
export function nds(edition: string, place: string): string {
  return `NDS ${edition} ${place}`;
}

function refuseImpact(duration: Duration): void {
  if (duration !== "impact" && !(typeof duration === "number" && duration > MOST_CD)) return;
  throw new BadInput(
    typeof duration === "number"
      ? `The load duration factor is ${plain(duration)}`
      : "The load duration is given as impact",
    `connections take no impact factor, CD at most ${MOST_CD} (NDS Table 11.3.1 note 1)`,
    "Give the duration of the other loads, or 1.6",
  );
}

/**
 * The reference value of one fastener with load duration, wet service and, in strength design, KF, phi and lambda.
 * Temperature up to 100 F.
 * @param symbol of the adjusted value: "Z'"
 * @throws BadInput for an impact load
 * Source: NDS 2018 Table 11.3.1.
 */
export function adjusted(
  symbol: string,
  referenceLb: number,
  type: FastenerType | undefined,
  resistance: Resistance,
  c: Conditions,
  tape?: Tape,
): number {
  refuseImpact(c.duration);
  const cm = wetFactor(type, resistance, c.service);
  const clause = nds(c.edition, "Table 11.3.1");
  if (c.service === "wet") {
    tape?.step("CM", "made dry, wet in service", cm, "", recalled(nds(c.edition, "Table 11.3.3")));
    tape?.caution("Wood that is green when fastened and dries later has other wet service factors: see NDS 11.3.3.");
  }
  if (c.method === "allowable") {
    const cd = loadDurationFactor(c.duration);
    const value = referenceLb * cd * cm;
    tape?.step(symbol, `${plain(referenceLb)} x CD ${plain(cd)} x CM ${cm}`, value, "lb", clause);
    return value;
  }
  const lambda = timeEffectFactor(c.duration);
  const value = referenceLb * FORMAT_FACTOR * RESISTANCE_FACTOR * lambda * cm;
  tape?.step(
    symbol,
    `${plain(referenceLb)} x KF ${FORMAT_FACTOR} x phi ${RESISTANCE_FACTOR} x lambda ${lambda} x CM ${cm}`,
    value,
    "lb",
    clause,
  );
  return value;
}
