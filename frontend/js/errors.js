// What the service said is wrong, led to the field that it is about.

import { html, items } from "./html.js";

// [{field, text}] of a problem; `named(pointer)` gives the id of a field. A service out of reach is no field's fault.
export function faults(problem, named) {
  if (!problem) return [];
  if (problem.status === 0) return [{ field: "", text: problem.detail }];
  const errors = problem.errors?.length ? problem.errors : [{ detail: problem.detail || problem.title }];
  return errors.map(({ pointer = "", detail }) => ({ field: named(pointer), text: place(pointer) + detail }));
}

function place(pointer) {
  const [, angle, plate, circle] = /^#\/(?:work\/angles\/(\d+)|head\/plates\/(\d+)\/(\d+))$/.exec(pointer) || [];
  if (angle) return `Angle ${Number(angle) + 1}: `;
  return plate ? `Plate ${Number(plate) + 1}, circle ${Number(circle) + 1}: ` : "";
}

export function summary(found) {
  if (!found.length) return "";
  return html`<div id="problem" class="note bad" role="alert" tabindex="-1" aria-labelledby="problem-title">
    <h2 id="problem-title">${found.length > 1 ? `${found.length} things to put right` : "One thing to put right"}</h2>
    <ul>${items(found.map(({ field, text }) => field ? html`<a href="#${field}" data-do="focus" data-on="${field}">${text}</a>` : text))}</ul></div>`;
}

export function beside(found, field) {
  const mine = found.filter((each) => each.field === field);
  return mine.length ? html`<p class="wrong" id="${field}-wrong">${mine.map((each) => each.text).join(" ")}</p>` : "";
}

export function marked(found, field, hint = false) {
  const wrong = found.some((each) => each.field === field);
  const by = [hint && `${field}-hint`, wrong && `${field}-wrong`].filter(Boolean).join(" ");
  return html`${wrong ? html`aria-invalid="true"` : ""} ${by ? html`aria-describedby="${by}"` : ""}`;
}
