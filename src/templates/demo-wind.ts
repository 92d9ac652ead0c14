import { heading, input, label, note, result, type SheetTemplate, spillBlock, title } from "./template.ts";

const ONE = "0.0";
const WHOLE = "#,##0";

/** Wind on the demo building: cladding by zone and area, the frame, sideways force, uplift, and the combinations for one wall line. */
export const demoWind: SheetTemplate = {
  name: "Wind",
  says: "Every cladding pressure, the frame, sideways force and uplift of the building.",
  widths: [30, 34, 18, 18, 26, 26],
  rows: [
    [title("Wind and loads on the building")],
    [note("Select the first cell of a table to see how it comes about, with the outline of the building.")],
    [],
    [heading("Inputs here"), heading("Value"), heading("Unit")],
    [label("Eave height"), input("10'-0\""), label("ft")],
    [label("Dead load of the roof"), input(14), label("psf")],
    [label("Ground snow"), input(35), label("psf")],
    [label("Roof width carried by a long wall"), input("13'-0\""), label("ft")],
    [
      label("Edition of the roof coefficients"),
      input("7-10"),
      undefined,
      note("the gable coefficients held here are those of 7-10; other editions take GCp from the reader"),
    ],
    [label("q of that edition"), result("=SILL.WIND_PRESSURE(Site!B5,Site!B7,Site!B6,,,,B9)", ONE), label("psf")],
    [],
    [heading("Main frame, by surface and direction")],
    ...spillBlock(
      "=SILL.WIND_FRAME(Site!B19,Site!B8,Site!B9,B5,Site!B10,,,Site!B6,,,Site!B12,TRUE)",
      ["", "", "0.00", "0.00", ONE, ONE],
      17,
    ),
    [heading("Sideways force")],
    ...spillBlock(
      '=SILL.WIND_BASESHEAR(Site!B19,Site!B8,Site!B9,B5,Site!B10,,Site!B6,,,Site!B12,{"north long wall","along",12;"south long wall","along",12},TRUE)',
      ["", WHOLE, WHOLE, WHOLE, WHOLE],
      6,
    ),
    [heading("Uplift at the bearing of the roof, plf, less 0.6 of the dead load")],
    ...spillBlock(
      "=SILL.WIND_UPLIFT(Site!B19,Site!B8,Site!B9,B5,Site!B10,B6,B8,1,,Site!B6,,,Site!B12,TRUE)",
      [ONE, ONE, ONE, ONE],
      3,
    ),
    [heading("Snow on the roof")],
    ...spillBlock("=SILL.LOAD_SNOW(B7,Site!B10,Site!B8,,,,,,,Site!B12,TRUE)", ["", ONE, ONE, ONE], 9),
    [heading("Combinations on the roof, dead, snow and wind uplift, psf, allowable stress")],
    ...spillBlock("=SILL.LOAD_COMBINE(B6,,20,B7,-20,,,,Site!B12,TRUE)", ["", "", "", ONE], 16),
    [heading("Cladding pressures, walls and gable roof, strength level")],
    ...spillBlock(
      '=SILL.WIND_CLADDING_SCHEDULE(B10,"gable",Site!B10,,Site!B8,Site!B9,Site!B7,,,,B9,TRUE)',
      ["", "", "0", ONE, ONE],
      24,
    ),
  ],
};
