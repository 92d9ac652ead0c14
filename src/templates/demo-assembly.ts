import { heading, input, label, note, result, type SheetTemplate, spillBlock, title } from "./template.ts";

const layer = (material: string, thickness: number | "", vapor = "", role = "") => [
  input(material),
  thickness === "" ? undefined : input(thickness),
  undefined,
  vapor === "" ? undefined : input(vapor),
  role === "" ? undefined : input(role),
];

/** One wall assembly, inside to outside, with all insulation outboard of the membrane. */
export const demoAssembly: SheetTemplate = {
  name: "Wall build-up",
  says: "One wall assembly: R, U, and how far it stays above the dew point.",
  widths: [30, 14, 14, 14, 20, 14, 12, 10],
  rows: [
    [title("Wall build-up, inside to outside")],
    [note("One layer a row. R or k may be left blank for the built-in materials; own figures win.")],
    [],
    [heading("Material"), heading("Thickness"), heading("R"), heading("Vapor"), heading("Role")],
    layer("plywood", 0.5),
    layer("air space", 1.5),
    layer("veneer panel", 1.5),
    layer("self-adhered membrane", "", "0.05 perm", "air barrier"),
    layer("mineral wool board", 3),
    layer("mineral wool board", 3),
    layer("air space", 0.75, "", "ventilated cavity"),
    layer("wood siding", 0.75),
    [],
    [],
    [heading("Results"), heading("Value"), heading("Unit")],
    [label("Total R"), result("=SILL.R_STACK(A4:E13)", "0.0"), label("h ft2 F/Btu")],
    [label("U"), result("=SILL.U_FACTOR(A4:E13)", "0.000"), label("Btu/h ft2 F")],
    [label("Indoor dew point"), result("=SILL.DEW_POINT(Site!B13,Site!B14)", "0.0"), label("F")],
    [label("First wetting layer"), result("=SILL.DEW_LAYER(A4:E13,Site!B13,Site!B14,Site!B15)")],
    [],
    [heading("R by layer")],
    ...spillBlock("=SILL.R_SCHEDULE(A4:E13,,,TRUE)", ["", "0.00", "0.00", "0.00"], 14),
    [heading("Through the wall on the design day")],
    ...spillBlock(
      "=SILL.DEW_PROFILE(A4:E13,Site!B13,Site!B14,Site!B15,,,,,TRUE)",
      ["", "0.0", "0.0", "0.0", "0", "0", "0.000", ""],
      14,
    ),
  ],
};
