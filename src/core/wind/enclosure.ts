import { asce, type Edition } from "../kit/edition.ts";
import { OutOfRange } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { CLAUSE } from "./tables/clauses.ts";

export const ENCLOSURES = ["enclosed", "partially enclosed", "partially open", "open"] as const;
export type EnclosureClass = (typeof ENCLOSURES)[number];

/** ASCE/SEI 7-10 Table 26.11-1, 7-16 and 7-22 Table 26.13-1, each way. */
const GCPI: Readonly<Record<Exclude<EnclosureClass, "open">, number>> = {
  enclosed: 0.18,
  "partially enclosed": 0.55,
  "partially open": 0.18,
};

/**
 * Internal pressure coefficient GCpi, to be taken with both signs.
 * @throws OutOfRange for an open building, and for a partially open one in 7-10, which has no such class
 * Source: ASCE/SEI 7-10 Table 26.11-1, 7-16 and 7-22 Table 26.13-1.
 */
export function internalCoefficient(enclosure: EnclosureClass, edition: Edition, tape?: Tape): number {
  if (enclosure === "open") {
    throw new OutOfRange(
      "The building is open",
      `open buildings have net pressure coefficients CN of their own (${asce(edition, CLAUSE.openBuildings)})`,
      "Use the open-building figures, or classify the enclosure again",
    );
  }
  if (enclosure === "partially open" && edition === "7-10") {
    throw new OutOfRange(
      "The building is partially open",
      "ASCE/SEI 7-10 has no such class: it knows enclosed, partially enclosed and open",
      "Classify the building by 26.2 of that edition, usually as enclosed",
    );
  }
  const gcpi = GCPI[enclosure];
  const table = asce(edition, CLAUSE.internalPressure);
  tape?.step("GCpi", `${enclosure}, both signs`, gcpi, "", table);
  return gcpi;
}
