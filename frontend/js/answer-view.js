// The chosen setup large, then the others, how it was worked out and what to mind. Pure.

import { html, items, sheet } from "./html.js";
import { figures, moveText } from "./figures.js";
import { METHODS, rimWords, seconds, wholeHead } from "./words.js";
import { gears } from "./gears.js";
import { schedule } from "./schedule.js";
import { plateDrawing } from "./drawings.js";

function exactness(setup, question) {
  const { error } = setup;
  if (setup.exact) return html`<p class="mark good"><strong>Exact</strong></p>`;
  const within = error.within_tolerance;
  return html`<p class="mark ${within ? "good" : "warn"}"><strong>Off by up to ${seconds(error.worst_seconds)}${rimWords(error.worst_seconds, question)}</strong>
    ${within === true && html`<span>within what you allow</span>`}${within === false && html`<span>more than you allow</span>`}
    <span class="soft">closing error ${seconds(error.closing_seconds)}, between neighbours ${seconds(error.single_pitch_seconds)}</span></p>`;
}

function mounting(setup, head) {
  const { method, move, second_move: second, every, laps } = setup;
  const { plate, sector_holes: holes } = move || {};
  const mounted = wholeHead(head).mounted_plate;
  const other = plate && plate !== mounted;
  return html`<ul class="facts">
    ${plate && html`<li class="${other ? "other" : ""}"><strong>Plate ${plate}</strong>${other ? ` to be mounted (plate ${mounted} is on now)` : " as mounted"}</li>`}
    ${holes && method !== "direct" && html`<li>Arms over <strong>${holes} holes</strong></li>`}
    ${second?.sector_holes && html`<li>Second move: arms over <strong>${second.sector_holes} holes</strong></li>`}
    ${move && holes === null && move.turns !== null && method !== "direct" && html`<li>Whole turns: no arms needed, any circle</li>`}
    ${every > 1 && html`<li><strong>${every} divisions at a move</strong>${laps ? `, ${laps} laps` : ""}</li>`}
  </ul>`;
}

const todo = (steps) => steps?.length ? sheet("What to do", html`<ol>${items(steps)}</ol>`) : "";
const mind = (cautions) => cautions.length ? sheet("Mind this", html`<ul>${items(cautions)}</ul>`) : "";
const working = (lines) => sheet("How it is worked out", html`<ul class="working">${items(lines)}</ul>`);

const trainWords = ({ spindle, worm, stud }) => stud ? `${spindle}, ${stud[0]}, ${stud[1]}, ${worm}` : `${spindle} and ${worm}`;

function others(state) {
  const { setups } = state.answer;
  if (setups.length < 2) return "";
  return sheet("Ways to set it", html`<ul class="ways">${items(setups.map((setup, at) => html`<button id="setup-${at}"
    data-do="choose" data-at="${at}" aria-pressed="${at === state.chosen}"><strong>${moveText(setup)}</strong>
    <span>${METHODS[setup.method]}${setup.move?.plate ? `, plate ${setup.move.plate}` : ""}${setup.gearing ? `, gears ${trainWords(setup.gearing)}` : ""},
    ${setup.exact ? "exact" : `off by ${seconds(setup.error.worst_seconds)}`}</span></button>`))}</ul>`);
}

const declined = (reasons) => reasons?.length ? sheet("Why not another way", html`<dl class="reasons">${reasons.map(({ method, reason }) => html`
  <dt>${METHODS[method]}</dt><dd>${reason}</dd>`)}</dl>`) : "";

// To be copied, or scanned by another tablet.
function share({ shared, copied }) {
  if (!shared) return "";
  return html`<div class="share"><div class="field"><label for="link">This setup as a link</label><input id="link" type="text" readonly value="${shared}"></div>
    <p class="row"><button data-do="copy" id="copy">${copied ? "Copied" : "Copy"}</button></p>
    <figure><img src="/qr.svg?${shared.split("#")[1] || ""}" alt="QR code of the link" width="180" height="180"><figcaption>Opens this setup</figcaption></figure></div>`;
}

function waiting(state) {
  if (state.unsure) return html`<p class="wait">No move for this yet. Press “Work it out” to see what is missing.</p>`;
  if (state.busy) return html`<p class="wait">Working it out…</p>`;
  return html`<p class="wait">The crank move appears here as you type.</p>`;
}

export function answerView(state) {
  const { answer, question, head } = state;
  if (!answer) return state.problem ? "" : waiting(state);
  const setup = answer.setups[state.chosen];
  return html`<div class="columns"><div class="column">
    <section class="sheet move" aria-labelledby="move"><h2 id="move" tabindex="-1">${setup.dial ? "Indexing by the dial" : `${METHODS[setup.method]} indexing`}</h2>
      ${figures(setup)}${exactness(setup, question)}${mounting(setup, head)}${gears(setup)}
      <div class="row"><button class="main" id="start" data-do="cut">Start cutting</button>
      <button id="print" data-do="print">Print job card</button>
      <button id="share" data-do="share">Link</button></div>${share(state)}</section>
    ${others(state)}${todo(setup.instructions)}${mind([...(setup.cautions || []), ...(answer.cautions || [])])}
    ${answer.part ? html`<div id="part-here" class="column"></div>` : ""}
    </div><div class="column">${plateDrawing(setup, head)}${working(setup.working)}${declined(answer.declined)}</div></div>${schedule(setup)}`;
}
