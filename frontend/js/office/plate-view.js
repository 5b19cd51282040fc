// A plate made in the shop, on the head that will use it: asked, shown, saved, printed.

import { html, mount } from "../html.js";
import { ask, connection } from "../api.js";
import { store } from "../store.js";
import { faults, summary } from "../errors.js";
import { saveFile } from "../file.js";
import { fillForm, keepForm } from "../kept-form.js";
import { clock, numberOr, sentHead, wholeHead } from "../words.js";
import { deskTop } from "./desk-top.js";
import { USUAL, bodyOf, fieldOf, plateForm } from "./plate-form.js";
import { plateView } from "./plate-result.js";
import { remember } from "./words-in-link.js";

const INTRO = "When a circle is not to be had, drill it on this head: each hole at its place, how far off the plate is, and how little of that is left in the work.";
const ADDRESS = "/v1/plate";

let actions = null;
let turn = 0;

const formOf = (state) => ({ ...USUAL, ...state.plateForm });
const keyOf = (state) => JSON.stringify(wholeHead(state.head));

// The first hole's angle in degrees, as the service reads it; it is wanted for the drawing only.
async function startOf({ start }) {
  if (!start.trim()) return 0;
  const reply = await ask("/v1/angle", { angle: start.trim() });
  return reply.ok ? reply.data.angle.degrees : 0;
}

async function work(loud) {
  const state = store.get();
  const form = formOf(state);
  const mine = ++turn;
  store.set({ plateAsked: false, plate: { busy: true, key: keyOf(state) } });
  const body = bodyOf(form, sentHead(state.head));
  const reply = await ask(ADDRESS, body);
  const start = reply.ok ? await startOf(form) : 0;
  if (mine !== turn) return;
  if (!reply.ok) {
    store.set({ plate: { problem: reply.problem, key: keyOf(state) } });
    return loud && setTimeout(() => actions.focusOn("problem"));
  }
  const placing = { start, sense: form.sense, zero: form.zero };
  store.set({ plate: { answer: reply.data, saved: reply.saved, body, typed: form, head: state.head, form: { ...form, circle_diameter: numberOr(form.circle_diameter), hole_diameter: numberOr(form.hole_diameter) }, placing, key: keyOf(state) } });
  actions.say(`A circle of ${reply.data.holes} holes. ${reply.data.setup.summary}.`);
  if (loud) setTimeout(() => actions.focusOn("plate-found"));
}

// The file is the service's own: it has more columns than the screen.
async function plateCsv() {
  const { answer, body } = store.get().plate;
  try {
    const reply = await fetch(ADDRESS, { method: "POST", body: JSON.stringify(body), headers: { "Content-Type": "application/json", Accept: "text/csv" } });
    saveFile(`plate-${answer.holes}.csv`, "text/csv;charset=utf-8", await reply.blob());
    connection.report(true);
    actions.say("The schedule is saved as a file.");
  } catch {
    connection.report(false);
    actions.say("No connection: the file comes from the service. Try again when it is back.");
  }
}

// What stands there belongs to the words as they were; a change of them takes it away.
function changed() {
  turn += 1;
  if (store.get().plate?.answer || store.get().plate?.problem) store.set({ plate: { key: keyOf(store.get()) } });
}

function result({ answer, busy, saved, ...asked }) {
  if (busy) return html`<p class="wait">The plate is being worked out…</p>`;
  if (!answer) return html`<p class="wait">Say what the plate is for: the schedule of its holes appears here.</p>`;
  return html`${saved && html`<p class="note warn">No connection: this was saved ${clock(saved)}.</p>`}${plateView(answer, asked)}`;
}

// Asked again by itself: from a link, on another head, and when the connection is back.
function isDue(state, { key, problem }) {
  if (!formOf(state).number) return false;
  return state.plateAsked || (key !== undefined && key !== keyOf(state)) || (state.online && problem?.status === 0);
}

export function render(root, state, given) {
  actions = Object.assign(given, { plateCsv, printPage: () => window.print() });
  mount(root, html`<div id="plate-top"></div><div class="office"><div id="plate-in"></div><div id="plate-result" class="office"></div></div>`);
  keepForm(root, "plate-form", "plateForm", { changed, asked: () => work(true) });
  const plate = state.plate || {};
  if (isDue(state, plate)) queueMicrotask(() => work(false));
  if (plate.answer) remember("plate", plate.typed, plate.head, USUAL);
  const form = formOf(state);
  const found = faults(plate.problem, fieldOf);
  mount(root.querySelector("#plate-top"), deskTop(state, "Make a plate", INTRO));
  mount(root.querySelector("#plate-in"), html`${summary(found)}${plateForm(form, found)}`);
  fillForm(root.querySelector("#plate-form"), form);
  mount(root.querySelector("#plate-result"), result(plate));
}
