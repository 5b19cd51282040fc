// The job card: everything that the machine needs, black on white, on A4 or Letter.

import { html, items, mount, raw } from "./html.js";
import { cardSchedule } from "./card-schedule.js";
import { drawPlate } from "./draw-plate.js";
import { drawTrain } from "./draw-train.js";
import { figures } from "./figures.js";
import { leadView, partDrawing } from "./part-view.js";
import { gearList } from "./gears.js";
import { toHash } from "./link.js";
import { asWords } from "./question.js";
import { store } from "./store.js";
import { METHODS, headLine, plateWay, rimWords, seconds, wholeHead } from "./words.js";

const FIELDS = ["Job", "Drawing", "Work piece", "Machine", "Operator", "Date"];

const blanks = html`<dl class="card-blanks">${FIELDS.map((name) => html`<div><dt>${name}</dt><dd></dd></div>`)}</dl>`;

function errors(setup, question) {
  if (setup.exact) return html`<p><strong>Exact.</strong> No error from the setting itself.</p>`;
  const { worst_seconds: worst, closing_seconds: closing, single_pitch_seconds: pitch, total_pitch_seconds: total } = setup.error;
  return html`<p><strong>Not exact.</strong> Worst place off by ${seconds(worst)}${rimWords(worst, question)}; left over at the last space ${seconds(closing)};
    between neighbours ${seconds(pitch)}; in all ${seconds(total)}.</p>`;
}

function mounting({ move, second_move: second }) {
  if (!move) return "";
  return html`<p>${move.plate ? html`Plate <strong>${move.plate}</strong>, ` : "Direct plate, "}circle <strong>${move.circle}</strong>${
    move.sector_holes && move.plate ? html`, arms over <strong>${move.sector_holes} holes</strong> with the pin's own` : ""}${
    second ? html`; second move on circle <strong>${second.circle}</strong>` : ""}.</p>`;
}

function plate(setup, head) {
  const { move, positions } = setup;
  if (!move?.circle) return "";
  const whole = wholeHead(head);
  const first = move.holes === null ? positions?.[1] || {} : move;
  const circles = move.plate ? whole.plates[move.plate - 1] : whole.direct_circles;
  return html`<div class="card-drawing">${raw(drawPlate({ circles, circle: move.circle, from: 0, spaces: first.holes || 0, turns: first.turns || 0,
    direct: !move.plate, explain: true }))}</div>`;
}

const gears = ({ gearing }) => gearing ? part("Change gears", html`<div class="card-pair"><div>${gearList(gearing)}
  <p>Stop pin drawn. The plate turns <strong>${plateWay(gearing)}</strong>: try it before you cut.</p></div>
  <div class="card-drawing small">${raw(drawTrain(gearing))}</div></div>`) : "";

const part = (title, body) => html`<section><h2>${title}</h2>${body}</section>`;
const todo = (steps) => steps?.length ? part("What to do", html`<ol>${items(steps)}</ol>`) : "";
const mind = (cautions) => cautions.length ? part("Mind this", html`<ul>${items(cautions)}</ul>`) : "";

const sizes = (made) => made ? html`${part("Sizes", html`<div class="card-pair"><table class="card-sizes"><tbody>${made.sizes.map(({ name, text, note }) => html`<tr>
  <th scope="row">${name}</th><td>${text}</td><td>${note}</td></tr>`)}</tbody></table><div class="card-drawing">${partDrawing(made)}</div></div>`)}${leadView(made.lead)}` : "";

export function card(state) {
  const { answer, chosen, question, head, headName } = state;
  if (!answer) return html``;
  const setup = answer.setups[chosen];
  const query = toHash(question, head, chosen);
  return html`<article class="card"><header><div><p>Job card for dividing</p><h1>${asWords(question)}</h1>
      <p>${METHODS[setup.method]} indexing on ${headName || "the head"}: ${headLine(head)}.</p></div>
      <figure><img class="card-code" src="/qr.svg?${query}" alt="QR code that opens this setup"><figcaption>Opens this setup</figcaption></figure></header>
    ${blanks}
    <div class="card-pair"><section class="card-move"><h2>The move</h2>${figures(setup)}${mounting(setup)}
      ${errors(setup, question)}</section>${plate(setup, head)}</div>
    ${gears(setup)}
    <div class="card-pair">${todo(setup.instructions)}${mind([...(setup.cautions || []), ...(answer.cautions || [])])}</div>
    ${sizes(answer.part)}${cardSchedule(setup)}
    <footer>${setup.summary}. Worked out by version ${answer.service_version}${state.saved ? `, answer kept since ${state.saved.slice(0, 16).replace("T", " ")}` : ""}.
      The machine maker's and the shop's rules come first.</footer></article>`;
}

const paper = () => document.getElementById("paper");

// Without a connection there is no code, but still a card.
async function pictures(root) {
  await Promise.all([...root.querySelectorAll("img")].map((image) => image.decode().catch(() => image.remove())));
}

export async function printCard() {
  mount(paper(), card(store.get()));
  await pictures(paper());
  window.print();
}

// The browser's own print command prints the card too.
window.addEventListener("beforeprint", () => {
  const state = store.get();
  mount(paper(), state.view === "setup" ? card(state) : html``);
});
