let made = 0;

/**
 * An id for a workbook of the engine that no other has had. The engine keeps what it has read of a cell under workbook, worksheet and range for all
 * engines of a page or process together: two workbooks of one id would calculate with each other's numbers.
 */
export function freshUnit(): string {
  made += 1;
  return `workbook ${made}`;
}
