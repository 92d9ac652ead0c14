import { expect, test } from "vitest";
import type { Edition } from "../../src/core/kit/edition.ts";
import { KD_BUILDINGS } from "../../src/core/wind/directionality.ts";
import { type EnclosureClass, internalCoefficient } from "../../src/core/wind/enclosure.ts";
import { exposureCoefficient } from "../../src/core/wind/exposure-coefficient.ts";
import { type Exposure, TERRAIN } from "../../src/core/wind/tables/terrain.ts";
import { elevationFactor, velocityPressure } from "../../src/core/wind/velocity-pressure.ts";
import { rows } from "./rows.ts";
import { expectPrinted } from "./wind-known.ts";

test.each(rows("wind-kz.csv").map((r) => [`Kz ${r.edition} ${r.exposure} ${r.z_ft} ft`, r] as const))(
  "%s",
  (_n, row) => {
    for (const edition of (row.edition ?? "").split(" ") as Edition[]) {
      expectPrinted(exposureCoefficient(Number(row.z_ft), row.exposure as Exposure, "frame", edition), row);
    }
  },
);

test.each(rows("wind-ke.csv").map((r) => [`Ke at ${r.elevation_ft} ft`, r] as const))("%s", (_n, row) => {
  for (const edition of ["7-16", "7-22"] as const)
    expectPrinted(elevationFactor(Number(row.elevation_ft), edition), row);
});

const height = rows("wind-height-exposure.csv");
test.each(height.map((r) => [`Kz ratio ${r.exposure} ${r.edition} ${r.h_ft} ft`, r] as const))("%s", (_n, row) => {
  const kz = (h: number, exposure: Exposure) => exposureCoefficient(h, exposure, "cladding", row.edition as Edition);
  expectPrinted(kz(Number(row.h_ft), row.exposure as Exposure) / kz(30, "B"), row);
});

// The guide has a Kz of its own, put in here through the topographic factor.
const guide = rows("wind-velocity-pressure.csv");
test.each(guide.map((r) => [`q at ${r.speed_mph} mph, ${r.stories} stories`, r] as const))("%s", (_n, row) => {
  const kz = exposureCoefficient(30, "B", "frame", "7-10");
  const q = velocityPressure({
    speedMph: Number(row.speed_mph),
    heightFt: 30,
    exposure: "B",
    kzt: Number(row.kz) / kz,
    kd: Number(row.kd),
    elevationFt: 0,
    use: "frame",
    edition: "7-10",
  });
  expectPrinted(q, row);
});

test("the SI worksheet's velocity pressure, whose 0.613 is 0.00256 psf/mph2 rounded", () => {
  // Public coursework sheet, 4-storey building: 0.613 x 0.7778 x 0.85 x 72.2222^2 prints 2113.9224 N/m2.
  const mph = 72.2222 / 0.44704;
  const kzt = 0.7778 / exposureCoefficient(30, "B", "frame", "7-10");
  const base = { heightFt: 30, exposure: "B", kd: 0.85, elevationFt: 0, use: "frame", edition: "7-10" } as const;
  const pascals = velocityPressure({ ...base, speedMph: mph, kzt }) * 47.88026;
  const exact = (0.00256 * 47.88026) / 0.44704 ** 2;
  expect(exact).toBeCloseTo(0.613, 3);
  expect(pascals / 2113.9224).toBeCloseTo(exact / 0.613, 5);
});

const KD_OF: Readonly<Record<string, number>> = { "Buildings MWFRS": KD_BUILDINGS, "Buildings C&C": KD_BUILDINGS };

/** The constants that the wind functions hold, by the words of the row. */
function held(quantity: string, name: string): number | undefined {
  const exposure = name as Exposure;
  if (quantity === "Kd") return KD_OF[name];
  if (quantity.startsWith("GCpi")) return internalCoefficient(name.toLowerCase() as EnclosureClass, "7-22");
  if (quantity === "alpha 7-22") return TERRAIN["7-22"][exposure].alpha;
  if (quantity === "zg ft 7-22") return TERRAIN["7-22"][exposure].zgFt;
  if (quantity === "alpha 7-98..7-16") return TERRAIN["7-16"][exposure].alpha;
  if (quantity === "zg ft 7-98..7-16") return TERRAIN["7-10"][exposure].zgFt;
  return undefined;
}

test.each(rows("wind-constants.csv").map((r) => [`${r.quantity} ${r.case}`, r] as const))("%s", (_n, row) => {
  expect(held(row.quantity ?? "", row.case ?? "")).toBe(Number(row.printed));
});
