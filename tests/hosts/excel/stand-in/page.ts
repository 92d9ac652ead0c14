import { registry } from "../../../../src/functions/registry.ts";
import { type Answer, answered } from "../../../../src/functions/run/tables-on-demand.ts";
import { type ExcelFunction, excelFunction } from "../../../../src/hosts/excel/functions.ts";
import { excelHost } from "../../../../src/hosts/excel/host.ts";
import { watchWorkbook } from "../../../../src/hosts/excel/watch.ts";
import { Ledger } from "../../../../src/workbook/ledger.ts";
import { FakeWorkbook } from "./book.ts";

class HostError extends Error {
  readonly code: string;
  constructor(code: string, message: string) {
    super(message);
    this.code = code;
  }
}

/** As Excel's runtime has it. */
const runtime = { Error: HostError, ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" } };

/** A workbook with the add-in's page beside it, as Excel opens them. */
export async function opened(
  sheets: ConstructorParameters<typeof FakeWorkbook>[0] = { Sheet1: {} },
  answer: Answer = answered,
  stub: (name: string, value: unknown) => void = () => {},
) {
  stub("CustomFunctions", runtime);
  const ledger = new Ledger();
  const functions: ReadonlyMap<string, ExcelFunction> = new Map(
    registry.map((fn) => [fn.id, excelFunction(fn, ledger, answer)]),
  );
  const book = new FakeWorkbook(sheets, functions);
  const host = excelHost(ledger);
  await watchWorkbook(ledger);
  return { book, host, ledger };
}
