import { describe, expect, test } from "vitest";
import { countyZone } from "../../src/core/enclosure/county.ts";
import { codeValue } from "../../src/core/enclosure/energy-code.ts";
import { codeExteriorShare } from "../../src/core/enclosure/exterior-share.ts";
import { framedWall } from "../../src/core/enclosure/framed.ts";
import type { Stud } from "../../src/core/enclosure/retarder.ts";
import { stations } from "../../src/core/enclosure/stations.ts";
import { COUNTY_ZONES } from "../../src/core/enclosure/tables/counties.ts";
import type { CodeEdition, CodeKind } from "../../src/core/enclosure/tables/energy-code.ts";
import { CLASS_III_R } from "../../src/core/enclosure/tables/retarders.ts";
import { uFactor } from "../../src/core/enclosure/u-factor.ts";
import { unventedRoofR } from "../../src/core/enclosure/unvented-roof.ts";
import { zoneFromDegreeDays } from "../../src/core/enclosure/zone.ts";
import { Tape } from "../../src/core/kit/tape.ts";
import { readZone } from "../../src/functions/basis/zone.ts";
import { readCounty } from "../../src/functions/enclosure/read/county.ts";
import { readLayer } from "../../src/functions/enclosure/read/layer.ts";
import { insideFilm, type LayerRow, outsideFilm } from "../core/enclosure/from-text.ts";
import { halfLastDigit, rows } from "./rows.ts";

describe("energy code", () => {
  const cases = rows("enclosure-energy-code.csv").flatMap((r) =>
    (r.zones ?? "").split(";").map((zone) => [`${r.edition} ${r.kind} ${r.part} zone ${zone}`, zone, r] as const),
  );
  test.each(cases)("%s", (_name, zone, r) => {
    const tape = new Tape();
    const got = codeValue(r.kind as CodeKind, readZone(zone), r.part ?? "", r.edition as CodeEdition, tape);
    const wanted = /^[\d.]+$/.test(r.printed ?? "") ? Number(r.printed) : r.printed;
    // A print that differs from the model code by a local change says what the model code has.
    const model = /model (?:2018 )?code has ([\d.]+)/.exec(r.disagrees ?? "")?.[1];
    if (r.disagrees !== "") {
      expect(model, r.disagrees).toBeDefined();
      expect(got).toBe(Number(model));
      return;
    }
    expect(got).toBe(wanted);
    if (r.confidence === "found") expect(tape.cautions).toEqual([]);
    else if (r.part !== "window" && r.part !== "skylight") expect(tape.cautions.join()).toContain("from memory");
  });
});

describe("vapor retarder tables", () => {
  test.each(rows("enclosure-retarder.csv").map((r) => [`${r.item} ${r.zone} ${r.stud}`, r] as const))(
    "%s",
    (_name, r) => {
      const zone = readZone(r.zone ?? "");
      if (r.item === "R806.5") expect(unventedRoofR(zone)).toBe(Number(r.printed));
      else {
        const key = zone.regime === "C" ? "4C" : String(zone.number);
        expect(CLASS_III_R[key]?.[r.stud as Stud]).toBe(Number(r.printed));
      }
    },
  );

  test.each(rows("enclosure-code-share.csv").map((r) => [`${r.zone} ${r.stud}`, r] as const))(
    "share %s",
    (_name, r) => {
      const got = codeExteriorShare(readZone(r.zone ?? ""), r.stud as Stud)?.share ?? 0;
      expect(Math.abs(got - Number(r.printed))).toBeLessThanOrEqual(halfLastDigit(r.printed ?? ""));
    },
  );
});

describe("climate", () => {
  test.each(rows("enclosure-zone-degree-days.csv").map((r) => [`${r.station}, ${r.basis}`, r] as const))(
    "%s",
    (_n, r) => {
      const got = zoneFromDegreeDays(Number(r.HDD18_C) * 1.8, Number(r.CDD10_C) * 1.8);
      if (r.disagrees === "") expect(got).toBe(Number(r.printed?.[0]));
      else expect(got).not.toBe(Number(r.printed?.[0]));
    },
  );

  // Mean dew points and degree-days of another base are not kept, so only temperatures are compared.
  const months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
  test.each(
    rows("enclosure-climate.csv")
      .filter((r) => r.quantity === "mean_dry_bulb_C")
      .map((r) => [`${r.wmo} ${r.month}`, r] as const),
  )("mean temperature %s", (_name, r) => {
    const station = stations().find((s) => s.wmo === r.wmo);
    expect(station?.tempC[months.indexOf(r.month ?? "")]).toBeCloseTo(Number(r.printed), 9);
  });
});

describe("U-factors that the code equates with its R-values", () => {
  const film = insideFilm("wall");
  const wall = (cavity: number, ci: number, depthIn: number) => {
    const layers = (stud: number): LayerRow[] =>
      [0.45, stud, 0.62, ci, 0.61].map((r, i) => ({
        row: i + 1,
        material: "x",
        thicknessIn: undefined,
        resistance: String(r),
      }));
    const parts = framedWall(
      layers(cavity).map(readLayer),
      layers(depthIn * 1.25).map(readLayer),
      0.25,
      film,
      outsideFilm("winter", film),
    );
    return uFactor(parts.paths, "parallel", () => 0);
  };
  test.each(rows("enclosure-r-to-u.csv").map((r) => [r.recipe, r] as const))("%s", (recipe = "", r) => {
    const [cavity = 0, ci = 0] = [...recipe.matchAll(/R-(\d+)/g)].map((m) => Number(m[1]));
    // R-0 is an empty cavity: an air space of about R-1.
    const got = wall(cavity === 0 ? 1 : cavity, ci, cavity > 15 ? 5.5 : 3.5);
    const off = Math.abs(got - Number(r.printed));
    if (r.disagrees === "") expect(off).toBeLessThanOrEqual(halfLastDigit(r.printed ?? ""));
    else expect(off).toBeGreaterThan(halfLastDigit(r.printed ?? ""));
  });
});

describe("counties", () => {
  test.each(rows("enclosure-counties.csv").map((r) => [`${r.county}, ${r.state}`, r] as const))("%s", (_name, r) => {
    expect(countyZone(readCounty(r.county ?? "", r.state ?? ""), "2010")).toBe(r.printed);
  });

  test("the list is whole", () => {
    const names = COUNTY_ZONES.split("\n").flatMap((l) =>
      l
        .slice(3)
        .split(";")
        .flatMap((z) => z.split("~")[1]?.split(",")),
    );
    expect(names.length).toBe(3227);
    expect(() => readCounty("Nowhere", "VT")).toThrow(/not a county of VT/);
    expect(() => readCounty("Addison", "ZZ")).toThrow(/not a state/);
  });
});
