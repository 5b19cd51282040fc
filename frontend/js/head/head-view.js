// The head in front of the operator: kept heads, ready-made ones to start from, and the form.

import { html, mount } from "../html.js";
import { faults, summary } from "../errors.js";
import { headLine } from "../words.js";
import { toDraft } from "./head-form.js";
import { countResult, headFields } from "./head-fields.js";

const FRAME = html`<h1 tabindex="-1">The head</h1><div class="bench"><div id="kept"></div><div id="ready-made"></div><div id="head-form"></div></div>`;

function keptHeads(state) {
  return html`<section class="sheet"><h2>Your heads</h2>
    ${state.heads.length ? html`<ul class="heads" id="kept-heads">${state.heads.map(({ name, head }, at) => html`<li><p><strong>${name}</strong> ${headLine(head)}</p>
      <span class="row"><button type="button" id="use-${at}" data-do="useKept" data-at="${at}">Use<span class="unseen"> ${name}</span></button>
      <button type="button" id="drop-${at}" data-do="dropKept" data-at="${at}">Remove<span class="unseen"> ${name}</span></button></span></li>`)}</ul>`
      : html`<p class="soft">Give a head a name below and it is kept here, in this browser.</p>`}
    ${state.dropped && html`<p class="unprinted">${state.dropped.name} is taken off the list. <button type="button" id="put-back" data-do="putBack">Put it back</button></p>`}
    <div class="row"><button type="button" id="save-heads" data-do="saveHeads">Save to a file</button>
    <label class="button" for="heads-file">Read from a file</label><input type="file" id="heads-file" class="unseen" accept=".json,application/json"></div>
    ${state.fileNote ? html`<p>${state.fileNote}</p>` : ""}</section>`;
}

function readyMade(state) {
  if (!state.ready) return "";
  return html`<details id="ready"><summary>Start from a ready-made head</summary><ul class="heads">${state.ready.map(({ id, title, head }) => html`<li>
    <button type="button" id="ready-${id}" data-do="startFrom" data-id="${id}"><strong>${title}</strong> <span>${headLine(head) === title ? "" : headLine(head)}</span></button></li>`)}</ul></details>
    ${state.filled && html`<p class="unprinted">Its fields are filled in below: change what differs. <button form="head" id="use-as-it-is">Use it as it is</button></p>`}`;
}

// #/head/plates/0/2 is about the row of plate 1, #/head/idlers/simple/with about the field of that name, #/head about a head that holds nothing.
function fieldOf(pointer) {
  if (pointer.startsWith("#/head/plates")) return `head-plate-${pointer.split("/")[3] || 0}`;
  if (pointer.startsWith("#/head/screw")) return "head-screw-lead";
  const found = /^#\/head\/((?:dial|idlers)(?:\/\w+)+|\w+)/.exec(pointer);
  return found ? `head-${found[1].replaceAll("/", "-")}` : "head-direct_circles";
}

export function render(root, state, actions) {
  if (mount(root, FRAME)) listen(root, actions);
  const draft = state.headDraft || toDraft(state.head, state.headName);
  const found = faults(state.headProblem, fieldOf);
  mount(root.querySelector("#kept"), keptHeads(state));
  mount(root.querySelector("#ready-made"), readyMade(state));
  const form = root.querySelector("#head-form");
  const fresh = mount(form, html`${summary(found)}<form id="head" class="sheet" novalidate>${headFields(draft, found)}
    <div class="row unprinted"><button class="main" id="use-head">Use this head</button></div></form>`);
  fill(form, draft, fresh);
  mount(form.querySelector("#count-result"), countResult(draft));
}

function fill(form, draft, fresh) {
  for (const box of form.querySelectorAll("[name]")) {
    const row = /^plate-(\d+)$/.exec(box.name);
    const value = (row ? draft.plates[row[1]] : draft[box.name]) ?? "";
    if (box.type === "checkbox") box.checked = Boolean(value);
    else if (box.type === "radio") box.checked = box.value === String(value);
    else if (fresh || document.activeElement !== box) box.value = value;
    if (box.tagName === "SELECT") box.parentElement.dataset.is = box.selectedOptions[0].text;
  }
}

function listen(root, actions) {
  const form = root.querySelector("#head-form");
  form.addEventListener("input", ({ target }) => {
    const value = target.type === "checkbox" ? target.checked : target.name === "mounted" ? Number(target.value) : target.value;
    const row = /^plate-(\d+)$/.exec(target.name);
    actions.edit(row ? { plates: plateTexts(form) } : { [target.name]: value });
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    actions.useHead();
  });
  root.querySelector("#kept").addEventListener("change", ({ target }) => {
    if (target.type === "file" && target.files[0]) actions.readHeads(target.files[0]);
  });
}

function plateTexts(form) {
  return [...form.querySelectorAll("[name^=plate-]")].map((box) => box.value);
}
