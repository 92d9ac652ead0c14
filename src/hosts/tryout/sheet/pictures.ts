import { LocaleService, LocaleType, type Univer } from "@univerjs/core";
import {
  ImageSourceType,
  ISheetDrawingService,
  type ISheetImage,
  SaveCellImagesCommand,
  SHEETS_IMAGE_MENU_ID,
  UniverSheetsDrawingPreset,
  UniverSheetsDrawingUIPlugin,
} from "@univerjs/preset-sheets-drawing";
import "@univerjs/preset-sheets-drawing/lib/index.css";
import texts from "@univerjs/preset-sheets-drawing/locales/en-US";
import type { FWorksheet } from "@univerjs/sheets/facade";
import type { FilePicture } from "../../../workbook/file/model.ts";
import type { PlacedImage } from "../../../workbook/host.ts";

const PNG = "data:image/png;base64,";
/** Rows and columns of the grid that a picture needs at least beyond its first cell. */
const ROOM = 60;

/** What the engine keeps of a picture of ours: whatever else its data holds is carried along. */
type Drawn = ISheetImage & { readonly alt?: string };

/** The engine takes up a part that comes late after 4 milliseconds; a longer wait that begins later ends later. */
const TAKEN_UP_MS = 20;

/** Adds the part of the engine that draws pictures over the cells: it is loaded when there is the first picture. */
export async function drawPictures(univer: Univer): Promise<Pictures> {
  univer
    .__getInjector()
    .get(LocaleService)
    .load({ [LocaleType.EN_US]: texts });
  // Pictures come from the pane: others would be lost in a file.
  const menu = { [SHEETS_IMAGE_MENU_ID]: { hidden: true }, [SaveCellImagesCommand.id]: { hidden: true } };
  for (const plugin of UniverSheetsDrawingPreset().plugins) {
    if (plugin === UniverSheetsDrawingUIPlugin) univer.registerPlugin(UniverSheetsDrawingUIPlugin, { menu });
    else if (Array.isArray(plugin)) univer.registerPlugin(plugin[0], plugin[1]);
    else univer.registerPlugin(plugin);
  }
  await new Promise((taken) => setTimeout(taken, TAKEN_UP_MS));
  return new Pictures(univer);
}

/** The pictures over the cells. */
export class Pictures {
  readonly #univer: Univer;

  constructor(univer: Univer) {
    this.#univer = univer;
  }

  /** Puts a picture into a worksheet, or in the place of the one that has its name. */
  async put(sheet: FWorksheet, picture: FilePicture): Promise<void> {
    const { name, alt, png, row, column, width, height } = picture;
    if (sheet.getMaxColumns() < column + ROOM) sheet.setColumnCount(column + ROOM);
    if (sheet.getMaxRows() < row + ROOM) sheet.setRowCount(row + ROOM);
    const built = await sheet
      .newOverGridImage()
      .setSource(PNG + png, ImageSourceType.BASE64)
      .setColumn(column)
      .setRow(row)
      .setWidth(width)
      .setHeight(height)
      .buildAsync();
    const drawn: Drawn = { ...built, drawingId: name, alt };
    const old = sheet.getImageById(name);
    if (old !== null) sheet.deleteImages([old]);
    sheet.insertImages([drawn]);
  }

  /** As `put`: to the right of what the worksheet holds and a free column, at the height of a row. */
  async putBeside(sheet: FWorksheet, row: number, image: PlacedImage): Promise<void> {
    const old = this.of(sheet).find(({ name }) => name === image.name);
    await this.put(sheet, { row: old?.row ?? row, column: old?.column ?? sheet.getLastColumn() + 2, ...image });
  }

  /** The pictures of a worksheet, for a file. */
  of(sheet: FWorksheet): FilePicture[] {
    const service = this.#univer.__getInjector().get(ISheetDrawingService);
    const drawings = Object.values(service.getDrawingData(sheet.getWorkbook().getUnitId(), sheet.getSheetId()));
    return (drawings as Drawn[]).flatMap(({ drawingId, alt, source, sheetTransform, transform }) =>
      source?.startsWith(PNG)
        ? [
            {
              name: drawingId,
              alt: alt ?? "",
              png: source.slice(PNG.length),
              row: sheetTransform.from.row,
              column: sheetTransform.from.column,
              width: Math.round(transform?.width ?? 0),
              height: Math.round(transform?.height ?? 0),
            },
          ]
        : [],
    );
  }
}
