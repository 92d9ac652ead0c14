import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { BEARING } from "./tables/factors.ts";

/**
 * Bearing area factor Cb.
 * @param lengthIn length of the bearing along the grain, in
 * @param inner 3 in or more from the end of the member
 * Source: NDS 3.10.4, from memory; (3.5 + 0.375)/3.5 read in a worked example.
 */
export function bearingFactor(lengthIn: number, inner: boolean, tape?: Tape): number {
  const counts = inner && lengthIn < BEARING.under;
  const cb = counts ? (lengthIn + BEARING.add) / lengthIn : 1;
  const says = counts ? `(${plain(lengthIn)} + 0.375) / ${plain(lengthIn)}` : "at the end, or 6 in long and more";
  tape?.step("Cb", says, cb, "", "NDS 3.10.4");
  return cb;
}
