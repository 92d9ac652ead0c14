import { demo } from "./demo.ts";
import { anchorage } from "./house/anchorage.ts";
import { assemblies, moisture } from "./house/assemblies.ts";
import { courses, cutting } from "./house/courses.ts";
import { energy } from "./house/energy.ts";
import { lift, truck } from "./house/lift.ts";
import { loads } from "./house/loads.ts";
import { bid, labor } from "./house/money.ts";
import { order } from "./house/order.ts";
import { site } from "./house/site.ts";
import { structure } from "./house/structure.ts";
import { walls } from "./house/walls.ts";
import { wind } from "./house/wind.ts";
import { workbook } from "./kit/layout.ts";
import type { WorkbookTemplate } from "./kit/template.ts";

/** Every workbook to start from, filled in with the figures of the demo building; the demo, which holds them all, is the last. */
export const templates: readonly WorkbookTemplate[] = [
  workbook("Site basis", [site]),
  workbook("Wind schedule", [site, wind]),
  workbook("Snow and loads", [site, assemblies, loads]),
  workbook("Panel, column and screw check", [site, walls, assemblies, loads, structure]),
  workbook("Hold-down schedule", [site, walls, assemblies, wind, loads, structure, anchorage]),
  workbook("Wall assembly and dew point", [site, assemblies]),
  workbook("Twelve-month moisture", [site, assemblies, moisture]),
  workbook("Whole-house UA", [site, walls, assemblies, energy]),
  workbook("Wall takeoff and courses", [site, walls, courses]),
  workbook("House courses and cutting list", [site, walls, courses, cutting]),
  workbook("Envelope order list with prices", [site, walls, courses, cutting, order]),
  workbook("Lift plan", [site, walls, assemblies, lift]),
  workbook("Truck plan", [site, truck]),
  workbook("Window labor", [site, walls, labor]),
  workbook("Bid build-up", [site, bid]),
  demo,
];
