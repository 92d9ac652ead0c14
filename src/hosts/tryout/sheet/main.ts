import { listOf } from "../../../functions/families.ts";
import { registry } from "../../../functions/registry.ts";
import { mountPane } from "../../../pane/main.ts";
import { demo } from "../../../templates/demo.ts";
import { Searches } from "../../../workbook/searches/searches.ts";
import { startSearchWorker } from "../../../workbook/searches/start-worker.ts";
import { TryOutSheet } from "./browser.ts";
import { nameControls } from "./control-names.ts";
import { Files } from "./files.ts";
import { goRoundRegions } from "./regions.ts";
import { makeResizable } from "./resize.ts";
import "../../../pane/styles.css";
import "./tryout.css";

const find = (id: string): HTMLElement => document.getElementById(id) as HTMLElement;

/** The engine's row of buttons. */
const toolbar = (): HTMLElement | null => find("sheet").querySelector("[data-u-comp='ribbon-toolbar']");

const searches = new Searches(startSearchWorker);
const sheet = new TryOutSheet(find("sheet"), demo, searches.answer);
const pane = mountPane(find("pane"), undefined, {
  functions: listOf(registry),
  explainer: searches.explain,
  help: "help/",
});
makeResizable(find("page"), find("divider"));
nameControls(find("sheet"));
goRoundRegions([
  { element: () => find("files"), focus: () => find("blank").focus() },
  // Inside the sheet's element, so it comes before it.
  { element: toolbar, focus: () => toolbar()?.querySelector<HTMLElement>("button:enabled, input")?.focus() },
  { element: () => find("sheet"), focus: () => sheet.focus() },
  {
    element: () => find("pane"),
    focus: () => find("pane").querySelector<HTMLElement>("[role=tab][tabindex='0']")?.focus(),
  },
]);

await sheet.ready;
const said = find("said");
const files = new Files(sheet, (sentence) => {
  said.textContent = sentence;
});
await files.resume();
const chooser = find("chooser") as HTMLInputElement;
const actions: Readonly<Record<string, () => unknown>> = {
  blank: () => files.startAnew("blank"),
  open: () => chooser.click(),
  save: () => files.save(false),
  values: () => files.save(true),
  anew: () => files.startAnew("demo"),
};
for (const [id, action] of Object.entries(actions)) find(id).addEventListener("click", action);
chooser.addEventListener("change", async () => {
  const [chosen] = chooser.files ?? [];
  if (chosen !== undefined) await files.open(chosen);
  // The same file may be chosen again.
  chooser.value = "";
});
pane.attach(sheet);
sheet.focus();
find("opening").hidden = true;
find("sheet").ariaBusy = "false";
document.documentElement.dataset.ready = "yes";
// For the browser tests, and for driving the sheet from the browser's console.
Object.assign(window, { tryOutSheet: sheet });
