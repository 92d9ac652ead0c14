import { describe, expect, test } from "vitest";
import { KG_SM2PA_IN_PERM, R_IP_IN_RSI } from "../../src/core/enclosure/air/si.ts";
import { airLayerRM2KW } from "../../src/core/enclosure/layers/air-layer.ts";
import { woodConductivityWmK } from "../../src/core/enclosure/layers/wood.ts";
import type { HeatFlow } from "../../src/core/enclosure/tables/films.ts";
import { insideFilm, outsideFilm, permOf } from "../core/enclosure/from-text.ts";
import { halfLastDigit, rows } from "./rows.ts";

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

describe("vapor permeance of built-in materials", () => {
  test.each(rows("enclosure-vapor.csv").map((r) => [`${r.material} at ${r.RH} %`, r] as const))("%s", (_name, r) => {
    const { material = "", mm = "", printed = "" } = r;
    const thicknessIn = mm === "" ? undefined : Number(mm) / 25.4;
    const ng = (permOf({ row: 1, material, thicknessIn }, Number(r.RH) / 100) * KG_SM2PA_IN_PERM) / 1e-12;
    close(ng, printed);
  });
});
