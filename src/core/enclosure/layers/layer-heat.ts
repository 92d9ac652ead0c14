/** A resistance of a layer's own: R of the whole layer, a conductivity in Btu in/(h ft2 F), or solid wood by its gravity and moisture. */
export type Resistance =
  | { readonly kind: "R"; readonly rIp: number }
  | { readonly kind: "k"; readonly kBtuIn: number }
  | { readonly kind: "wood"; readonly specificGravity: number; readonly moisturePct: number };
