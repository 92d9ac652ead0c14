import type { Role } from "../../../templates/kit/template.ts";

interface CellLook {
  readonly bold?: boolean;
  readonly italic?: boolean;
  /** points */
  readonly size?: number;
  readonly color?: string;
  readonly fill?: string;
}

/** The look of each role, as in the files and the try-out sheet. */
export const LOOKS: Readonly<Record<Role, CellLook>> = {
  title: { bold: true, size: 15 },
  heading: { bold: true, fill: "#EEF1F4" },
  label: {},
  input: { fill: "#FFF8DC", color: "#1D4F91" },
  result: { bold: true },
  note: { italic: true, color: "#5C6670" },
  // No color: the same cell says "ok" and what is wrong.
  check: { bold: true },
};
