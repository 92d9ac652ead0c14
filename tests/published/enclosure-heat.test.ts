import { describe, expect, test } from "vitest";
import { KG_SM2PA_IN_PERM, R_IP_IN_RSI } from "../../src/core/enclosure/air/si.ts";
import { airLayerRM2KW } from "../../src/core/enclosure/layers/air-layer.ts";
import { sdAtM } from "../../src/core/enclosure/layers/layer-vapor.ts";
import { woodConductivityWmK } from "../../src/core/enclosure/layers/wood.ts";
import type { HeatFlow } from "../../src/core/enclosure/tables/films.ts";
import { MATERIALS } from "../../src/core/enclosure/tables/materials.ts";
import { findMaterial } from "../../src/functions/enclosure/read/material.ts";
import { insideFilm, layerOf, outsideFilm, permOf } from "../core/enclosure/from-text.ts";
import { halfLastDigit, type Row, rows } from "./rows.ts";

const close = (got: number, printed: string) =>
  expect(Math.abs(got - Number(printed))).toBeLessThanOrEqual(halfLastDigit(printed) * (1 + 1e-9));

describe("wood conductivity, Wood Handbook eq. 4-15", () => {
  test.each(rows("enclosure-wood-conductivity.csv").map((r) => [r.species, r] as const))("%s", (_name, r) => {
    close(woodConductivityWmK(Number(r.G), Number(r.moisture)), r.printed ?? "");
  });
});

describe("films and air layers of ISO 6946", () => {
  test.each(rows("enclosure-iso-films-air-layers.csv").map((r) => [`${r.item} ${r.flow}`, r] as const))(
    "%s",
    (_name, { item = "", flow = "", printed = "" }) => {
      if (item.startsWith("Rsi")) {
        const word = { upward: "ISO up", horizontal: "ISO wall", downward: "ISO down" }[flow] ?? "";
        close(insideFilm(word).rIp / R_IP_IN_RSI, printed);
      } else {
        const mm = Number(/air layer (\d+) mm/.exec(item)?.[1]);
        close(airLayerRM2KW(mm / 1000, flow as HeatFlow, [0.9, 0.9]), printed);
      }
    },
  );
});

describe("films of ASHRAE Fundamentals 2021 ch. 26 Table 10", () => {
  test.each(rows("enclosure-ashrae-films.csv").map((r) => [`${r.position} ${r.flow} ${r.emittance}`, r] as const))(
    "%s",
    (_name, { position = "", flow = "", emittance = "", printed = "" }) => {
      if (position.startsWith("outdoor")) {
        close(outsideFilm(position.includes("winter") ? "winter" : "summer", insideFilm("wall")).rIp, printed);
      } else {
        const words = position === "45 deg" ? `45 ${flow}` : flow;
        close(insideFilm(`${words} ${emittance}`).rIp, printed);
      }
    },
  );
});

describe("figures of built-in materials", () => {
  const known = rows("enclosure-materials.csv");
  const INCH_M = 0.0254;

  const figure = ({ material = "", figure = "" }: Row): number | string | undefined => {
    const [what = ""] = figure.split(" ");
    const mm = Number(/([\d.]+) mm/.exec(figure)?.[1] ?? 25.4);
    const rhShare = Number(/at (\d+) %/.exec(figure)?.[1] ?? 50) / 100;
    const row = { row: 1, material, thicknessIn: mm / 25.4 };
    const layer = layerOf(row);
    const heat = findMaterial(material)?.heat;
    switch (what) {
      case "k":
        return (INCH_M * R_IP_IN_RSI) / layer.rIp;
      case "R":
        return layer.rIp / R_IP_IN_RSI;
      case "density":
        return layer.densityKgM3;
      case "mu":
        return sdAtM(layer.sd ?? [], rhShare) / INCH_M;
      case "sd":
        return sdAtM(layer.sd ?? [], rhShare);
      case "ng/(s":
        return (permOf(row, rhShare) * KG_SM2PA_IN_PERM) / 1e-12;
      case "specific":
        return heat?.kind === "wood" ? heat.specificGravity : undefined;
      case "moisture":
        return heat?.kind === "wood" ? heat.moisturePct : undefined;
      default:
        return heat?.kind === "air" ? heat.emittances.join(" ") : undefined;
    }
  };

  test.each(known.map((r) => [`${r.material}: ${r.figure}`, r] as const))("%s", (_name, r) => {
    const got = figure(r);
    // A print of one digit is the figure itself, not a rounded one.
    if (/^(sd|k) /.test(r.figure ?? "")) expect(got).toBeCloseTo(Number(r.printed), 9);
    else if (typeof got === "number") close(got, r.printed ?? "");
    else expect(got).toBe(r.printed);
  });

  test("no material has a figure without a row", () => {
    const has = (name: string, what: RegExp) => known.some((r) => r.material === name && what.test(r.figure ?? ""));
    for (const m of MATERIALS) {
      const heat = { k: /^k|^R m2 K\/W at/, wood: /^specific/, R: /^R/, air: /^emittances/ }[m.heat.kind];
      expect(has(m.name, heat), `${m.name}: heat`).toBe(true);
      if (m.vapor !== undefined) expect(has(m.name, /^mu|^sd|^ng/), `${m.name}: vapor`).toBe(true);
      if (m.densityKgM3 !== undefined) expect(has(m.name, /^density/), `${m.name}: density`).toBe(true);
    }
  });

  test("halfway between two humidities the resistance is the geometric mean", () => {
    const at = (r: Row) => Number(/at (\d+) %/.exec(r.figure ?? "")?.[1]);
    let pairs = 0;
    known.forEach((r, i) => {
      const next = known[i + 1];
      if (next === undefined || next.material !== r.material || !(at(next) > at(r))) return;
      const layer = layerOf({ row: 1, material: r.material ?? "", thicknessIn: 1 });
      const sd = (percent: number) => sdAtM(layer.sd ?? [], percent / 100);
      const mean = Math.sqrt(sd(at(r)) * sd(at(next)));
      expect(Math.abs(sd((at(r) + at(next)) / 2) / mean - 1), r.material).toBeLessThan(1e-9);
      pairs++;
    });
    expect(pairs).toBeGreaterThan(40);
  });
});
