import { DELTA_0 } from "../air/si.ts";

/**
 * A wall as vapor sees it: nodes 0 to N, from the inside surface to the outside surface.
 * `x` is the running sum of sd in m from 0, never falling; `saturationPa` the saturation pressure at each node.
 */
export interface VaporPath {
  readonly x: readonly number[];
  readonly saturationPa: readonly number[];
}

/** Rate at which water gathers (above 0) or dries (below 0) at a node. */
export interface PlaneRate {
  readonly node: number;
  readonly kgM2s: number;
}

export interface VaporSolution {
  /** vapor pressure at each node, Pa */
  readonly pressurePa: readonly number[];
  /** the wet planes inside the wall, inside to outside */
  readonly planes: readonly PlaneRate[];
  /** vapor flow in at the inside surface less the flow out at the outside surface, kg/(m2 s): all planes gather it together */
  readonly netKgM2s: number;
}

/** The vapor pressure without condensation: straight between both sides along x. Source: ISO 13788:2012 6.4. */
export function straightLine(x: readonly number[], insidePa: number, outsidePa: number): readonly number[] {
  const total = x[x.length - 1] ?? 0;
  return x.map((xn) => insidePa + (outsidePa - insidePa) * (xn / total));
}

/**
 * Vapor pressure with condensation: a string pulled taut between both sides below the saturation pressure, that is the lower convex hull of
 * the two ends and the saturation pressures. Planes that hold water already are pinned at saturation, and the string runs from pin to pin.
 * Nodes without resistance between them share one pressure; the lowest saturation pressure of such a group counts and names the plane.
 * At the surfaces themselves the pressure is capped at saturation and no plane is reported.
 * @param pinned nodes that hold water, as earlier solutions named them
 * Source: ISO 13788:2012 6.4 and 6.5 (condensation at one or more interfaces, and evaporation).
 */
export function tautString(
  path: VaporPath,
  insidePa: number,
  outsidePa: number,
  pinned: ReadonlySet<number>,
): VaporSolution {
  const groups = groupNodes(path);
  const last = groups.length - 1;
  const y = groups.map((g) => g.limitPa);
  y[0] = Math.min(insidePa, y[0] ?? insidePa);
  y[last] = Math.min(outsidePa, y[last] ?? outsidePa);
  const at = groups.map((g) => g.x);
  const touched = new Set<number>([0, last]);
  let from = 0;
  for (let i = 1; i <= last; i++) {
    if (i < last && !groups[i]?.nodes.some((n) => pinned.has(n))) continue;
    for (const vertex of lowerHull(at, y, from, i)) touched.add(vertex);
    from = i;
  }
  const vertices = [...touched].sort((a, b) => a - b);
  const pressures = interpolate(at, y, vertices);
  const slope = (a: number, b: number) => (num(y, a) - num(y, b)) / (num(at, b) - num(at, a));
  const planes: PlaneRate[] = [];
  for (let v = 1; v < vertices.length - 1; v++) {
    const [a, b, c] = [vertices[v - 1], vertices[v], vertices[v + 1]] as [number, number, number];
    planes.push({ node: groups[b]?.plane ?? b, kgM2s: DELTA_0 * (slope(a, b) - slope(b, c)) });
  }
  const pressurePa: number[] = [];
  groups.forEach((g, i) => {
    for (const n of g.nodes) pressurePa[n] = num(pressures, i);
  });
  const netKgM2s = DELTA_0 * (slope(0, vertices[1] ?? last) - slope(vertices[vertices.length - 2] ?? 0, last));
  return { pressurePa, planes, netKgM2s };
}

const num = (values: readonly number[], i: number): number => values[i] ?? 0;

interface Group {
  readonly x: number;
  readonly nodes: readonly number[];
  /** the node of the lowest saturation pressure */
  readonly plane: number;
  readonly limitPa: number;
}

/** Nodes with no resistance between them belong together. */
function groupNodes({ x, saturationPa }: VaporPath): readonly Group[] {
  const groups: Group[] = [];
  const total = num(x, x.length - 1);
  x.forEach((xn, n) => {
    const limitPa = num(saturationPa, n);
    const before = groups[groups.length - 1];
    if (before !== undefined && xn - before.x <= 1e-12 * total) {
      const lower = limitPa < before.limitPa;
      groups[groups.length - 1] = {
        x: before.x,
        nodes: [...before.nodes, n],
        plane: lower ? n : before.plane,
        limitPa: lower ? limitPa : before.limitPa,
      };
    } else groups.push({ x: xn, nodes: [n], plane: n, limitPa });
  });
  return groups;
}

/** Vertices of the lower convex hull from one index to another, both included. Points within rounding of a straight line are no vertices. */
function lowerHull(x: readonly number[], y: readonly number[], from: number, to: number): readonly number[] {
  const hull: number[] = [];
  for (let i = from; i <= to; i++) {
    while (hull.length >= 2) {
      const a = hull[hull.length - 2] as number;
      const b = hull[hull.length - 1] as number;
      const rise = (num(y, b) - num(y, a)) * (num(x, i) - num(x, a));
      const straight = (num(y, i) - num(y, a)) * (num(x, b) - num(x, a));
      if (rise < straight - 1e-12 * Math.max(Math.abs(rise), Math.abs(straight))) break;
      hull.pop();
    }
    hull.push(i);
  }
  return hull;
}

function interpolate(x: readonly number[], y: readonly number[], vertices: readonly number[]): readonly number[] {
  const out: number[] = [];
  for (let v = 0; v < vertices.length - 1; v++) {
    const [a, b] = [vertices[v], vertices[v + 1]] as [number, number];
    for (let i = a; i <= b; i++) {
      const t = (num(x, i) - num(x, a)) / (num(x, b) - num(x, a));
      out[i] = num(y, a) + t * (num(y, b) - num(y, a));
    }
  }
  return out;
}
