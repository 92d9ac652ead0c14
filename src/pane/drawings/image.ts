import { render } from "lit-html";
import type { PictureBase } from "../../core/kit/picture.ts";
import type { PlacedImage } from "../../workbook/host.ts";
import { drawing } from "./index.ts";

/** A drawing that needs no page around it. Sizes in pixels of a screen at its usual scale, 96 to an inch. */
export interface Standalone {
  /** a whole SVG file, in the colours for paper */
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

/** Width that pictures in a worksheet are laid out for: across a printed page. */
const SHEET_WIDTH = 640;
/** Pixels of the image to one of the screen, for print. */
const FINE = 3;
/** Most pixels of an image: Excel on the web takes at most 5 MB at once, and hatching takes up to half a byte a pixel. */
const MOST_PIXELS = 6_000_000;
/** Browsers make no canvas longer than this. */
const LONGEST = 16_000;

/** What the style sheet gives and a file has to carry itself. */
const LOOKS = [
  "fill",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "font-family",
  "font-size",
  "font-weight",
] as const;

/**
 * The drawing of a picture as a file of its own, with the looks of the pane's style sheet written into its elements. Needs a page with that style
 * sheet; undefined for a kind of picture that has no drawing.
 */
function standalone(picture: PictureBase, width = SHEET_WIDTH): Standalone | undefined {
  const drawn = drawing(picture, width);
  if (drawn === undefined) return undefined;
  const place = document.createElement("div");
  place.className = "sw-pane sw-paper";
  place.dataset.theme = "light";
  const inner = document.createElement("div");
  inner.className = "sw-drawing";
  place.append(inner);
  document.body.append(place);
  try {
    render(drawn, inner);
    const root = inner.querySelector("svg");
    if (root === null) return undefined;
    const { width: wide, height } = root.viewBox.baseVal;
    for (const element of root.querySelectorAll<SVGElement>("text, line, rect, path, polygon, circle"))
      writeLooks(element);
    for (const element of root.querySelectorAll("[class]")) element.removeAttribute("class");
    root.removeAttribute("class");
    root.setAttribute("width", String(wide));
    root.setAttribute("height", String(height));
    root.prepend(ground(wide, height));
    return { svg: new XMLSerializer().serializeToString(root).replace(/<!--.*?-->/gs, ""), width: wide, height };
  } finally {
    place.remove();
  }
}

function writeLooks(element: SVGElement): void {
  const computed = getComputedStyle(element);
  const looks = element.localName === "text" ? LOOKS : LOOKS.filter((name) => !name.startsWith("font"));
  for (const name of looks) {
    const value = computed.getPropertyValue(name);
    if (value !== "") element.setAttribute(name, value);
  }
}

/** The paper under it: a worksheet's lines would run through a clear picture. */
function ground(width: number, height: number): SVGElement {
  const rect = document.createElementNS("http://www.w3.org/2000/svg", "rect");
  rect.setAttribute("width", String(width));
  rect.setAttribute("height", String(height));
  rect.setAttribute("fill", "#ffffff");
  return rect;
}

/** The drawing as a PNG file in base 64, fine enough to print. */
async function asPng({ svg, width, height }: Standalone): Promise<string> {
  const scale = Math.min(FINE, Math.sqrt(MOST_PIXELS / (width * height)), LONGEST / Math.max(width, height));
  const image = new Image(width, height);
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  const context = canvas.getContext("2d");
  if (context === null) throw new Error("This browser draws no images.");
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL("image/png").replace(/^data:image\/png;base64,/, "");
}

/** A picture as an image for a worksheet. */
export async function imageOf(picture: PictureBase, name: string): Promise<PlacedImage> {
  const drawn = standalone(picture);
  if (drawn === undefined) throw new Error(`There is no drawing of ${picture.kind}.`);
  return { name, alt: picture.alt, png: await asPng(drawn), width: drawn.width, height: drawn.height };
}

/** Puts a picture on the clipboard; false where the host does not allow it. */
export async function copyImage(picture: PictureBase, name: string): Promise<boolean> {
  try {
    const { png } = await imageOf(picture, name);
    const bytes = Uint8Array.from(atob(png), (c) => c.charCodeAt(0));
    await navigator.clipboard.write([new ClipboardItem({ "image/png": new Blob([bytes], { type: "image/png" }) })]);
    return true;
  } catch {
    return false;
  }
}
