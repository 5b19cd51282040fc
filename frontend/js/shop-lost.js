// What the head shows, the cuts where it can be standing, and on from the right one.

import { html, items } from "./html.js";
import { locate } from "./api.js";
import { focusOn, say } from "./document.js";
import { store } from "./store.js";
import { faults, summary } from "./errors.js";
import { field } from "./field.js";
import { bar } from "./shop-cut.js";
import { wholeOr } from "./words.js";

const FIELDS = ["hole", "spindle", "give"];

function setupOf({ method, move, second, gearing }) {
  const setup = { method };
  if (move) Object.assign(setup, { turns: move.turns, holes: move.holes, circle: move.circle });
  if (second) setup.second = { holes: second.holes, circle: second.circle };
  if (gearing) setup.gearing = { spindle: gearing.spindle, worm: gearing.worm, stud: gearing.stud, idlers: gearing.idlers };
  return setup;
}

export async function askLocate(job, form) {
  const typed = Object.fromEntries(FIELDS.map((name) => [name, (form.get(name) || "").trim()]));
  const { work, head, every } = job.asked;
  const seen = Object.fromEntries(Object.entries(typed).filter(([, text]) => text));
  if (seen.hole) seen.hole = wholeOr(seen.hole);
  store.set({ lost: { ...typed, busy: true } });
  const { ok, data, problem } = await locate({ work, head, setup: setupOf(job), every, seen });
  if (!store.get().lost) return;
  store.set({ lost: { ...typed, problem, candidates: data?.candidates } });
  const found = data?.candidates.length;
  say(ok ? `${found} ${found === 1 ? "cut fits" : "cuts fit"}.` : "That could not be worked out.");
  setTimeout(() => focusOn(ok ? "lost-answer" : "problem"));
}

function fieldOf(pointer) {
  const [, name] = /^#\/seen\/(\w+)/.exec(pointer) || [];
  return `lost-${FIELDS.includes(name) ? name : "spindle"}`;
}

function candidate({ cut, hole, scale, off_degrees: off }, { count, phase }) {
  const what = phase === "trial" ? "Mark" : "Cut";
  const far = Math.abs(off ?? 0) < 0.005 ? "" : `, ${Math.abs(off).toFixed(2)}° from your reading`;
  return html`<p><strong>${what} ${cut}</strong> of ${count}: hole ${hole}, scale ${scale}${far}</p>
    <div class="shop-row"><button data-do="goOn" data-at="${cut - 1}">${what} ${cut} is still to be made</button>
    <button data-do="goOn" data-at="${cut}">${what} ${cut} is made, go on</button></div>`;
}

function answer(job, { candidates }) {
  if (!candidates) return "";
  if (!candidates.length) {
    return html`<div class="note warn" id="lost-answer" tabindex="-1"><p>No cut of this job has that hole and that reading. Look at both once more,
      give the scale more play, or check that the right circle and arms are in use.</p></div>`;
  }
  const agree = candidates.some((each) => each.hole_agrees !== false);
  return html`<section id="lost-answer" tabindex="-1" aria-labelledby="lost-found"><h2 id="lost-found">The head can be standing at</h2>
    ${agree ? "" : html`<p class="note warn">None of these has the hole that you gave: the arms were set wrong or not swung on, or the hole was counted wrong. Count it once more.</p>`}
    <ul class="shop-found">${items(candidates.map((each) => candidate(each, job)))}</ul>
    <p>Is it not plain which? Look at the work: the last cut that is there, and the blank beside it.</p></section>`;
}

export function lostScreen(job, { lost }) {
  const found = faults(lost.problem, fieldOf);
  return html`${bar(job, "Lost count?")}<div class="shop-move">${summary(found)}<p>Leave the crank where it is. Tell what the head shows.</p>
    <form id="lost-form" novalidate>
      ${job.move ? field({ id: "lost-hole", name: "hole", label: `Hole the pin is in, counted from the marked hole 0 (circle ${job.move.circle})`, mode: "numeric", found, value: lost.hole }) : ""}
      ${field({ id: "lost-spindle", name: "spindle", label: "Reading of the scale on the spindle nose", hint: "Such as 73° or 73°30′.", found, signs: true, value: lost.spindle })}
      ${field({ id: "lost-give", name: "give", label: "How far the reading may be out", hint: "2° when left blank.", found, signs: true, value: lost.give })}
      <button type="submit" class="main" id="lost-ask" ${lost.busy ? html`aria-disabled="true"` : ""}>${lost.busy ? "Looking…" : "Where can I be?"}</button>
    </form>${answer(job, lost)}</div>
    <footer class="shop-buttons"><button id="shop-back" data-do="found">Back to the count</button></footer>`;
}
