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
    [heading("Basis"), heading("Value"), heading("Unit"), undefined, heading("Load"), heading("psf")],
    [label("Eave height"), input("10'-0\""), label("ft"), undefined, label("D"), result("=B6", ONE)],
    [label("Dead load of the roof"), input(14), label("psf"), undefined, label("Lr"), input(20)],
    [label("Ground snow"), input(35), label("psf"), undefined, label("S"), result("=B7", ONE)],
    [label("Roof width carried by a long wall"), input("13'-0\""), label("ft"), undefined, label("W"), input(-20)],
    [label("Thermal factor"), input(1.2), undefined, note("of the snow load: a ventilated roof")],
    [label("Roof overhang"), input("1'-0\""), label("ft")],
    [label("Winter wind"), input(0.45), undefined, note("W2 of the snow map, for drifts at the ridge")],
    [heading("Main frame, by surface and direction")],
    ...spillBlock("=SILL.WIND_FRAME(A4:C11,Site!A4:C15)", ["", "", "0.00", "0.00", ONE, ONE], 17),
    [heading("Sideways force")],
    ...spillBlock(
      '=SILL.WIND_BASESHEAR({"north long wall","along",12;"south long wall","along",12},A4:C11,Site!A4:C15)',
      ["", WHOLE, WHOLE, WHOLE, WHOLE, ""],
      6,
    ),
    [heading("Uplift at the bearing of the roof, plf, less 0.9 of the dead load")],
    ...spillBlock("=SILL.WIND_UPLIFT(B6,B8,A4:C11,Site!A4:C15)", [ONE, ONE, ONE, ONE, ""], 3),
    [heading("Snow on the roof")],
    ...spillBlock("=SILL.LOAD_SNOW(A4:C11,Site!A4:C15)", ["", ONE, ONE, ONE], 9),
    [heading("Combinations on the roof, dead, snow and wind uplift, psf, allowable stress")],
    ...spillBlock("=SILL.LOAD_COMBINE(E5:F8,Site!A4:C15)", ["", "", "", ONE], 16),
    [heading("Cladding pressures, walls and gable roof, strength level")],
    ...spillBlock("=SILL.WIND_CLADDING_SCHEDULE(Site!A4:C15)", ["", "", "0", ONE, ONE], 24),
  ],
};
