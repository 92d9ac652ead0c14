import type { CellFunction } from "../declare/cell-function.ts";
import { woodAdjusted } from "./adjusted.ts";
import { woodCheck } from "./check.ts";
import { woodBeamColumn, woodColumn } from "./column.ts";
import { woodMoistureFunctions } from "./moisture.ts";
import { panelCheck, panelSpan } from "./panel.ts";
import { woodSection } from "./section.ts";
import { woodSpan } from "./span.ts";
import { woodValues } from "./values.ts";

/** The functions of this family, in the order in which lists show them. */
export const woodFunctions: readonly CellFunction[] = [
  woodSection,
  woodValues,
  woodAdjusted,
  woodSpan,
  woodCheck,
  woodColumn,
  woodBeamColumn,
  panelCheck,
  panelSpan,
  ...woodMoistureFunctions,
];
