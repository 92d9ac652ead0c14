import { heading, input, label, note, result, type SheetTemplate, spillBlock, title } from "./template.ts";

const WALL = "'Long wall'!A3:C4";
const OPENINGS = "'Long wall'!A7:F12";

const lining = (name: string, lengthIn: number, widthIn: number, quantity: number, grain: string) => [
  input(name),
  input(lengthIn),
  input(widthIn),
  input(quantity),
  input(grain),
];

/** From one wall elevation to the order list: columns, courses, lining sheets, bucks, and everything by the roll and the box. */
export const demoTakeoff: SheetTemplate = {
  name: "Takeoff",
  says: "From the long wall's elevation to the list to order from.",
  widths: [30, 14, 14, 14, 14, 12, 12, 12, 16, 24],
  rows: [
    [title("Takeoff of the long wall, from elevation to order list")],
    [note("Select WALL_COURSES or SHEETS_LAYOUT to see the elevation and the cutting layout.")],
    [],
    [heading("Inputs here"), heading("Value"), heading("Unit")],
    [label("Greatest spacing of columns"), input("8 ft")],
    [label("Panel"), input("4x32"), label("ft")],
    [label("Saw cut"), input(0.125, "0.000"), label("in")],
    [label("Waste on rolls, strips and boards"), input(0.05, "0%")],
    [],
    [heading("Columns"), heading(""), heading("")],
    ...spillBlock(`=SILL.WALL_COLUMNS(${WALL},${OPENINGS},B5)`, ["", "0.00", "0.00", ""], 24),
    [heading("Courses of panels, cut to the openings")],
    ...spillBlock(
      `=SILL.WALL_COURSES(${WALL},A11:D34,${OPENINGS},B6,B7)`,
      ["", "", "0", "0.00", "0.00", "0.00", "0", "0.0", "0.0", "", "", ""],
      16,
    ),
    [heading("What the panels leave, to cut from first")],
    ...spillBlock(`=SILL.WALL_OFFCUTS(${WALL},A11:D34,${OPENINGS},B6,B7)`, ["", "0.00", "0.00", "0", "0"], 16),
    [heading("Lining parts"), heading("Length, in"), heading("Width, in"), heading("Quantity"), heading("Grain")],
    lining("full height", 96, 48, 7, "along"),
    lining("over window", 36, 24, 4, "along"),
    lining("under window", 36, 30, 4, "along"),
    lining("strip at head", 48, 18, 10, "free"),
    [heading("Lining sheet"), heading("Length, in"), heading("Width, in"), heading("Cost")],
    [input("4 x 8 sheet"), input(96), input(48), input(38, "0.00")],
    [label("Sheets to order"), result("=SILL.SHEETS_NEEDED(A70:E73,A75:D75,B7)", "0")],
    [label("Proven least"), result("=SILL.SHEETS_BOUND(A70:E73,A75:D75,B7)", "0")],
    [],
    [heading("Cutting list of the lining")],
    ...spillBlock(
      "=SILL.SHEETS_LAYOUT(A70:E73,A75:D75,B7,,,TRUE)",
      ["0", "", "0.00", "0.00", "0.00", "0.00", "", ""],
      28,
    ),
    [heading("Window and door bucks, in")],
    ...spillBlock(`=SILL.BUCKS(${OPENINGS})`, ["", "0.00", "", "0"], 14),
    [heading("To order"), heading("Quantity"), heading("Unit"), heading("Packs"), heading("Pack")],
    ...order(`=SILL.ROLLS(${WALL},60,100,${OPENINGS},B8)`),
    ...order(`=SILL.TAPE(${OPENINGS},75,,B8)`),
    ...order(`=SILL.BOARDS(${WALL},"4x8",{3,3},${OPENINGS},B8)`),
    ...order(`=SILL.FURRING(${WALL},10,${OPENINGS},24,B8)`),
    ...order(`=SILL.SCREEN(${WALL},10,${OPENINGS},B8)`),
    [label("Sealant cartridges under the sill"), result("='Long wall'!B20", "0")],
  ],
};

/** One or two lines of an order, from a function that spills them. */
function order(formula: string) {
  return spillBlock(formula, ["", "0.0", "", "0", ""], 2);
}
