/** Number formats by unit: as many digits as a builder reads. Texts are not touched by them. */
const FORMATS: Readonly<Record<string, string>> = {
  psf: "0.0",
  plf: "#,##0",
  lb: "#,##0",
  psi: "#,##0",
  kip: "0.0",
  "ft lb": "#,##0",
  ft: "0.00",
  in: "0.00",
  ft2: "#,##0.0",
  yd3: "0.00",
  $: "#,##0.00",
  "$/h": "#,##0.00",
  "$/ft2": "#,##0.00",
  h: "#,##0.0",
  days: "0.0",
  F: "0.0",
  "%": "0.0",
  share: "0.0%",
  ratio: "0.00",
  Pa: "0",
  R: "0.00",
  deg: "0.0",
  mph: "0",
  cfm: "0",
  "Btu/h": "#,##0",
  "MMBtu/yr": "#,##0.0",
  "Btu/(h F)": "#,##0.0",
  "as given": "#,##0.00",
  "Btu/(h ft2 F)": "0.000",
  "h ft2 F/Btu": "0.00",
  "oz/ft2": "0.000",
  "oz/(ft2 day)": "0.000",
};

/** By the name of a column, where its unit stands in another column or in its words. */
const BY_NAME: Readonly<Record<string, string>> = {
  ratio: "0.00",
  "shear ratio": "0.00",
  "tension ratio": "0.00",
  combined: "0.00",
  coefficient: "0.00",
  quantity: "#,##0.0",
  demand: "#,##0.00",
  capacity: "#,##0.00",
  angle: "0.0",
  share: "0.0%",
  confidence: "0%",
};

const OTHER = "General";

/** A format that shows nothing for 0: for rows to spare. The embedded engine shows the 0 where a format leaves no text at all, so it leaves a blank. */
export const blankForZero = (format: string): string => `${format};-${format};" "`;
export const NOTHING_FOR_ZERO = blankForZero("#,##0.00");

/** Characters that the texts of a column need, by its name; a column of numbers needs no more than its heading. */
const WIDTHS: Readonly<Record<string, number>> = {
  anchor: 17,
  combination: 22,
  cuts: 66,
  face: 42,
  from: 34,
  item: 22,
  load: 21,
  over: 13,
  pack: 19,
  part: 34,
  piece: 23,
  remark: 74,
  role: 18,
  sheet: 15,
  stock: 34,
  surface: 15,
  task: 24,
  verdict: 38,
  where: 16,
  wind: 24,
};

export function formatOf(unit: string, name = ""): string {
  return FORMATS[unit] ?? BY_NAME[name] ?? OTHER;
}

/** How many characters a column is wide at least for its texts. */
export function widthOf(name: string): number {
  return WIDTHS[name] ?? 0;
}
