/**
 * Wood members and panels.
 *
 * Other families call these:
 * - `solveBeam` (beam.ts) with `greatestMoment`, `greatestShear`, `greatestDeflection` (beam-extremes.ts): the exact answer
 *   of a straight beam on two or more supports anywhere, with overhanging ends. A panel on its picks is such a
 *   beam: supports at the picks, its weight as a uniform load, `bendingStiffness` E I of its width in lb in2,
 *   `shearStiffness` G A / 1.2 in lb; stress is the moment over S.
 * - `adjust` (adjust.ts): factors on design values; `levels` (use.ts): a force at design and at service level.
 * - `combined` (beam-column.ts): bending with compression, for a panel that slings also press together.
 */
export { adjust, type Member } from "./adjust.ts";
export { type Beam, type BeamLoad, type BeamSolution, solveBeam } from "./beam/beam.ts";
export {
  type Extreme,
  greatestDeflection,
  greatestHogging,
  greatestMoment,
  greatestSagging,
  greatestShear,
} from "./beam/beam-extremes.ts";
export { equalSpans, uniform } from "./beam/spans.ts";
export { combined } from "./beam-column.ts";
export { bendingOfStrip } from "./panel.ts";
export { levels, type Use } from "./use.ts";
