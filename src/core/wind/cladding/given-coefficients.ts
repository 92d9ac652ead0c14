import { BadInput, OutOfRange, plain } from "../../kit/refusal.ts";
import { type AreaCurve, gcpAt } from "../tables/area-curve.ts";
import { isWall, partName, type Surface } from "./cladding-figure.ts";

/** A coefficient that the reader took from the figure, for a zone and an effective area. */
export interface GivenCoefficient {
  readonly zone: string;
  readonly areaFt2: number;
  /** 0 on an overhang whose figure has uplift only */
  readonly toward: number;
  readonly away: number;
}

const WALL_ZONES = ["4", "5"] as const;
const ROOF_ZONES = ["1", "1'", "2", "2'", "2e", "2n", "2r", "3", "3'", "3e", "3r"] as const;
/** What the figures hold at most, away from the surface and toward it. */
const MOST_AWAY = { wall: -2, roof: -5 } as const;
const MOST_TOWARD = 1.5;
/** Figures are level below this area, ft2. */
const LEVEL_BELOW_FT2 = 10;

/** A zone as the figures write it: no spaces, small letters, one kind of prime. */
export function zoneName(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/^zone\s*/, "")
    .replace(/[\u2019\u2032]/g, "'");
}

/** Refuses what no figure can hold: a zone of another surface, a suction above 0, a coefficient out of all bounds. */
function checkGiven(surface: Surface, { zone, away, toward }: GivenCoefficient): void {
  const zones: readonly string[] = isWall(surface) ? WALL_ZONES : ROOF_ZONES;
  if (!zones.includes(zoneName(zone))) {
    throw new BadInput(
      `The coefficients hold a zone "${zone}"`,
      `zones of a ${partName(surface)} are ${zones.join(", ")}`,
      "Name the zone as the figure does",
    );
  }
  const most = isWall(surface) ? MOST_AWAY.wall : MOST_AWAY.roof;
  if (away < most || away > 0 || toward < 0 || toward > MOST_TOWARD) {
    throw new BadInput(
      `The coefficients of zone ${zone} are ${plain(toward)} toward and ${plain(away)} away`,
      `figures of a ${partName(surface)} hold 0 to ${MOST_TOWARD} toward and ${most} to 0 away`,
      "Give GCp, not a pressure, with suction below 0",
    );
  }
}

/** Zones of a table of coefficients, each once, in its order. */
export function givenZones(given: readonly GivenCoefficient[]): readonly string[] {
  return [...new Set(given.map((g) => zoneName(g.zone)))];
}

/**
 * Coefficients of a zone at an effective area: straight in log10(area) between the areas given; beyond the largest its value is kept, which is
 * on the safe side; below the smallest it is refused unless that is 10 ft2 or less, where the figures are level.
 */
export function givenCoefficients(
  surface: Surface,
  given: readonly GivenCoefficient[],
  zone: string,
  areaFt2: number,
): { readonly toward: number; readonly away: number } {
  for (const row of given) checkGiven(surface, row);
  const rows = given.filter((g) => zoneName(g.zone) === zone).sort((a, b) => a.areaFt2 - b.areaFt2);
  const [first, ...rest] = rows;
  if (first === undefined) {
    throw new BadInput(
      `The coefficients hold no zone "${zone}"`,
      `they hold ${givenZones(given).join(", ")}`,
      "Add a row for the zone, or name one of these",
    );
  }
  if (areaFt2 < first.areaFt2 && first.areaFt2 > LEVEL_BELOW_FT2) {
    throw new OutOfRange(
      `The effective wind area of ${plain(areaFt2)} ft2 is below the ${plain(first.areaFt2)} ft2 given for zone ${zone}`,
      "a smaller area has more suction",
      "Add the coefficient of a smaller area",
    );
  }
  const curve = (of: (row: GivenCoefficient) => number): AreaCurve => [
    [first.areaFt2, of(first)],
    ...rest.map((row) => [row.areaFt2, of(row)] as const),
  ];
  return {
    toward: gcpAt(
      curve((row) => row.toward),
      areaFt2,
    ),
    away: gcpAt(
      curve((row) => row.away),
      areaFt2,
    ),
  };
}
