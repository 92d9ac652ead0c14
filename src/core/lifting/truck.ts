import { OutOfRange, plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { axleGroups, sayAxleGroups } from "./axles.ts";
import { type Deck, fits, type HauledPiece, type LoadedPiece } from "./deck.ts";
import { fewestLoads, leastLoads } from "./fewest-loads.ts";
import type { LoadPlanPicture } from "./pictures.ts";
import { SOFT_BELOW_PCF } from "./tables/truck.ts";

export interface LoadRow {
  /** number of the truck load, from 1, in the order of erection */
  readonly load: number;
  /** of loading: 1 goes on first and comes off last */
  readonly order: number;
  readonly piece: string;
  readonly weightLb: number;
  /** deck in use once the piece is on */
  readonly usedLengthFt: number;
  /** top of its pile above the deck once the piece is on */
  readonly heightFt: number;
}

/** Pieces alike, as a row of the table gives them. */
export interface HauledRow {
  readonly piece: string;
  readonly weightLb: number;
  readonly lengthFt: number;
  readonly widthFt: number;
  readonly thicknessIn: number;
  readonly count: number;
  /** undefined: after all that have a turn */
  readonly turn: number | undefined;
}

/** More are not laid out in the time that a cell has. */
const MOST_PIECES = 500;

/** One piece for each that a row counts; those without a turn come last. */
function piecesOf(rows: readonly HauledRow[]): readonly HauledPiece[] {
  return rows.flatMap(({ count, thicknessIn, turn = Number.MAX_SAFE_INTEGER, ...rest }, row) => {
    const piece: HauledPiece = { ...rest, heightFt: thicknessIn / 12, turn, row, rank: 0 };
    return Array.from({ length: count }, () => piece);
  });
}

/**
 * Pieces in truck loads: within payload, deck and height of stack, in the order of erection, last in first out within a load. A load holds no piece of a
 * later turn while one of an earlier turn waits for the next truck. A careful but not exhaustive search.
 * @throws OutOfRange for a piece that no truck of these measures takes
 * Source: the user's truck; axle groups by 23 USC 127(a) on a usual truck.
 */
export function truckLoads(rows: readonly HauledRow[], deck: Deck, tape?: Tape): readonly LoadRow[] {
  const pieces = piecesOf(rows);
  if (pieces.length > MOST_PIECES) {
    throw new OutOfRange(
      `The pieces are ${pieces.length}`,
      `at most ${MOST_PIECES} are laid out at once`,
      "Take packs and pallets as one piece each, or split the list by turns of erection",
    );
  }
  for (const piece of pieces) refuseTooLarge(piece, deck);
  const totalLb = pieces.reduce((sum, p) => sum + p.weightLb, 0);
  tape?.step("W", `${pieces.length} pieces`, totalLb, "lb", "sum");
  tape?.step("least", "loads by weight alone", leastLoads(pieces, deck), "loads", "W / payload, rounded up");
  sayOrder(rows, tape);
  const loads = fewestLoads(pieces, deck);
  tape?.step("N", "loads by weight, deck and stack", loads.length, "loads", "search, last in first out");
  loads.forEach((load, i) => {
    sayAxleGroups(i + 1, groupsOf(load, deck), tape);
  });
  tape?.show(loadPlan(loads, deck));
  return loads.flatMap((load, i) => rowsOf(i + 1, load));
}

function refuseTooLarge(p: HauledPiece, deck: Deck): void {
  const limits: readonly (readonly [string, number, number, string])[] = [
    ["weighs", p.weightLb, deck.payloadLb, "lb"],
    ["is long", p.lengthFt, deck.lengthFt, "ft"],
    ["is wide", p.widthFt, deck.widthFt, "ft"],
    ["is high", p.heightFt, deck.stackFt, "ft"],
  ];
  for (const [what, value, most, unit] of limits) {
    if (fits(value, most)) continue;
    throw new OutOfRange(
      `${p.piece} ${what}: ${plain(value)} ${unit}`,
      `the truck takes ${plain(most)} ${unit}`,
      "Check the piece (thickness is in inches, length and width in feet), split it, or use another truck",
    );
  }
}

function sayOrder(rows: readonly HauledRow[], tape: Tape | undefined): void {
  const without = rows.filter((r) => r.turn === undefined).length;
  if (without === rows.length) tape?.assume("No order of erection is given: pieces are loaded as they fit best.");
  else if (without > 0) tape?.assume("Pieces without a turn of erection come after those that have one.");
  tape?.assume(
    `Pieces lie along the deck, none on one that is shorter or narrower; pieces under ${SOFT_BELOW_PCF} pcf carry nothing that is heavier for its size.`,
  );
}

function rowsOf(load: number, pieces: readonly LoadedPiece[]): LoadRow[] {
  let usedLengthFt = 0;
  return pieces.map(({ of, frontFt, bottomFt }, i) => {
    usedLengthFt = Math.max(usedLengthFt, frontFt + of.lengthFt);
    return {
      load,
      order: i + 1,
      piece: of.piece,
      weightLb: of.weightLb,
      usedLengthFt,
      heightFt: bottomFt + of.heightFt,
    };
  });
}

function groupsOf(load: readonly LoadedPiece[], deck: Deck) {
  const weightLb = load.reduce((sum, l) => sum + l.of.weightLb, 0);
  const moment = load.reduce((sum, l) => sum + l.of.weightLb * (l.frontFt + l.of.lengthFt / 2), 0);
  const usedFt = Math.max(...load.map((l) => l.frontFt + l.of.lengthFt));
  return axleGroups(weightLb, moment / weightLb, deck.lengthFt - usedFt, deck.lengthFt);
}

function loadPlan(loads: readonly (readonly LoadedPiece[])[], deck: Deck): LoadPlanPicture {
  const weights = loads.map((load) => load.reduce((sum, l) => sum + l.of.weightLb, 0));
  const said = weights.map((lb, i) => `load ${i + 1}: ${loads[i]?.length} pieces, ${Math.round(lb)} lb`);
  return {
    kind: "load-plan",
    alt: `${loads.length} truck ${loads.length === 1 ? "load" : "loads"}, seen from above, pieces numbered in the order of loading; ${said.join("; ")}`,
    deckLengthFt: deck.lengthFt,
    deckWidthFt: deck.widthFt,
    loads: loads.map((load, i) => ({
      load: i + 1,
      weightLb: weights[i] ?? 0,
      pieces: load.map(({ of, frontFt, sideFt, bottomFt }, k) => ({
        order: k + 1,
        piece: of.piece,
        frontFt,
        sideFt,
        bottomFt,
        lengthFt: of.lengthFt,
        widthFt: of.widthFt,
      })),
    })),
  };
}
