// A labelled field with its hint, what is wrong with it, and the signs that a tablet's keyboard hides.

import { html } from "./html.js";
import { beside, marked } from "./errors.js";

const SIGNS = [["°", "degrees"], ["′", "minutes"], ["″", "seconds"], ["−", "minus"]];

const signKeys = (id) => html`<div class="keys" role="group" aria-label="Signs for the angle">${SIGNS.map(([sign, name]) => html`<button
    type="button" data-do="sign" data-for="${id}" data-sign="${sign}" aria-label="${name}">${sign}</button>`)}</div>`;

export function field({ id, name, label, hint, mode, found = [], signs = false, size = "", rows = 0, value }) {
  const common = html`id="${id}" name="${name || id}" ${marked(found, id, Boolean(hint))} autocomplete="off" autocapitalize="off"
    spellcheck="false" placeholder=" " class="${size}"`;
  const control = rows
    ? html`<textarea ${common} rows="${rows}">${value}</textarea>`
    : html`<input ${common} type="text" ${mode && html`inputmode="${mode}"`} enterkeyhint="go" ${value !== undefined ? html`value="${value}"` : ""}>`;
  return html`<div class="field"><label for="${id}">${label}</label>${hint ? html`<p class="hint" id="${id}-hint">${hint}</p>` : ""}
    ${beside(found, id)}${signs ? signKeys(id) : ""}${control}</div>`;
}

export const choice = ({ id, name, label, options, chosen, found = [] }) => html`<div class="field" data-is="${options.find(([value]) => value === (chosen ?? ""))?.[1]}"><label for="${id}">${label}</label>${beside(found, id)}
  <select id="${id}" name="${name || id}" ${marked(found, id)}>${options.map(([value, title]) => html`<option value="${value}" ${value === chosen && html`selected`}>${title}</option>`)}</select></div>`;

// Writes a sign where the cursor stands and tells the form as if it had been typed.
export function typeSign(id, sign) {
  const box = document.getElementById(id);
  const from = box.selectionStart ?? box.value.length;
  box.setRangeText(sign, from, box.selectionEnd ?? from, "end");
  box.focus();
  box.dispatchEvent(new Event("input", { bubbles: true }));
}
