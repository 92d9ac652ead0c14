/** A column's width: pixels of a character and of the space beside it, at 96 to an inch, in points of 72. */
const CHARACTER_PX = 7;
const PADDING_PX = 5;
const POINTS_IN_PX = 0.75;

/** Letter paper on its side, as wide as the sheet, name and page number at the foot. */
export function setUpPrint(sheet: Excel.Worksheet): void {
  if (!Office.context.requirements.isSetSupported("ExcelApi", "1.9")) return;
  const { pageLayout } = sheet;
  pageLayout.orientation = "Landscape";
  pageLayout.paperSize = "Letter";
  pageLayout.zoom = { horizontalFitToPages: 1 };
  pageLayout.headersFooters.defaultForAllPages.leftFooter = "&A";
  pageLayout.headersFooters.defaultForAllPages.rightFooter = "Page &P of &N";
}

/** Columns from the first on, in characters of normal text. */
export function setWidths(sheet: Excel.Worksheet, widths: readonly number[]): void {
  widths.forEach((characters, column) => {
    const points = (characters * CHARACTER_PX + PADDING_PX) * POINTS_IN_PX;
    sheet.getRangeByIndexes(0, column, 1, 1).getEntireColumn().format.columnWidth = points;
  });
}
