import { number, share, whole } from "../../declare/scalar.ts";
import { defaulted, entry } from "./entry.ts";

const nought = (says: string, aliases: readonly string[], words: string) =>
  defaulted(share({ says }), aliases, 0, `${words} {}`);

/** Money. */
export const MONEY_TERMS = {
  margin: entry(share({ says: "margin as a share of the price", below: 1 }), ["margin on price"]),
  markup: entry(share({ says: "markup as a share of the cost", max: 5 }), ["markup on cost"]),
  "overhead share": nought("office overhead as a share of cost", ["office overhead"], "overhead share"),
  "contingency share": nought("contingency as a share", ["allowance for risk"], "contingency share"),
  "sales tax": nought("sales tax on materials", ["tax on materials"], "sales tax"),
  "bond share": nought("bond as a share of the price", ["bond"], "bond share"),
  escalation: entry(
    share({
      says: "escalation of cost a year",
      min: -0.2,
      max: 1,
      usual: { min: -0.05, max: 0.25, ask: "is it a share a year?" },
    }),
    ["yearly escalation"],
  ),
  confidence: defaulted(
    share({ says: "confidence that the total is kept", above: 0, below: 1 }),
    ["contingency confidence"],
    0.8,
    "confidence {}",
  ),
  "cost correlation": defaulted(
    number({ says: "correlation of the lines with each other", min: 0, max: 1 }),
    ["correlation of lines"],
    0,
    "correlation {}: the lines vary on their own",
  ),
  "cost seed": defaulted(
    whole({ says: "seed of the simulation", min: 1, max: 1e9 }),
    ["seed of the simulation"],
    1,
    "seed {}",
  ),
} as const;
