// One cut or trial mark: which it is, the move, what to expect after it, and the buttons.

import { html, raw } from "./html.js";
import { anglesOf, rowOf } from "./jobs.js";
import { drawPlate } from "./draw-plate.js";
import { drawRing } from "./draw-ring.js";
import { STAGE, armsReminder, doneLabel, figures, title } from "./shop-words.js";

export const bar = (job, words, stage = STAGE[job.phase]) => html`<header class="shop-bar"><p class="shop-job">${job.title}<span> ${stage}</span></p>
  <h1 id="shop-title" tabindex="-1">${words}</h1>
  <button id="shop-away" data-do="opens" data-dialog="shop-leave">Leave</button></header>`;

const figure = ([number, unit]) => html`<span class="shop-figure"><b>${number}</b> <span>${unit}</span></span> `;
const figureRow = (list) => html`<p class="shop-figures">${list.length ? list.map(figure) : "No move this time."}</p>`;

const firstCut = ({ phase }) => `No move. Make the first ${phase === "trial" ? "mark" : "cut"} where you stand.`;

function dialMove(row, job) {
  const whole = row.turns ? "Whole turns of the handwheel from the last setting, then on to the reading." : "Less than a turn on from the last setting.";
  return html`<p class="shop-figures">${figures(row.turns, 0).map(figure)}<span class="shop-figure long"><b>${row.dial.set}</b> <span>on the dial</span></span></p>
    <p class="shop-dial">${row.cut === 1 && !row.degrees ? firstCut(job) : whole}</p>`;
}

const twoMoves = (job, row) => html`<ol class="shop-moves"><li><p>Crank alone, circle ${job.move.circle}</p>${figureRow(figures(row.turns, row.holes))}</li>
    <li><p>Plate and crank together, circle ${job.second.circle}</p>${figureRow(figures(0, row.secondHoles))}</li></ol>`;

function moveOf(job, row) {
  if (row.dial) return dialMove(row, job);
  const list = figures(row.turns, row.holes);
  if (!list.length && !row.secondHoles) return html`<p class="shop-start">${row.cut === 1 ? firstCut(job) : "No move: this one lies in the same hole."}</p>`;
  return job.second ? twoMoves(job, row) : figureRow(list);
}

const pair = (name, value, of = "") => html`<div><dt>${name}</dt><dd>${value}<span> ${of}</span></dd></div>`;

const expected = ({ move, second }, { dial, hole, secondHole, scale }) => html`<dl class="shop-expect">
  ${dial ? pair("Handwheel, counted from zero", dial.turns, `${dial.turns === 1 ? "turn" : "turns"} and the reading`) : ""}
  ${dial || hole === null ? "" : pair("Pin in hole", hole, `of ${move.circle}`)}
  ${second && secondHole !== null ? pair("Stop pin in hole", secondHole, `of ${second.circle}`) : ""}${pair("Scale on the nose", scale)}</dl>`;

const arms = (words) => words ? html`<p class="shop-arms">${words}</p>` : "";

const freeCheck = ({ free, cut }) => free && cut > 1
  ? html`<p class="shop-free"><strong>Free check:</strong> the pin drops into the marked hole 0. If not, press Lost count?</p>` : "";

// The plate as it stands before the move, both pins still in the holes of the cut before.
function plates(job, row) {
  if (row.dial || !job.move) return "";
  const before = row.cut > 1 ? rowOf(job, row.cut - 2) : row;
  const first = { circle: job.move.circle, from: before.hole, spaces: row.holes || 0, turns: row.turns || 0, direct: !job.move.plate };
  const second = job.second && { circle: job.second.circle, from: before.secondHole, spaces: row.secondHoles || 0, arms: false };
  return [first, second].filter(Boolean).map((shown) => html`<div class="shop-plate">${raw(drawPlate({ circles: job.circles, ...shown }))}</div>`);
}

const ring = (job, row) => html`<div class="shop-ring">${raw(drawRing({ angles: anglesOf(job), now: job.at, reading: row.scale, label: job.title }))}</div>`;

export function cutScreen(job) {
  const row = rowOf(job);
  if (!row) return missing(job);
  return html`${bar(job, title(job))}
    <section class="shop-move" aria-label="The move">${arms(armsReminder(job, row))}${moveOf(job, row)}${expected(job, row)}${freeCheck(row)}</section>
    <div class="shop-drawings">${plates(job, row)}${ring(job, row)}</div>
    <footer class="shop-buttons"><button id="shop-back" data-do="back">Step back</button>
      <button id="shop-lost" data-do="lost">Lost count?</button>
      <button id="shop-done" class="done" data-do="done">${doneLabel(job)}</button></footer>`;
}

const missing = (job) => html`${bar(job, title(job))}<p class="shop-start">This browser has lost the schedule of this job.
  Work out the setup again, take it to the machine, and go on through Lost count?</p>`;
