import { U_METHODS } from "../../../core/enclosure/layers/u-factor.ts";
import { length, share } from "../../declare/scalar.ts";
import { choice } from "../../declare/word.ts";
import { defaulted, entry } from "./entry.ts";

/** Wall assembly and columns. */
export const ASSEMBLY_TERMS = {
  "framing share": entry(share({ says: "share of the area that is framing", max: 0.9 }), ["framing factor"]),
  "framing method": defaulted(
    choice(U_METHODS, {
      says: "how the parts are put together",
      also: {
        "parallel path": "parallel",
        "isothermal planes": "isothermal",
        "iso 6946": "combined",
        iso: "combined",
      },
    }),
    ["U method"],
    "parallel",
    "{} paths",
  ),
  "code stud": defaulted(
    choice(["2x4", "2x6"], { says: "stud of the wall, which the code's table goes by" }),
    ["stud of the code table"],
    "2x6",
    "{} in the code's table",
  ),
  "cladding vent": defaulted(
    choice(["vented", "not vented"], {
      says: "cladding",
      also: { ventilated: "vented", no: "not vented", yes: "vented" },
    }),
    ["vented cladding"],
    "not vented",
    "cladding {}",
  ),
  "column spacing": entry(
    length("in", {
      says: "greatest distance between column center lines",
      min: 12,
      max: 480,
      usual: { min: 16, max: 192, ask: "is it in inches?" },
    }),
    ["greatest column spacing"],
  ),
  "column width": defaulted(
    length("in", { says: "width of a column's face along the wall", min: 0.5, max: 48 }),
    ["column face width"],
    4.5,
    "columns {} in wide",
  ),
  "jamb distance": defaulted(
    length("in", { says: "most distance from an opening's edge to a column's center line", min: 1, max: 120 }),
    ["column beside an opening", "column reach"],
    30,
    "a column within {} in of each opening's edge",
  ),
  "column layout": defaulted(
    choice(["module", "even"], { says: "how columns are laid out: on the module from the left end, or evenly" }),
    ["columns laid out"],
    "module",
    "columns on the {}",
  ),
} as const;
