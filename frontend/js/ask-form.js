// The question: a number, an angle, a list of angles or a part.

import { html } from "./html.js";
import { field } from "./field.js";
import { PLAIN_WORDS } from "./link.js";
import { headLine } from "./words.js";
import { DEFAULT_PART } from "./part-kinds.js";
import { partFields } from "./part-form.js";

const KINDS = [["divisions", "Number"], ["angle", "Angle"], ["angles", "Angle list"], ["part", "Part"]];

const kinds = (question) => html`<fieldset class="choice kinds"><legend class="unseen">What do you divide by?</legend>${KINDS.map(([kind, title]) => html`<label
    class="pick"><input type="radio" name="kind" id="kind-${kind}" value="${kind}" ${question.kind === kind ? html`checked` : ""}><span>${title}</span></label>`)}</fieldset>`;

function main(question, found) {
  if (question.kind === "angle") {
    return html`${field({ id: "angle", label: "Angle between features", size: "big", mode: "decimal", signs: true, found,
      hint: "Such as 22°30′, 22.5, 22 30 15 or 1/7 turn." })}
      ${field({ id: "count", label: "How many features", mode: "numeric", found, hint: "Two when left empty." })}`;
  }
  if (question.kind === "angles") {
    return field({ id: "angles", label: "Angles from zero", rows: 5, signs: true, found, hint: "One a line, or commas between: 0, 22.5, 61°15′." });
  }
  if (question.kind === "part") return partFields(question.part || {}, found);
  return field({ id: "divisions", label: "Divisions", size: "big", mode: "numeric", found });
}

function more(question, found) {
  const used = PLAIN_WORDS.filter((name) => question[name]).length;
  return html`<details id="more" ${found.some(({ field: id }) => PLAIN_WORDS.includes(id)) && html`open`}>
    <summary>How close, and block indexing${used ? ` (${used} in use)` : ""}</summary><div class="fields">
    ${field({ id: "tolerance", label: "Largest error allowed, as an angle", found, signs: true, hint: "Such as 0°01′. Empty: any." })}
    ${field({ id: "diameter", label: "Diameter of the work", mode: "decimal", found, hint: "Shows errors at the rim, in the same unit." })}
    ${field({ id: "at_rim", label: "Largest error allowed at the rim", mode: "decimal", found, hint: "Needs the diameter too." })}
    ${field({ id: "every", label: "Spaces per move", mode: "numeric", found, hint: "Of the work, not holes: block indexing in several laps spreads the heat. Empty: one." })}
    </div></details>`;
}

export function askForm(state, found) {
  const { question } = state;
  return html`<form id="question" novalidate>
    <div class="head-line"><p><strong>${state.headName || "Head"}</strong> <span id="head-line">${headLine(state.head)}</span></p>
      <a class="button" id="change-head" href="head.html" data-do="leave">Change<span class="unseen"> head</span></a></div>
    ${kinds(question)}
    <div class="asked">${main(question, found)}<button class="main" id="work-it-out">Work it out</button></div>
    ${more(question, found)}
  </form>`;
}

// Values go in as properties: what is being typed is never written over, unless the form is `fresh`.
export function fill(root, question, fresh) {
  for (const box of root.querySelectorAll("input[type=text], textarea, select")) {
    const value = (box.name.startsWith("part-") ? { ...DEFAULT_PART, ...question.part }[box.name.slice(5)] : question[box.name]) ?? "";
    if (box.value !== String(value) && (fresh || document.activeElement !== box)) box.value = value;
  }
}

export function listen(root, actions) {
  root.addEventListener("input", ({ target }) => {
    if (target.name === "kind") actions.ask({ kind: target.value });
    else if (target.name.startsWith("part-")) actions.askPart(target.name.slice(5), target.type === "checkbox" ? target.checked : target.value);
    else actions.ask({ [target.name]: target.value });
  });
  root.addEventListener("submit", (event) => {
    event.preventDefault();
    actions.solve({ loud: true });
  });
}
