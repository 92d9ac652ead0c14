import { heading, input, label, note, result, title, type WorkbookTemplate } from "../../templates/template.ts";

/** The workbook that the try-out sheet opens with. */
export const demo: WorkbookTemplate = {
  name: "Try-out",
  names: [["wall_height", "Start!$B$4"]],
  sheets: [
    {
      name: "Start",
      says: "A first look at the functions",
      widths: [34, 16, 14, 14, 14],
      rows: [
        [title("Try-out sheet")],
        [
          note(
            "Change a tinted cell: what depends on it calculates again. Select a result to see its working in the pane.",
          ),
        ],
        [heading("Lengths"), heading("")],
        [label("Wall height"), input("9'-4 1/2\"")],
        [label("Wall height, ft"), result("=SILL.LENGTH(wall_height)", "0.000")],
        [label("Rounded to 1/4 in"), result("=SILL.FTIN(B5, 4)")],
        [label("Roof slope"), input("6:12")],
        [label("Roof slope, degrees"), result("=SILL.SLOPE(B7)", "0.00")],
        [label("Rake factor"), result('=SILL.SLOPE(B7, "rake")', "0.0000")],
      ],
    },
  ],
};
