/** Excel on the web hands over at most 5 MB at once; so many cells hold about 2 MB of formulas and values. */
const CELLS_AT_ONCE = 20_000;

/** A part of a worksheet as it was read; rows and columns count from 0 in the sheet. */
interface Block {
  readonly row: number;
  readonly column: number;
  readonly formulas: readonly (readonly unknown[])[];
  readonly values: readonly (readonly unknown[])[];
  /** Excel.RangeValueType of each cell: an error is told by it in every language */
  readonly types: readonly (readonly string[])[];
}

/** A formula or value with its place. */
export interface BlockCell {
  readonly row: number;
  readonly column: number;
  readonly formula: unknown;
  readonly value: unknown;
  readonly isError: boolean;
}

/** What an area holds, block by block, so that no request is larger than Excel on the web takes. Each block is read when it is asked for. */
async function* blocksOf(sheet: Excel.Worksheet, area: Excel.Range): AsyncGenerator<Block> {
  const used = area.getUsedRangeOrNullObject();
  used.load("rowIndex,columnIndex,rowCount,columnCount");
  await sheet.context.sync();
  if (used.isNullObject) return;
  const { rowIndex, columnIndex, rowCount, columnCount } = used;
  const wide = Math.min(columnCount, CELLS_AT_ONCE);
  const high = Math.max(1, Math.floor(CELLS_AT_ONCE / wide));
  for (let r = 0; r < rowCount; r += high) {
    for (let c = 0; c < columnCount; c += wide) {
      const size = [Math.min(high, rowCount - r), Math.min(wide, columnCount - c)] as const;
      const range = sheet.getRangeByIndexes(rowIndex + r, columnIndex + c, ...size);
      range.load("formulas,values,valueTypes");
      await sheet.context.sync();
      const { formulas, values, valueTypes } = range;
      yield { row: rowIndex + r, column: columnIndex + c, formulas, values, types: valueTypes };
    }
  }
}

/**
 * The cells of a worksheet whose formula or value `wanted` says yes to.
 * @param area the part to look at; all of it unless told
 */
export async function cellsOf(
  sheet: Excel.Worksheet,
  wanted: (formula: unknown, isError: boolean) => boolean,
  area: Excel.Range = sheet.getRange(),
): Promise<BlockCell[]> {
  const found: BlockCell[] = [];
  for await (const block of blocksOf(sheet, area)) {
    block.formulas.forEach((line, r) => {
      line.forEach((formula, c) => {
        const isError = block.types[r]?.[c] === "Error";
        if (!wanted(formula, isError)) return;
        found.push({
          row: block.row + r,
          column: block.column + c,
          formula,
          value: block.values[r]?.[c],
          isError,
        });
      });
    });
  }
  return found;
}

/** All worksheets, with their names loaded. */
export async function allSheets(context: Excel.RequestContext): Promise<Excel.Worksheet[]> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  return worksheets.items;
}
