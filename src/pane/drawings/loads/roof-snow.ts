import { type SVGTemplateResult, svg } from "lit-html";
import type { RoofSnowPicture } from "../../../core/loads/pictures.ts";
import { rough, short } from "../parts/figures.ts";
import { box, frame, LINE, type Part, path, SMALL, write } from "../parts/frame.ts";
import { boxCorners, hatch, type Point, points } from "../parts/hatch.ts";

/** Height of the heaviest load, and least height of one that is not 0. */
const TALLEST = 46;
const LOWEST = 3;
const MARGIN = 12;

/** A load over a share of the roof's width, standing on another where `above` is its height in psf. */
interface Block {
  readonly from: number;
  readonly to: number;
  readonly psf: number;
  readonly above?: number;
  readonly says?: string;
}

/** The roof in section, with the balanced load over it and the unbalanced one over that, to one scale. */
export function roofSnow(picture: RoofSnowPicture, width: number): SVGTemplateResult {
  const cases = [{ name: "Balanced", blocks: [{ from: 0, to: 1, psf: picture.balancedPsf }] }, ...unbalanced(picture)];
  const heaviest = Math.max(1, ...cases.flatMap((c) => c.blocks.map((b: Block) => b.psf + (b.above ?? 0))));
  const parts: Part[] = [];
  let y = 0;
  for (const { name, blocks } of cases) {
    y += LINE;
    parts.push(write(name, 0, y, "dw-strong"));
    y += LINE + TALLEST + 4;
    parts.push(...blocks.flatMap((block) => load(block, y, TALLEST / heaviest, width)));
    y += LINE;
  }
  const roof = outline(picture, y, width);
  return frame(picture, "Snow on the roof", width, roof.foot + SMALL / 2, [...parts, ...roof.parts]);
}

function unbalanced({ unbalanced: u, eaveToRidgeFt }: RoofSnowPicture): readonly {
  readonly name: string;
  readonly blocks: readonly Block[];
}[] {
  if (u === undefined) return [];
  const leeward: Block = { from: 0.5, to: 1, psf: u.leewardPsf };
  const reach = eaveToRidgeFt === undefined ? 0.5 : u.surchargeFt / eaveToRidgeFt / 2;
  const surcharge: Block = {
    from: 0.5,
    to: 0.5 + reach,
    psf: u.surchargePsf,
    above: u.leewardPsf,
    says: `+${rough(u.surchargePsf)} psf over ${short(u.surchargeFt)} ft`,
  };
  const blocks = [{ from: 0, to: 0.5, psf: u.windwardPsf }, leeward, ...(u.surchargePsf > 0 ? [surcharge] : [])];
  return [{ name: "Unbalanced, wind from the left", blocks }];
}

function load({ from, to, psf, above = 0, says }: Block, foot: number, scale: number, width: number): Part[] {
  const place = (share: number) => MARGIN + share * (width - 2 * MARGIN);
  const tall = psf === 0 ? 0 : Math.max(LOWEST, psf * scale);
  const top = foot - above * scale - tall;
  const [left, wide] = [place(from), place(to) - place(from)];
  const corners = boxCorners(left, top, wide, tall);
  const drawn =
    tall === 0
      ? []
      : [box(left, top, wide, tall, "dw-part"), path(hatch(corners, says === undefined ? 9 : 5, "/"), "dw-hatch")];
  const anchor = says === undefined ? "middle" : "start";
  const x = says === undefined ? left + wide / 2 : Math.min(left, width - MARGIN - 130);
  return [...drawn, write(says ?? `${rough(psf)} psf`, x, top - 4, "dw-text", anchor)];
}

function outline({ roof, slopeDeg }: RoofSnowPicture, top: number, width: number): { parts: Part[]; foot: number } {
  const [left, right] = [MARGIN, width - MARGIN];
  const run = (right - left) / (roof === "gable" || roof === "hip" ? 2 : 1);
  const rise = roof === "flat" ? 0 : Math.min(run * Math.tan((slopeDeg * Math.PI) / 180), 120);
  const eave = top + rise;
  const apex: readonly Point[] = {
    flat: [],
    monoslope: [[right, top] as const],
    gable: [[left + run, top] as const],
    hip: [[left + run, top] as const],
  }[roof];
  const foot = eave + 18;
  const corners: Point[] = [
    [left, foot],
    [left, eave],
    ...apex,
    ...(roof === "monoslope" ? [] : [[right, eave] as const]),
    [right, foot],
  ];
  const shape = svg`<polyline class="dw-outline" points=${points(corners)}></polyline>`;
  const text = write(`${short(slopeDeg)}°`, left + 22, foot - 2);
  return { parts: [shape, text], foot };
}
