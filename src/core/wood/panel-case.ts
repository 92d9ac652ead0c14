import type { Use } from "./use.ts";

export const PANEL_VALUES = ["E", "G", "Fb", "Fv", "Fs", "I", "S", "Q", "C", "thickness", "support width"] as const;
export type PanelValue = (typeof PANEL_VALUES)[number];
export type Grain = "along" | "across";

/** A panel's values in the direction of its span, for a foot of width; a value of 0 for G says that shear deflection is left out on purpose. */
export type PanelValues = Readonly<Partial<Record<PanelValue, number>>>;

/** A panel over equal spans under one pressure. */
export interface PanelCase {
  readonly values: PanelValues;
  readonly grain: Grain;
  /** center to center of the supports, in */
  readonly spanIn: number;
  readonly spans: number;
  /** at the level of the design method, psf */
  readonly psf: number;
  /** that deflection is checked for, psf */
  readonly servicePsf: number;
  /** allowed deflection: span over this */
  readonly deflectionOver: number;
  readonly use: Use;
}
