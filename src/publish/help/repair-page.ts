import { NAMESPACE } from "../../functions/declare/cell-function.ts";
import { type Html, html } from "./html.ts";

/** What to do about #NAME?, #BUSY! and other states that come from the host, not from a calculation. */
export function repairBody(): Html {
  return html`<h1>How to repair #NAME?</h1>
<p>A cell shows <code>#NAME?</code>, or its formula begins with <code>_xldudf_${NAMESPACE}_</code>, when Excel does not know the add-in at that moment. The formula and its arguments are still there.</p>
<h2>In this order</h2>
<ol>
<li>Start the add-in: Home tab, Add-ins, Sillwork. This registers the functions again. Wait until the pane has opened.</li>
<li>On the Home tab, Sillwork group, choose <strong>Repair #NAME? cells</strong>. It writes each formula of the add-in that shows <code>#NAME?</code> into its cell again; recalculating alone does not help.</li>
<li>If a sheet is protected, take the protection off first: nothing can be written into it.</li>
<li>If the functions are still unknown, close all workbooks, start Excel again and repeat the first step.</li>
<li>If a formula holds a number in brackets, as in <code>[2]!_xldudf_${NAMESPACE}_...</code>, it came from a copy that had another add-in: the repair takes that away as well.</li>
</ol>
<h2>Other states</h2>
<dl>
<dt><code>#BUSY!</code></dt>
<dd>Excel is waiting for the add-in. It should pass within seconds. If it stays, enter one of the cells again (F2, Enter), then start Excel again.</dd>
<dt><code>#SPILL!</code></dt>
<dd>The result is a table and something stands in its way. Clear the cells below and to the right.</dd>
<dt><code>#VALUE!</code> and <code>#N/A</code></dt>
<dd>The function has refused: an argument cannot be read, or lies outside the method. Select the cell; the pane says which and why.</dd>
<dt>The pane shows nothing for a cell</dt>
<dd>Excel keeps the stored values when it opens a workbook and calls no function. Calculate everything once with Ctrl+Alt+F9.</dd>
<dt>An argument or a function of the new version is missing</dt>
<dd>Excel keeps the list of functions for up to 24 hours. It reads it again when the version in the manifest is new.</dd>
</dl>
<h2>How to avoid it</h2>
<ul>
<li>Open the add-in once before you type its functions: names that were typed before it was there stay unknown until they are repaired.</li>
<li>Send a copy with values only to those who do not have the add-in.</li>
</ul>
`;
}
