import { sheet, table, top } from "../kit/layout.ts";

/** The office's first-day figures beside what the workbook takes off. */
export const firstDay = sheet("First day", "The office's first-day figures beside what the workbook takes off.", [
  top(
    "First day and takeoff",
    "The first-day figures were typed before any takeoff and stand in Tasks and Cost lines: hours and the bid go by them. Beside them stands what the other sheets give.",
  ),
  table(
    "FirstDayTasks",
    "Quantities of the tasks",
    ["task", "first day", "takeoff", "unit"],
    [
      taskRow(2, "=ColumnCount", "columns; plates go with them"),
      taskRow(3, "=WallPanels", "panels, by the courses"),
      taskRow(4, "=NetWallArea", "ft2 net"),
      taskRow(5, "=2*NetWallArea", "ft2 net, two layers"),
      taskRow(6, "=FurringFeet", "ft without waste"),
      taskRow(7, "=WindowCount", "windows"),
      taskRow(8, '=COUNTIF(INDEX(Sizes,0,2),">0")', "walls, one a lift"),
      taskRow(10, "=RoofPanels", "panels, by area with waste"),
      taskRow(11, "=RoofArea", "ft2"),
      taskRow(12, "=SUM(INDEX(FloorOpenings,0,4))", "openings on the floor"),
      taskRow(13, "=NetWallArea", "ft2 net"),
      taskRow(14, "=NetWallArea", "ft2 net"),
    ],
    0,
    "#,##0",
  ),
  table(
    "FirstDayCosts",
    "Cost lines",
    ["line", "first day $", "takeoff $", "what it is"],
    [
      costRow("shell labor", '=VLOOKUP("total",Schedule,4,FALSE)', "hours of Labor at the burdened rate"),
      costRow(
        "materials",
        '=MaterialTotal-VLOOKUP("concrete",Priced,4,FALSE)',
        "the order list without its concrete; frame lumber, siding, windows, doors are not in it",
      ),
    ],
    0,
    "#,##0",
  ),
]);

function taskRow(row: number, takeoff: string, unit: string) {
  return [`=INDEX(Tasks,${row},1)`, `=INDEX(Tasks,${row},2)`, takeoff, unit] as const;
}

function costRow(line: string, takeoff: string, what: string) {
  return [line, `=VLOOKUP("${line}",CostLines,2,FALSE)`, takeoff, what] as const;
}
