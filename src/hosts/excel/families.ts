import { Families } from "../../functions/families.ts";

/** The functions that this page has loaded, for the cells and the pane alike. */
export const families = new Families();
