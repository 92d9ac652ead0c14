import { mountPane } from "../../../pane/main.ts";
import { demo } from "../../../templates/demo.ts";
import { Searches } from "../../../workbook/searches/searches.ts";
import { startSearchWorker } from "../../../workbook/searches/start-worker.ts";
import { TryOutSheet } from "./browser.ts";
import { makeResizable } from "./resize.ts";
import "../../../pane/styles.css";
import "./tryout.css";

const find = (id: string): HTMLElement => document.getElementById(id) as HTMLElement;

const searches = new Searches(startSearchWorker);
const sheet = new TryOutSheet(find("sheet"), demo, searches.answer);
mountPane(find("pane"), sheet, { explainer: searches.explain });
// For the browser tests, and for driving the sheet from the browser's console.
Object.assign(window, { tryOutSheet: sheet });
makeResizable(find("page"), find("divider"));
