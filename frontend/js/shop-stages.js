// Before the first cut, between the trial pass and the cuts, and after the last.

import { html, items, raw } from "./html.js";
import { drawPlate } from "./draw-plate.js";
import { drawTrain } from "./draw-train.js";
import { plateWay, seconds } from "./words.js";
import { bar } from "./shop-cut.js";
import { canShake, canSpeak, canStayAwake } from "./shop-aids.js";
import { STAGE, preparations, title } from "./shop-words.js";

function directionTest({ gearing, tested }) {
  if (!gearing) return "";
  const other = gearing.plate === "with" ? "against" : "with";
  return html`<section class="shop-test" aria-labelledby="shop-test-title"><h2 id="shop-test-title">Direction test</h2>
    ${raw(drawTrain(gearing))}
    <p>Turn the crank slowly in the direction of indexing and watch the plate. It must turn <strong>${plateWay(gearing)}</strong>.</p>
    <div class="shop-row"><button id="test-right" data-do="tested" data-way="right" aria-pressed="${tested === "right"}">It turns ${plateWay(gearing)}</button>
      <button id="test-wrong" data-do="tested" data-way="wrong" aria-pressed="${tested === "wrong"}">It turns ${plateWay({ plate: other })}</button></div>
    ${tested === "wrong" ? html`<p class="note bad" role="alert">Your head is built the other way. Add one idler, or take one out, and test again before anything is cut.</p>` : ""}
  </section>`;
}

const aid = (name, words, shop, allowed) => allowed ? html`<button id="aid-${name}" data-do="aid" data-aid="${name}"
  aria-pressed="${Boolean(shop?.[name])}">${words}</button>` : "";

const aids = ({ shop }) => html`<section class="shop-aids" aria-labelledby="shop-aids-title"><h2 id="shop-aids-title">The tablet</h2>
  ${canStayAwake() ? html`<p>The screen stays on while a job is open.</p>`
    : html`<p>This address does not let the page keep the screen on: set the tablet's screen time long enough. The count is kept either way.</p>`}
  ${shop?.kept === false ? html`<p class="note warn">This browser keeps nothing, so a reload loses the count. Write it down as you go.</p>` : ""}
  <div class="shop-row">${aid("shake", "Shake at each step", shop, canShake())}${aid("speak", "Speak each move", shop, canSpeak())}</div></section>`;

const approximate = ({ exact, worst }) => exact ? ""
  : html`<p class="note warn">Not exact: a place is up to ${seconds(worst)} off. The tool meets the first mark again only as nearly as that.</p>`;

export function readyScreen(job, state) {
  const held = job.gearing && job.tested !== "right" && html`disabled aria-describedby="shop-held"`;
  const { move, circles } = job;
  return html`${bar(job, title(job))}<div class="shop-move"><p class="shop-summary">${job.summary}</p>${approximate(job)}
      <ol class="shop-list">${items(preparations(job))}</ol>${directionTest(job)}${aids(state)}</div>
    <div class="shop-drawings">${move ? html`<div class="shop-plate">${raw(drawPlate({
      circles, circle: move.circle, from: 0, spaces: move.holes || 0, turns: move.turns || 0, direct: !move.plate, explain: true }))}</div>` : ""}</div>
    <footer class="shop-buttons">${held && html`<p class="shop-held" id="shop-held">First the direction test.</p>`}
      <button id="shop-cut" data-do="begin" ${held}>Cut without a trial pass</button>
      <button id="shop-trial" class="done" data-do="trial" ${held}>Begin the trial pass</button></footer>`;
}

export const closingScreen = (job) => html`${bar(job, title(job))}<div class="shop-move"><p class="shop-start">Make the same move once more.</p>
      <p>The tool must stand on the first mark again and the scale read what it read at the start${job.exact ? "" : ", within the error of this setup"}. Count the marks: there must be ${job.count}.</p>
      <p>One too many or too few, or the last space is odd? The arms were set wrong or not swung on once. Step back, or mark again.</p></div>
    <footer class="shop-buttons"><button id="shop-back" data-do="back">Step back</button>
      <button id="shop-trial" data-do="trial">Mark again</button>
      <button id="shop-done" class="done" data-do="done">It closes: begin to cut</button></footer>`;

export const doneScreen = (job) => html`${bar(job, title(job), STAGE.done)}<div class="shop-move"><p class="shop-start">The last cut is made.</p>
      <p>Stop the cutter before you measure or clear chips. Measure before the work leaves the head.</p></div>
    <footer class="shop-buttons"><button id="shop-back" data-do="back">Step back</button>
      <button id="shop-finish" data-do="finish">Remove this job</button>
      <button id="shop-leave-now" class="done" data-do="away">Keep it and leave</button></footer>`;
