import { recalled } from "../kit/known.ts";
import { BadInput, OutOfRange, plain, within } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { adjusted, type Conditions, nds } from "./adjust.ts";
import { bearingPsi, type Member } from "./bearing.ts";
import { type Dowel, dowelOf } from "./dowel.ts";
import type { YieldModePicture } from "./pictures.ts";
import { type FastenerType, LEAST_PENETRATION } from "./tables/fasteners.ts";
import { type Bearing, bothPlanes, MODE_WORDS, type Mode, type ModeLoad, planeYield, reductionTerm } from "./yield.ts";

export const GRAINS = ["side", "end"] as const;
/** Of the main member, in which the fastener ends. */
export type Grain = (typeof GRAINS)[number];

export interface Connection {
  readonly type: FastenerType;
  readonly diameterIn: number;
  readonly side: Member;
  readonly main: Member;
  /** beyond the main member: the connection is in double shear */
  readonly second: Member | undefined;
  /** between neighbouring members, insulation for example */
  readonly gapIn: number;
  readonly grain: Grain;
  /** bearing strengths to 50 psi as in the printed tables */
  readonly rounded: boolean;
}

/** The governing mode with its reference value. */
export interface YieldValue {
  readonly mode: Mode;
  /** reference design value of one fastener, lb */
  readonly lb: number;
  readonly words: string;
}

const END_GRAIN = 0.67;
const GREATEST_GAP_IN = 12;
/** No wood or panel that carries is thinner: a smaller figure is likely in feet. */
const THIN_WOOD_IN = 0.25;

function checkPenetration(c: Connection, holder: Member): void {
  const leastIn = LEAST_PENETRATION * c.diameterIn;
  if (c.type === "bolt" || holder.material.kind === "steel" || holder.thicknessIn >= leastIn - 1e-9) return;
  throw new OutOfRange(
    `The penetration into ${holder.name} is ${plain(holder.thicknessIn)} in`,
    `at least ${plain(leastIn)} in is wanted, ${LEAST_PENETRATION} diameters without the tip (NDS 12.1.4 to 12.1.6)`,
    "Use a longer fastener, and check that the penetration is in inches",
  );
}

function checkConnection(c: Connection): void {
  within("The gap", c.gapIn, 0, GREATEST_GAP_IN, "in", "the dowel equations have not been tried beyond");
  checkPenetration(c, c.second ?? c.main);
  for (const m of [c.side, c.main, c.second ?? c.main])
    within(`The angle of ${m.name}`, m.angleDeg, 0, 90, "deg", "NDS 12.3.4");
  if (c.grain === "end" && (c.second !== undefined || c.main.material.kind !== "wood")) {
    throw new BadInput(
      "End grain is given",
      "it is the end of a wood member in which the fastener ends, in single shear",
      "Leave the grain out, or give a side and a main member of wood",
    );
  }
}

/** In end grain the load lies across the grain whatever its angle. NDS 2018 12.3.3.4. */
function asLoaded(main: Member, grain: Grain): Member {
  return grain === "end" ? { ...main, angleDeg: 90 } : main;
}

function bearing(member: Member, dowel: Dowel, rounded: boolean, tape?: Tape): Bearing {
  return { lengthIn: member.thicknessIn, psi: bearingPsi(member, dowel, rounded, tape) };
}

interface Reduced extends ModeLoad {
  readonly rd: number;
  readonly z: number;
}

function reduced(loads: readonly ModeLoad[], dowel: Dowel, angleDeg: number): readonly Reduced[] {
  return loads.map((l) => {
    const rd = reductionTerm(l.mode, dowel, angleDeg);
    return { ...l, rd, z: l.lb / rd };
  });
}

const least = (all: readonly Reduced[]): Reduced => all.reduce((a, b) => (b.z < a.z ? b : a));

/**
 * Reference lateral design value Z of one fastener: the least of its yield modes, in single shear or, with a second side member, in double
 * shear by twice its weaker plane.
 * @throws OutOfRange for a size, gravity, gap or penetration outside the standard; BadInput for end grain of what has none
 * Source: NDS 2018 12.3.1, 12.3.8; with a gap AWC TR12.
 */
export function yieldValue(c: Connection, edition: string, tape?: Tape): YieldValue {
  checkConnection(c);
  const dowel = dowelOf(c.type, c.diameterIn, tape);
  const main = asLoaded(c.main, c.grain);
  const sides = c.second === undefined ? [c.side] : [c.side, c.second];
  const angleDeg = Math.max(main.angleDeg, ...sides.map((s) => s.angleDeg));
  const inMain = bearing(main, dowel, c.rounded, tape);
  const all = sides.flatMap((side) => {
    const plane = planeYield(dowel, inMain, bearing(side, dowel, c.rounded, tape), c.gapIn, tape);
    const loads = reduced(c.second === undefined ? plane : bothPlanes(plane), dowel, angleDeg);
    for (const l of loads)
      tape?.step(`Z(${l.mode})`, `${l.how}, / Rd ${plain(l.rd)}`, l.z, "lb", nds(edition, "Table 12.3.1A, 12.3.1B"));
    return loads;
  });
  const governs = least(all);
  const words = MODE_WORDS[governs.mode];
  tape?.step("Z", `least: mode ${governs.mode}, ${words}`, governs.z, "lb", nds(edition, "12.3.1"));
  tape?.show(picture(c, dowel, inMain, governs));
  for (const m of sides) {
    if (m.material.kind !== "steel" && m.thicknessIn < THIN_WOOD_IN)
      tape?.caution(`${m.name} is ${plain(m.thicknessIn)} in thick: is the thickness in inches?`);
  }
  if (c.gapIn > 0) {
    tape?.caution(
      "With a gap the fastener bends freely between the members: stiffness, creep and the bending of long screws need a look of their own.",
    );
  }
  return { mode: governs.mode, lb: governs.z, words };
}

/**
 * Adjusted lateral value of one fastener: end grain, load duration, wet service and design method on the reference value.
 * The group action and geometry factors are not in it.
 * Source: NDS 2018 11.3, 12.5.2.
 */
export function lateralValue(c: Connection, conditions: Conditions, tape?: Tape): number {
  let z = yieldValue(c, conditions.edition, tape).lb;
  if (c.grain === "end") {
    z *= END_GRAIN;
    tape?.step("Z Ceg", `end grain: times ${END_GRAIN}`, z, "lb", recalled(nds(conditions.edition, "12.5.2")));
  }
  return adjusted("Z'", z, c.type, "lateral", conditions, tape);
}

/** How far from the plane the fastener bends: where the shear has been taken up by bearing. */
function bendsIn(mode: Mode, planeLb: number, bearingLbIn: number, where: "side" | "main"): number | undefined {
  const bends = mode === "IV" || mode === (where === "side" ? "IIIm" : "IIIs");
  return bends ? planeLb / bearingLbIn : undefined;
}

function picture(c: Connection, dowel: Dowel, inMain: Bearing, g: Reduced): YieldModePicture {
  const side = bearing(c.side, dowel, c.rounded);
  const planeLb = c.second === undefined ? g.lb : g.lb / 2;
  const inSide = ["Is", "II", "IIIs", "IV"].includes(g.mode);
  const crushesMain = ["Im", "II", "IIIm", "IV"].includes(g.mode);
  const members = [c.side, c.main, ...(c.second === undefined ? [] : [c.second])];
  return {
    kind: "yield-mode",
    alt: `Yield mode ${g.mode}: ${MODE_WORDS[g.mode]}; ${plain(g.z)} lb for each fastener.`,
    mode: g.mode,
    says: MODE_WORDS[g.mode],
    members: members.map((m) => ({
      name: m.name,
      thicknessIn: m.thicknessIn,
      crushed: m === c.main ? crushesMain : inSide,
    })),
    gapIn: c.gapIn,
    diameterIn: dowel.yieldIn,
    bendsIn: {
      side: bendsIn(g.mode, planeLb, side.psi * dowel.yieldIn, "side"),
      main: bendsIn(g.mode, planeLb, inMain.psi * dowel.yieldIn, "main"),
    },
    loadLb: g.z,
  };
}
