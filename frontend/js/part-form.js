// The fields of a part. Pure.

import { html } from "./html.js";
import { field } from "./field.js";
import { beside, marked } from "./errors.js";
import { DEFAULT_PART, PARTS } from "./part-kinds.js";

function choice(id, name, label, options, chosen, found) {
  return html`<div class="field"><label for="${id}">${label}</label>${beside(found, id)}<select id="${id}" name="${name}" ${marked(found, id)}>
    ${options.map(([value, title]) => html`<option value="${value}" ${value === chosen ? html`selected` : ""}>${title}</option>`)}</select></div>`;
}

function partField([name, label, mode, hint], part, found) {
  const id = `part-${name}`;
  if (Array.isArray(mode)) return choice(id, id, label, mode, part[name], found);
  return field({ id, label, hint, found, mode: mode === "angle" ? "decimal" : mode, signs: mode === "angle" });
}

export function partFields(part, found) {
  const whole = { ...DEFAULT_PART, ...part };
  const [, fields] = PARTS[whole.kind];
  const kinds = Object.entries(PARTS).map(([kind, [title]]) => [kind, title]);
  return html`<div class="fields part">${choice("part-kind", "part-kind", "Which part", kinds, whole.kind, found)}
    ${fields.map((each) => partField(each, whole, found))}</div>`;
}
