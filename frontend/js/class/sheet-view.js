// The exercises: a sheet is chosen, worked here and marked, or printed with its key.

import { html, items, mount } from "../html.js";
import { faults, summary } from "../errors.js";
import { headLine } from "../words.js";
import { fieldOf, isAnswered } from "./claims.js";
import { exercisesView, fillExercises } from "./exercises.js";
import { marksView } from "./marks.js";
import { classOf, edit, practiceActions, type, workOf } from "./practice.js";
import { sheetForm } from "./sheet-form.js";
import { toHash } from "./sheet-link.js";
import { sheetPaper } from "./sheet-paper.js";
import { ways } from "./ways.js";

const FRAME = html`<div class="unprinted bench"><div id="class-top"></div><div id="sheet-choice"></div><div id="sheet-head"></div>
  <div id="exercises" class="column"></div><div id="sheet-foot"></div></div><div id="sheet-paper" class="printed"></div>`;

const same = (one, other) => JSON.stringify(one || {}) === JSON.stringify(other || {});

function fillForm(form, values, fresh) {
  for (const box of form.querySelectorAll("[type=text]")) {
    const value = values[box.name] ?? "";
    if (box.value !== value && (fresh || document.activeElement !== box)) box.value = value;
  }
}

function chosen(form) {
  const values = new FormData(form);
  return { seed: values.get("seed"), count: values.get("count"), level: values.get("level") || "1", kinds: values.getAll("kinds") };
}

function listen(root) {
  root.addEventListener("input", ({ target }) => {
    if (target.form?.id === "sheet-form") return edit(chosen(target.form));
    const [number, field] = (target.name || "").split(":");
    if (field) type(number, field, target.type === "checkbox" ? target.checked : target.value);
  });
  root.addEventListener("submit", (event) => {
    event.preventDefault();
    practiceActions.makeSheet();
  });
}

function head(practice, state, work, changed) {
  const done = practice.exercises.filter((each) => isAnswered(each, work.typed[each.number])).length;
  return html`<section class="sheet" aria-labelledby="sheet-title"><h2 id="sheet-title" tabindex="-1">Sheet ${practice.seed}, level ${practice.level}: ${practice.exercises.length} exercises</h2>
    ${practice.left_out.length ? html`<details id="left-out"><summary>What this head leaves out</summary><ul>${items(practice.left_out.map(({ reason }) => reason))}</ul></details>` : ""}
    <div class="row"><button id="print-both" data-do="printSheet" data-key="with">Print sheet and key</button>
      <button id="print-sheet" data-do="printSheet" data-key="without">Print the sheet alone</button></div>
    <div class="field"><label for="sheet-link">This sheet as a link, for the class</label><input id="sheet-link" type="text" readonly value="${location.href}"></div>
    <p>${done} of ${practice.exercises.length} answered. What you type stays on this tablet until the sheet is cleared.</p></section>${marksView(state, changed)}`;
}

const foot = (state) => html`<div class="row"><button class="main" id="mark-sheet" data-do="markSheet">Mark my answers</button>
  <button id="clear-sheet" data-do="clearSheet">Clear my answers</button></div>${state.markProblem?.status === 0
    ? html`<p class="note warn" role="alert">No connection: the marking waits. Your answers are kept, and are marked when it is back.</p>` : ""}`;

const waiting = ({ sheetBusy, sheetProblem }) => sheetBusy ? html`<p class="wait">The sheet is being made…</p>`
  : sheetProblem ? "" : html`<p class="wait">Choose what to practise and make the sheet: it appears here, to be worked or printed.</p>`;

// Folded away while a sheet is worked; its values are put in after it was made.
function drawForm(root, state, found) {
  const { form } = classOf(state);
  const place = root.querySelector("#sheet-choice");
  const boxes = sheetForm(form, found, state.sheetBusy);
  const wrong = found.some(({ field }) => field.startsWith("class-"));
  const fresh = mount(place, html`${summary(found)}${state.practice
    ? html`<details id="choose" ${wrong && html`open`}><summary>Choose another sheet</summary>${boxes}</details>` : boxes}`);
  fillForm(place, form, fresh);
}

function drawSheet(root, state, found) {
  const practice = state.practice;
  const work = workOf(state);
  const stands = (number) => same(work.typed[number], work.marked?.[number]);
  const markOf = (number) => state.marks && stands(number) ? state.marks.marks.find((each) => each.number === number) : null;
  const changed = Boolean(state.marks) && practice.exercises.some(({ number }) => !stands(number));
  mount(root.querySelector("#sheet-head"), head(practice, state, work, changed));
  const place = root.querySelector("#exercises");
  const fresh = mount(place, exercisesView(practice.exercises, markOf, found));
  fillExercises(place, work.typed, fresh);
  mount(root.querySelector("#sheet-foot"), foot(state));
  mount(root.querySelector("#sheet-paper"), sheetPaper(practice, state, location.href));
}

export function render(root, state) {
  if (mount(root, FRAME)) listen(root);
  const { practice, sheetProblem, markProblem } = state;
  const found = faults(sheetProblem || (markProblem?.status ? markProblem : null), (pointer) => fieldOf(pointer, practice?.exercises || [], markProblem?.numbers));
  mount(root.querySelector("#class-top"), html`<h1 tabindex="-1">Exercises in dividing</h1>${ways("class")}
    <p id="class-head" tabindex="-1">On ${state.headName || "the head"}: ${headLine(state.head)}.</p>`);
  drawForm(root, state, found);
  if (practice) {
    const hash = toHash(classOf(state).sheet, state.head);
    if (location.hash !== hash) history.replaceState(null, "", hash);
    return drawSheet(root, state, found);
  }
  mount(root.querySelector("#sheet-head"), waiting(state));
  for (const id of ["exercises", "sheet-foot", "sheet-paper"]) mount(root.querySelector(`#${id}`), "");
}
