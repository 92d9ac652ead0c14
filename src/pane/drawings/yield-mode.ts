import { type SVGTemplateResult, svg } from "lit-html";
import type { YieldModePicture } from "../../core/fasteners/pictures.ts";
import { inches, rough } from "./parts/figures.ts";
import { box, frame, LINE, type Part, paragraph, path, SMALL, TEXT, write } from "./parts/frame.ts";
import { boxCorners, hatch, type Point } from "./parts/hatch.ts";
import { at } from "./parts/scale.ts";
import { bands, type LayerBand } from "./parts/section-places.ts";

/** Height of a member, how far members have slid past each other, and the least width of one. */
const TALL = 84;
const SLID = 9;
const LEAST = 18;
/** Half of what is crushed around the fastener. */
const CRUSHED = 14;

/** A fastener across its members as it yields: members slid past each other, the fastener bent or straight, what it crushes hatched. */
export function yieldMode(picture: YieldModePicture, width: number): SVGTemplateResult {
  const head = paragraph(`Mode ${picture.mode}: ${picture.says}`, 0, TEXT, width, "dw-strong");
  const top = head.foot + LINE + SLID;
  const places = membersOf(picture, width);
  const parts: Part[] = [...head.parts];
  places.forEach((band, i) => {
    const y = top + (isMain(i) ? SLID : -SLID);
    const crushed = picture.members[i]?.crushed === true;
    parts.push(box(band.from, y, band.to - band.from, TALL, "dw-part"));
    if (crushed)
      parts.push(
        path(
          hatch(boxCorners(band.from, y + TALL / 2 - CRUSHED, band.to - band.from, 2 * CRUSHED), 5, "/"),
          "dw-hatch",
        ),
      );
    parts.push(write(String(i + 1), (band.from + band.to) / 2, y + TEXT + 2, "dw-strong", "middle"));
  });
  const bent = axis(picture, places);
  const place = ([x, slid]: Point): Point => [x, top + TALL / 2 + slid * SLID];
  parts.push(
    path(bent.line.map((p, i) => `${i === 0 ? "M" : "L"}${place(p).map(at).join(" ")}`).join(""), "dw-standing"),
  );
  for (const [x, y] of bent.bends.map(place))
    parts.push(svg`<circle class="dw-standing-dot" cx=${at(x)} cy=${at(y)} r="3.5"></circle>`);
  let y = top + TALL + SLID + LINE;
  picture.members.forEach((m, i) => {
    const text = `${i + 1} ${m.name}, ${inches(m.thicknessIn)} in${m.crushed ? ", crushed" : ""}`;
    const row = paragraph(text, 0, y, width);
    parts.push(...row.parts);
    y = row.foot + LINE;
  });
  const gap = picture.gapIn > 0 ? `, gap ${inches(picture.gapIn)} in` : "";
  const dots = bent.bends.length > 0 ? "; it bends where a dot stands" : "";
  const each = paragraph(`${rough(picture.loadLb)} lb for each fastener${gap}${dots}`, 0, y, width, "dw-soft");
  return frame(picture, "Yield mode", width, each.foot + SMALL / 2, [...parts, ...each.parts]);
}

/** The main member is the second from the head. */
function isMain(i: number): boolean {
  return i === 1;
}

/** Where members stand from left to right; gaps between them are left free. */
function membersOf(picture: YieldModePicture, width: number): readonly LayerBand[] {
  const thickness = picture.members.flatMap((m, i) => (i === 0 ? [m.thicknessIn] : [picture.gapIn, m.thicknessIn]));
  const all = bands(thickness, 1, width - 1, picture.gapIn > 0 ? LEAST : 0);
  const wide =
    picture.gapIn > 0
      ? all
      : bands(
          picture.members.map((m) => m.thicknessIn),
          1,
          width - 1,
          LEAST,
        );
  return picture.gapIn > 0 ? wide.filter((_, i) => i % 2 === 0) : wide;
}

interface Axis {
  readonly line: readonly Point[];
  readonly bends: readonly Point[];
}

/** How far the fastener follows: -1 with the side members, 1 with the main one; farther out where it turns inside a member. */
const TURNED = 1.9;

/** The bent axis of the fastener as [x, slid]. */
function axis(picture: YieldModePicture, places: readonly LayerBand[]): Axis {
  const [side, main, second] = places as readonly [LayerBand, LayerBand, LayerBand?];
  const [sideIn, mainIn] = [picture.members[0]?.thicknessIn ?? 1, picture.members[1]?.thicknessIn ?? 1];
  const inSide = share(picture.bendsIn.side, sideIn, 1);
  const inMain = share(picture.bendsIn.main, mainIn, second === undefined ? 1 : 0.5);
  const sideBend: Point[] = inSide === undefined ? [] : [[side.to - inSide * (side.to - side.from), -1]];
  const mainBend: Point[] = inMain === undefined ? [] : [[main.from + inMain * (main.to - main.from), 1]];
  const bends = [...sideBend, ...mainBend];
  const ends = picture.mode;
  const from: Point = [side.from, { Im: -1, Is: 1, II: -TURNED, IIIm: -1, IIIs: -TURNED, IV: -1 }[ends]];
  const to: Point = [main.to, { Im: -1, Is: 1, II: TURNED, IIIm: TURNED, IIIs: 1, IV: 1 }[ends]];
  if (second === undefined) return { line: [from, ...bends, to], bends };
  const middle = (main.from + main.to) / 2;
  const far = [...bends].reverse().map(([x, slid]): Point => [Math.min(2 * middle - x, second.to), slid]);
  return { line: [from, ...bends, ...far, [second.to, from[1]]], bends: [...bends, ...far] };
}

function share(bendIn: number | undefined, thicknessIn: number, most: number): number | undefined {
  return bendIn === undefined ? undefined : Math.min(most, bendIn / thicknessIn);
}
