import { demoAssembly } from "./demo-assembly.ts";
import { demoSite } from "./demo-site.ts";
import { demoTakeoff } from "./demo-takeoff.ts";
import { demoWall } from "./demo-wall.ts";
import { demoWind } from "./demo-wind.ts";
import type { WorkbookTemplate } from "./template.ts";

/** The workbook that the try-out sheet opens with: an invented small building. */
export const demo: WorkbookTemplate = {
  name: "Workshop shell",
  sheets: [demoSite, demoWind, demoAssembly, demoWall, demoTakeoff],
  names: [],
};
