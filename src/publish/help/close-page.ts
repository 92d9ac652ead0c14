import type { FunctionText } from "../../functions/declare/describe.ts";
import { pageOfFamily } from "../../functions/find/help-place.ts";
import found from "./how-close.json" with { type: "json" };
import type { HowClose } from "./how-close.ts";
import { type Html, html } from "./html.ts";

const FOUND = found as Readonly<Record<string, HowClose>>;

/** How close every function comes to what is printed, as the last audit found it. */
export function closeBody(functions: readonly FunctionText[]): Html {
  return html`<h1>How close</h1>
<p>What each function is checked against, and its largest miss. A miss of 1 is as far off as the row allows: half of its last printed digit, or what its source claims. Rows count for every function that rests on the formula that they check. Rows that depart from their own formula say so and are held on both sides; they are counted apart and are not in the largest miss.</p>
<div class="table" role="group" aria-label="How close each function comes" tabindex="0">
<table>
<thead><tr><th scope="col">Function</th><th scope="col">Printed</th><th scope="col">Library</th><th scope="col">From memory</th><th scope="col">Depart</th><th scope="col">Largest miss</th><th scope="col">Its row</th></tr></thead>
<tbody>
${functions.map(line)}</tbody>
</table>
</div>
`;
}

function line(fn: FunctionText): Html {
  const close = FOUND[fn.name];
  const name = html`<th scope="row"><a href="${pageOfFamily(fn.family)}#${fn.name}">${fn.name}</a></th>`;
  if (close === undefined) return html`<tr>${name}<td colspan="6">not audited yet</td></tr>\n`;
  const { printed, library, memory, disagree, worst } = close;
  const miss =
    worst === null
      ? html`<td></td><td>exact arithmetic</td>`
      : html`<td>${worst.share}</td><td>${worst.row}: ${worst.source}</td>`;
  return html`<tr>${name}<td>${printed}</td><td>${library}</td><td>${memory}</td><td>${disagree}</td>${miss}</tr>\n`;
}
