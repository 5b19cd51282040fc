// What the marking comes to: how many are right, which slips were made, what to practise next. Pure.

import { html } from "../html.js";

const table = (slips) => html`<div class="wide" tabindex="0" role="region" aria-label="Slips"><table><thead><tr><th scope="col">Slip</th><th scope="col">Times</th>
  <th scope="col">Exercises</th></tr></thead><tbody>${slips.map(({ label, times, numbers }) => html`<tr><th scope="row">${label}</th><td>${times}</td>
  <td>${numbers.join(", ")}</td></tr>`)}</tbody></table></div>`;

export function marksView({ marks }, changed) {
  if (!marks) return "";
  const { sentence, of, right, slips, next } = marks.summary;
  return html`<section class="sheet" aria-labelledby="marks-title"><h2 id="marks-title" tabindex="-1" class="mark ${right === of ? "good" : "warn"}">
      <strong>${right} of ${of} right</strong></h2><p>${sentence}</p>
    ${changed ? html`<p class="note warn">Answers were changed since: mark again.</p>` : ""}${slips.length ? table(slips) : ""}
    ${next ? html`<p>${next.reason}</p><p class="row"><button id="next-sheet" data-do="nextSheet">Make that sheet</button></p>` : ""}</section>`;
}
