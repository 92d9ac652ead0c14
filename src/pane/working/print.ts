import { html, nothing, render, type TemplateResult } from "lit-html";
import type { CuttingLayoutPicture } from "../../core/cutting/pictures.ts";
import type { PictureBase } from "../../core/kit/picture.ts";
import type { CellFunction } from "../../functions/declare/cell-function.ts";
import type { Working } from "../../functions/run/invoke.ts";
import { hasHeadings } from "../../functions/run/present.ts";
import { drawing } from "../drawings/index.ts";
import { isTable } from "../parts/numbers.ts";
import { sentenceList, shownValue, tableOf } from "../parts/values.ts";

/** Width that pictures on paper are laid out for: across a letter page with its margins, in pixels. */
const PAGE_WIDTH = 700;
const PRINTING = "sw-printing";

/** A picture with what belongs to it on paper: the cell, the whole result, cautions and sources. A cutting layout stands sheet by sheet, none across two pages. */
export function printPicture(fn: CellFunction, working: Working, picture: PictureBase, cell: string): void {
  const paper = document.createElement("div");
  paper.className = "sw-pane sw-print";
  paper.dataset.theme = "light";
  render(page(fn, working, picture, cell), paper);
  document.body.append(paper);
  const root = document.documentElement;
  root.classList.add(PRINTING);
  const end = (): void => {
    root.classList.remove(PRINTING);
    paper.remove();
  };
  addEventListener("afterprint", end, { once: true });
  try {
    print();
  } catch {
    // A host's frame may not allow it; then nothing must stay behind.
    end();
  }
}

function page(fn: CellFunction, working: Working, picture: PictureBase, cell: string): TemplateResult {
  const { outcome } = working;
  return html`
    <h1>${fn.summary}</h1>
    <p class="sw-quiet">${fn.name} in ${cell}. Project: ____________________ Date: ____________</p>
    <p>${picture.alt}</p>
    ${partsOf(picture).map((part) => html`<figure class="sw-drawing">${drawing(part, PAGE_WIDTH)}</figure>`)}
    ${outcome.ok ? wholeResult(fn, outcome.value) : nothing}
    ${sentenceList("Cautions", working.cautions)}
    ${sentenceList("Sources", working.sources, "sw-sources")}
  `;
}

function wholeResult(fn: CellFunction, value: Parameters<typeof isTable>[0]): TemplateResult {
  if (!isTable(value)) return html`<p class="sw-result">${shownValue(value, fn.returns.unit, "Result")}</p>`;
  const rows = hasHeadings(fn, value) ? value.slice(1) : value;
  return tableOf(rows, `Result of ${fn.name}`, fn.returns.columns, rows.length);
}

/** Sheets of a cutting layout one by one, so that a page breaks between them. */
function partsOf(picture: PictureBase): readonly PictureBase[] {
  if (picture.kind !== "cutting-layout") return [picture];
  const layout = picture as CuttingLayoutPicture;
  return layout.sheets.map((sheet) => ({ ...layout, sheets: [sheet] }) as CuttingLayoutPicture);
}
