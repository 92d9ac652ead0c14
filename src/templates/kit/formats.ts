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
  "Btu/(h ft2 F)": "0.000",
  "h ft2 F/Btu": "0.00",
  "oz/ft2": "0.000",
  "oz/(ft2 day)": "0.000",
};

const OTHER = "General";

export function formatOf(unit: string): string {
  return FORMATS[unit] ?? OTHER;
}
