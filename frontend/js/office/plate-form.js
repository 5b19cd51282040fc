// What is asked about a plate to make: the form, and the request made of it. Pure.

import { html } from "../html.js";
import { choice, field } from "../field.js";
import { numberOr, wholeOr } from "../words.js";

export const USUAL = { what: "divisions", number: "", circle_diameter: "", hole_diameter: "", unit: "mm", circles: "2", start: "", sense: "anticlockwise", zero: "3 o'clock", x: "", y: "" };
const WHAT = [["divisions", "Work of so many divisions"], ["holes", "A circle of so many holes"]];
const LENGTHS = ["circle_diameter", "hole_diameter", "x", "y"];
const PLACED = ["start", "x", "y"];

const given = (text) => String(text ?? "").trim() !== "";
const signed = (text) => numberOr(String(text).replace(/^\s*[−–]\s*/, "-"));

export function bodyOf(form, head) {
  const body = { [form.what]: wholeOr(form.number), head, circles: Number(form.circles) };
  for (const name of LENGTHS) if (given(form[name])) body[name] = signed(form[name]);
  if (LENGTHS.some((name) => given(form[name]))) body.unit = form.unit;
  if (given(form.start)) body.start = form.start.trim();
  for (const name of ["sense", "zero"]) if (form[name] !== USUAL[name]) body[name] = form[name];
  return body;
}

export function fieldOf(pointer) {
  const name = /^#\/(\w+)/.exec(pointer)?.[1];
  if (name === "head") return "change-head";
  return name && name in USUAL && name !== "what" ? `plate-${name}` : "plate-number";
}

const pick = (now, [value, title]) => html`<label class="pick"><input type="radio" name="what" id="plate-what-${value}" value="${value}"
  ${value === now ? html`checked` : ""}><span>${title}</span></label>`;

export function plateForm(form, found) {
  const box = (name, label, more = {}) => field({ id: `plate-${name}`, name, label, found, ...more });
  const pickOne = (name, label, options) => choice({ id: `plate-${name}`, name, label, options, chosen: form[name], found });
  const wrong = found.some(({ field: id }) => [...PLACED, "sense", "zero", "circles"].some((name) => id === `plate-${name}`));
  return html`<form id="plate-form" class="sheet unprinted" novalidate>
    <fieldset class="choice"><legend>What is the plate for?</legend>${WHAT.map((each) => pick(form.what, each))}</fieldset>
    <div class="asked">${box("number", form.what === "holes" ? "Holes" : "Divisions of the work", { mode: "numeric", size: "big" })}<button class="main" id="plate-go">Work out the plate</button></div>
    <div class="asked-range">${box("circle_diameter", "Diameter of the circle", { mode: "decimal" })}${box("hole_diameter", "Diameter of the holes", { mode: "decimal" })}
      ${pickOne("unit", "Lengths in", [["mm", "mm"], ["in", "inches"]])}</div>
    <p class="hint">With the circle's diameter, coordinates and hole sizes come too.</p>
    <details id="plate-more" ${wrong ? html`open` : ""}><summary>First hole, coordinates, moves</summary><div class="fields">
      ${box("start", "Angle of the first hole", { signs: true, hint: "Empty: 0°." })}${pickOne("zero", "Zero is at", [["3 o'clock", "3 o'clock"], ["12 o'clock", "12 o'clock"]])}
      ${pickOne("sense", "Angles run", [["anticlockwise", "anticlockwise"], ["clockwise", "clockwise"]])}
      ${box("x", "x of the centre", { mode: "decimal" })}${box("y", "y of the centre", { mode: "decimal" })}
      ${pickOne("circles", "A hole may take", [["2", "two moves, which come nearer"], ["1", "one move, on one circle"]])}</div></details></form>`;
}
