import { describe, expect, test } from "vitest";
import { cToF } from "../../src/core/enclosure/air/si.ts";
import { leastDegreeDays } from "../../src/core/enclosure/climate/degree-days.ts";
import { milesBetween } from "../../src/core/enclosure/climate/nearest.ts";
import { normals, stations } from "../../src/core/enclosure/climate/stations.ts";
import { rows } from "./rows.ts";

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

describe("NOAA normals", () => {
  const printed = rows("enclosure-normals.csv");
  test.each(printed.map((r) => [`${r.station} ${r.state}`, r] as const))("%s", (_name, r) => {
    const place = normals().find((n) => n.name === r.station && n.state === r.state);
    expect(place?.tempC.map((t) => cToF(t).toFixed(1))).toEqual(MONTHS.map((m) => r[m]));
    const mean = (place?.tempC ?? []).reduce((sum, t) => sum + cToF(t), 0) / 12;
    expect(Math.abs(mean - Number(r.annual_F))).toBeLessThanOrEqual(0.05 + 1e-9);
  });

  test("no place beside the printed ones", () => expect(normals()).toHaveLength(printed.length));
});

test("degree-days by monthly means never pass those of the hours, and miss 265 F day at most: 91 stations", () => {
  const missing = stations().map((s) => s.hdd65F - leastDegreeDays(s.tempC));
  expect(missing).toHaveLength(91);
  // Means are printed to 0.1 C: half of that over a year is 33 F day.
  expect(Math.min(...missing)).toBeGreaterThanOrEqual(-33);
  expect(Math.max(...missing)).toBeLessThanOrEqual(265);
});

test.each(rows("enclosure-station-years.csv").map((r) => [r.wmo, r] as const))("the whole line of %s", (wmo, r) => {
  const s = stations().find((x) => x.wmo === wmo);
  const got = [s?.latDeg, s?.lonDeg, s?.elevationM, s?.hdd65F, s?.cdd65F, s?.cold996C, s?.cold99C, s?.hot1C];
  const printed = [r.lat, r.lon, r.elevation, r.hdd, r.cdd, r.cold996, r.cold99, r.hot1];
  expect([s?.state, s?.zone]).toEqual([r.state, r.zone]);
  expect(got).toEqual(printed.map((v) => expect.closeTo(Number(v), 9)));
  expect(s?.vaporPa).toEqual(MONTHS.map((m) => Number(r[m])));
});

describe("distances", () => {
  test.each(rows("enclosure-distances.csv").map((r) => [r.case, r] as const))("%s", (_name, r) => {
    const miles = milesBetween(
      { latDeg: Number(r.lat1), lonDeg: Number(r.lon1) },
      { latDeg: Number(r.lat2), lonDeg: Number(r.lon2) },
    );
    expect(Math.abs(miles - Number(r.miles))).toBeLessThanOrEqual(Number(r.within));
  });
});
