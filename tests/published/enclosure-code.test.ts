import { describe, expect, test } from "vitest";
import { countyZone } from "../../src/core/enclosure/climate/county.ts";
import { stations } from "../../src/core/enclosure/climate/stations.ts";
import { framedWall } from "../../src/core/enclosure/layers/framed.ts";
import { uFactor } from "../../src/core/enclosure/layers/u-factor.ts";
import { codeValue, knownOf } from "../../src/core/enclosure/loss/energy-code.ts";
import { retarderRule, type Stud } from "../../src/core/enclosure/moisture/retarder.ts";
import { unventedRoofR } from "../../src/core/enclosure/moisture/unvented-roof.ts";
import { COUNTY_ZONES } from "../../src/core/enclosure/tables/counties.ts";
import { CODE_COLUMNS, type CodeEdition, type CodeKind } from "../../src/core/enclosure/tables/energy-code.ts";
import { Tape } from "../../src/core/kit/tape.ts";
import { readZone } from "../../src/functions/basis/glossary/zone.ts";
import { readCounty } from "../../src/functions/enclosure/read/county.ts";
import { readLayer } from "../../src/functions/enclosure/read/layer.ts";
import { insideFilm, type LayerRow, outsideFilm } from "../core/enclosure/from-text.ts";
import { halfLastDigit, offAsKnown, rows } from "./rows.ts";

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
    if (r.confidence === "found") {
      expect(tape.cautions).toEqual([]);
      expect(tape.steps.at(-1)?.clause).toContain("read in a print");
    } else if (r.part !== "window" && r.part !== "skylight") {
      expect(tape.cautions.join()).toMatch(/from memory|not read in this edition, but the same/);
    }
  });

  // A cell is called checked where, and only where, prints on both sides hold it.
  const zones = (text: string) => text.split(" ");
  const before = rows("enclosure-energy-code-before.csv");
  const same = (a: string | undefined, b: string) => a === b || (a !== "" && Number(a) === Number(b));
  const readLater = (kind: string, part: string, zone: string, after: CodeEdition, figure: string) =>
    CODE_COLUMNS.filter((c) => c.kind === kind && c.part === part).some((c) =>
      (["2018", "2021"] as const).some(
        (later) =>
          later > after &&
          zones(c.read[later] ?? "").includes(zone) &&
          Object.entries(c.byZones).some(([keys, cell]) => zones(keys).includes(zone) && same(cell, figure)),
      ),
    );
  const shared = CODE_COLUMNS.flatMap((c) =>
    (["2012", "2015", "2018"] as const).flatMap((edition) =>
      c.editions.includes(edition)
        ? Object.entries(c.byZones).flatMap(([keys, figure]) =>
            zones(keys).map((zone) => ({ c, edition, zone, figure })),
          )
        : [],
    ),
  );
  test.each(shared.map((cell) => [`${cell.edition} ${cell.c.kind} ${cell.c.part} zone ${cell.zone}`, cell] as const))(
    "how %s is known",
    (_name, { c, edition, zone, figure }) => {
      const earlier = before.filter((r) => r.kind === c.kind && r.part === c.part && r.zone === zone);
      const onBothSides =
        earlier.some((r) => same(r.printed, figure)) && readLater(c.kind, c.part, zone, edition, figure);
      const read = zones(c.read[edition] ?? "").includes(zone);
      expect(knownOf(c, edition, zone)).toBe(read ? "read" : onBothSides ? "checked" : "memory");
    },
  );
});

describe("vapor retarder tables", () => {
  test.each(rows("enclosure-retarder.csv").map((r) => [`${r.item} ${r.zone} ${r.stud}`, r] as const))(
    "%s",
    (_name, r) => {
      const zone = readZone(r.zone ?? "");
      if (r.item === "R806.5") expect(unventedRoofR(zone)).toBe(Number(r.printed));
      else if (r.item?.startsWith("inside ")) {
        const bare = { stud: "2x6", outsideR: 0, ventedCladding: false, sheathing: "wood panel" } as const;
        const row = retarderRule(zone, bare, "2021").find((c) => `inside ${c.cls}` === r.item);
        expect(row?.allowed).toBe(r.printed === "permitted");
      } else {
        const least = Number(r.printed);
        const cls = r.item === "class II" ? "II" : "III";
        const allowed = (outsideR: number) =>
          retarderRule(
            zone,
            { stud: r.stud as Stud, outsideR, ventedCladding: false, sheathing: "wood panel" },
            "2021",
          ).find((c) => c.cls === cls)?.allowed;
        expect([allowed(least), allowed(least - 0.01)]).toEqual([true, false]);
      }
    },
  );
});

describe("climate", () => {
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

test.each(
  rows("enclosure-climate.csv")
    .filter((r) => r.quantity === "HDD18C_wthr_file")
    .map((r) => [r.wmo, r] as const),
)("degree-days of %s", (wmo, r) => {
  const station = stations().find((s) => s.wmo === wmo);
  // The print counts from 18 C, ours from 65 F (18.33 C): a third of a degree on each heating day.
  const off = (station?.hdd65F ?? 0) / 1.8 - Number(r.printed);
  expect(off).toBeGreaterThan(0);
  expect(off).toBeLessThan(365 / 3);
});

describe("counties on the map of 2021", () => {
  test.each(rows("enclosure-counties-2021.csv").map((r) => [`${r.county}, ${r.state}`, r] as const))(
    "%s",
    (_name, r) => {
      const county = readCounty(r.county ?? "", r.state ?? "");
      const tape = new Tape();
      expect([countyZone(county, "2010"), countyZone(county, "2021", tape)]).toEqual([r.before, r.printed]);
      expect(tape.cautions.length).toBe(r.before === r.printed ? 0 : 1);
    },
  );
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
      layers(cavity).map((row) => readLayer(row)),
      layers(depthIn * 1.25).map((row) => readLayer(row)),
      0.25,
      film,
      outsideFilm("winter", film),
    );
    return uFactor(parts.paths, "parallel", () => 0);
  };
  test.each(rows("enclosure-r-to-u.csv").map((r) => [r.recipe, r] as const))("%s", (recipe = "", r) => {
    const [cavity = 0, ci = 0] = [...recipe.matchAll(/R-(\d+)/g)].map((m) => Number(m[1]));
    const got = wall(cavity, ci, cavity > 15 ? 5.5 : 3.5);
    const off = Math.abs(got - Number(r.printed));
    if (r.disagrees === "") expect(off).toBeLessThanOrEqual(halfLastDigit(r.printed ?? ""));
    else expect(offAsKnown(got, r, halfLastDigit(r.printed ?? ""))).toBe(true);
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
