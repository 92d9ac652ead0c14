import { declaring } from "../declare/cell-function.ts";

/** Declares a function of this family. */
export const familyFunction = declaring("Fasteners and furring");
