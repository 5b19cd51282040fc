// The chosen setup large, then what else could be set, how it was worked out and what to mind. Pure.

import { html } from "./html.js";
import { figures, moveText } from "./figures.js";
import { METHODS, atRim, length, seconds, wholeHead } from "./words.js";
import { gears } from "./gears.js";
import { schedule } from "./schedule.js";
import { plateDrawing } from "./drawings.js";
import { share } from "./share.js";

function exactness(setup, question) {
  const { error } = setup;
  if (setup.exact) return html`<p class="mark good"><strong>Exact</strong></p>`;
  const diameter = Number(String(question.diameter || "").replace(",", "."));
  const rim = diameter > 0 ? `, ${length(atRim(error.worst_seconds, diameter))} at the rim of ${diameter}` : "";
  const within = error.within_tolerance;
  return html`<p class="mark ${within ? "good" : "warn"}"><strong>Off by up to ${seconds(error.worst_seconds)}${rim}</strong>
    ${within === true && html`<span>within what you allow</span>`}${within === false && html`<span>more than you allow</span>`}
    <span class="soft">closing error ${seconds(error.closing_seconds)}, between neighbours ${seconds(error.single_pitch_seconds)}</span></p>`;
}

function mounting(setup, head) {
  const { plate, sector_holes: holes } = setup.move || {};
  const mounted = wholeHead(head).mounted_plate;
  const other = plate && plate !== mounted;
  return html`<ul class="facts">
    ${plate && html`<li class="${other ? "other" : ""}"><strong>Plate ${plate}</strong>${other ? ` to be mounted (plate ${mounted} is on now)` : " as mounted"}</li>`}
    ${holes && setup.method !== "direct" && html`<li>Arms over <strong>${holes} holes</strong></li>`}
    ${setup.second_move && setup.second_move.sector_holes && html`<li>Second move: arms over <strong>${setup.second_move.sector_holes} holes</strong></li>`}
    ${setup.move && holes === null && setup.move.turns !== null && setup.method !== "direct" && html`<li>Whole turns: no arms needed, any circle</li>`}
    ${setup.every > 1 && html`<li><strong>${setup.every} divisions at a move</strong>${setup.laps ? `, ${setup.laps} laps` : ""}</li>`}
  </ul>`;
}

function lines(title, sentences, ordered = false) {
  if (!sentences || !sentences.length) return "";
  const items = sentences.map((sentence) => html`<li>${sentence}</li>`);
  return html`<section class="sheet"><h2>${title}</h2>${ordered ? html`<ol>${items}</ol>` : html`<ul>${items}</ul>`}</section>`;
}

function working(sentences) {
  return html`<section class="sheet"><h2>How it is worked out</h2><ul class="working">${sentences.map((line) => html`<li>${line}</li>`)}</ul></section>`;
}

function trainWords({ spindle, worm, stud }) {
  return stud ? `${spindle}, ${stud[0]}, ${stud[1]}, ${worm}` : `${spindle} and ${worm}`;
}

function others(state) {
  const { setups } = state.answer;
  if (setups.length < 2) return "";
  return html`<section class="sheet"><h2>Ways to set it</h2><ul class="ways">${setups.map((setup, at) => html`<li><button type="button" id="setup-${at}"
    data-do="choose" data-at="${at}" aria-pressed="${at === state.chosen}"><strong>${moveText(setup)}</strong>
    <span>${METHODS[setup.method] || setup.method}${setup.move && setup.move.plate ? `, plate ${setup.move.plate}` : ""}${setup.gearing ? `, gears ${trainWords(setup.gearing)}` : ""},
    ${setup.exact ? "exact" : `off by ${seconds(setup.error.worst_seconds)}`}</span></button></li>`)}</ul></section>`;
}

function declined(reasons) {
  if (!reasons.length) return "";
  return html`<section class="sheet"><h2>Why not another way</h2><dl class="reasons">${reasons.map(({ method, reason }) => html`
    <dt>${METHODS[method] || method}</dt><dd>${reason}</dd>`)}</dl></section>`;
}

function waiting(state) {
  if (state.unsure) return html`<p class="wait">No move for this yet. Press “Work it out” to see what is missing.</p>`;
  if (state.busy) return html`<p class="wait">Working it out…</p>`;
  return html`<p class="wait">Type a number of divisions: the crank move appears here.</p>`;
}

export function answerView(state) {
  const { answer, question, head } = state;
  if (!answer) return state.problem ? "" : waiting(state);
  const setup = answer.setups[state.chosen];
  return html`<div class="columns"><div class="column">
    <section class="sheet move" aria-labelledby="move"><h2 id="move" tabindex="-1">${METHODS[setup.method] || setup.method} indexing</h2>
      ${figures(setup)}${exactness(setup, question)}${mounting(setup, head)}${gears(setup)}
      <div class="row"><button type="button" class="main" id="start" data-do="cut">Start cutting</button>
      <button type="button" id="print" data-do="print">Print job card</button>
      <button type="button" id="share" data-do="share">Link</button></div>${share(state)}</section>
    ${others(state)}
    ${lines("What to do", setup.instructions, true)}
    ${lines("Mind this", [...(setup.cautions || []), ...(answer.cautions || [])])}
    ${answer.part ? html`<div id="part-here" class="column"></div>` : ""}
    </div><div class="column">
    ${plateDrawing(setup, head)}
    ${working(setup.working)}
    ${declined(answer.declined || [])}
    </div></div>${schedule(setup)}`;
}
