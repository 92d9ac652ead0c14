import type { Tape } from "./tape.ts";

/** How a figure of a document is known: read in a print of it; not read there, but the same in prints of an earlier and a later edition; from memory. */
export type Known = "read" | "checked" | "memory";

/** How it is known, as working and caution say it. */
export const HOW_KNOWN: Readonly<Record<Known, string>> = {
  read: "read in a print",
  checked: "not read in this edition, but the same in prints of an earlier and a later one",
  memory: "from memory",
};

/** A source, or a place in one, whose figure is remembered and was not read: it says so wherever it is cited. */
export function recalled(source: string): string {
  return `${source}, ${HOW_KNOWN.memory}`;
}

/** The caution that belongs to a remembered figure: `what` it is, and the print `against` which it is to be checked. */
export function cautionRecalled(tape: Tape | undefined, what: string, against: string): void {
  tape?.caution(`${what}: from memory, not from a print. Check it against ${against} before use.`);
}
