import { heading, input, label, note, result, type SheetTemplate, spillBlock, title } from "./template.ts";

const opening = (name: string, width: string, height: string, sill: string, left: string) => [
  input(name),
  input(width),
  input(height),
  input(1),
  input(sill),
  input(left),
];

/** One wall elevation: areas, sheets for the lining, sealant at the sill. */
export const demoWall: SheetTemplate = {
  name: "Long wall",
  says: "One wall elevation from size and openings to areas, sheets and sealant.",
  widths: [34, 14, 14, 12, 12, 12],
  rows: [
    [title("Long wall, one elevation")],
    [],
    [heading("Wall"), heading("Length"), heading("Height")],
    [input("long wall"), input("40'-0\""), input("9'-6\"")],
    [],
    [],
    [heading("Opening"), heading("Width"), heading("Height"), heading("Count"), heading("Sill"), heading("Left edge")],
    opening("window 1", "3'-0\"", "4'-0\"", "2'-8\"", "4'-0\""),
    opening("window 2", "3'-0\"", "4'-0\"", "2'-8\"", "12'-0\""),
    opening("door", "3'-4\"", "6'-10\"", "0'-0\"", "18'-6\""),
    opening("window 3", "3'-0\"", "4'-0\"", "2'-8\"", "26'-0\""),
    opening("window 4", "3'-0\"", "4'-0\"", "2'-8\"", "34'-0\""),
    [],
    [heading("Takeoff"), heading("Value"), heading("Unit")],
    ...spillBlock("=SILL.WALL_AREA(A3:C4,A7:F12)", ["", "0.0", "0.0", "0.0"], 3),
    [label("Waste on sheets"), input(0.08, "0%")],
    [label("Lining sheets 4 ft x 8 ft"), result('=SILL.SHEETS_COUNT(D17,"4x8",B18)', "0"), label("sheets")],
    [
      label("Sealant under the sill plate"),
      result("=SILL.BEAD(2*SILL.LENGTH(B4),3/8,,10%)", "0"),
      label("cartridges"),
      undefined,
      note("two beads, 3/8 in"),
    ],
    [
      label("Length as the tape reads it"),
      result("=SILL.FTIN(SILL.LENGTH(B4)/5)"),
      undefined,
      undefined,
      note("one of five bays"),
    ],
  ],
};
