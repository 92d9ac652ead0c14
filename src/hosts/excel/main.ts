/** The pane and the ribbon of the one page that Excel loads; the functions are there before. */
import "../../pane/styles.css";
import "./taskpane.css";
import { mountPane } from "../../pane/main.ts";
import { associateCommands } from "./commands.ts";
import { families } from "./families.ts";
import { excelHost } from "./host.ts";
import { ledger, officeLoaded, searches } from "./session.ts";
import { watchWorkbook } from "./watch.ts";

const page = document.documentElement;
const pane = mountPane(element("pane"), undefined, { functions: families, explainer: searches.explain, help: "help/" });

if (officeLoaded) Office.onReady(({ host }) => start(host));

function start(host: Office.HostType | null): void {
  page.dataset.host = String(host ?? "none");
  if (host !== Office.HostType.Excel) return;
  followTheme();
  associateCommands(report);
  pane.attach(excelHost(ledger));
  watchWorkbook(ledger).catch((error: unknown) => report(error instanceof Error ? error.message : String(error)));
}

/** How long a notice stands, in milliseconds: long enough to read several sentences. */
const NOTICE_MS = 20_000;
let noticeEnds: ReturnType<typeof setTimeout> | undefined;

function report(sentence: string): void {
  const notice = element("notice");
  notice.textContent = sentence;
  clearTimeout(noticeEnds);
  noticeEnds = setTimeout(() => {
    notice.textContent = "";
  }, NOTICE_MS);
}

/** Excel's theme may differ from the system's; it tells of no change, so it is read again whenever the pane comes to the front. */
function followTheme(): void {
  const read = () => {
    const background = Office.context.officeTheme?.bodyBackgroundColor;
    if (background !== undefined) page.dataset.theme = isDark(background) ? "dark" : "light";
  };
  read();
  addEventListener("focus", read);
  document.addEventListener("visibilitychange", read);
}

/** @param color "#rrggbb" */
function isDark(color: string): boolean {
  const [r = 0, g = 0, b = 0] = (color.match(/[0-9a-f]{2}/gi) ?? []).map((pair) => Number.parseInt(pair, 16));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b < 128;
}

function element(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`The page has no element ${id}`);
  return found;
}
