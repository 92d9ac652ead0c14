import { type SVGTemplateResult, svg } from "lit-html";
import type { SectionLayer, WallSectionPicture } from "../../core/enclosure/moisture/pictures.ts";
import { inches, rough, short } from "./parts/figures.ts";
import { box, frame, LINE, line, type Part, paragraph, path, SMALL, write, writeOver } from "./parts/frame.ts";
import { boxCorners, hatch } from "./parts/hatch.ts";
import { materialFill } from "./parts/material-fill.ts";
import { at, linear, type Scale, spread, ticks } from "./parts/scale.ts";
import { bands, type LayerBand, wetRuns } from "./parts/section-places.ts";

/** Height of the plot, room for its figures at the left, for the air at both sides, and for numbers above. */
const PLOT = 190;
const AXIS = 34;
const AIR = 48;
const HEAD = 40;
/** Thin layers are drawn this wide, to be seen. */
const LEAST = 5;

/** A wall or roof in section, with temperature and dew point through it. */
export function wallSection(picture: WallSectionPicture, width: number): SVGTemplateResult {
  const left = AXIS + AIR;
  const right = width - AIR;
  const layers = bands(
    picture.layers.map((l) => l.thicknessIn),
    left,
    right,
    LEAST,
  );
  const faces = picture.faces.map((f, i) => ({ ...f, x: layers[i]?.from ?? right }));
  const levels = [picture.insideF, picture.outsideF, ...faces.flatMap((f) => [f.temperatureF, f.dewPointF])];
  const marks = ticks(Math.min(...levels), Math.max(...levels), 6);
  const foot = HEAD + PLOT;
  const y = linear([marks[0] ?? 0, marks.at(-1) ?? 1], [foot, HEAD]);
  const wet = wetRuns(faces);

  const key = keyOf(picture, layers, foot + 2 * LINE, width);
  return frame(picture, "Section with temperature and dew point", width, key.foot, [
    ...layers.map((l, i) => layerBox(l, picture.layers[i], foot)),
    margin(faces, y),
    ...marks.flatMap((f) => [
      line(AXIS, y(f), width, y(f), "dw-grid"),
      write(short(f), AXIS - 4, y(f) + 4, "dw-text", "end"),
    ]),
    write("F", AXIS - 4, HEAD - 10, "dw-soft", "end"),
    ...wet.map((run) => path(hatch(boxCorners(run.from, HEAD, run.to - run.from, PLOT), 5, "x"), "dw-wet-hatch")),
    ...wet.map((run) => svg`${[run.from, run.to].map((x) => line(x, HEAD, x, foot, "dw-wet-line"))}`),
    ...layers
      .filter((_, i) => picture.layers[i]?.role === "air barrier")
      .flatMap((l) => airMark((l.from + l.to) / 2, HEAD - 4, foot + 4)),
    ...numbers(layers),
    lines(picture, faces, y, AXIS, width),
    ...faces.map(
      (f) => svg`<circle class="dw-temperature-dot" cx=${at(f.x)} cy=${at(y(f.temperatureF))} r="2.5"></circle>`,
    ),
    ...wet.map((run) => {
      const middle = Math.min(Math.max((run.from + run.to) / 2, AXIS + 20), width - 20);
      return writeOver(run.state, middle, foot - 8, "dw-wet-text", "middle");
    }),
    write(`inside ${short(picture.insideF, 0)} F`, AXIS + 2, foot + LINE, "dw-strong"),
    write(`outside ${short(picture.outsideF, 0)} F`, width, foot + LINE, "dw-strong", "end"),
    ...key.parts,
  ]);
}

/** A layer with the hatching of its material; one that does not count is an outline only, so that cavity and siding are seen. */
function layerBox(l: LayerBand, layer: SectionLayer | undefined, foot: number): Part {
  const wide = l.to - l.from;
  const look = l.widened ? "dw-thin" : layer?.counted === false ? "dw-edge" : "dw-part";
  const fill = l.widened || layer === undefined ? "" : materialFill(layer.look, l.from, HEAD, wide, foot - HEAD);
  return svg`${box(l.from, HEAD, wide, foot - HEAD, look)}${fill === "" ? "" : path(fill, "dw-hatch")}`;
}

/** How far the wall is above its dew point: what a reader looks for. */
function margin(faces: readonly Face[], y: Scale): Part {
  const over = faces.map((f) => `${at(f.x)},${at(y(f.temperatureF))}`);
  const under = [...faces].reverse().map((f) => `${at(f.x)},${at(y(f.dewPointF))}`);
  return svg`<polygon class="dw-margin" points=${[...over, ...under].join(" ")}></polygon>`;
}

/** A bar with feet along the layer that keeps the air out: a mark that is seen without colour. */
function airMark(x: number, top: number, foot: number): readonly Part[] {
  return [line(x, top, x, foot, "dw-air"), ...[top, foot].map((end) => line(x - 5, end, x + 5, end, "dw-air"))];
}

/** The number of each layer above it, moved aside where layers are too thin for theirs. */
function numbers(layers: readonly LayerBand[]): readonly Part[] {
  const middles = layers.map((l) => (l.from + l.to) / 2);
  const places = spread(middles, 15, (layers[0]?.from ?? 0) - 10, (layers.at(-1)?.to ?? 0) + 10);
  return middles.map((x, i) => {
    const place = places[i] ?? x;
    return svg`<path class="dw-leader" d="M${at(place)} 16L${at(place)} 20L${at(x)} ${HEAD - 6}L${at(x)} ${HEAD}"></path>${write(String(i + 1), place, 12, "dw-strong", "middle")}`;
  });
}

interface Face {
  readonly x: number;
  readonly temperatureF: number;
  readonly dewPointF: number;
}

function lines(p: WallSectionPicture, faces: readonly Face[], y: Scale, left: number, right: number): Part {
  const [first, last] = [faces[0], faces.at(-1)];
  if (first === undefined || last === undefined) return svg``;
  const through = (of: (f: Face) => number) => faces.map((f) => `L${at(f.x)} ${at(y(of(f)))}`).join("");
  // Through the still air at both faces the temperature bends; the air of the room and outdoors holds its own.
  const warm = `M${at(left)} ${at(y(p.insideF))}L${at(first.x - AIR / 3)} ${at(y(p.insideF))}${through((f) => f.temperatureF)}L${at(last.x + AIR / 3)} ${at(y(p.outsideF))}L${at(right)} ${at(y(p.outsideF))}`;
  const dew = `M${at(left)} ${at(y(first.dewPointF))}${through((f) => f.dewPointF)}L${at(right)} ${at(y(last.dewPointF))}`;
  return svg`${path(dew, "dw-dew")}${path(warm, "dw-temperature")}`;
}

/** Width of the sample of a material in the key. */
const SWATCH = 18;

function swatch(look: SectionLayer["look"], x: number, y: number): Part {
  const fill = materialFill(look, x, y, SWATCH, 11);
  return svg`${box(x, y, SWATCH, 11, "dw-edge")}${fill === "" ? "" : path(fill, "dw-hatch")}`;
}

/** What the lines and numbers mean, in one column or two. */
function keyOf(
  p: WallSectionPicture,
  layers: readonly LayerBand[],
  top: number,
  width: number,
): { parts: Part[]; foot: number } {
  const parts: Part[] = [];
  let y = top + LINE;
  const sample = (x: number, look: string, text: string) =>
    parts.push(line(x, y - 4, x + 26, y - 4, look), write(text, x + 32, y));
  sample(0, "dw-temperature", "temperature");
  sample(width / 2, "dw-dew", "dew point");
  y += LINE;
  parts.push(box(0, y - 10, 26, 11, "dw-margin"), write("above the dew point: dry", 32, y));
  if (p.layers.some((l) => l.role === "air barrier")) {
    y += LINE;
    parts.push(...airMark(13, y - 9, y + 1), write("air barrier", 32, y));
  }
  if (p.faces.some((f) => f.wet !== "dry")) {
    y += LINE;
    parts.push(
      path(hatch(boxCorners(0, y - 10, 26, 11), 5, "x"), "dw-wet-hatch"),
      box(0, y - 10, 26, 11, "dw-wet-box"),
    );
    parts.push(write("at the dew point: water gathers", 32, y));
  }
  y += 8;
  const columns = width >= 520 ? 2 : 1;
  const wide = width / columns - 22;
  const blocks = p.layers.map((l, i) => {
    const facts = [
      l.thicknessIn > 0 ? `${inches(l.thicknessIn)} in` : "",
      l.rIp > 0 ? `R ${rough(l.rIp)}` : "",
      l.role,
      l.counted ? "" : "not counted",
    ];
    const text = [l.name, ...facts.filter((s) => s !== "")].join(", ");
    return { number: String(i + 1), text, look: l.look };
  });
  const half = Math.ceil(blocks.length / columns);
  let foot = y;
  for (let c = 0; c < columns; c++) {
    let down = y;
    for (const b of blocks.slice(c * half, (c + 1) * half)) {
      const x = (c * width) / columns;
      parts.push(write(b.number, x + 16, down + LINE, "dw-strong", "end"));
      parts.push(swatch(b.look, x + 20, down + LINE - 10));
      const text = paragraph(b.text, x + 20 + SWATCH + 6, down + LINE, wide - SWATCH - 4);
      parts.push(...text.parts);
      down = text.foot;
    }
    foot = Math.max(foot, down);
  }
  if (layers.some((l) => l.widened)) {
    const said = paragraph(
      "Thin layers are drawn wider than they are, to be seen.",
      0,
      foot + LINE + 4,
      width,
      "dw-soft",
    );
    parts.push(...said.parts);
    foot = said.foot;
  }
  return { parts, foot: foot + SMALL / 2 };
}
