import { demo } from "./demo.ts";
import type { WorkbookTemplate } from "./template.ts";

/** Every workbook to start from, the demo last. */
export const templates: readonly WorkbookTemplate[] = [demo];
