/** What `npm run audit` found of one function. */
export interface HowClose {
  /** rows and example whose answer stands in print */
  readonly printed: number;
  /** rows of a general library or a table of constants */
  readonly library: number;
  /** rows known from memory only */
  readonly memory: number;
  /** rows of these that depart from their own formula, and say so */
  readonly disagree: number;
  /** the example follows from arithmetic alone */
  readonly arithmetic: boolean;
  /** the largest miss as a share of what the row allows, which is half of its last printed digit or what its source claims; null where nothing is printed */
  readonly worst: { readonly share: number; readonly row: string; readonly source: string } | null;
}
