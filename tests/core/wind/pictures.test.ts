import { describe, expect, test } from "vitest";
import { Tape } from "../../../src/core/kit/tape.ts";
import type { Building } from "../../../src/core/wind/building.ts";
import { baseShear, shearWithLines } from "../../../src/core/wind/frame/base-shear.ts";
import type { FrameInput, FrameRow } from "../../../src/core/wind/frame/frame.ts";
import { directionalFrame } from "../../../src/core/wind/frame/frame-directional.ts";
import { framePicture } from "../../../src/core/wind/frame/frame-picture.ts";
import type { FrameFace, WindForcesPicture, WindFramePicture } from "../../../src/core/wind/pictures.ts";

// Corners by hand: 40 ft across the ridge, 80 ft along it, 10 ft eave, 45 degrees, so that a ridge stands 30 ft high and a monoslope's top 50 ft.

const ROOF_45: Building = { widthFt: 40, lengthFt: 80, eaveFt: 10, slopeDeg: 45, roof: "gable" };

const row = (wind: string, surface: string, out: number, toward: number): FrameRow => ({
  wind,
  surface,
  part: "whole",
  coefficient: 0,
  withPressurePsf: out,
  withSuctionPsf: toward,
});

/** One row on each surface that either wind names, each with pressures of its own. */
const ROWS = ["across ridge", "along ridge"].flatMap((wind, w) =>
  ["windward wall", "leeward wall", "side walls", "windward roof", "leeward roof", "roof", "hip ends"].map((s, i) =>
    row(wind, s, -10 * w - i - 1, 100 + 10 * w + i),
  ),
);

const rounded = ([x, y]: FrameFace["from"]) => [Math.round(x * 1e6) / 1e6, Math.round(y * 1e6) / 1e6];
const faces = (building: Building, rows: readonly FrameRow[] = ROWS) =>
  framePicture(building, rows).views.map((v) => v.faces.map((f) => [f.name, rounded(f.from), rounded(f.to)]));

describe("the section of the main frame", () => {
  test("a gable: two slopes across the ridge, end walls up to the ridge along it", () => {
    expect(faces(ROOF_45)).toEqual([
      [
        ["windward wall", [0, 0], [0, 10]],
        ["windward roof", [0, 10], [20, 30]],
        ["leeward roof", [20, 30], [40, 10]],
        ["leeward wall", [40, 10], [40, 0]],
      ],
      [
        ["windward end wall", [0, 0], [0, 30]],
        ["roof", [0, 30], [80, 30]],
        ["leeward end wall", [80, 30], [80, 0]],
      ],
    ]);
  });

  test("a gable below 10 degrees: its slopes hold the rows of one roof", () => {
    const slopeDeg = (Math.atan(0.1) * 180) / Math.PI;
    expect(faces({ ...ROOF_45, slopeDeg })[0]).toEqual([
      ["windward wall", [0, 0], [0, 10]],
      ["roof", [0, 10], [20, 12]],
      ["roof", [20, 12], [40, 10]],
      ["leeward wall", [40, 10], [40, 0]],
    ]);
  });

  test("a monoslope and a flat roof: one roof, the far wall up to it", () => {
    const roofs = (roof: "monoslope" | "flat") => faces({ ...ROOF_45, roof, slopeDeg: roof === "flat" ? 0 : 45 })[0];
    expect(roofs("monoslope")?.slice(1)).toEqual([
      ["roof", [0, 10], [40, 50]],
      ["leeward wall", [40, 50], [40, 0]],
    ]);
    expect(roofs("flat")?.slice(1)).toEqual([
      ["roof", [0, 10], [40, 10]],
      ["leeward wall", [40, 10], [40, 0]],
    ]);
  });

  test("a hip along its ridge: ends as slopes, the ridge between them, walls to the eave", () => {
    const ends = [
      ...ROWS,
      row("along ridge", "windward hip end", -20, 1),
      row("along ridge", "leeward hip end", -30, 2),
    ];
    expect(faces({ ...ROOF_45, roof: "hip" }, ends)[1]).toEqual([
      ["windward end wall", [0, 0], [0, 10]],
      ["windward hip end", [0, 10], [20, 30]],
      ["roof", [20, 30], [60, 30]],
      ["leeward hip end", [60, 30], [80, 10]],
      ["leeward end wall", [80, 10], [80, 0]],
    ]);
    // Below 10 degrees the hips have no slopes of their own; a face without rows is not drawn.
    const low = { ...ROOF_45, roof: "hip", slopeDeg: 5 } as const;
    expect(faces(low, ends)[1]?.map((f) => f[0])).toEqual(["windward end wall", "roof", "leeward end wall"]);
    expect(faces({ ...ROOF_45, roof: "hip" })[1]?.map((f) => f[0])).not.toContain("windward hip end");
  });

  test("each face has the least and the greatest of its own rows and wind", () => {
    const rows = [
      ...ROWS,
      row("across ridge", "windward roof", 3, 7),
      row("case A, across ridge", "leeward wall (4)", -50, -40),
    ];
    const [across, along] = framePicture(ROOF_45, rows).views;
    expect(across?.faces.map((f) => [f.name, f.leastPsf, f.mostPsf])).toEqual([
      ["windward wall", -1, 100],
      ["windward roof", -4, 103],
      ["leeward roof", -5, 104],
      ["leeward wall", -50, 101],
    ]);
    expect(along?.faces.map((f) => [f.name, f.leastPsf, f.mostPsf])).toEqual([
      ["windward end wall", -11, 110],
      ["roof", -16, 115],
      ["leeward end wall", -12, 111],
    ]);
    expect(framePicture(ROOF_45, rows).alt).toMatch(/from -50\.0 to 116\.0 psf/);
  });

  test("a face whose pressures are all alike is drawn", () => {
    const one = [row("across ridge", "leeward wall", -5, -5)];
    expect(faces(ROOF_45, one)).toEqual([[["leeward wall", [40, 10], [40, 0]]], []]);
  });

  test("the envelope's end walls lie on the ends; a low roof has all rows but the walls'", () => {
    const rows = [
      row("case B, along ridge", "windward end wall (5)", -2, 9),
      row("case B, along ridge", "side wall (1)", -3, 4),
    ];
    expect(framePicture(ROOF_45, rows).views[1]?.faces.map((f) => [f.name, f.leastPsf, f.mostPsf])).toEqual([
      ["windward end wall", -2, 9],
    ]);
    const low = framePicture({ ...ROOF_45, roof: "flat", slopeDeg: 0 }, ROWS).views[0]?.faces[1];
    expect([low?.leastPsf, low?.mostPsf]).toEqual([-7, 106]);
  });
});

const BARN: FrameInput = {
  ...ROOF_45,
  slopeDeg: (Math.atan(0.5) * 180) / Math.PI,
  qPsf: 20,
  kd: 0.85,
  kzt: 1,
  roofAreaFt2: undefined,
  enclosure: "enclosed",
  exposure: undefined,
  level: "strength",
  edition: "7-16",
};

function shown<P>(work: (tape: Tape) => unknown): P {
  const tape = new Tape();
  work(tape);
  return tape.pictures[0] as P;
}

test("the directional procedure shows its own rows: a wall's range of both internal pressures", () => {
  const picture = shown<WindFramePicture>((tape) => directionalFrame(BARN, tape));
  const wall = picture.views[0]?.faces[0];
  // q G Cp with G 0.85 and Cp 0.8, and GCpi 0.18 either way.
  expect(wall?.leastPsf).toBeCloseTo(20 * (0.85 * 0.8 - 0.18), 9);
  expect(wall?.mostPsf).toBeCloseTo(20 * (0.85 * 0.8 + 0.18), 9);
});

describe("the building from above with its forces", () => {
  const lines = [{ name: "east", wind: "across ridge", tributaryFt: 20 }] as const;
  const picture = (change: Partial<FrameInput>) =>
    shown<WindForcesPicture>((tape) => shearWithLines({ ...BARN, ...change }, lines, tape));

  test("totals first, then lines, each with its force and what governs it", () => {
    const [across, along] = baseShear(BARN);
    const { forces, widthFt, lengthFt, level } = picture({});
    expect([widthFt, lengthFt, level]).toEqual([40, 80, "strength"]);
    expect(forces.map((f) => [f.name, f.line])).toEqual([
      ["across ridge", false],
      ["along ridge", false],
      ["east: across ridge", true],
    ]);
    expect(forces.map((f) => f.designLb)).toEqual([
      across?.designLb,
      along?.designLb,
      expect.closeTo((across?.designLb ?? 0) / 4, 6),
    ]);
    expect(picture({ qPsf: 1 }).forces.map((f) => f.least)).toEqual([true, true, true]);
    expect(picture({ qPsf: 90 }).forces.map((f) => f.least)).toEqual([false, false, false]);
  });

  test("its words name the largest whole force, of whichever wind", () => {
    expect(picture({ qPsf: 1 }).alt).toMatch(/largest sideways force is 19200 lb, wind across ridge/);
    // 80 ft across the ridge and 20 ft along it: 16 psf on an end wall of 80 x 10 and a triangle of 80 x 20 / 2; across it 24 and 8 psf on 20 ft.
    const wide = picture({ qPsf: 1, widthFt: 80, lengthFt: 20 });
    expect(wide.alt).toMatch(/largest sideways force is 25600 lb, wind along ridge/);
  });
});
