import { expect, test } from "vitest";
import { panelChecks, panelSpans } from "../../src/core/wood/panel.ts";
import type { Grain, PanelCase } from "../../src/core/wood/panel-case.ts";
import { type Row, rows } from "./rows.ts";
import { asd } from "./wood-known.ts";

const inches = (text: string) =>
  text
    .split("-")
    .map((part) => {
      const [over = 0, under = 1] = part.split("/").map(Number);
      return over / under;
    })
    .reduce((sum, part) => sum + part, 0);

const properties = rows("panel-properties.csv");

/** Panel of a printed row at 100 psf; the stresses of the book hold its load duration. */
function panelOf(r: Row): PanelCase {
  const found = properties.find((p) => p.class === r.class && p.thickness_in === r.thickness_in) as Row;
  const of = (name: string) => Number(found[`${name}_${r.grain}`]);
  return {
    values: {
      E: 1.65e6,
      Fb: 1930,
      Fs: r.class === "Structural I" ? 102 : 72,
      I: of("i"),
      S: of("s"),
      Q: of("q"),
      C: r.grain === "along" ? 120 : 60,
      thickness: inches(r.thickness_in ?? ""),
      "support width": 1.5,
    },
    grain: r.grain as Grain,
    spanIn: Number(r.spacing_in),
    spans: 3,
    psf: 100,
    servicePsf: 100,
    deflectionOver: Number(r.over),
    use: asd(1),
  };
}

const printed = rows("panel-pressures.csv");
const named = printed.map(
  (r) => [`${r.class} ${r.grain} ${r.thickness_in} at ${r.spacing_in}, l/${r.over}`, r] as const,
);

test.each(named)("pressure of %s", (_name, r) => {
  const worst = panelChecks(panelOf(r))[0];
  const psf = 100 / (worst?.ratio ?? 0);
  const miss = Math.abs(psf - Number(r.printed_psf));
  expect(worst?.check).toBe(r.governs);
  if (r.disagrees_percent === "") expect(miss).toBeLessThanOrEqual(2.5);
  else {
    expect(miss).toBeGreaterThan(2);
    expect(miss).toBeLessThanOrEqual((Number(r.disagrees_percent) / 100) * Number(r.printed_psf));
  }
});

test.each(named.filter(([, r]) => r.disagrees_percent === ""))("span for the printed pressure of %s", (_name, r) => {
  const psf = Number(r.printed_psf);
  const [low, high] = [
    panelSpans({ ...panelOf(r), psf: psf + 2.5, servicePsf: psf + 2.5 }),
    panelSpans({ ...panelOf(r), psf: psf - 2.5, servicePsf: psf - 2.5 }),
  ];
  expect(low[0]?.spanIn).toBeLessThanOrEqual(Number(r.spacing_in));
  expect(high[0]?.spanIn).toBeGreaterThanOrEqual(Number(r.spacing_in));
});
