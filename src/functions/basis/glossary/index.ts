import { ASSEMBLY_TERMS } from "./assembly.ts";
import { BUILDING_TERMS } from "./building.ts";
import { CLIMATE_TERMS } from "./climate.ts";
import { CUTTING_TERMS } from "./cutting.ts";
import { LABOR_TERMS } from "./labor.ts";
import { LIFTING_TERMS } from "./lifting.ts";
import { LOAD_TERMS } from "./loads.ts";
import { MONEY_TERMS } from "./money.ts";
import { PACK_TERMS } from "./packs.ts";
import { SHEET_TERMS } from "./sheet.ts";
import { SITE_TERMS } from "./site.ts";

/** The terms of the basis by group, in the order in which the Site view and the help list them. */
export const GROUPS = {
  "Site and codes": SITE_TERMS,
  Building: BUILDING_TERMS,
  "Wind, snow and loads": LOAD_TERMS,
  "Indoor and climate": CLIMATE_TERMS,
  "Wall assembly": ASSEMBLY_TERMS,
  Cutting: CUTTING_TERMS,
  "Packs and waste": PACK_TERMS,
  Lifting: LIFTING_TERMS,
  Labor: LABOR_TERMS,
  Money: MONEY_TERMS,
  "The sheet": SHEET_TERMS,
} as const;

/** Every term: a term means one thing in all functions. */
export const GLOSSARY = {
  ...SITE_TERMS,
  ...BUILDING_TERMS,
  ...LOAD_TERMS,
  ...CLIMATE_TERMS,
  ...ASSEMBLY_TERMS,
  ...CUTTING_TERMS,
  ...PACK_TERMS,
  ...LIFTING_TERMS,
  ...LABOR_TERMS,
  ...MONEY_TERMS,
  ...SHEET_TERMS,
} as const;

export type TermName = keyof typeof GLOSSARY;

/**
 * Words that several terms share. They are no terms: where a function takes one of these and finds it nowhere by its name,
 * a row of the word is a question.
 */
export const SHARED_WORDS: Readonly<Record<string, readonly TermName[]>> = {
  height: ["eave height", "mean roof height", "stack height"],
  width: ["building width", "column width", "deck width"],
  length: ["building length", "deck length"],
  temperature: ["indoor temperature", "outdoor temperature"],
  humidity: ["indoor humidity", "outdoor humidity"],
  edition: ["ASCE 7 edition", "energy code", "residential code", "wood standard"],
  code: ["energy code", "residential code", "ASCE 7 edition"],
  panel: ["panel size"],
  speed: ["wind speed", "erection wind"],
  span: ["building width"],
  rate: ["learning rate", "crew wage"],
  duration: ["load duration"],
  class: ["indoor moisture", "risk category"],
};
