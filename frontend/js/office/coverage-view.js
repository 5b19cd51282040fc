// What a head can do: which numbers it divides and how, what it leaves out, and what would be worth owning next.

import { html, mount } from "../html.js";
import { ask } from "../api.js";
import { store } from "../store.js";
import { faults, summary } from "../errors.js";
import { field } from "../field.js";
import { fillForm, keepForm } from "../kept-form.js";
import { toHash } from "../link.js";
import { clock, sentHead, wholeHead, wholeOr } from "../words.js";
import { deskTop } from "./desk-top.js";
import { gapsView, nextView } from "./coverage-next.js";
import { blocks, legend, mapView } from "./coverage-map.js";
import { listenToMap, moveTo } from "./map-keys.js";
import { remember } from "./words-in-link.js";

const INTRO = "Every number in a range on this head at once: what comes out exact and by which method, what does not, and the one circle or gear that would help most.";
const USUAL = { from: "2", to: "400", tolerance: "" };
const FIELDS = { from: "coverage-from", to: "coverage-to", tolerance: "coverage-tolerance" };

let actions = null;
let turn = 0;

const formOf = (state) => ({ ...USUAL, ...state.coverageForm });
const keyOf = (state) => JSON.stringify(wholeHead(state.head));
const fieldOf = (pointer) => FIELDS[/^#\/(\w+)/.exec(pointer)?.[1]] || (pointer.startsWith("#/head") ? "change-head" : "coverage-to");
const isTooMuch = ({ status, problem }) => status === 422 && /too-much-work$/.test(problem?.type || "");

function bodyOf(state) {
  const { from, to, tolerance } = formOf(state);
  return { from: wholeOr(from), to: wholeOr(to), head: sentHead(state.head), ...(tolerance.trim() ? { tolerance: { angle: tolerance.trim() } } : {}) };
}

// What to own next costs most of the work; where that is too much, the map comes without it.
async function asked(body) {
  const reply = await ask("/v1/coverage", body);
  return isTooMuch(reply) ? ask("/v1/coverage", { ...body, additions: false }) : reply;
}

async function look(loud) {
  const state = store.get();
  const mine = ++turn;
  store.set({ coverageAsked: false, coverage: { busy: true, key: keyOf(state) } });
  const reply = await asked(bodyOf(state));
  if (mine !== turn) return;
  if (!reply.ok) {
    store.set({ coverage: { problem: reply.problem, key: keyOf(state) } });
    return loud && setTimeout(() => actions.focusOn("problem"));
  }
  const form = formOf(state);
  store.set({ coverage: { answer: reply.data, saved: reply.saved, at: reply.data.from, form, head: state.head, key: keyOf(state) } });
  actions.say(headline(reply.data));
  if (loud) setTimeout(() => actions.focusOn("coverage-found"));
}

const headline = ({ from, to, exact, within }) => `${from} to ${to}: ${exact} of ${to - from + 1} exact${within ? `, ${within} within what you allow` : ""}.`;

// Another part of the map, with the focus on a number of it or on the button that was pressed.
function turnTo(number, focus = true) {
  store.set({ coverage: { ...store.get().coverage, at: number } });
  if (focus) setTimeout(() => moveTo(number));
}

function showBlock({ block }) {
  turnTo(blocks(store.get().coverage.answer).find((each) => each.block === Number(block)).from, false);
}

function makeCircle({ holes }) {
  store.set({ plateForm: { ...store.get().plateForm, what: "holes", number: holes }, plateAsked: true });
  actions.go({ view: "plate" });
}

function form(values, found) {
  return html`${summary(found)}<form id="coverage-form" class="sheet unprinted" novalidate><div class="asked-range">
    ${field({ id: "coverage-from", name: "from", label: "From", mode: "numeric", found })}${field({ id: "coverage-to", name: "to", label: "To (10,000 at most)", mode: "numeric", found })}
    ${field({ id: "coverage-tolerance", name: "tolerance", label: "Largest error allowed", found, signs: true, hint: "Such as 0°01′. Empty: exact only." })}</div>
    <div class="row"><button class="main" id="coverage-go">Show what it can do</button></div></form>`;
}

function result({ answer, busy, saved, at, form: asked_, head }) {
  if (busy) return html`<p class="wait">The numbers are being gone through…</p>`;
  if (!answer) return "";
  const question = { kind: "divisions", tolerance: asked_.tolerance.trim() };
  const link = (divisions) => `./#${toHash({ ...question, divisions }, wholeHead(head))}`;
  const { tolerance } = asked_;
  return html`<section class="sheet" aria-labelledby="coverage-found"><h2 id="coverage-found" tabindex="-1">${headline(answer)}</h2>
      ${saved && html`<p class="note warn">No connection: this was saved ${clock(saved)}.</p>`}
      ${tolerance && html`<p>Largest error allowed: ${tolerance}</p>`}${legend(answer, tolerance)}
      <p class="row unprinted"><button type="button" id="coverage-print" data-do="printPage">Print the map</button></p></section>
    <div class="map-columns"><div class="column">${mapView(answer, at, link)}</div><div class="column">${nextView(answer)}${gapsView(answer, tolerance)}</div></div>`;
}

let listening = false;

function listen(root) {
  if (listening) return;
  listening = true;
  listenToMap(root, () => store.get().coverage.answer, turnTo);
}

export function render(root, state, given) {
  actions = Object.assign(given, { showBlock, makeCircle, printPage: () => window.print() });
  mount(root, html`<div id="coverage-top"></div><div class="office"><div id="coverage-in"></div><div id="coverage-result" class="office"></div></div>`);
  keepForm(root, "coverage-form", "coverageForm", { changed: () => {}, asked: () => look(true) });
  listen(root);
  const coverage = state.coverage || {};
  const back = state.online && coverage.problem?.status === 0;
  if (state.coverageAsked || back || coverage.key !== keyOf(state)) queueMicrotask(() => look(false));
  if (coverage.answer) remember("coverage", coverage.form, coverage.head);
  const found = faults(coverage.problem, fieldOf);
  mount(root.querySelector("#coverage-top"), deskTop(state, "What a head can do", INTRO));
  if (mount(root.querySelector("#coverage-in"), form(formOf(state), found))) fillForm(root.querySelector("#coverage-form"), formOf(state));
  mount(root.querySelector("#coverage-result"), result(coverage));
}
