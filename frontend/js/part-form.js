// The fields of a part. Pure.

import { html } from "./html.js";
import { choice, field } from "./field.js";
import { DEFAULT_PART, PARTS, fieldsOf } from "./part-kinds.js";

function partField([name, label, mode, hint], part, found) {
  const id = `part-${name}`;
  if (Array.isArray(mode)) return choice({ id, label, options: mode, chosen: part[name], found });
  return field({ id, label, hint, found, mode: mode === "angle" ? "decimal" : mode, signs: mode === "angle" });
}

export function partFields(part, found) {
  const whole = { ...DEFAULT_PART, ...part };
  const kinds = Object.entries(PARTS).map(([kind, [title]]) => [kind, title]);
  return html`<div class="fields part">${choice({ id: "part-kind", label: "Which part", options: kinds, chosen: whole.kind, found })}
    ${fieldsOf(whole).map((each) => partField(each, whole, found))}</div>`;
}
