// The choice of a sheet: kinds, level, how many, and the number that it is drawn from. Pure.

import { html } from "../html.js";
import { beside } from "../errors.js";
import { field } from "../field.js";
import { KINDS } from "./sheet-link.js";

const LEVELS = [["1", "1, easy"], ["2", "2"], ["3", "3, hard"]];

const kind = ([value, title], chosen) => html`<label class="pick"><input type="checkbox" name="kinds" id="kind-${value}" value="${value}" ${
  chosen.includes(value) ? html`checked` : ""}><span>${title}</span></label>`;

const level = ([value, title], now) => html`<label class="pick"><input type="radio" name="level" id="level-${value}" value="${value}" ${
  value === now ? html`checked` : ""}><span>${title}</span></label>`;

export const sheetForm = ({ kinds, level: now }, found, busy) => html`<form id="sheet-form" class="sheet" novalidate>
  <fieldset class="choice" id="class-kinds" tabindex="-1"><legend>Kinds of exercise</legend><p class="hint class-hint">None ticked: all that the head can do.</p>${
    beside(found, "class-kinds")}${Object.entries(KINDS).map((each) => kind(each, kinds))}</fieldset>
  <fieldset class="choice" id="class-level" tabindex="-1"><legend>Level</legend>${beside(found, "class-level")}${LEVELS.map((each) => level(each, now))}</fieldset>
  <div class="fields">${field({ id: "class-count", name: "count", label: "How many exercises", mode: "numeric", found })}
    ${field({ id: "class-seed", name: "seed", label: "Number of the sheet", mode: "numeric", found, hint: "Any whole number. The same number gives the same sheet, on every tablet." })}</div>
  <div class="row"><button class="main" id="make-sheet">${busy ? "Making it…" : "Make the sheet"}</button>
    <button type="button" id="other-sheet" data-do="otherSheet">Another sheet</button></div></form>`;
