import { BadInput } from "../../core/kit/refusal.ts";
import type { OptionalParam } from "./param.ts";

/** The last place of a function that takes a basis. What stands there is read as a basis, never as one value. */
export const BASIS_PLACE: OptionalParam<undefined, never> = {
  kind: "basis",
  says: "the basis: a range of name, value, unit, for what the other arguments leave out",
  unit: "",
  optional: true,
  standIn: undefined,
  omitted: "",
  read() {
    throw new BadInput(
      "The basis is one cell",
      "a basis is a range of rows: name, value, unit",
      "Point at the range, such as the name Basis",
    );
  },
};
