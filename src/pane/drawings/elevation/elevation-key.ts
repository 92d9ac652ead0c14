import { svg } from "lit-html";
import type { WallElevationPicture } from "../../../core/takeoff/wall/pictures.ts";
import { formatLength } from "../../../core/units/length.ts";
import { box, LINE, line, type Part, paragraph, path, SMALL, write } from "../parts/frame.ts";
import { boxCorners, hatch } from "../parts/hatch.ts";
import type { OpenBox } from "./elevation-labels.ts";

/** What the signs of an elevation mean, and the openings with their sizes. */

/** An opening with its diagonals: what is cut out of the pieces that cross it. */
export function openingSign({ x, y, wide, tall }: Omit<OpenBox, "name" | "number">): Part {
  return svg`${box(x, y, wide, tall, "dw-opening")}${line(x, y, x + wide, y + tall, "dw-leader")}${line(x, y + tall, x + wide, y, "dw-leader")}`;
}

type Row = readonly [sign: Part, text: string];

export function elevationKey(
  picture: WallElevationPicture,
  unnamed: readonly string[],
  top: number,
  width: number,
): { readonly parts: readonly Part[]; readonly foot: number } {
  const rows = [...signs(picture), ...unnamedRow(unnamed), ...picture.openings.map(openingRow)];
  const parts: Part[] = [];
  let y = top;
  for (const [sign, text] of rows) {
    parts.push(svg`<g transform="translate(0 ${y})">${sign}</g>`);
    const said = paragraph(text, 34, y, width - 34);
    parts.push(...said.parts);
    y = said.foot + LINE + 2;
  }
  return { parts, foot: y - LINE + SMALL / 2 };
}

function signs({ subject, uprights, joints, pieces }: WallElevationPicture): readonly Row[] {
  const rows: Row[] = [];
  const upright = (look: string) => line(13, -10, 13, 2, look);
  if (uprights.length > 0) {
    rows.push(
      subject === "furring"
        ? [upright("dw-strip"), "furring strip"]
        : [upright("dw-column"), "column, from the left end"],
    );
  }
  if (joints.length > 0) rows.push([upright("dw-joint"), "joint"]);
  if (pieces.some((p) => p.leftover)) {
    rows.push([path(hatch(boxCorners(1, -10, 24, 12), 6, "/"), "dw-hatch"), "piece from an offcut"]);
  }
  const words = NAMES[subject];
  if (words !== undefined) rows.push([write(words[0], 13, 0, "dw-strong", "middle"), words[1]]);
  return rows;
}

const NAMES: Partial<Record<WallElevationPicture["subject"], readonly [sample: string, text: string]>> = {
  panels: ["1-2", "course from the foot and piece"],
  membrane: ["1", "course of membrane from the foot, with its length"],
  lining: ["S 1", "mark of the part in the table"],
};

function unnamedRow(names: readonly string[]): readonly Row[] {
  return names.length === 0 ? [] : [[svg``, `without room for their names, from the left: ${names.join(", ")}`]];
}

function openingRow({ name, widthFt, heightFt, sillFt }: WallElevationPicture["openings"][number], i: number): Row {
  const size = `${feet(widthFt)} × ${feet(heightFt)}`;
  const sill = sillFt > 0 ? `sill at ${feet(sillFt)}` : "on the foot of the wall";
  return [write(String(i + 1), 13, 0, "dw-text", "middle"), `${name}, ${size}, ${sill}`];
}

function feet(ft: number): string {
  return formatLength(ft * 12, 16);
}
