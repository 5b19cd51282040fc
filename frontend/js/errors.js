// What the service said is wrong, led to the field that it is about.

import { html } from "./html.js";

const PATHS = [
  [/^#\/work\/part\/?([^/]*)/, (found) => `part-${found[1] || "kind"}`],
  [/^#\/work\/(divisions|angles|angle|count)/, (found) => found[1]],
  [/^#\/tolerance\/angle/, () => "tolerance"],
  [/^#\/tolerance\/(at_rim|diameter)/, (found) => found[1]],
  [/^#\/tolerance/, () => "tolerance"],
  [/^#\/every/, () => "every"],
  [/^#\/head\/plates\/(\d+)/, (found) => `head-plate-${found[1]}`],
  [/^#\/head\/plates/, () => "head-plate-0"],
  [/^#\/head\/dial\/(\w+)/, (found) => `head-dial-${found[1]}`],
  [/^#\/head\/screw/, () => "head-screw-lead"],
  [/^#\/head\/idlers\/(\w+)\/(\w+)/, (found) => `head-idlers-${found[1]}-${found[2]}`],
  [/^#\/head\/(\w+)/, (found) => `head-${found[1]}`],
];

// The id of the field that a pointer means; `otherwise` when it means none.
export function fieldOf(pointer, otherwise) {
  for (const [path, name] of PATHS) {
    const found = path.exec(pointer || "");
    if (found) return name(found);
  }
  return otherwise;
}

function place(pointer) {
  const item = /^#\/work\/angles\/(\d+)$/.exec(pointer);
  if (item) return `Angle ${Number(item[1]) + 1}: `;
  const circle = /^#\/head\/plates\/(\d+)\/(\d+)$/.exec(pointer);
  if (circle) return `Plate ${Number(circle[1]) + 1}, circle ${Number(circle[2]) + 1}: `;
  return "";
}

// [{field, text}] of a problem; one entry without a field when it has no errors of its own.
export function faults(problem, otherwise) {
  if (!problem) return [];
  const errors = problem.errors || [];
  if (!errors.length) return [{ field: otherwise, text: problem.detail || problem.title || "The service refused this without a reason." }];
  return errors.map(({ pointer, detail }) => ({ field: fieldOf(pointer, otherwise), text: place(pointer || "") + detail }));
}

export function summary(found, retry) {
  if (!found.length) return "";
  return html`<div id="problem" class="note bad" role="alert" tabindex="-1" aria-labelledby="problem-title">
    <h2 id="problem-title">${found.length > 1 ? `${found.length} things to put right` : "One thing to put right"}</h2>
    <ul>${found.map(({ field, text }) => html`<li>${field
      ? html`<a href="#${field}" data-do="focus" data-on="${field}">${text}</a>` : text}</li>`)}</ul>${retry}</div>`;
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
