// The part itself: its drawing, its sizes with the source of each formula, the gears for its lead, its own schedule. Pure.

import { html, raw } from "./html.js";
import { drawPart } from "./draw-part.js";

const SHOWN = 400;
const HEADINGS = { hole: "Hole", x: "x", y: "y", degrees: "Angle", line: "Line", class: "Line is", number: "Number", flute: "Flute", space: "Space after it" };
const PLACES = [["worm", "Worm side"], ["second_stud", "Stud, second"], ["first_stud", "Stud, first"], ["screw", "Table screw"], ["idlers", "Idlers"]];

function table(label, heads, rows) {
  return html`<div class="wide" tabindex="0" role="region" aria-label="${label}"><table><thead><tr>${heads.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
    <tbody>${rows.map(([first, ...rest]) => html`<tr><th scope="row">${first}</th>${rest.map((cell) => html`<td>${cell}</td>`)}</tr>`)}</tbody></table></div>`;
}

const row = ({ name, text, note, source }) => [html`${name} <span class="under">${source}</span>`, html`${text}${note ? html` <span class="under">${note}</span>` : ""}`];

export function sizeTable(title, list) {
  return list && list.length ? html`<section class="sheet"><h2>${title}</h2>${table(title, ["Size, and whose formula", "Value"], list.map(row))}</section>` : "";
}

const figure = (value) => Number(value.toFixed(4));

function places(gearing) {
  return html`<dl class="gears">${PLACES.filter(([name]) => gearing[name] !== null).map(([name, place]) => html`<div><dt>${place}</dt><dd>${gearing[name]}</dd></div>`)}</dl>`;
}

export function leadView(lead) {
  if (!lead) return "";
  const { gearing, achieved, error, unit, wanted, hand, orders } = lead;
  return html`<section class="sheet"><h2>Gears for the lead</h2><p>Lead wanted ${figure(wanted)} ${unit}, ${hand} hand.</p>
    ${gearing ? html`${places(gearing)}<p>${error ? `Gives ${figure(achieved)} ${unit}: off by ${figure(error)} ${unit}.` : "Exact."}
      Turn the crank and watch which way the work turns: one idler more or less changes the hand.</p>
      ${orders.length > 1 ? html`<details id="orders"><summary>${orders.length} orders of gears that give it</summary><ul>${orders.map((order) => html`<li>${
        PLACES.filter(([name]) => order[name] !== null).map(([name, place]) => `${place.toLowerCase()} ${order[name]}`).join(", ")}</li>`)}</ul></details>` : ""}`
      : html`<p>Give the head its change gears and the table screw, and the gears for it stand here.</p>`}</section>`;
}

function ownSchedule(rows) {
  if (!rows || !rows.length) return "";
  const names = Object.keys(HEADINGS).filter((name) => name in rows[0]);
  const cell = (value) => (typeof value === "number" ? figure(value) : value);
  return html`<section class="sheet"><h2>Place by place</h2>${table("Place by place", names.map((name) => HEADINGS[name]),
    rows.slice(0, SHOWN).map((each) => names.map((name) => cell(each[name]))))}</section>`;
}

export function partDrawing({ kind, drawing, unit }) {
  const markup = drawPart(kind, drawing, unit);
  return markup && html`<figure>${raw(markup)}</figure>`;
}

export function partView(part) {
  const drawn = partDrawing(part);
  return html`${drawn ? html`<section class="sheet"><h2>The part</h2>${drawn}</section>` : ""}
    ${part.tilt !== null && html`<section class="sheet"><h2>Setting of the head</h2><p>Spindle <strong>${figure(part.tilt)}°</strong> above the table.</p></section>`}
    ${sizeTable("Sizes", part.sizes)}${leadView(part.lead)}${ownSchedule(part.schedule)}${sizeTable("What the setting leaves on the part", part.errors)}`;
}
