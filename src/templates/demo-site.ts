import { heading, input, label, note, result, type SheetTemplate, spilled, title } from "./template.ts";

/** The site basis of the demo building: the inputs that every other sheet points at. */
export const demoSite: SheetTemplate = {
  name: "Site",
  says: "Site basis: wind, size of the building, indoor and outdoor climate.",
  widths: [34, 14, 10, 62],
  rows: [
    [title("Workshop shell, 24 ft x 40 ft: site basis")],
    [note("An invented building. Change a blue cell and every sheet follows; select a result to see its working.")],
    [],
    [heading("Basis"), heading("Value"), heading("Unit"), heading("Where it comes from")],
    [
      label("Basic wind speed"),
      input(115),
      label("mph"),
      note("3-second gust for the risk category, from the adopted map"),
    ],
    [label("Exposure"), input("C"), undefined, note("B built-up or wooded, C open, D open water")],
    [label("Mean roof height"), input("14'-6\""), label("ft"), note("feet and inches as text, or a number of feet")],
    [label("Building width"), input(24), label("ft")],
    [label("Building length"), input(40), label("ft")],
    [label("Roof slope"), input("6:12"), undefined, note("gable roof")],
    [label("Ground elevation"), input(600), label("ft"), note("above sea level")],
    [label("ASCE 7 edition"), input("7-22"), undefined, note("as text: the spreadsheet must not make a date of it")],
    [label("Indoor temperature"), input(70), label("F")],
    [label("Indoor relative humidity"), input(0.4, "0%"), undefined, note("winter, with ventilation running")],
    [label("Outdoor design temperature"), input(5), label("F"), note("coldest month, mean of the coldest days")],
    [],
    [heading("Wind"), heading("Value"), heading("Unit"), heading("")],
    [label("Exposure coefficient Kz"), result("=SILL.WIND_KZ(B7,A4:C15)", "0.000")],
    [label("Velocity pressure q"), result("=SILL.WIND_PRESSURE(A4:C15)", "0.0"), label("psf")],
    [label("End-zone width a"), result("=SILL.WIND_EDGE(A4:C15)", "0.0"), label("ft")],
    [],
    [heading("Wall pressures, panel of 4 ft x 8 ft between columns"), heading(""), heading("")],
    [
      label("Middle of a wall, zone 4"),
      result('=SILL.WIND_CLADDING("wall",4,32,A4:C15)', "0.0"),
      spilled("0.0"),
      note("toward the wall, then away from it, psf, strength level"),
    ],
    [label("Ends of a wall, zone 5"), result('=SILL.WIND_CLADDING("wall",5,32,A4:C15)', "0.0"), spilled("0.0")],
  ],
};
