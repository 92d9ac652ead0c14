/** A usual tractor of three axles with a flat semitrailer of two; common practice, no source. */
export const USUAL_TRUCK = {
  /** weight on the road without load */
  emptyLb: { steer: 10_500, drive: 13_000, trailer: 10_500 },
  /** from the steer axle to the middle of the drive axles */
  wheelbaseFt: 17,
  /** the kingpin stands so far ahead of the middle of the drive axles */
  kingpinAheadFt: 1,
  /** between the two axles of a tandem */
  tandemFt: 4,
  /** kingpin behind the front of the deck, middle of the trailer's axles ahead of its end */
  kingpinFromFrontFt: 3,
  tandemFromEndFt: 5,
  source: "a usual five-axle truck, common practice, no source: weigh yours",
} as const;

/** A piece lighter than this for its volume (insulation, windows) carries only what weighs no more for its size; common practice, no source. */
export const SOFT_BELOW_PCF = 15;
