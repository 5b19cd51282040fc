// The part: drawing, sizes with the source of each formula, gears for its lead, its own schedule. Pure.

import { html, items, raw, sheet, table } from "./html.js";
import { drawPart } from "./draw-part.js";
import { byPlace } from "./gears.js";

const SHOWN = 400;
const HEADINGS = { hole: "Hole", x: "x", y: "y", degrees: "Angle", line: "Line", class: "Line is", number: "Number", flute: "Flute", space: "Space after it" };
const PLACES = [["worm", "Worm side"], ["second_stud", "Stud, second"], ["first_stud", "Stud, first"], ["screw", "Table screw"], ["idlers", "Idlers"]];

const row = ({ name, text, note, source }) => [html`${name} <span class="under">${source}</span>`, html`${text}${note ? html` <span class="under">${note}</span>` : ""}`];

const sizeTable = (title, list) => list?.length ? sheet(title, table(title, ["Size, and whose formula", "Value"], list.map(row))) : "";

const figure = (value) => Number(value.toFixed(4));

const filled = (gearing) => PLACES.filter(([name]) => gearing[name] !== null).map(([name, place]) => [place, gearing[name]]);
const inWords = (gearing) => filled(gearing).map(([place, teeth]) => `${place.toLowerCase()} ${teeth}`).join(", ");

export function leadView(lead) {
  if (!lead) return "";
  const { gearing, achieved, error, unit, wanted, hand, orders } = lead;
  return sheet("Gears for the lead", html`<p>Lead wanted ${figure(wanted)} ${unit}, ${hand} hand.</p>
    ${gearing ? html`${byPlace(filled(gearing))}<p>${error ? `Gives ${figure(achieved)} ${unit}: off by ${figure(error)} ${unit}.` : "Exact."}
      Turn the crank and watch which way the work turns: one idler more or less changes the hand.</p>
      ${orders.length > 1 ? html`<details id="orders"><summary>${orders.length} orders of gears that give it</summary><ul>${items(orders.map(inWords))}</ul></details>` : ""}`
      : html`<p>Give the head its change gears and the table screw, and the gears for it stand here.</p>`}`);
}

function ownSchedule(rows) {
  if (!rows?.length) return "";
  const names = Object.keys(HEADINGS).filter((name) => name in rows[0]);
  const cell = (value) => (typeof value === "number" ? figure(value) : value);
  return sheet("Place by place", table("Place by place", names.map((name) => HEADINGS[name]),
    rows.slice(0, SHOWN).map((each) => names.map((name) => cell(each[name])))));
}

export function partDrawing({ kind, drawing, unit }) {
  const markup = drawPart(kind, drawing, unit);
  return markup && html`<figure>${raw(markup)}</figure>`;
}

export function partView(part) {
  const drawn = partDrawing(part);
  return html`${drawn ? sheet("The part", drawn) : ""}
    ${part.tilt !== null && sheet("Setting of the head", html`<p>Spindle <strong>${figure(part.tilt)}°</strong> above the table.</p>`)}
    ${sizeTable("Sizes", part.sizes)}${leadView(part.lead)}${ownSchedule(part.schedule)}${sizeTable("What the setting leaves on the part", part.errors)}`;
}
