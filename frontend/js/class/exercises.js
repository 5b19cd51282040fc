// The exercises to be worked on the tablet, each with what came of it once it was marked. Pure.

import { html, items } from "../html.js";
import { beside } from "../errors.js";
import { choice, field as fieldBox } from "../field.js";
import { idOf } from "./claims.js";
import { KINDS } from "./sheet-link.js";

const VERDICT = { right: ["good", "Right"], wrong: ["bad", "Not right"], not_answered: ["warn", "Not answered"] };

function box({ field, label, optional, choices }, number, found) {
  const common = { id: idOf(number, field), name: `${number}:${field}`, label, found };
  if (choices) return choice({ ...common, options: [["", "Choose one"], ...choices.map((each) => [each.value, each.label])] });
  const mode = field === "reading" || field === "second.holes" ? undefined : "numeric";
  return fieldBox({ ...common, mode, signs: field === "reading", hint: optional && !/none|if there/.test(label) ? "May stay empty." : "" });
}

const none = ({ number, may_be_none: may }) => may ? html`<label class="pick"><input type="checkbox" id="ex-${number}-none" name="${number}:none">
  <span>No circle serves</span></label>` : "";

const working = (number, { summary, reason, working: lines }) => html`<details id="ex-${number}-working"><summary>The answer and its working</summary>
  <p><strong>${summary}</strong></p><ul class="exercise-working">${items(reason ? [reason] : lines)}</ul></details>`;

function marked(number, mark) {
  if (!mark) return "";
  const [mood, words] = VERDICT[mark.verdict];
  return html`<p class="mark ${mood}"><strong>${words}</strong></p>${mark.explanation.map((line) => html`<p>${line}</p>`)}
    ${mark.verdict === "not_answered" ? "" : working(number, mark.answer)}`;
}

const exercise = (each, mark, found) => html`<section class="sheet exercise" aria-labelledby="ex-${each.number}">
  <h2 id="ex-${each.number}" tabindex="-1">Exercise ${each.number} <span class="soft">${KINDS[each.kind]}</span></h2><p>${each.question}</p>
  <div class="exercise-fields">${each.asked.map((one) => box(one, each.number, found))}</div>${none(each)}${beside(found, `ex-${each.number}-none`)}
  ${marked(each.number, mark)}</section>`;

// `markOf(number)` gives the mark of an exercise that still stands as it was when it was marked.
export const exercisesView = (exercises, markOf, found) => exercises.map((each) => exercise(each, markOf(each.number), found));

// Values go in as properties; what is being typed is written only into a form that was made anew.
export function fillExercises(root, typed, fresh) {
  for (const control of root.querySelectorAll("[name*=':']")) {
    const [number, field] = control.name.split(":");
    const value = typed[number]?.[field] ?? "";
    if (control.type === "checkbox") control.checked = Boolean(value);
    else if (control.value !== value && (fresh || document.activeElement !== control)) control.value = value;
  }
}
