// A setup worked by hand: what it really makes, what slipped, and the right one beside it.

import { html, mount } from "../html.js";
import { ask as askService, solve } from "../api.js";
import { store } from "../store.js";
import { faults, summary } from "../errors.js";
import { mixed, wideError } from "./fractions.js";
import { figures } from "../figures.js";
import { fillForm, keepForm } from "../kept-form.js";
import { checkForm, fieldOf, fromClaim, named, toRequest } from "./check-form.js";
import { toHash } from "../link.js";
import { toBody } from "../question.js";
import { METHODS, count, headLine, seconds, sentHead, wholeHead } from "../words.js";

const VERDICT = {
  exact: ["good", "Right, and exact"], within_tolerance: ["good", "Not exact, but within what you allow"],
  off: ["bad", "It does not make that"], cannot_be_set: ["bad", "It cannot be set on this head"],
};

const APART = "The page would set up this work in another way. This one is good as it stands: set the head by it.";

let actions = null;
let asking = 0;

const checkOf = (state) => ({ kind: "divisions", number: state.question.divisions || "", ...state.check });

async function ask() {
  const state = store.get();
  const mine = ++asking;
  store.set({ checked: { ...state.checked, busy: true } });
  const reply = await askService("/v1/verify", toRequest(checkOf(state), wholeHead(state.head)));
  if (mine !== asking) return;
  store.set({ checked: reply.ok ? { answer: reply.data } : { problem: reply.problem } });
  actions.say(reply.ok ? VERDICT[reply.data.verdict][1] : "");
  setTimeout(() => actions.focusOn(reply.ok ? "check-verdict" : "problem"));
}

// What was found belongs to the words as they were; a change of them takes it away.
function changed() {
  asking += 1;
  if (store.get().checked) store.set({ checked: null });
}

// Over to the first document, which finds the same setup among its own; a right one that it does not tell stays here.
async function use() {
  const { checked, head, ...state } = store.get();
  const { kind, number, tolerance } = checkOf(state);
  const question = { kind, [kind]: number, tolerance };
  const reply = await solve(toBody(question, sentHead(head)));
  const same = reply.ok ? reply.data.setups.findIndex(({ summary }) => summary === checked.answer.right.summary) : 0;
  if (same >= 0) return actions.leave({}, { href: `./#${toHash(question, head, same)}`, textContent: "Set up" });
  store.set({ checked: { ...checked, apart: true } });
  actions.say(APART);
}

function correct(at) {
  const { checked, check } = store.get();
  store.set({ check: { ...check, ...fromClaim(checked.answer.likely_slips[at].corrected) }, checked: null });
  return ask();
}

function clicked({ target }) {
  const pressed = target.closest("[data-check]");
  if (pressed?.dataset.check === "use") use();
  if (pressed?.dataset.check === "correct") correct(Number(pressed.dataset.at));
}

function makes({ makes: made, error }) {
  if (!made) return "";
  const whole = made.divisions && !made.divisions.includes("/");
  const divisions = made.divisions && (whole ? count(made.divisions, "division") : `${mixed(made.divisions)} divisions, no whole number`);
  return html`<dl class="facts-list"><div><dt>It makes</dt><dd>${divisions || "no even division"}</dd></div>
    ${made.step ? html`<div><dt>Each move turns the work</dt><dd>${made.step.dms}</dd></div>` : ""}
    ${error ? html`<div><dt>Worst place off by</dt><dd>${wideError(error.worst_seconds, seconds)}</dd></div>
      <div><dt>Left over at the last space</dt><dd>${wideError(error.closing_seconds, seconds)}</dd></div>` : ""}</dl>`;
}

function claimText({ method, turns, holes, circle, second, gearing, reading }) {
  const move = [turns ? count(turns, "turn") : "", holes ? `${count(holes, "space")} on ${circle}` : "", reading?.dms ?? reading ?? ""].filter(Boolean).join(", ");
  const then = second ? `; then ${count(Math.abs(second.holes), "space")} ${second.holes < 0 ? "back" : "on"} on ${second.circle}` : "";
  const gears = gearing ? `; spindle ${gearing.spindle}, worm ${gearing.worm}${gearing.stud ? `, stud ${gearing.stud.join(" and ")}` : ""}, ${count(gearing.idlers, "idler")}` : "";
  return `${METHODS[method] || method}: ${move || "no move"}${then}${gears}`;
}

function slips(list) {
  if (!list?.length) return "";
  return html`<section class="sheet"><h2>What probably slipped</h2><ol>${list.map(({ explanation, corrected }, at) => html`<li><p>${explanation}</p>
    ${corrected ? html`<p><strong>${claimText(corrected)}</strong></p><button type="button" data-check="correct" data-at="${at}">Check that instead</button>` : ""}</li>`)}</ol></section>`;
}

const right = (setup, apart) => setup ? html`<section class="sheet"><h2>The right setup: ${METHODS[setup.method] || setup.method}</h2>${figures(setup)}<p>${setup.summary}</p>
  ${apart ? html`<p class="note">${APART}</p>` : html`<button type="button" class="main" id="check-use" data-check="use">Use this setup</button>`}</section>` : "";

function result({ answer, apart }) {
  if (!answer) return "";
  const [mood, words] = VERDICT[answer.verdict] || ["warn", answer.verdict];
  return html`<section class="sheet"><h2 id="check-verdict" tabindex="-1" class="mark ${mood}"><strong>${words}</strong></h2>
    ${makes(answer)}${answer.why?.length ? html`<ul>${answer.why.map((line) => html`<li>${line}</li>`)}</ul>` : ""}</section>
    ${slips(answer.likely_slips)}${right(answer.right, apart)}`;
}

export function render(root, state, given) {
  actions = given;
  if (mount(root, html`<h1 tabindex="-1">Check a setup worked by hand</h1><p id="check-head"></p><div class="columns"><div id="check-ask-here"></div><div id="check-result" class="column"></div></div>`)) {
    root.querySelector("#check-result").addEventListener("click", clicked);
  }
  keepForm(root, "check-form", "check", { changed, asked: ask });
  const check = checkOf(state);
  const found = faults(state.checked?.problem, fieldOf);
  root.querySelector("#check-head").textContent = `On ${state.headName || "the head"}: ${headLine(state.head)}.`;
  const form = root.querySelector("#check-ask-here");
  mount(form, html`${summary(found.map(named))}${checkForm(check, found, state.checked?.busy)}`);
  fillForm(form, check);
  mount(root.querySelector("#check-result"), result(state.checked || {}));
}
