import type { PlacedImage } from "../../workbook/host.ts";
import type { CellAddress } from "../../workbook/ledger.ts";

/** Excel measures in points, 72 to an inch; images come in pixels, 96 to an inch. */
const POINTS_IN_PIXEL = 0.75;
/** Free space between the cells and the image, in points. */
const MARGIN = 12;

/** Puts an image to the right of what a worksheet holds; see `Host.placeImage`. Excel takes no SVG through its interface for worksheets, so it is a PNG. */
export async function placeImage(sheet: Excel.Worksheet, near: CellAddress, image: PlacedImage): Promise<void> {
  const { shapes, context } = sheet;
  const cell = sheet.getCell(near.row, near.column);
  const used = sheet.getUsedRange();
  shapes.load("items/name,items/left,items/top");
  cell.load("top");
  used.load("left,width");
  await context.sync();
  const before = shapes.items.filter(({ name }) => name === image.name);
  const [old] = before;
  const left = old?.left ?? used.left + used.width + MARGIN;
  const top = old?.top ?? cell.top;
  const shape = shapes.addImage(image.png);
  shape.name = image.name;
  shape.altTextDescription = image.alt;
  shape.lockAspectRatio = false;
  shape.width = image.width * POINTS_IN_PIXEL;
  shape.height = image.height * POINTS_IN_PIXEL;
  shape.lockAspectRatio = true;
  shape.left = left;
  shape.top = top;
  // Last, so that a request which breaks off in the middle leaves the earlier picture.
  for (const earlier of before) earlier.delete();
  await context.sync();
}
