// The fields of a head. Pure.

import { html } from "../html.js";
import { field } from "../field.js";
import { beside, marked } from "../errors.js";
import { counted } from "./head-form.js";

function plateRow(at, found) {
  const id = `head-plate-${at}`;
  return html`<div class="plate-row field"><label for="${id}">Plate ${at + 1}: holes of its circles</label>${beside(found, id)}
    <input id="${id}" name="plate-${at}" type="text" placeholder=" " autocomplete="off" ${marked(found, id)}>
    <span class="row"><label class="pick always"><input type="radio" name="mounted" value="${at + 1}" id="mounted-${at}"><span>On now<span class="unseen">: plate ${at + 1}</span></span></label>
    <button type="button" id="drop-plate-${at}" data-do="dropPlate" data-at="${at}">Remove<span class="unseen"> plate ${at + 1}</span></button></span></div>`;
}

export function countResult(draft) {
  const found = counted(draft.crank || "", draft.rounds || "1");
  if (!found) return html``;
  return html`${found.exact ? `That is ${found.ratio}:1.` : `That is not whole: nearest is ${found.ratio}:1. Count again over more spindle turns.`}`;
}

function countIt() {
  return html`<details id="count-it"><summary>Ratio unknown: count it</summary><ol class="steps">
    <li>Put the worm in mesh and chalk a line across the spindle nose and its housing.</li>
    <li>Seat the crank pin in a hole and note it. Turn the crank one way only and count each full turn.</li>
    <li>Stop when the chalk lines meet again and the pin is back in its hole. More rounds of the spindle make the count surer.</li></ol>
    <div class="fields">${field({ id: "count-crank", name: "crank", label: "Crank turns counted", mode: "numeric" })}
    ${field({ id: "count-rounds", name: "rounds", label: "Spindle turns", mode: "numeric", hint: "One when left empty." })}</div>
    <p class="row"><button type="button" data-do="useCount" id="use-count">Put it in as the ratio</button></p>
    <p id="count-result" role="status"></p></details>`;
}

function pick(name, value, title, id) {
  return html`<label class="pick always"><input type="radio" name="${name}" value="${value}" id="${id}"><span>${title}</span></label>`;
}

function dial(draft, found) {
  return html`<fieldset class="choice"><legend>Dial on the handwheel</legend>${pick("dial", "none", "None", "dial-none")}
    ${pick("dial", "degrees", "In degrees", "dial-degrees")}${pick("dial", "divisions", "Plain marks", "dial-divisions")}</fieldset>
    ${draft.dial === "degrees" && html`<div class="fields">${field({ id: "head-dial-graduation", name: "graduation", label: "One mark of the dial", found, signs: true, hint: "Such as 0°01′." })}
      ${field({ id: "head-dial-vernier", name: "vernier", label: "One mark of the vernier", found, signs: true, hint: "Empty when there is none." })}</div>`}
    ${draft.dial === "divisions" && field({ id: "head-dial-divisions", name: "marks", label: "Marks round the dial", mode: "numeric", found })}`;
}

function seldom(found) {
  const spot = (train, way, label) => field({ id: `head-idlers-${train}-${way}`, name: `${train}-${way}`, label, mode: "numeric", found });
  return html`<details id="seldom" ${found.some(({ field: id }) => /idlers|screw|stop/.test(id)) ? html`open` : ""}><summary>Stop pin, idlers, table screw</summary>
    ${field({ id: "head-stop_circles", name: "stops", label: "Circles that the stop pin reaches", found, hint: "For compound indexing. Empty: all of them." })}
    <h3>Idlers on this head</h3><p class="hint">How many make the plate turn which way. Heads differ: turn the crank and watch.</p>
    <div class="fields">${spot("simple", "with", "Two gears, with the crank")}${spot("simple", "against", "Two gears, against the crank")}
    ${spot("compound", "with", "Four gears, with the crank")}${spot("compound", "against", "Four gears, against the crank")}</div>
    <h3>Table screw, for helices</h3><div class="fields">${field({ id: "head-screw-lead", name: "lead", label: "Lead of the screw", mode: "decimal", found, hint: "Empty when you cut none." })}
    <div class="field"><label for="head-screw-unit">Unit</label><select id="head-screw-unit" name="unit"><option value="mm">mm</option><option value="in">inch</option></select></div></div></details>`;
}

export function headFields(draft, found) {
  return html`<h2>What stands on the machine</h2>
    ${field({ id: "head-name", name: "name", label: "Your name for it", hint: "With a name it is kept." })}
    ${field({ id: "head-ratio", name: "ratio", label: "Crank turns for one turn of the spindle", mode: "numeric", found })}${countIt()}
    <fieldset class="plates"><legend>Index plates</legend><p class="hint">One row for each face with holes. Numbers with spaces between.</p>
    ${draft.plates.map((_, at) => plateRow(at, found))}<p class="row"><button type="button" id="add-plate" data-do="addPlate">Add a plate</button></p></fieldset>
    ${field({ id: "head-direct_circles", name: "direct", label: "Direct plate on the spindle", found, hint: "Holes or notches of each circle. Empty: none." })}
    <label class="pick always"><input type="checkbox" name="worm" id="head-worm_disengages"><span>The worm can be taken out of mesh</span></label>
    ${field({ id: "head-change_gears", name: "gears", label: "Change gears", found, hint: "Teeth of every gear you own; one that you own twice, twice. Empty: none." })}
    ${dial(draft, found)}${seldom(found)}`;
}
