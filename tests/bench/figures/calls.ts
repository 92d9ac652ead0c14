/** What one call costs. */
// @ts-expect-error the peer brings no types
import psychrolib from "psychrolib";
import "../../../src/functions/run/tables-at-once.ts";
import { positional } from "../../../src/functions/declare/formula.ts";
import { readArguments } from "../../../src/functions/run/arguments.ts";
import { invoke } from "../../../src/functions/run/invoke.ts";
import { type Line, line } from "./line.ts";
import { named } from "./named.ts";

/** Processor time of a call in microseconds, the best of many short rounds: what else a busy machine does is not the program's. */
function microseconds(work: () => unknown, calls = 2000, rounds = 60): number {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round++) {
    const before = process.cpuUsage();
    for (let i = 0; i < calls; i++) work();
    const { user, system } = process.cpuUsage(before);
    best = Math.min(best, (user + system) / calls);
  }
  return best;
}

interface Peer {
  IP: number;
  SetUnitSystem(system: number): void;
  GetTDewPointFromRelHum(temp: number, rh: number): number;
}

function dewPoint(): Line[] {
  const peer = psychrolib as Peer;
  peer.SetUnitSystem(peer.IP);
  const fn = named("DEW_POINT");
  // Another temperature each time, as cells have.
  let i = 0;
  const temperature = () => 40 + (i++ % 500) / 10;
  const ours = microseconds(() => invoke(fn, [temperature(), 50]));
  const theirs = microseconds(() => peer.GetTDewPointFromRelHum(temperature(), 0.5));
  return [
    line(
      "DEW_POINT in a cell against psychrolib bare",
      `${ours.toFixed(2)} against ${theirs.toFixed(2)} us`,
      "not slower",
      ours <= theirs,
    ),
  ];
}

const TEN = [
  "LENGTH",
  "CONVERT",
  "WIND_KZ",
  "WIND_PRESSURE",
  "WIND_CLADDING",
  "LOAD_TRIBUTARY",
  "WOOD_COLUMN",
  "R_STACK",
  "U_FACTOR",
  "COST_BID",
];

/** Each of ten functions as a cell calls it, and its calculation alone on arguments that are read already. */
function declaredAgainstBare(): Line[] {
  return TEN.map((name) => {
    const fn = named(name);
    const raw = positional(fn, fn.example.args);
    const args = readArguments(fn, raw, { assume: () => {}, caution: () => {} }, undefined);
    const declared = microseconds(() => invoke(fn, raw), 500);
    const bare = microseconds(() => fn.run(args, undefined), 500);
    return line(
      `${name}: declared against its calculation alone`,
      `${declared.toFixed(2)} against ${bare.toFixed(2)} us`,
    );
  });
}

export const calls = (): Line[] => [...dewPoint(), ...declaredAgainstBare()];
