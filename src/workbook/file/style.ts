import type { CellStyle } from "hucre/xlsx";
import type { Look } from "./model.ts";

/** The font of the try-out sheet and the templates; a file without it shows another one in each program. */
export const FONT = { name: "Arial", size: 11 } as const;

/** A look as the file's style, whole, so that no program falls back on a font of its own. */
export function styleOf(look: Look): CellStyle {
  const { bold, italic, color, fill, format, wrap, align } = look;
  return {
    font: {
      name: FONT.name,
      size: look.size ?? FONT.size,
      ...(bold ? { bold } : {}),
      ...(italic ? { italic } : {}),
      ...(color === undefined ? {} : { color: { rgb: rgb(color) } }),
    },
    alignment: {
      vertical: "center",
      ...(align === undefined ? {} : { horizontal: align }),
      ...(wrap ? { wrapText: true } : {}),
    },
    ...(fill === undefined ? {} : { fill: { type: "pattern", pattern: "solid", fgColor: { rgb: rgb(fill) } } }),
    ...(format === undefined ? {} : { numFmt: format }),
  };
}

/** What we keep of a file's style. */
export function lookOf(style: CellStyle | undefined): Look {
  if (style === undefined) return {};
  const { font, fill, alignment, numFmt } = style;
  const filled = fill?.type === "pattern" && fill.pattern === "solid" ? fill.fgColor?.rgb : undefined;
  const align = alignment?.horizontal;
  return {
    ...(font?.bold ? { bold: true } : {}),
    ...(font?.italic ? { italic: true } : {}),
    ...(font?.size === undefined || font.size === FONT.size ? {} : { size: font.size }),
    ...(font?.color?.rgb === undefined ? {} : { color: hash(font.color.rgb) }),
    ...(filled === undefined ? {} : { fill: hash(filled) }),
    ...(numFmt === undefined || numFmt === "General" ? {} : { format: numFmt }),
    ...(alignment?.wrapText ? { wrap: true } : {}),
    ...(align === "left" || align === "center" || align === "right" ? { align } : {}),
  };
}

function rgb(color: string): string {
  return color.replace("#", "").toUpperCase();
}

function hash(color: string): string {
  return `#${color.slice(-6).toLowerCase()}`;
}
