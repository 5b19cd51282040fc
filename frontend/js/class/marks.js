// What the marking comes to: how many are right, which slips were made, what to practise next. Pure.

import { html, table } from "../html.js";

const slipTable = (slips) => table("Slips", ["Slip", "Times", "Exercises"], slips.map(({ label, times, numbers }) => [label, times, numbers.join(", ")]));

export function marksView({ marks }, changed) {
  if (!marks) return "";
  const { sentence, of, right, slips, next } = marks.summary;
  return html`<section class="sheet" aria-labelledby="marks-title"><h2 id="marks-title" tabindex="-1" class="mark ${right === of ? "good" : "warn"}">
      <strong>${right} of ${of} right</strong></h2><p>${sentence}</p>
    ${changed ? html`<p class="note warn">Answers were changed since: mark again.</p>` : ""}${slips.length ? slipTable(slips) : ""}
    ${next ? html`<p>${next.reason}</p><p class="row"><button id="next-sheet" data-do="nextSheet">Make that sheet</button></p>` : ""}</section>`;
}
