import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { axleGroupLimitLb } from "./bridge-formula.ts";
import { ROAD } from "./tables/rules.ts";
import { USUAL_TRUCK } from "./tables/truck.ts";

export interface AxleGroup {
  readonly group: string;
  readonly axles: number;
  /** from the first to the last axle of the group */
  readonly apartFt: number;
  readonly weightLb: number;
  readonly limitLb: number;
}

/**
 * Weight on the axle groups of a usual five-axle truck, its load shifted along the deck so that both tandems carry as nearly the same as it allows,
 * each group against the federal bridge formula.
 * @param centerFt from the front of the deck to the load's center of gravity with the load pushed to the front
 * @param freeFt deck left over behind the load
 * Source: moments; 23 USC 127(a), 23 CFR 658.17; the truck by common practice (tables/truck.ts).
 */
export function axleGroups(payloadLb: number, centerFt: number, freeFt: number, deckFt: number): readonly AxleGroup[] {
  const { emptyLb, wheelbaseFt, kingpinAheadFt, tandemFt, kingpinFromFrontFt, tandemFromEndFt } = USUAL_TRUCK;
  const spanFt = deckFt - tandemFromEndFt - kingpinFromFrontFt;
  const onDrive = 1 - kingpinAheadFt / wheelbaseFt;
  // Both tandems alike: drive + onDrive K = trailer + P - K.
  const evenLb = (emptyLb.trailer + payloadLb - emptyLb.drive) / (1 + onDrive);
  const wishedFt = kingpinFromFrontFt + spanFt * (1 - evenLb / payloadLb);
  const atFt = Math.min(Math.max(wishedFt, centerFt), centerFt + freeFt);
  const kingpinLb = payloadLb * (1 - (atFt - kingpinFromFrontFt) / spanFt);
  const steerLb = emptyLb.steer + kingpinLb * (1 - onDrive);
  const driveLb = emptyLb.drive + kingpinLb * onDrive;
  const trailerLb = emptyLb.trailer + payloadLb - kingpinLb;
  const innerFt = kingpinAheadFt + spanFt + tandemFt;
  const group = (name: string, axles: number, apartFt: number, weightLb: number): AxleGroup => ({
    group: name,
    axles,
    apartFt,
    weightLb,
    limitLb: axleGroupLimitLb(apartFt, axles),
  });
  return [
    group("steer axle", 1, 0, steerLb),
    group("drive tandem", 2, tandemFt, driveLb),
    group("trailer tandem", 2, tandemFt, trailerLb),
    group("both tandems", 4, innerFt, driveLb + trailerLb),
    group("all axles", 5, innerFt + wheelbaseFt - tandemFt / 2, steerLb + driveLb + trailerLb),
  ];
}

/** Writes down the groups of one load, and says which weigh too much. */
export function sayAxleGroups(load: number, groups: readonly AxleGroup[], tape: Tape | undefined): void {
  for (const g of groups) {
    const limit = `limit ${plain(g.limitLb)} lb, ${g.axles} axles in ${plain(g.apartFt)} ft`;
    tape?.step("G", `load ${load}, ${g.group}: ${limit}`, g.weightLb, "lb", ROAD.source);
    if (g.weightLb > g.limitLb) {
      tape?.caution(
        `Load ${load} puts ${Math.round(g.weightLb)} lb on the ${g.group} of a usual truck, over the ${plain(g.limitLb)} lb of the federal formula: move weight along the deck or to another load.`,
      );
    }
  }
}
