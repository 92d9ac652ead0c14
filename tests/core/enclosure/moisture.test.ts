import { describe, expect, test } from "vitest";
import { saturationPressurePa } from "../../../src/core/enclosure/air/saturation.ts";
import { type ClimateRow, rowsClimate } from "../../../src/core/enclosure/climate/climate.ts";
import { byDistance } from "../../../src/core/enclosure/climate/nearest.ts";
import { stations } from "../../../src/core/enclosure/climate/stations.ts";
import { sdAtM } from "../../../src/core/enclosure/layers/layer-vapor.ts";
import { dewMonths } from "../../../src/core/enclosure/moisture/dew-months.ts";
import { dewLayer, dewProfile, temperaturesC } from "../../../src/core/enclosure/moisture/dew-profile.ts";
import { dewWood } from "../../../src/core/enclosure/moisture/dew-wood.ts";
import {
  exteriorShareOf,
  exteriorShareRows,
  leastExteriorShare,
} from "../../../src/core/enclosure/moisture/exterior-share.ts";
import { type IndoorCondition, monthlyAir } from "../../../src/core/enclosure/moisture/indoor.ts";
import { wallSection } from "../../../src/core/enclosure/moisture/pictures.ts";
import { steadyProfile } from "../../../src/core/enclosure/moisture/profile.ts";
import { type RetarderWall, retarderRule } from "../../../src/core/enclosure/moisture/retarder.ts";
import { hasVentilatedCavity, sunDriven } from "../../../src/core/enclosure/moisture/sun-driven.ts";
import { leastFactor, planeFactor, surfaceFactor } from "../../../src/core/enclosure/moisture/surface-factor.ts";
import { tautString } from "../../../src/core/enclosure/moisture/taut-string.ts";
import { leastShareAboveDeck, unventedRoofR } from "../../../src/core/enclosure/moisture/unvented-roof.ts";
import {
  nodeTemperaturesC,
  pieceRM2KW,
  piecesOf,
  subdivide,
  vaporPath,
} from "../../../src/core/enclosure/moisture/vapor-path.ts";
import { wettingYear } from "../../../src/core/enclosure/moisture/wetting-year.ts";
import type { RetarderEdition } from "../../../src/core/enclosure/tables/retarders.ts";
import { Tape } from "../../../src/core/kit/tape.ts";
import { equilibriumMoisturePct } from "../../../src/core/wood/moisture/moisture.ts";
import { readZone } from "../../../src/functions/basis/glossary/zone.ts";
import { readStation } from "../../../src/functions/enclosure/read/station.ts";
import { cautions } from "./called.ts";
import { assemble, type LayerRow } from "./from-text.ts";

const own = (row: number, rIp: number, sdM: number, role?: string): LayerRow => ({
  row,
  material: `layer ${row}`,
  thicknessIn: undefined,
  resistance: String(rIp),
  vapor: `sd ${sdM}`,
  role,
});
const winter = { insideC: 20, insideRh: 0.5, outsideC: -10, outsideRh: 0.8, curve: "ISO 13788" } as const;

describe("the share of R outboard of the air barrier", () => {
  test("is the dew point's part of the way from outdoors to indoors", () => {
    const tape = new Tape();
    expect(leastExteriorShare(20, 5, -10, tape)).toBeCloseTo(0.5, 12);
    expect(tape.steps.map((s) => s.value)).toEqual([41, 0.5]);
    expect(leastExteriorShare(20, -15, -10)).toBe(0);
    expect(() => leastExteriorShare(20, 5, 20)).toThrow(/not above the outdoor/);
    expect(leastExteriorShare(20, 5, 19.9)).toBe(0);
  });

  test("stands beside the wall's own and the code's", () => {
    const shares = (own: number, zone: string) =>
      exteriorShareRows(0.4, own, { zone: readZone(zone), stud: "2x6" }).map((r) => [r.share, r.remark]);
    expect(shares(0.4, "3A")).toEqual([
      [0.4, "least share of R outboard of the air barrier"],
      [0.4, "enough"],
      [0, "no row in the table: no least R there"],
    ]);
    expect(shares(0.39, "5A")[1]?.[1]).toMatch(/^too little/);
    expect([7.5 / 27.5, 0.27].map((share) => shares(share, "5A")[2]?.[1])).toEqual([
      expect.stringMatching(/^met by this wall: R-7.5 outside a cavity of R-20/),
      expect.stringMatching(/^not met/),
    ]);
    expect(exteriorShareRows(0.4, 0.5, undefined)).toHaveLength(2);
  });

  test("counts the layers inboard of it and the inside film", () => {
    const wall = assemble([own(1, 3, 1), own(2, 1, 1, "air barrier"), own(3, 10, 1)], "wall", "winter");
    const tape = new Tape();
    expect(exteriorShareOf(wall, tape)).toBeCloseTo(11.17 / 14.85, 12);
    expect(tape.steps.map((s) => s.value)).toEqual([3.68, 14.85, 11.17 / 14.85].map((v) => expect.closeTo(v, 12)));
    expect(() => exteriorShareOf(assemble([own(1, 3, 1)], "wall", "winter"))).toThrow(/No layer is marked/);
    const first = assemble([own(1, 3, 1, "air barrier"), own(2, 1, 1)], "wall", "winter");
    expect(exteriorShareOf(first)).toBeCloseTo(4.17 / 4.85, 12);
  });
});

describe("notes of the retarder rule", () => {
  const bare: RetarderWall = { stud: "2x6", outsideR: 0, ventedCladding: true, sheathing: "wood panel" };
  const notes = (zone: string, edition: RetarderEdition = "2021", wall = bare) => {
    const tape = new Tape();
    retarderRule(readZone(zone), wall, edition, tape);
    return { assumed: tape.assumptions.join(), cautioned: tape.cautions.join() };
  };

  test("the exceptions are said from zone 4 on, and class I on both faces from marine 4 on", () => {
    const exceptions = ["3A", "4A", "4C", "5A", "8"].map((z) => /exceptions of R702.7 not used/.test(notes(z).assumed));
    expect(exceptions).toEqual([false, true, true, true, true]);
    const both = ["3A", "4A", "4C", "5A", "8"].map((z) => /Class I on both faces/.test(notes(z).cautioned));
    expect(both).toEqual([false, false, true, true, true]);
  });

  test("what is from memory, what an edition adds, and foam as insulation", () => {
    expect((["2018", "2021", "2024"] as const).map((e) => /from memory/.test(notes("5A", e).cautioned))).toEqual([
      true,
      false,
      false,
    ]);
    expect((["2018", "2021", "2024"] as const).map((e) => /IRC 2024 adds/.test(notes("5A", e).cautioned))).toEqual([
      false,
      false,
      true,
    ]);
    expect([0, 5].map((outsideR) => /spray foam/.test(notes("5A", "2021", { ...bare, outsideR }).assumed))).toEqual([
      false,
      true,
    ]);
  });

  test("marine 4 stands with zone 4 in Table R702.7(4), and a variable retarder opens over 1 perm", () => {
    const second = (stud: "2x4" | "2x6", outsideR: number) =>
      retarderRule(readZone("4C"), { ...bare, stud, outsideR }, "2021").find((r) => r.cls === "II")?.allowed;
    expect([second("2x4", 3), second("2x4", 2.9), second("2x6", 5), second("2x6", 4.9)]).toEqual([
      true,
      false,
      true,
      false,
    ]);
    const variable = retarderRule(readZone("5A"), bare, "2021").find((r) => r.cls === "variable");
    expect(variable?.why).toMatch(/over 1 perm by wet cup/);
  });

  test("class III by its reasons: R, vented cladding over a sheathing, or neither", () => {
    const third = (zone: string, change: Partial<RetarderWall>) =>
      retarderRule(readZone(zone), { ...bare, ...change }, "2021").find((r) => r.cls === "III");
    expect(third("2A", {})?.why).toBe("permitted here");
    expect(third("5A", { outsideR: 7.5 })).toMatchObject({ allowed: true, why: "R-7.5 outside, R-7.5 wanted" });
    expect(third("5A", { outsideR: 7.4 })).toMatchObject({ allowed: true, why: "vented cladding over wood panel" });
    expect(third("5A", { ventedCladding: false })?.why).toMatch(/wants R-7.5.*or vented cladding over wood panel/);
    expect(third("7", {})).toMatchObject({ allowed: false, why: "wants R-15 continuous outside (2x6)" });
    expect(third("6A", {})?.allowed).toBe(false);
    const none = (zone: string, edition: RetarderEdition) =>
      retarderRule(readZone(zone), bare, edition).find((r) => r.cls === "none")?.why;
    expect([none("3A", "2021"), none("4A", "2021"), none("5A", "2021")]).toEqual([
      "none is required here",
      "class II or III is wanted here",
      "class I or II is the rule here",
    ]);
    expect([none("4A", "2018"), none("4C", "2018")]).toEqual([
      "none is required here",
      "class I or II is the rule here",
    ]);
  });

  test("the sun drives by zone: most of the year, the warm months, the warmest weeks, after rain in the dry", () => {
    const when = (zone: string) => /: (.*) the sun/.exec(sunDriven(readZone(zone)))?.[1];
    expect(["1A", "3C", "4A", "5A", "6A", "8", "2B", "5B"].map(when)).toEqual([
      "for most of the year",
      "for most of the year",
      "in the warm months",
      "in the warm months",
      "in the warmest weeks",
      "in the warmest weeks",
      "after rain or watering",
      "after rain or watering",
    ]);
    const roles = (role?: string) =>
      hasVentilatedCavity(assemble([own(1, 1, 1), own(2, 1, 1, role)], "wall", "none").layers);
    expect([roles(), roles("air barrier"), roles("ventilated cavity 100 mm2/m")]).toEqual([false, false, true]);
  });
});

describe("the first wet face by moving air", () => {
  const said = (rows: LayerRow[], air = winter as Parameters<typeof dewLayer>[1]) => {
    const tape = new Tape();
    return { face: dewLayer(assemble(rows, "wall", "winter"), air, "air", tape), tape };
  };

  test("no barrier is asked for where one is marked, be it the first layer", () => {
    const rows = (role?: string) => [own(1, 1, 1, role), own(2, 10, 1), own(3, 1, 1)];
    expect(said(rows("air barrier")).tape.cautions.join()).not.toMatch(/No layer is marked/);
    expect(said(rows("air barrier")).face).toBe("none");
    const open = said(rows());
    expect(open.tape.cautions.join()).toMatch(/No layer is marked as the air barrier: indoor air/);
    expect(open.face).toBe("row 2, layer 2 | layer 3: ice");
  });

  test("every face up to the barrier is written with what it has to spare", () => {
    // R 0.68, 1, 2, 10, 0.17: 13.85 in all; 30 K.
    const { tape, face } = said([own(1, 1, 1), own(2, 2, 1), own(3, 10, 1, "air barrier")]);
    const temperature = (r: number) => 68 - (54 * r) / 13.85;
    const dewF = tape.steps.find((s) => s.symbol === "T_d")?.value as number;
    expect(dewF).toBeCloseTo(48.69, 1);
    expect(tape.steps.filter((s) => s.symbol === "T - T_d").map((s) => s.value)).toEqual(
      [0.68, 1.68, 3.68].map((r) => expect.closeTo(temperature(r) - dewF, 9)),
    );
    expect(face).toBe("none");
  });

  test("the outer surface takes no indoor air, and in summer the inner one no outdoor air", () => {
    // All the R lies in the film inside the last face: only the outside surface is cold.
    expect(said([own(1, 0.001, 1), own(2, 10, 1)]).face).toBe("none");
    const summer = { insideC: 20, insideRh: 0.5, outsideC: 35, outsideRh: 0.8, curve: "ISO 13788" } as const;
    expect(said([own(1, 10, 1), own(2, 0.001, 1)], summer).face).toBe("none");
    expect(said([own(1, 0.001, 1), own(2, 10, 1)], summer).face).toBe("row 1, layer 1 | layer 2: water");
    expect(said([own(1, 0.001, 1), own(2, 10, 1, "air barrier")], summer).face).toBe("none");
  });

  test("the inside surface itself may be wet, as water or as ice", () => {
    const thin = [own(1, 0.1, 1), own(2, 0.1, 1)];
    // 20 - 40 x 0.68 / 1.05 is -5.9 C; 20 - 18 x 0.68 / 1.05 is 8.3 C.
    expect(said(thin, { ...winter, outsideC: -20 }).face).toBe("inside surface: ice");
    expect(said(thin, { ...winter, outsideC: 2 }).face).toBe("inside surface: water");
    expect(() => dewLayer(assemble([], "wall", "winter"), winter, "air")).toThrow(/no layer/);
  });

  test("temperatures fall by the R passed", () => {
    const wall = assemble([own(1, 1, 1), own(2, 2, 1)], "wall", "winter");
    expect(temperaturesC(wall, { insideC: 20, outsideC: -10 })).toEqual(
      [0.68, 1.68, 3.68].map((r) => expect.closeTo(20 - (30 * r) / 3.85, 9)),
    );
  });

  test("margins of the diffusion method are written, and water is told by the day", () => {
    const rows = [own(1, 10, 1), own(2, 1, 50)];
    const tape = new Tape();
    const wall = assemble(rows, "wall", "winter");
    dewLayer(wall, winter, "diffusion", tape);
    const faces = dewProfile(wall, winter);
    expect(tape.steps.filter((s) => s.symbol === "T - T_d").map((s) => s.value)).toEqual(
      faces.map((f) => expect.closeTo(f.marginF, 9)),
    );
    const profile = steadyProfile(wall, winter);
    faces.forEach((f, i) => {
      // 86,400 s a day, 0.3051517 kg/m2 in one oz/ft2.
      expect(f.wettingOzFt2Day).toBeCloseTo(((profile.faces[i]?.wettingKgM2s ?? 0) * 86_400) / 0.3051517, 6);
      expect(f.marginF).toBeCloseTo(f.temperatureF - f.dewPointF, 12);
    });
    expect(faces.some((f) => f.wettingOzFt2Day > 0)).toBe(true);
  });

  test("of several wet faces the one nearest to the warm side is named", () => {
    // Open insulation, a tight sheet, open insulation, a tighter sheet: from the damp side on both sheets stop vapor.
    const rows = [own(1, 10, 0.1), own(2, 0.5, 5), own(3, 10, 0.1), own(4, 0.5, 50)];
    // In one piece, so that no water is found inside the open layers.
    const mirrored = [own(1, 0.5, 50), own(2, 1.4, 0.1), own(3, 0.5, 5), own(4, 1.4, 0.1)];
    const summer = { insideC: 5, insideRh: 0.5, outsideC: 35, outsideRh: 0.95, curve: "ISO 13788" } as const;
    const wetOf = (layers: LayerRow[], air: typeof summer | typeof winter) =>
      dewProfile(assemble(layers, "wall", "winter"), { ...air, insideRh: air === summer ? 0.5 : 0.95 })
        .filter((f) => f.state !== "dry")
        .map((f) => f.name);
    expect(wetOf(rows, winter)).toEqual(["layer 1 | layer 2", "layer 3 | layer 4"]);
    expect(wetOf(mirrored, summer)).toEqual(["layer 1 | layer 2", "layer 3 | layer 4"]);
    const named = (layers: LayerRow[], air: Parameters<typeof dewLayer>[1]) =>
      dewLayer(assemble(layers, "wall", "winter"), air, "diffusion");
    expect(named(rows, { ...winter, insideRh: 0.95 })).toBe("row 1, layer 1 | layer 2: water");
    expect(named(mirrored, summer)).toBe("row 3, layer 3 | layer 4: water");
  });

  test("summer water within the outermost layer is not said to be at the outside surface", () => {
    const summer = { insideC: 5, insideRh: 0.5, outsideC: 35, outsideRh: 0.95, curve: "ISO 13788" } as const;
    const winter = { insideC: 21, insideRh: 0.9, outsideC: -15, outsideRh: 0.8, curve: "ISO 13788" } as const;
    // A tight sheet inside of open insulation: damp outdoor air wets the insulation from within, as far as it is cold.
    const wall = assemble([own(1, 0.5, 5), own(2, 10, 0.1)], "wall", "winter");
    const name = (air: Parameters<typeof dewLayer>[1]) => dewLayer(wall, air, "diffusion");
    expect(name(summer)).toMatch(/^row 2, inside layer 2: water$/);
    const rows = dewProfile(wall, summer);
    expect(rows.at(-1)?.name).toBe("inside layer 2");
    expect(rows.at(-1)?.state).toBe("water");
    // Dry, the face keeps its own name; and water at the surface itself is said to be there.
    expect(dewProfile(wall, { ...summer, outsideRh: 0.1 }).at(-1)?.name).toBe("outside surface (layer 2)");
    expect(dewProfile(wall, winter).map((f) => f.name)).toContain("outside surface (layer 2)");
  });
});

describe("indoor air by a rule", () => {
  const year = (tempC: number, rhShare = 0.5) =>
    rowsClimate(Array.from({ length: 12 }, (): ClimateRow => ({ name: "x", tempC, rhShare })));
  const assumed = (rule: IndoorCondition) => {
    const tape = new Tape();
    monthlyAir(year(5), rule, tape);
    return tape.assumptions.join("; ");
  };

  test("says its figures", () => {
    expect(assumed({ kind: "class", level: 3, margin2001: false })).toMatch(/vapor excess 810 Pa/);
    expect(assumed({ kind: "class", level: 3, margin2001: true })).toMatch(/vapor excess 891 Pa/);
    expect(assumed({ kind: "class", level: 1, margin2001: false })).not.toMatch(/air conditioning/);
    expect(assumed({ kind: "air conditioned" })).toMatch(/vapor excess 540 Pa.*air conditioning holds 75 F/);
    expect(assumed({ kind: "EN 15026", high: false })).toMatch(/; 35 % at 14 F to 65 % at 68 F/);
    expect(assumed({ kind: "EN 15026", high: true })).toMatch(/; 40 % at 14 F to 70 % at 68 F/);
  });

  test("EN 15026 stays at its ends beyond them", () => {
    const at = (tempC: number, high: boolean) => {
      const m = monthlyAir(year(tempC), { kind: "EN 15026", high })[0];
      return [m?.insideC, (m?.insidePa ?? 0) / saturationPressurePa(m?.insideC ?? 0, "ISO 13788")];
    };
    expect(at(35, false)).toEqual([25, expect.closeTo(0.65, 9)]);
    expect(at(35, true)).toEqual([25, expect.closeTo(0.7, 9)]);
    expect(at(-30, false)).toEqual([20, expect.closeTo(0.35, 9)]);
    expect(at(10, false)).toEqual([20, expect.closeTo(0.55, 9)]);
  });

  test("air conditioning holds 75 F and 50 % from 68 F outdoors on", () => {
    const at = (tempC: number, rhShare: number) => monthlyAir(year(tempC, rhShare), { kind: "air conditioned" })[0];
    const most = 0.5 * saturationPressurePa(23.9, "ISO 13788");
    expect([at(19.9, 0.9)?.insideC, at(20, 0.9)?.insideC, at(30, 0.9)?.insideC]).toEqual([20, 23.9, 23.9]);
    expect(at(30, 0.9)?.insidePa).toBeCloseTo(most, 9);
    expect(at(19, 0.95)?.insidePa).toBeCloseTo(most, 9);
    expect(at(21, 0.3)?.insidePa).toBeCloseTo(0.3 * saturationPressurePa(21, "ISO 13788"), 9);
    expect(at(0, 0.5)?.insidePa).toBeCloseTo(0.5 * saturationPressurePa(0, "ISO 13788") + 540, 9);
  });

  test("rows of air are taken month by month, and none is above saturation", () => {
    const given = Array.from({ length: 12 }, (_, i) => ({ tempC: 15 + i, rhShare: 0.5 }));
    expect(monthlyAir(year(5), given).map((m) => m.insideC)).toEqual(given.map((g) => g.tempC));
    expect(new Set(monthlyAir(year(5), [{ tempC: 21, rhShare: 0.4 }]).map((m) => m.insideC))).toEqual(new Set([21]));
    const tape = new Tape();
    const damp = monthlyAir(year(19.9, 1), { kind: "class", level: 4, margin2001: true }, tape)[0];
    expect(damp?.insidePa).toBeLessThanOrEqual(saturationPressurePa(20, "ISO 13788"));
    expect(monthlyAir(year(10, 1), { kind: "class", level: 4, margin2001: true })[0]?.insidePa).toBeCloseTo(
      saturationPressurePa(10, "ISO 13788") + 594,
      6,
    );
  });
});

describe("the year", () => {
  const month = (name: string, outsideC: number, insidePa: number) => ({
    name,
    seconds: 2_592_000,
    insideC: 20,
    insidePa,
    outsideC,
    outsidePa: 0.8 * saturationPressurePa(outsideC, "ISO 13788"),
  });
  const wall = {
    layers: [
      { row: 1, name: "a", rM2KW: 2, sd: [[0.5, 1]] as const },
      { row: 2, name: "b", rM2KW: 0.2, sd: [[0.5, 50]] as const },
    ],
    rsiM2KW: 0.13,
    rseM2KW: 0.04,
  };
  const NAMES = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
  const first = (damp: (i: number) => boolean) => {
    const months = NAMES.map((name, i) => month(name, i === 6 ? 6 : 0, damp(i) ? 1900 : 700));
    return wettingYear(wall, months, "zero").months[0]?.month.name;
  };

  test("begins after the warmest month where water forms in all, with the first wet one after a dry one else", () => {
    expect(first(() => true)).toBe("Aug");
    expect(first((i) => i >= 9 || i <= 2)).toBe("Oct");
    expect(first((i) => i <= 2)).toBe("Jan");
    expect(first((i) => i === 3 || i === 10)).toBe("Nov");
    // July itself is wet after a dry June: it comes last in the order.
    expect(first((i) => i === 6 || i === 1)).toBe("Feb");
    expect(first((i) => i >= 5 && i <= 8)).toBe("Jun");
    expect(first(() => false)).toBe("Jan");
  });

  test("of two equally warm months the first is the warmest", () => {
    const months = NAMES.map((name, i) => month(name, i === 6 || i === 7 ? 6 : 0, 1900));
    expect(wettingYear(wall, months, "zero").months[0]?.month.name).toBe("Aug");
  });

  test("gathers what the saturation line asks for", () => {
    // One plane: inflow (1900 - ps) / 1 m, outflow (ps - pe) / 50 m, times 2e-10.
    const months = [month("Jan", 0, 1900)];
    const year = wettingYear(wall, months, "zero");
    const faceC = 20 - (20 * 2.13) / 2.37;
    const ps = saturationPressurePa(faceC, "ISO 13788");
    const pe = 0.8 * saturationPressurePa(0, "ISO 13788");
    const rate = 2e-10 * ((1900 - ps) / 1 - (ps - pe) / 50);
    expect(year.peakKgM2).toBeCloseTo(rate * 2_592_000, 9);
    expect(year.endKgM2).toBe(year.peakKgM2);
    expect(year.months[0]?.rates).toEqual([{ node: 1, kgM2s: expect.closeTo(rate, 15) }]);
  });
});

describe("the verdict of a year", () => {
  const wall = assemble(
    [
      own(1, 10, 6),
      own(2, 0.5, 12),
      own(3, 10, 6),
      { row: 4, material: "plywood", thicknessIn: 0.02, resistance: "0.5", vapor: "sd 1500" },
    ],
    "wall",
    "winter",
  );
  const air = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"].map((name, i) => ({
    name,
    seconds: 2_592_000,
    insideC: 20,
    insidePa: i === 0 ? 2200 : 400,
    outsideC: i === 0 ? -10 : 28,
    outsidePa: i === 0 ? 200 : 400,
  }));

  test("goes by the place nearest to its own limit, not by the most water", () => {
    const year = dewMonths(wall, air, "zero", undefined);
    // Of 0.02 in of plywood at 540 kg/m3, 3 % is 0.00823 kg/m2 = 0.027 oz/ft2; the other face bears 0.5 kg/m2 and holds more.
    expect(year.verdict).toMatch(/ at layer 3 \| plywood is above the limit of 0.027, 3 % of the mass of plywood/);
    expect(year.months[0]).toMatchObject({ name: "Jan", where: "layer 1 | layer 2", outdoorF: 14 });
    expect(year.months[0]).toMatchObject({ indoorPa: 2200, outdoorPa: 200 });
    expect(year.endOzFt2).toBe(0);
  });

  test("a peak at the limit that is given is within it", () => {
    const { peakOzFt2 } = dewMonths(wall, air, "zero", undefined);
    expect(dewMonths(wall, air, "zero", peakOzFt2 * 1.0001).verdict).toMatch(/^dries within the year/);
    expect(dewMonths(wall, air, "zero", peakOzFt2 * 0.9999).verdict).toMatch(/above the limit/);
  });

  test("a wall that never dries says what stays, a dry one nothing", () => {
    const [jan] = air;
    if (jan === undefined) throw new Error("no month");
    const year = dewMonths(wall, Array(12).fill({ ...jan, seconds: 86_400 }), "zero", undefined);
    expect(year.verdict).toMatch(/^does not dry within the year: [\d.]+ oz\/ft2 stays$/);
    expect(dewMonths(wall, air.slice(1), "zero", undefined).verdict).toBe("no condensation");
  });
});

describe("pictures", () => {
  test("faces stand at the thickness passed, and layers look like what they are", () => {
    const layer = (row: number, material: string, thicknessIn: number | undefined, role?: string): LayerRow => ({
      row,
      material,
      thicknessIn,
      role,
    });
    const wall = assemble(
      [
        layer(1, "gypsum board", 0.5),
        layer(2, "plywood", 1),
        layer(3, "wrb", undefined, "air barrier"),
        layer(4, "mineral wool board", 4),
        { row: 5, material: "own board", thicknessIn: 1, resistance: "2.2", vapor: "sd 1" },
        { row: 6, material: "own stone", thicknessIn: 2, resistance: "4.3", vapor: "sd 1" },
        layer(7, "air space", 1, "ventilated cavity"),
        layer(8, "brick", 4),
      ],
      "wall",
      "winter",
    );
    const picture = wallSection(wall, steadyProfile(wall, winter));
    expect(picture.faces.map((f) => f.positionIn)).toEqual([0, 0.5, 1.5, 1.5, 5.5, 6.5, 8.5]);
    expect(picture.layers.map((l) => [l.look, l.counted, l.role])).toEqual([
      ["gypsum", true, ""],
      ["wood", true, ""],
      ["sheet", true, "air barrier"],
      ["insulation", true, ""],
      ["insulation", true, ""],
      ["other", true, ""],
      ["air", false, "ventilated cavity"],
      ["masonry", false, ""],
    ]);
    expect([picture.insideF, picture.outsideF]).toEqual([68, 14]);
    const wet = picture.faces.filter((f) => f.wet !== "dry").length;
    expect(/Wet at: (.*)\.$/.exec(picture.alt)?.[1]?.split(", ").length ?? 0).toBe(wet);
    const dry = wallSection(wall, steadyProfile(wall, { ...winter, insideRh: 0.1, outsideRh: 0.3 }));
    expect(dry.alt).toMatch(/No face is below the dew point/);
  });
});

describe("DEW_WOOD of a wall", () => {
  test("a layer's moisture is the mean over its own places, from its inner to its outer face", () => {
    const wall = assemble(
      [
        { row: 1, material: "mineral wool board", thicknessIn: 1 },
        { row: 2, material: "own", thicknessIn: undefined, resistance: "1", vapor: "sd 1" },
        { row: 3, material: "plywood", thicknessIn: 0.5, resistance: "1", vapor: "sd 1" },
      ],
      "wall",
      "winter",
    );
    const air = Array.from({ length: 12 }, (_, i) => ({
      name: String(i),
      seconds: 1,
      insideC: 20,
      insidePa: 1000,
      outsideC: 8,
      outsidePa: 600,
    }));
    const [row] = dewWood(wall, air, "zero");
    // R in all 0.68 + 4.0064 + 1 + 1 + 0.17; the last layer lies between 5.69 and 6.69 of 6.86, in one piece. sd 0.0254 + 1 + 1.
    const total = 0.68 + 0.17 + 2 + (0.0254 / 0.036) * 5.678263;
    const place = (r: number, share: number) => {
      const tempC = 20 - (12 * r) / total;
      const rh = (100 * (1000 - 400 * share)) / saturationPressurePa(tempC, "ISO 13788");
      return equilibriumMoisturePct((tempC * 9) / 5 + 32, rh);
    };
    const sd = 2.0254;
    const mean = (place(total - 1.17, 1.0254 / sd) + place(total - 0.17, 1)) / 2;
    expect(row?.layer).toBe("row 3, plywood");
    expect(row?.moisturePct).toBeCloseTo(mean, 4);
  });
});

describe("mold at a face of wood", () => {
  const board = assemble([{ row: 1, material: "plywood", thicknessIn: 0.5 }], "none", "none");
  const verdict = (insideC: number, insideRh: number, outsideC = insideC, outsideRh = insideRh) => {
    const pa = (tempC: number, rh: number) => rh * saturationPressurePa(tempC, "ISO 13788");
    const month = {
      name: "x",
      seconds: 1,
      insideC,
      insidePa: pa(insideC, insideRh),
      outsideC,
      outsidePa: pa(outsideC, outsideRh),
    };
    return dewWood(board, Array(12).fill(month), "zero")[0]?.verdict;
  };

  test("from over 80 % on, at 5 to 40 C, at either face", () => {
    const molds = "above 80 % at a face: mold is possible";
    expect([verdict(4.9, 0.83), verdict(5.1, 0.83), verdict(39.9, 0.83), verdict(40.5, 0.83)]).toEqual([
      "dry enough",
      molds,
      molds,
      "dry enough",
    ]);
    expect([verdict(5, 0.83), verdict(40, 0.83)]).toEqual([molds, molds]);
    expect([verdict(20, 0.799), verdict(20, 0.801)]).toEqual(["dry enough", molds]);
    expect([verdict(20, 0.82, 22, 0.5), verdict(22, 0.5, 20, 0.82)]).toEqual([molds, molds]);
  });

  test("20 % of moisture or more is decay, and the driest and wettest air of the equation stand for what lies beyond", () => {
    expect(verdict(20, 0.99)).toBe("20 % or more: decay is possible");
    const moisture = (tempC: number, rh: number) => {
      const pa = rh * saturationPressurePa(tempC, "ISO 13788");
      const month = { name: "x", seconds: 1, insideC: tempC, insidePa: pa, outsideC: tempC, outsidePa: pa };
      return dewWood(board, Array(12).fill(month), "zero")[0]?.moisturePct;
    };
    expect(moisture(20, 0.01)).toBeCloseTo(equilibriumMoisturePct(68, 5), 9);
    expect(moisture(20, 0.99)).toBeCloseTo(equilibriumMoisturePct(68, 95), 9);
    expect(moisture(-15, 0.6)).toBeCloseTo(equilibriumMoisturePct(30, 60), 9);
  });
});

describe("a string pulled taut", () => {
  test("layers without resistance share one pressure, and the coldest of their faces names the plane", () => {
    // Two faces at x 1: the limit is 900, not 1200. In 2000 - 900 over 1, out 900 - 400 over 1.
    const pull = (limits: readonly number[], pinned: readonly number[] = []) =>
      tautString({ x: [0, 1, 1, 2], saturationPa: [3000, ...limits, 500] }, 2000, 400, new Set(pinned));
    const rate = 2e-10 * (1100 - 500);
    for (const limits of [
      [1200, 900],
      [900, 1200],
    ]) {
      const { planes, pressurePa, netKgM2s } = pull(limits);
      expect(planes).toEqual([{ node: limits[0] === 900 ? 1 : 2, kgM2s: expect.closeTo(rate, 18) }]);
      expect(pressurePa).toEqual([2000, 900, 900, 400]);
      expect(netKgM2s).toBeCloseTo(rate, 18);
    }
    // 1200 is just the straight line: nothing gathers there, and none of it is left of the limit.
    expect(pull([1300, 1400])).toMatchObject({ planes: [], pressurePa: [2000, 1200, 1200, 400] });
    // Within rounding of the line too.
    expect(pull([1200, 1400]).planes).toEqual([]);
    expect(pull([1200 - 2.3e-13, 1400]).planes).toEqual([]);
    // Water that stands there keeps the air at 1300 and dries to both sides.
    const dry = pull([1300, 1400], [1]);
    expect(dry.planes).toEqual([{ node: 1, kgM2s: expect.closeTo(2e-10 * (700 - 900), 18) }]);
    expect(pull([1300, 1400], [1, 2]).planes).toEqual(dry.planes);
    expect(dry.netKgM2s).toBeCloseTo(2e-10 * (700 - 900), 18);
  });

  test("pressures at the surfaces are held to saturation", () => {
    const { pressurePa } = tautString({ x: [0, 1, 2], saturationPa: [1500, 3000, 300] }, 2000, 400, new Set());
    expect(pressurePa).toEqual([1500, 900, 300]);
  });

  test("a wall of much R is cut into 400 pieces by it, a usual one into pieces of 0.25 m2 K/W", () => {
    const walled = (...rs: number[]) => ({
      layers: rs.map((rM2KW, i) => ({ row: i + 1, name: "a", rM2KW, sd: [[0.5, 1]] as const })),
      rsiM2KW: 0.1,
      rseM2KW: 0.1,
    });
    expect([pieceRM2KW(walled(50, 150)), pieceRM2KW(walled(100, 0.4)), pieceRM2KW(walled(1))]).toEqual([
      0.5, 0.251, 0.25,
    ]);
    const [layer] = walled(1).layers;
    if (layer === undefined) throw new Error("no layer");
    expect([0.2, 0.25, 0.2499, 0.1].map((r) => piecesOf(layer, r))).toEqual([5, 4, 5, 10]);
    expect(piecesOf({ ...layer, rM2KW: 0 }, 0.25)).toBe(1);
    expect(subdivide([{ ...layer, sd: [[0.5, 8]] }], 0.25)).toEqual(
      Array(4).fill({ row: 1, name: "a", rM2KW: 0.25, sd: [[0.5, 2]] }),
    );
  });

  test("nothing to pull where no layer resists vapor", () => {
    const wall = { layers: [{ row: 1, name: "a", rM2KW: 1, sd: [[0.5, 0]] as const }], rsiM2KW: 0.1, rseM2KW: 0.1 };
    expect(() => vaporPath(wall, [10, 0], [0.5], "ISO 13788")).toThrow(/No layer resists vapor/);
    expect(() => nodeTemperaturesC({ layers: [], rsiM2KW: 0, rseM2KW: 0 }, 20, 0)).toThrow(/total R is 0/);
  });

  test("a layer's resistance in the working is that at its own humidity", () => {
    const tape = new Tape();
    const wall = assemble(
      [own(1, 1, 2), { row: 2, material: "osb", thicknessIn: 0.5 }, own(3, 4, 3)],
      "wall",
      "winter",
    );
    const profile = steadyProfile(wall, { ...winter, insideRh: 0.3 }, tape);
    const sd = (row: number) => tape.steps.find((s) => s.symbol === `sd_${row}`)?.value;
    expect([sd(1), sd(3)]).toEqual([expect.closeTo(2, 9), expect.closeTo(3, 9)]);
    expect(sd(2)).toBeCloseTo(sdAtM(wall.layers[1]?.sd ?? [], profile.layerRh[1] ?? 0), 4);
    expect(tape.steps.find((s) => s.symbol === "p_i")?.value).toBeCloseTo(
      0.3 * saturationPressurePa(20, "ISO 13788"),
      9,
    );
    const rh = profile.faces.map((f) => f.vaporPa / f.saturationPa);
    expect(profile.layerRh[0]).toBeCloseTo(((rh[0] ?? 0) + (rh[1] ?? 0)) / 2, 9);
    expect(profile.faces.map((f) => f.initialPa)[0]).toBe(tape.steps.find((s) => s.symbol === "p_i")?.value);
  });
});

describe("surfaces and decks", () => {
  test("a year that asks for nothing has no month and no temperature, one that asks says both", () => {
    const wall = assemble([own(1, 3, 1)], "wall", "winter");
    const month = (name: string, insidePa: number, outsideC: number) => ({
      name,
      seconds: 1,
      insideC: 20,
      insidePa,
      outsideC,
      outsidePa: 300,
    });
    expect(surfaceFactor(wall, [month("Jan", 300, 10)], 0.8)).toMatchObject({
      month: "",
      leastF: undefined,
      leastFactor: 0,
      verdict: "no mold expected on the plane part",
    });
    const pa12 = 0.8 * saturationPressurePa(12, "ISO 13788");
    const tape = new Tape();
    const asked = surfaceFactor(wall, [month("Jan", pa12, -4), month("Feb", pa12, 4)], 0.8, tape);
    expect(asked).toEqual({
      factor: expect.closeTo(3.17 / 3.85, 12),
      leastFactor: expect.closeTo(16 / 24, 9),
      month: "Jan",
      leastF: expect.closeTo(53.6, 6),
      verdict: "no mold expected on the plane part",
    });
    expect(tape.steps.map((s) => s.value)).toEqual(
      [0.68, 3.85, 3.17 / 3.85, 16 / 24, 8 / 16].map((v) => expect.closeTo(v, 9)),
    );
    expect(surfaceFactor(wall, [month("Jan", pa12, -4), month("Dec", pa12, -4)], 0.8).month).toBe("Jan");
    expect(surfaceFactor(assemble([own(1, 1, 1)], "wall", "winter"), [month("Jan", pa12, -4)], 0.8).verdict).toBe(
      "mold risk",
    );
    // Air at 85 % of saturation: a surface that keeps 80 % is a little warmer than the room, in winter too.
    const damp = month("Jan", 0.85 * saturationPressurePa(20, "ISO 13788"), 0);
    expect(() => surfaceFactor(wall, [damp], 0.8)).toThrow(/In Jan the indoor air itself is above 80 %/);
    expect(planeFactor(assemble([own(1, 0.1, 1)], "wall", "winter"))).toBeCloseTo(0.27 / 0.95, 12);
    expect(() => planeFactor(assemble([], "none", "none"))).toThrow(/total R is 0/);
  });

  test("the factor of a plane part is what lies outboard of the inside film", () => {
    expect(planeFactor(assemble([own(1, 3, 1)], "wall", "winter"))).toBeCloseTo(3.17 / 3.85, 12);
  });

  test("the least factor is the surface's part of the way, none in a dry room, no end where the room's air is too damp", () => {
    const month = (insidePa: number, outsideC: number) => ({
      name: "x",
      seconds: 1,
      insideC: 20,
      insidePa,
      outsideC,
      outsidePa: 300,
    });
    const pa = (tempC: number) => saturationPressurePa(tempC, "ISO 13788");
    expect(leastFactor(month(0.8 * pa(12), -4), 0.8)).toEqual({
      factor: expect.closeTo(16 / 24, 9),
      surfaceC: expect.closeTo(12, 9),
    });
    expect(leastFactor(month(0.8 * pa(8), 9), 0.8)).toBeUndefined();
    expect(leastFactor(month(0.8 * pa(8), 25), 0.8)).toBeUndefined();
    expect(leastFactor(month(0.8 * pa(21), 25), 0.8)?.factor).toBe(Number.POSITIVE_INFINITY);
    expect(leastFactor(month(0.8 * pa(21), 20), 0.8)?.factor).toBe(Number.POSITIVE_INFINITY);
  });

  test("the caution of a built-in vapor figure is said, and nothing of an own one", () => {
    const said = (rows: LayerRow[]) => {
      const tape = new Tape();
      steadyProfile(assemble(rows, "wall", "winter"), winter, tape);
      return tape.cautions;
    };
    expect(said([own(1, 5, 1)])).toEqual([]);
    expect(said([{ row: 1, material: "osb", thicknessIn: 0.5 }]).join()).toMatch(/one sample/);
  });

  test("a slightly ventilated cavity is said to count as still air", () => {
    const said = (role?: string) => {
      const tape = new Tape();
      steadyProfile(assemble([own(1, 5, 1), own(2, 1, 1, role)], "wall", "winter"), winter, tape);
      return /slightly ventilated cavity is taken as still air/.test(tape.cautions.join());
    };
    expect([said(), said("ventilated cavity 100 mm2/m"), said("ventilated cavity 1000 mm2/m")]).toEqual([
      false,
      false,
      true,
    ]);
  });

  test("the tile roofs of zones 2B and 3B are spoken of there only", () => {
    const said = (zone: string) => {
      const tape = new Tape();
      unventedRoofR(readZone(zone), tape);
      return [/tile roofs/, /class II retarder itself/].map((words) => words.test(tape.assumptions.join()));
    };
    expect(["2B", "3B", "3A", "4B", "5B", "1A"].map(said)).toEqual([
      [true, false],
      [true, false],
      [false, false],
      [false, false],
      [false, true],
      [false, false],
    ]);
  });

  test("a deck in a warm place needs no share above it", () => {
    const [place] = stations();
    if (place === undefined) throw new Error("no station");
    const at = (tempC: number[]) => leastShareAboveDeck({ ...place, tempC });
    expect(at(Array(12).fill(10))).toBe(0);
    // Three coldest of 0, -5, 5 C among warmer: mean 32 F; (45 - 32) / (68 - 32).
    expect(at([20, 0, 15, -5, 15, 20, 25, 5, 15, 15, 15, 20])).toBeCloseTo(13 / 36, 12);
  });
});

test("a station is asked about from 60 miles on", () => {
  const burlington = readStation("Burlington VT");
  const layers = [
    ["gypsum board", 0.5],
    ["plywood", 3.75],
  ];
  const asked = (wanted: number) => {
    // Northward a degree is 69.09 miles; Burlington is the nearest station all that way.
    const latDeg = burlington.latDeg + wanted / 69.0936;
    const [near] = byDistance({ latDeg, lonDeg: burlington.lonDeg });
    expect(near?.station.name).toBe(burlington.name);
    expect(near?.miles).toBeCloseTo(wanted, 2);
    return /stand for the place/.test(cautions("DEW_MONTHS", layers, `${latDeg} N ${-burlington.lonDeg} W`, "45%"));
  };
  expect([asked(59.5), asked(60.5)]).toEqual([false, true]);
});
