// The sheet on paper: the exercises with room to work, and the key on a page of its own. Pure.

import { html, items } from "../html.js";
import { headLine } from "../words.js";

const blank = ({ label, choices }) => choices
  ? html`<ul class="paper-choices">${items(choices.map((each) => html`☐ ${each.label}`))}</ul>` : html`<span class="paper-blank">${label} <span class="paper-line"></span></span> `;

const exercise = ({ question, asked, may_be_none: may }) => html`<li><p>${question}</p>${asked[0].choices ? "" : html`<div class="paper-room"></div>`}
  <div class="paper-blanks">${asked.map(blank)}${may ? html`<span class="paper-blank">☐ No circle serves, because <span class="paper-line long"></span></span>` : ""}</div></li>`;

function slipName({ answer, asked }) {
  const slip = asked.find(({ field }) => field === "slip")?.choices.find(({ value }) => value === answer.slip);
  return slip ? html`${slip.label}. ` : "";
}

const answer = (each) => html`<li><p><strong>${slipName(each)}${each.answer.summary}</strong></p>
  <p>${each.answer.reason || `${each.answer.working.map((line) => line.replace(/\.$/, "")).join("; ")}.`}</p></li>`;

export function sheetPaper(practice, state, address) {
  const { seed, level, exercises, equipment, service_version: version } = practice;
  const name = `sheet ${seed}, level ${level}`;
  return html`<article class="sheet-paper"><header><h2>Exercises in dividing</h2><dl class="paper-names"><div><dt>Name</dt><dd></dd></div><div><dt>Class</dt><dd></dd></div>
      <div><dt>Date</dt><dd></dd></div></dl></header>
    <p><strong>S${name.slice(1)}.</strong> On ${state.headName || "this head"}:</p><ul class="paper-equipment">${items(equipment || [headLine(state.head)])}</ul>
    <ol>${exercises.map(exercise)}</ol><p class="paper-foot">The same sheet on a tablet: ${address}</p></article>
    ${state.withKey === false ? "" : html`<article class="sheet-key"><h2>Key to ${name}</h2><p>${exercises.length} exercises. Where several circles serve, another right answer is as good.</p>
    <ol>${exercises.map(answer)}</ol><p class="paper-foot">Worked out by version ${version}.</p></article>`}`;
}
