/**
 * An external pressure coefficient GCp over the effective wind area: straight in log10(area) between the nodes, level beyond
 * the first and the last, as the figures of components and cladding are drawn.
 */
export type AreaCurve = readonly [
  readonly [areaFt2: number, gcp: number],
  ...(readonly [areaFt2: number, gcp: number])[],
];

/** GCp at an effective wind area above 0 ft2. */
export function gcpAt(curve: AreaCurve, areaFt2: number): number {
  let [lowFt2, lowGcp] = curve[0];
  if (areaFt2 <= lowFt2) return lowGcp;
  for (const [highFt2, highGcp] of curve) {
    if (areaFt2 <= highFt2) {
      return lowGcp + ((highGcp - lowGcp) * Math.log10(areaFt2 / lowFt2)) / Math.log10(highFt2 / lowFt2);
    }
    lowFt2 = highFt2;
    lowGcp = highGcp;
  }
  return lowGcp;
}

/** The curve in words: "-1.4 at 10 ft2, -0.8 at 500 ft2; straight in log10(area) between, level beyond". */
export function curveText(curve: AreaCurve): string {
  const [first, ...rest] = curve;
  if (rest.length === 0) return `${first[1]} for any area`;
  const nodes = curve.map(([areaFt2, gcp]) => `${gcp} at ${areaFt2} ft2`).join(", ");
  return `${nodes}; straight in log10(area) between, level beyond`;
}
