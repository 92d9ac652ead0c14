import { plain } from "../kit/refusal.ts";
import { solveBeam } from "./beam/beam.ts";
import { equalSpans, uniform } from "./beam/spans.ts";
import type { Check } from "./check.ts";
import type { PanelCase } from "./panel-case.ts";
import { curveOf, ratioWords } from "./picture-of-member.ts";
import type { Curve, PanelBaysPicture } from "./pictures.ts";

export function panelPicture(c: PanelCase, checks: readonly Check[]): PanelBaysPicture {
  return {
    kind: "panel-bays",
    alt: `Panel over ${c.spans} bays of ${plain(c.spanIn)} in, face grain ${c.grain} the span, under ${plain(c.psf)} psf; ${checks[0]?.check} is worst at ${checks[0]?.ratio.toFixed(2)}.`,
    spans: c.spans,
    spanIn: c.spanIn,
    supportWidthIn: c.values["support width"] ?? 0,
    grain: c.grain,
    pressurePsf: c.psf,
    shape: shape(c),
    ratios: ratioWords(checks),
  };
}

function shape(c: PanelCase): Curve {
  const line = solveBeam(equalSpans(c.spanIn, c.spans, { bending: 1 }, [uniform(c.spanIn * c.spans, 1)]));
  const curve = curveOf(line, line.deflectionIn);
  const most = Math.max(...curve.map(([, y]) => Math.abs(y)));
  return curve.map(([x, y]) => [x, y / most]);
}
