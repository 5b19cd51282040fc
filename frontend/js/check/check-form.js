// The form for a setup worked by hand, and the request made of it.

import { html } from "../html.js";
import { field } from "../field.js";
import { METHODS, numberOr, wholeOr } from "../words.js";

const CHECKED = ["plain", "direct", "compound", "differential", "dial"];
const BOXES = {
  turns: ["Whole turns of the crank", "numeric"],
  holes: ["Spaces", "numeric", "The hole that the pin is in is not counted."],
  circle: ["Circle (its number of holes)", "numeric"],
  second_holes: ["Second move, spaces", "text", "With a minus when the opposite way."],
  second_circle: ["Second move, circle", "numeric"],
  spindle: ["Gear on the spindle", "numeric"],
  worm: ["Gear on the worm side", "numeric"],
  first_stud: ["First gear on the stud", "numeric", "Left blank with one pair of gears."],
  second_stud: ["Second gear on the stud", "numeric", "Driven by the spindle's."],
  idlers: ["Idlers", "numeric"],
  reading: ["Dial reading", "text", "Such as 3°25′40″, or marks on a dial without degrees."],
};
const NEEDS = {
  plain: ["turns", "holes", "circle"], direct: ["holes", "circle"],
  compound: ["turns", "holes", "circle", "second_holes", "second_circle"],
  differential: ["turns", "holes", "circle", "spindle", "worm", "first_stud", "second_stud", "idlers"], dial: ["turns", "reading"],
};

export const methodOf = (check) => (NEEDS[check.method] ? check.method : "plain");

const filled = (text) => text !== undefined && String(text).trim() !== "";
const signed = (text) => numberOr(String(text).replace(/^\s*[−–]\s*/, "-"));
const value = (check, name) => (filled(check[name]) ? signed(check[name]) : undefined);

function gearingOf(check) {
  const stud = filled(check.first_stud) || filled(check.second_stud) ? [value(check, "first_stud") ?? null, value(check, "second_stud") ?? null] : null;
  return { spindle: value(check, "spindle"), worm: value(check, "worm"), stud, idlers: value(check, "idlers") ?? 0 };
}

export function claimOf(check) {
  const method = methodOf(check);
  if (method === "dial") return { method, turns: value(check, "turns") ?? 0, reading: String(check.reading ?? "").trim() };
  const claim = { method, holes: value(check, "holes") ?? 0, circle: value(check, "circle") };
  if (method !== "direct") claim.turns = value(check, "turns") ?? 0;
  if (method === "compound") claim.second = { holes: value(check, "second_holes"), circle: value(check, "second_circle") };
  if (method === "differential") claim.gearing = gearingOf(check);
  return claim;
}

export function workOf(check) {
  return check.kind === "angle" ? { angle: String(check.number ?? "").trim() } : { divisions: wholeOr(check.number ?? "") };
}

export function toRequest(check, head) {
  const body = { work: workOf(check), head, claim: claimOf(check) };
  return filled(check.tolerance) ? { ...body, tolerance: { angle: check.tolerance.trim() } } : body;
}

// A claim as the service writes it, back into the words of the form.
export function fromClaim(claim) {
  const { method, turns, holes, circle, second, gearing, reading } = claim;
  const [first, driven] = gearing?.stud || [];
  return { method, turns, holes, circle, second_holes: second?.holes, second_circle: second?.circle, spindle: gearing?.spindle,
    worm: gearing?.worm, first_stud: first, second_stud: driven, idlers: gearing?.idlers, reading: reading?.dms ?? reading };
}

const FIELD_OF = [
  [/^#\/work\b/, () => "check-number"], [/^#\/tolerance/, () => "check-tolerance"],
  [/^#\/claim\/second\/(\w+)/, (found) => `check-second_${found[1]}`],
  [/^#\/claim\/gearing\/stud\/0/, () => "check-first_stud"], [/^#\/claim\/gearing\/stud/, () => "check-second_stud"],
  [/^#\/claim\/gearing\/(\w+)/, (found) => `check-${found[1]}`], [/^#\/claim\/(\w+)/, (found) => `check-${found[1]}`],
];

export function fieldOf(pointer) {
  for (const [path, name] of FIELD_OF) {
    const found = path.exec(pointer);
    if (found) return name(found);
  }
  return "check-number";
}

// Above the form a fault is read away from its box, so it says which box.
export function named({ field: id, text }) {
  const [label] = BOXES[id.replace("check-", "")] || [];
  return { field: id, text: label ? `${label}: ${text}` : text };
}

const pick = (name, now, [key, title]) => html`<label class="pick"><input type="radio" name="${name}" id="check-${name}-${key}"
  value="${key}" ${key === now ? html`checked` : ""}><span>${title}</span></label>`;

export function checkForm(check, found, busy) {
  const method = methodOf(check);
  const angle = check.kind === "angle";
  return html`<form id="check-form" class="sheet" novalidate>
    <fieldset class="choice"><legend>What should it make?</legend>${[["divisions", "Divisions"], ["angle", "An angle"]].map((each) => pick("kind", angle ? "angle" : "divisions", each))}</fieldset>
    ${field({ id: "check-number", name: "number", label: angle ? "Angle" : "Number of divisions", mode: angle ? "decimal" : "numeric", signs: angle, found })}
    <fieldset class="choice"><legend>How is it set?</legend>${CHECKED.map((name) => pick("method", method, [name, METHODS[name]]))}</fieldset>
    <div class="fields">${NEEDS[method].map((name) => field({ id: `check-${name}`, name, label: BOXES[name][0], mode: BOXES[name][1], hint: BOXES[name][2],
      signs: name === "reading", found }))}</div>
    ${field({ id: "check-tolerance", name: "tolerance", label: "Largest error allowed", hint: "An angle such as 0°01′. Left blank: none.", signs: true, found })}
    <button type="submit" class="main" id="check-ask" ${busy ? html`aria-disabled="true"` : ""}>${busy ? "Checking…" : "Check it"}</button></form>`;
}
