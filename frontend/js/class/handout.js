// A handout for a class: how dividing is worked out, on the head that is set in the page. The service works every example.

import { html, mount, raw } from "../html.js";
import { solve } from "../api.js";
import { store } from "../store.js";
import { drawPlate } from "../draw-plate.js";
import { drawTrain } from "../draw-train.js";
import { EXERCISES, LESSONS, blanks, opening } from "./handout-words.js";
import { moveText } from "../figures.js";
import { count, headLine, wholeHead } from "../words.js";
import { ways } from "./ways.js";

let asking = "";

// The first of the lesson's questions that its method answers on this head, or null.
async function example({ method, works }, head) {
  for (const work of works) {
    const reply = await solve({ work, head, methods: [method], limit: 1 });
    const setup = reply.ok && reply.data.setups[0];
    if (setup && setup.method === method) return { work, setup, version: reply.data.service_version };
  }
  return null;
}

async function gather(head, key) {
  const examples = await Promise.all(LESSONS.map((lesson) => example(lesson, head)));
  const answers = await Promise.all(EXERCISES.map(({ work }) => solve({ work, head, limit: 1 })));
  if (asking !== key) return;
  const reached = answers.some((reply) => reply.ok);
  store.set({ handout: { key, examples, reached, answers: answers.map((reply) => (reply.ok ? reply.data.setups[0] : null)) } });
}

function drawings({ move, gearing }, head) {
  const whole = wholeHead(head);
  const plate = move?.circle && move.holes !== null ? raw(drawPlate({ circles: move.plate ? whole.plates[move.plate - 1] : whole.direct_circles,
    circle: move.circle, from: 0, spaces: move.holes, turns: move.turns || 0, direct: !move.plate, explain: true })) : "";
  return html`<div class="handout-drawings">${plate}${gearing ? raw(drawTrain(gearing)) : ""}</div>`;
}

const asked = ({ divisions, angle }) => divisions ? count(divisions, "division") : angle;

function lesson({ title, words }, { work, setup }, head) {
  return html`<section class="handout-lesson"><h2>${title}</h2><div class="handout-pair"><div>${words.map((line) => html`<p>${line}</p>`)}
    <h3>Example: ${asked(work)}</h3><ol class="handout-steps">${setup.working.map((line) => html`<li>${line}</li>`)}</ol>
    <p class="handout-move"><strong>${moveText(setup)}</strong></p></div>${drawings(setup, head)}</div></section>`;
}

function beyond(examples) {
  const list = LESSONS.filter((_, at) => !examples[at]);
  return list.length ? html`<section class="handout-lesson"><h2>What this head leaves out</h2><ul class="handout-steps">${list.map(({ title, without }) => html`<li>
    <strong>${title}.</strong> ${without}</li>`)}</ul></section>` : "";
}

const exercises = (head) => html`<section class="handout-lesson"><h2>Now you</h2><ol class="handout-exercises">${EXERCISES.map(({ words }) => html`<li><p>${words}</p>
  <p class="handout-line">${blanks(wholeHead(head))}</p></li>`)}</ol></section>`;

const answersOf = ({ answers }) => html`<section class="handout-answers"><h2>Answers, for the teacher</h2><ol>${answers.map((setup) => html`<li>${
  setup ? setup.summary : "The service could not be asked."}</li>`)}</ol></section>`;

function body(state) {
  const { handout, head } = state;
  if (!handout) return html`<p class="wait">The examples are being worked out…</p>`;
  if (!handout.reached) return html`<p class="note warn">No connection: the examples come from the service. The page tries again when it is back.</p>`;
  return html`${LESSONS.map((each, at) => handout.examples[at] ? lesson(each, handout.examples[at], head) : "")}${beyond(handout.examples)}${exercises(head)}${answersOf(handout)}`;
}

export function render(root, state) {
  const key = JSON.stringify([wholeHead(state.head), state.online]);
  if (state.handout?.key !== key && asking !== key) {
    asking = key;
    gather(wholeHead(state.head), key);
  }
  mount(root, html`<article class="handout"><h1 tabindex="-1">How dividing is worked out</h1>${ways("handout")}
    <p class="row unprinted"><button class="main" id="handout-print">Print the handout</button></p><p>On ${state.headName || "this head"}: ${headLine(state.head)}.</p>
    ${opening(wholeHead(state.head)).map((line) => html`<p>${line}</p>`)}${body(state)}</article>`);
  root.querySelector("#handout-print").onclick = () => window.print();
}
