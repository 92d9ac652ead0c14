import type { Nullable } from "@univerjs/core";
import {
  ArrayValueObject,
  type BaseReferenceObject,
  type BaseValueObject,
  BooleanValueObject,
  ErrorValueObject,
  type FunctionVariantType,
  NumberValueObject,
  StringValueObject,
} from "@univerjs/engine-formula";
import { sentence } from "../../../core/kit/refusal.ts";
import type { Cell, Table } from "../../../core/kit/tape.ts";
import type { Raw, RawArgument } from "../../../functions/declare/raw.ts";
import type { Outcome } from "../../../functions/run/invoke.ts";

/** An argument as the engine hands it over: a single cell as its value, a range as rows. */
export function rawArgument(value: FunctionVariantType): RawArgument {
  const object = value.isReferenceObject()
    ? (value as BaseReferenceObject).toArrayValueObject()
    : (value as BaseValueObject);
  if (!object.isArray()) return rawCell(object);
  const rows = rowsOf(object as ArrayValueObject);
  return rows.length === 1 && rows[0]?.length === 1 ? rows[0][0] : rows;
}

/** The engine leaves holes where a row of an array constant is short and where a cell is blank. */
function rowsOf(array: ArrayValueObject): Raw[][] {
  const width = array.getColumnCount();
  return array.getArrayValue().map((row) => Array.from({ length: width }, (_, i) => rawCell(row?.[i])));
}

function rawCell(value: Nullable<BaseValueObject>): Raw {
  if (!value || value.isNull()) return null;
  if (value.isError()) return { error: (value as ErrorValueObject).getErrorType() };
  // A LAMBDA or a table inside a table is nothing that a cell can hold.
  if (value.isLambda() || value.isArray()) return { error: "#CALC!" };
  return value.getValue() as Raw;
}

/** The engine's object for what a function gives back; the sentence of a refusal goes along as the error's content. */
export function engineValue(outcome: Outcome): BaseValueObject {
  if (!outcome.ok)
    return ErrorValueObject.create(
      outcome.code as Parameters<typeof ErrorValueObject.create>[0],
      sentence(outcome.said),
    );
  return Array.isArray(outcome.value) ? engineTable(outcome.value as Table) : engineCell(outcome.value as Cell);
}

function engineTable(table: Table): ArrayValueObject {
  return ArrayValueObject.create({
    calculateValueList: table.map((row) => row.map(engineCell)),
    rowCount: table.length,
    columnCount: table[0]?.length ?? 0,
    unitId: "",
    sheetId: "",
    row: -1,
    column: -1,
  });
}

function engineCell(cell: Cell): BaseValueObject {
  if (typeof cell === "number") return NumberValueObject.create(cell);
  if (typeof cell === "boolean") return BooleanValueObject.create(cell);
  return StringValueObject.create(cell);
}
