import { type SVGTemplateResult, svg } from "lit-html";
import type { BeamLoad } from "../../core/wood/beam/beam.ts";
import type { Curve, WoodMemberPicture } from "../../core/wood/pictures.ts";
import { rough } from "./parts/figures.ts";
import { frame, LINE, line, type Part, paragraph, path, TEXT, write } from "./parts/frame.ts";
import { at, linear, type Scale } from "./parts/scale.ts";
import { textWidth } from "./parts/text.ts";

const EDGE = 14;
const LOAD_ROOM = 34;
const CURVE_HEIGHT = 46;
const MEMBER = 8;

/** A member lying down with its load, and below it shear, moment and deflection, each with its greatest size. */
export function woodMember(picture: WoodMemberPicture, width: number): SVGTemplateResult {
  const x = linear([0, picture.lengthIn], [EDGE, width - EDGE]);
  const axial = picture.axialLb === 0 ? "" : `, ${rough(picture.axialLb)} lb along it`;
  const name = paragraph(`${picture.name}${axial}: ${picture.ratios.join(", ")}`, 0, TEXT, width, "dw-strong");
  const top = name.foot + LOAD_ROOM;
  const parts: Part[] = [...name.parts, ...loads(picture, x, top), ...member(picture, x, top)];
  const curves: readonly (readonly [string, string, Curve, boolean])[] = [
    ["shear", "lb", picture.shearLb, false],
    ["moment", "lb in", picture.momentLbIn, true],
    ["deflection", "in", picture.deflectionIn, true],
  ];
  let y = top + MEMBER + 2 * LINE;
  for (const [what, unit, curve, down] of curves) {
    parts.push(...diagram(what, unit, curve, x, y, width, down));
    y += LINE + CURVE_HEIGHT + 10;
  }
  return frame(picture, "Member under load", width, y, parts);
}

function member({ supportsIn, lengthIn, axialLb }: WoodMemberPicture, x: Scale, y: number): Part[] {
  const left = x(0);
  const right = x(lengthIn);
  const parts: Part[] = [
    svg`<rect class="dw-part" x=${at(left)} y=${at(y)} width=${at(right - left)} height=${MEMBER}></rect>`,
    ...supportsIn.map((s) => path(triangle(x(s), y + MEMBER), "dw-outline")),
  ];
  if (axialLb === 0) return parts;
  const middle = y + MEMBER / 2;
  return [
    ...parts,
    path(arrow(0, middle, left - 1, middle), "dw-outline"),
    path(arrow(right + EDGE, middle, right + 1, middle), "dw-outline"),
  ];
}

function triangle(x: number, y: number): string {
  return `M${at(x)} ${at(y)}L${at(x - 6)} ${at(y + 10)}L${at(x + 6)} ${at(y + 10)}Z`;
}

/** A line with a head at its end. */
function arrow(x1: number, y1: number, x2: number, y2: number): string {
  const size = Math.hypot(x2 - x1, y2 - y1) || 1;
  const [ux, uy] = [(x2 - x1) / size, (y2 - y1) / size];
  const head = (side: number) => `L${at(x2 - 4 * ux - side * 3 * uy)} ${at(y2 - 4 * uy + side * 3 * ux)}`;
  return `M${at(x1)} ${at(y1)}L${at(x2)} ${at(y2)}${head(1)}M${at(x2)} ${at(y2)}${head(-1)}`;
}

/** Loads above the member: spread ones as a band of arrows, points as a longer one. */
function loads({ loads: all }: WoodMemberPicture, x: Scale, y: number): Part[] {
  return [...all.map((load) => loadPart(load, x, y)), caption(all, x, y)];
}

function loadPart(load: BeamLoad, x: Scale, y: number): Part {
  const down = (from: number, to: number, size: number) => (size < 0 ? [to, from] : [from, to]) as [number, number];
  if (load.kind === "point") {
    const [a, b] = down(y - 26, y - 2, load.lb);
    return path(arrow(x(load.atIn), a, x(load.atIn), b), "dw-outline");
  }
  const [from, to] = [x(load.fromIn), x(load.toIn)];
  const count = Math.max(2, Math.round((to - from) / 22));
  const [a, b] = down(y - 16, y - 2, load.lbPerIn);
  const arrows = Array.from({ length: count + 1 }, (_, i) => {
    const place = from + ((to - from) * i) / count;
    return arrow(place, a, place, b);
  });
  return svg`${line(from, y - 16, to, y - 16, "dw-axis")}${path(arrows.join(""), "dw-leader")}`;
}

/** The load in words where there is one; how many where there are several. */
function caption(all: readonly BeamLoad[], x: Scale, y: number): Part {
  const [first] = all;
  const text =
    all.length === 1 && first !== undefined
      ? first.kind === "point"
        ? `${rough(first.lb)} lb`
        : `${rough(first.lbPerIn * 12)} plf`
      : `${all.length} loads`;
  return write(text, x(0), y - 20, "dw-text");
}

/** One curve over the length, hatched to its axis, with its greatest size; `down` draws positive values downward. */
function diagram(what: string, unit: string, curve: Curve, x: Scale, y: number, width: number, down: boolean): Part[] {
  const values = curve.map(([, v]) => v);
  const [least, most] = [Math.min(0, ...values), Math.max(0, ...values)];
  const [top, foot] = [y + 6, y + 6 + CURVE_HEIGHT];
  const v = linear([least, most], down ? [top, foot] : [foot, top]);
  const points = curve.map(([place, value]) => `${at(x(place))} ${at(v(value))}`);
  const last = curve.at(-1)?.[0] ?? 0;
  const area = `M${at(x(0))} ${at(v(0))}L${points.join("L")}L${at(x(last))} ${at(v(0))}Z`;
  const greatest = Math.max(Math.abs(least), Math.abs(most));
  const words = `greatest ${rough(greatest)} ${unit}`;
  return [
    write(what, 0, y, "dw-strong"),
    write(words, Math.max(textWidth(what, TEXT) + 12, width - textWidth(words, TEXT)), y, "dw-text"),
    path(area, "dw-part"),
    line(x(0), v(0), x(last), v(0), "dw-axis"),
  ];
}
