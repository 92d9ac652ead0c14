import { anchorage } from "./house/anchorage.ts";
import { assemblies, moisture } from "./house/assemblies.ts";
import { courses, cutting } from "./house/courses.ts";
import { energy } from "./house/energy.ts";
import { firstDay } from "./house/first-day.ts";
import { lift, truck } from "./house/lift.ts";
import { loads } from "./house/loads.ts";
import { bid, labor } from "./house/money.ts";
import { order } from "./house/order.ts";
import { site } from "./house/site.ts";
import { structure } from "./house/structure.ts";
import { walls } from "./house/walls.ts";
import { wind } from "./house/wind.ts";
import { workbook } from "./kit/layout.ts";

/** The workbook that the try-out sheet opens with: an invented small building, from site to bid. */
export const demo = workbook("Joinery Shed", [
  site,
  walls,
  assemblies,
  moisture,
  energy,
  wind,
  loads,
  structure,
  anchorage,
  courses,
  cutting,
  order,
  lift,
  truck,
  labor,
  bid,
  firstDay,
]);
