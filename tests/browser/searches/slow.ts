import { cellFunction, quantityOf } from "../../../src/functions/declare/cell-function.ts";
import { number } from "../../../src/functions/declare/scalar.ts";

/** A search that keeps its thread busy for the milliseconds that it is given. */
export const slow = cellFunction({
  name: "SLOW",
  family: "Takeoff and cutting",
  summary: "Takes its time.",
  params: { ms: number({ says: "milliseconds" }) },
  returns: quantityOf("ms", "the time"),
  sources: ["none"],
  example: { args: { ms: 1 }, gives: 1, within: 0, source: "exact arithmetic" },
  heavy: true,
  refuses: [{ args: {}, says: "" }],
  notFor: "none, because it is for tests.",
  run: ({ ms }) => {
    const end = performance.now() + ms;
    while (performance.now() < end);
    return ms;
  },
});
