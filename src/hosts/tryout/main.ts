import { mountPane } from "../../pane/main.ts";
import { demo } from "../../templates/demo.ts";
import { TryOutSheet } from "./browser.ts";
import { makeResizable } from "./resize.ts";
import "../../pane/styles.css";
import "./tryout.css";

const find = (id: string): HTMLElement => document.getElementById(id) as HTMLElement;

const sheet = new TryOutSheet(find("sheet"), demo);
mountPane(find("pane"), sheet);
// For the browser tests, and for driving the sheet from the browser's console.
Object.assign(window, { tryOutSheet: sheet });
makeResizable(find("page"), find("divider"));
