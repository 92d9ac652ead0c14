import { BRIDGE, ROAD } from "./tables/rules.ts";

/**
 * Greatest weight of a group of axles by the federal bridge formula, to the nearest 500 lb.
 * @param apartFt from the first to the last axle of the group, above 0
 * @param axles of the group, 2 or more
 * @returns lb; single axles, tandems and the gross weight have limits of their own
 * Source: 23 USC 127(a).
 */
export function bridgeFormulaLb(apartFt: number, axles: number): number {
  const steps = (apartFt * axles) / (axles - 1) + BRIDGE.perAxle * axles + BRIDGE.fixed;
  return Math.round(steps) * BRIDGE.perStepLb;
}

/**
 * Greatest lawful weight of a group of axles: the bridge formula, the limits of single axles and of tandems, two tandems 36 ft apart at their full weight, and the gross limit.
 * Source: 23 USC 127(a), 23 CFR 658.17.
 */
export function axleGroupLimitLb(apartFt: number, axles: number): number {
  if (axles === 1) return ROAD.singleAxleLb;
  if (axles === 2 && apartFt <= ROAD.tandemFt) return ROAD.tandemLb;
  const twoTandems = axles === 4 && apartFt >= ROAD.tandemsApartFt;
  const formulaLb = bridgeFormulaLb(apartFt, axles);
  return Math.min(
    ROAD.grossLb,
    axles * ROAD.singleAxleLb,
    twoTandems ? Math.max(formulaLb, 2 * ROAD.tandemLb) : formulaLb,
  );
}
