import { choice, flag } from "../../declare/word.ts";
import { defaulted, entry } from "./entry.ts";

const LENGTH_FORMS = ["number", "feet and inches"] as const;

/** How results stand in the sheet. */
export const SHEET_TERMS = {
  headings: entry(flag({ says: "whether a table has its headings on top" }), ["headers", "headings on top"]),
  lengths: defaulted(
    choice(LENGTH_FORMS, { says: "how lengths are written", also: { numbers: "number", "ft-in": "feet and inches" } }),
    ["how lengths are written"],
    "number",
    "",
  ),
} as const;
