import { expect, test } from "vitest";
import { axleGroupLimitLb, bridgeFormulaLb } from "../../src/core/lifting/bridge-formula.ts";
import { liftCentroid } from "../../src/core/lifting/centroid.ts";
import { liftPicks } from "../../src/core/lifting/picks.ts";
import { liftSling } from "../../src/core/lifting/sling.ts";
import { CRITICAL_LIFT, LEG_ANGLE, RIGID_LEGS, ROAD, WIND_STOP } from "../../src/core/lifting/tables/rules.ts";
import { windPullLb } from "../../src/core/lifting/wind.ts";
import { halfLastDigit, rows } from "./rows.ts";

const numbers = (text: string) => (text.match(/\d+(\.\d+)?/g) ?? []).map(Number);
const level = { xFt: 0, yFt: 0 };

const platform = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
].map(([x = 0, y = 0], i) => ({ pick: `leg ${i}`, xFt: (x * 330.4) / 2, yFt: (y * 120.5) / 2, zFt: 0 }));

/** Vertical part of a leg over two picks beside the center of gravity. */
function share(leg: 0 | 1, inputs: string): number {
  const [weightLb = 0, near = 0, far = 0] = numbers(inputs);
  const picks = [
    { pick: "near", xFt: -near, yFt: 0, zFt: 0 },
    { pick: "far", xFt: far, yFt: 0, zFt: 0 },
  ];
  const { tensionLb = 0, angleDeg = 0 } = liftSling(weightLb, picks, 10, level, 1).legs[leg] ?? {};
  return tensionLb * Math.sin((angleDeg * Math.PI) / 180);
}

function centroidY(inputs: string): number {
  const pieces = inputs.split(";").map((piece) => {
    const [weightLb = 0, yFt = 0] = numbers(piece);
    return { piece, weightLb, count: 1, xFt: 0, yFt, zFt: 0 };
  });
  return liftCentroid(pieces).yFt;
}

const group = (inputs: string) => numbers(inputs) as [number, number];

/** 0.00256 psf for each mph2 in N/m2 for each (m/s)2: 1 psf = 47.88026 N/m2, 1 mph = 0.44704 m/s. */
const SI_PRESSURE = 47.88026 / 0.44704 ** 2 / 1.2;

const ANSWERS: Readonly<Record<string, (inputs: string) => number>> = {
  "preferred angle": () => LEG_ANGLE.preferredDeg,
  "least angle": () => LEG_ANGLE.leastDeg,
  "rigid legs": () => RIGID_LEGS.count,
  "critical lift": () => CRITICAL_LIFT.share * 100,
  "wind to stop": () => WIND_STOP.speedMph,
  "wind pressure": () => windPullLb(1, 1) * SI_PRESSURE,
  gross: () => ROAD.grossLb,
  "single axle": () => axleGroupLimitLb(0, 1),
  "tandem axle": () => axleGroupLimitLb(4, 2),
  "platform angle": () => liftSling(95452, platform, 230, level, 1).legs[0]?.angleDeg ?? 0,
  "off-center share near": (inputs) => share(0, inputs),
  "off-center share far": (inputs) => share(1, inputs),
  "centroid y": centroidY,
  "two picks, overhang": () => liftPicks(1, 1, 2, 1).picks[0]?.fromLeftFt ?? 0,
  "two picks, moment": () => liftPicks(1, 1, 2, 1).greatestFtLb,
  "one pick, overhang": () => 1 - (liftPicks(1, 1, 1, 1).picks[0]?.fromLeftFt ?? 0),
  "bridge formula": (inputs) => bridgeFormulaLb(...group(inputs)),
  "two tandems": (inputs) => axleGroupLimitLb(...group(inputs)),
};

const all = rows("lifting-rules.csv");
const agreeing = all.filter((r) => r.disagrees === "");

test.each(agreeing.map((r) => [`${r.quantity} ${r.inputs}: ${r.source}`, r] as const))("%s", (_name, row) => {
  const { quantity = "", inputs = "", printed = "" } = row;
  const got = ANSWERS[quantity]?.(inputs) ?? Number.NaN;
  expect(Math.abs(got - Number(printed))).toBeLessThanOrEqual(halfLastDigit(printed) * (1 + 1e-9));
});

test("four legs that all share give half of what is counted: a rigid load may rest on two", () => {
  const row = all.find((r) => r.quantity === "platform tension, all four share");
  const counted = liftSling(95452, platform, 230, level, 1).legs.map((leg) => leg.tensionLb);
  // The page rounds its angle to 52.6 degrees.
  for (const tension of counted) expect(Math.abs(tension / 2 - Number(row?.printed))).toBeLessThan(0.4);
});
