// "Lost count?": what the head shows, the cuts where it can be standing, and on from the one that is right.

import { html } from "./html.js";
import { locate } from "./api.js";
import { store } from "./store.js";
import { summary } from "./errors.js";
import { field } from "./field.js";
import { faultsOf } from "./kept-form.js";
import { bar } from "./shop-cut.js";

const FIELDS = { hole: "lost-hole", spindle: "lost-spindle", give: "lost-give" };

const whole = (text) => /^\d+$/.test(text) ? Number(text) : text;

function seenOf(form) {
  const seen = {};
  for (const name of Object.keys(FIELDS)) {
    const typed = String(form.get(name) || "").trim();
    if (typed) seen[name] = name === "hole" ? whole(typed) : typed;
  }
  return seen;
}

function setupOf({ method, move, second, gearing }) {
  const setup = { method };
  if (move) Object.assign(setup, { turns: move.turns, holes: move.holes, circle: move.circle });
  if (second) setup.second = { holes: second.holes, circle: second.circle };
  if (gearing) setup.gearing = { spindle: gearing.spindle, worm: gearing.worm, stud: gearing.stud, idlers: gearing.idlers };
  return setup;
}

export async function askLocate(job, form, actions) {
  const typed = Object.fromEntries(Object.keys(FIELDS).map((name) => [name, String(form.get(name) || "")]));
  const { work, head, every } = job.asked;
  store.set({ lost: { ...typed, busy: true } });
  const reply = await locate({ work, head, setup: setupOf(job), every, seen: seenOf(form) });
  if (!store.get().lost) return;
  store.set({ lost: { ...typed, problem: reply.ok ? null : reply.problem, candidates: reply.ok ? reply.data.candidates : null } });
  const found = reply.ok ? reply.data.candidates.length : 0;
  actions.say(reply.ok ? `${found} ${found === 1 ? "cut fits" : "cuts fit"}.` : "That could not be worked out.");
  setTimeout(() => (document.getElementById("lost-answer") || document.getElementById("problem"))?.focus());
}

const fieldOf = (pointer) => FIELDS[/^#\/seen\/(\w+)/.exec(pointer)?.[1]] || "lost-spindle";

function candidate({ cut, hole, scale, off_degrees: off }, { count, phase }) {
  const what = phase === "trial" ? "Mark" : "Cut";
  const far = Math.abs(off ?? 0) < 0.005 ? "" : `, ${Math.abs(off).toFixed(2)}° from your reading`;
  return html`<li><p><strong>${what} ${cut}</strong> of ${count}: hole ${hole}, scale ${scale}${far}</p>
    <div class="shop-row"><button type="button" data-shop="goOn" data-at="${cut - 1}">${what} ${cut} is still to be made</button>
    <button type="button" data-shop="goOn" data-at="${cut}">${what} ${cut} is made, go on</button></div></li>`;
}

function answer(job, { candidates, problem }) {
  if (problem) return "";
  if (!candidates) return "";
  if (!candidates.length) {
    return html`<div class="note warn" id="lost-answer" tabindex="-1"><p>No cut of this job has that hole and that reading. Look at both once more,
      give the scale more play, or check that the right circle and arms are in use.</p></div>`;
  }
  const agree = candidates.some((each) => each.hole_agrees !== false);
  return html`<section id="lost-answer" tabindex="-1" aria-labelledby="lost-found"><h2 id="lost-found">The head can be standing at</h2>
    ${agree ? "" : html`<p class="note warn">None of these has the hole that you gave: the arms were set wrong or not swung on, or the hole was counted wrong. Count it once more.</p>`}
    <ul class="shop-found">${candidates.map((each) => candidate(each, job))}</ul>
    <p>Is it not plain which? Look at the work: the last cut that is there, and the blank beside it.</p></section>`;
}

export function lostScreen(job, { lost }) {
  const found = faultsOf(lost.problem, fieldOf);
  return html`${bar(job, "Lost count?")}<section class="shop-move">${summary(found)}<p>Leave the crank where it is. Tell what the head shows.</p>
    <form id="lost-form" novalidate>
      ${job.move ? field({ id: "lost-hole", name: "hole", label: `Hole the pin is in, counted from the marked hole 0 (circle ${job.move.circle})`, mode: "numeric", found, value: lost.hole || "" }) : ""}
      ${field({ id: "lost-spindle", name: "spindle", label: "Reading of the scale on the spindle nose", hint: "Such as 73° or 73°30′.", found, signs: true, value: lost.spindle || "" })}
      ${field({ id: "lost-give", name: "give", label: "How far the reading may be out", hint: "2° when left blank.", found, signs: true, value: lost.give || "" })}
      <button type="submit" class="main" id="lost-ask" ${lost.busy ? html`aria-disabled="true"` : ""}>${lost.busy ? "Looking…" : "Where can I be?"}</button>
    </form>${answer(job, lost)}</section>
    <footer class="shop-buttons"><button type="button" id="shop-back" data-shop="found">Back to the count</button></footer>`;
}
