/** What a layer does beside its R. */
export type Role =
  | { readonly kind: "none" }
  | { readonly kind: "air barrier" }
  /** openings to the outside, in mm2 per m of wall length, or per m2 of a roof; undefined: well ventilated */
  | { readonly kind: "ventilated cavity"; readonly openingMm2M: number | undefined };

export const NO_ROLE: Role = { kind: "none" };
