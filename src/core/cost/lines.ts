/** What a line of cost is for; sales tax falls on materials. */
export const COST_KINDS = ["labor", "material", "equipment", "subcontract"] as const;
export type CostKind = (typeof COST_KINDS)[number];

/** A line of direct cost. */
export interface CostLine {
  readonly line: string;
  readonly amount: number;
  readonly kind: CostKind | undefined;
  /** least and greatest that it may come to; undefined: it does not go that way */
  readonly low: number | undefined;
  readonly high: number | undefined;
}
