// A plate to make, as it is drilled: how the head is set, both errors, hole sizes, the schedule. Pure.

import { html, raw, table } from "../html.js";
import { count, seconds } from "../words.js";
import { runs } from "./coverage-next.js";
import { drawBlank } from "./draw-blank.js";

const list = (lines) => lines.map((line) => html`<li>${line}</li>`);
const place = (value) => (value === null ? "" : value.toFixed(4).replace(/^-(0\.0+)$/, "$1"));

// [heading, value of a row, whether this plate has it]
const COLUMNS = [
  ["Hole", (row) => row.cut, () => true],
  ["Angle", (row) => row.angle.dms, () => true],
  ["Turns", (row) => row.turns, ({ setup }) => !setup.dial],
  ["Spaces", (row) => row.holes, ({ setup }) => !setup.dial],
  ["Pin in", (row) => row.hole, ({ setup }) => !setup.dial],
  ["Second move, spaces", (row) => row.second_holes, ({ setup }) => setup.second_move],
  ["Second move, pin in", (row) => row.second_hole, ({ setup }) => setup.second_move],
  ["Dial turns from zero", (row) => row.dial.turns, ({ setup }) => setup.dial],
  ["Dial", (row) => row.dial.set || row.dial.divisions, ({ setup }) => setup.dial],
  ["Nose scale", (row) => row.scale, () => true],
  ["x", (row) => place(row.x), ({ schedule }) => schedule[0].x !== null],
  ["y", (row) => place(row.y), ({ schedule }) => schedule[0].x !== null],
  ["Off by", (row) => seconds(row.error_seconds), ({ setup }) => !setup.exact],
];

function schedule(plate) {
  const columns = COLUMNS.filter(([, , has]) => has(plate));
  return html`<section class="sheet"><h2>Drilling schedule</h2><p class="row unprinted"><button type="button" id="plate-csv" data-do="plateCsv">Save as CSV</button>
    <button type="button" id="plate-print" data-do="printPage">Print the plate</button></p>
    ${table("Drilling schedule", columns.map(([title]) => title), plate.schedule.map((row) => columns.map(([, value]) => value(row))))}</section>`;
}

function first({ holes, needed, on_plate: onPlate, divides, link }) {
  return html`<section class="sheet move" aria-labelledby="plate-found"><h2 id="plate-found" tabindex="-1">${needed ? `Work of ${needed.divisions} divisions: a circle of ${holes} holes` : `A circle of ${holes} holes`}</h2>
    ${needed && html`<ul class="working">${list(needed.working)}</ul>`}
    ${needed && needed.multiples.length > 1 && html`<p>As well: a circle of ${runs(needed.multiples.filter((each) => each !== holes))}.</p>`}
    ${onPlate && html`<p class="note warn">Plate ${onPlate} of this head has a circle of ${holes} already: no plate has to be made.</p>`}
    ${divides.new.length ? html`<p>Numbers that this head has no other circle for: <strong>${runs(divides.new)}</strong>.</p>` : html`<p>It adds no number to what the circles of this head divide already.</p>`}
    ${link && html`<p class="row unprinted"><a class="button" id="plate-use" data-do="leave" href="${link.replace(/^\//, "./")}">Set up the work with it</a></p>`}</section>`;
}

function setting({ setup }) {
  return html`<section class="sheet"><h2>The head, to drill it</h2><p class="crank-move"><strong>${setup.summary}</strong></p>
    <p class="mark ${setup.exact ? "good" : "warn"}"><strong>${setup.exact ? "Every hole exact" : `A hole is off by up to ${seconds(setup.error.worst_seconds)}`}</strong></p>
    <ol>${list(setup.instructions)}</ol>${setup.cautions.length ? html`<ul>${list(setup.cautions)}</ul>` : ""}</section>`;
}

const figure = (label, value) => html`<div><dt>${label}</dt><dd>${value}</dd></div>`;

function errors({ error, left_in_work: left, notes }, unit) {
  const upTo = left.at_most ? "at most " : "";
  return html`<section class="sheet"><h2>How far off, plate and work</h2><h3>The plate itself</h3><dl class="facts-list">${figure("Any hole, from its place", seconds(error.worst_seconds))}
      ${figure("One hole to the next", seconds(error.single_pitch_seconds))}${error.at_circle !== null ? figure("Along the circle", `${error.at_circle.toFixed(4)} ${unit}`) : ""}</dl>
    <h3>${left.divisions ? `Work of ${left.divisions} divided with it` : "Any work divided with it"}</h3><dl class="facts-list">${figure("Any division, from its place", upTo + seconds(left.worst_seconds))}
      ${figure("One division to the next", upTo + seconds(left.single_pitch_seconds))}</dl>
    ${left.move ? html`<p>The move for the work: ${[left.move.turns ? count(left.move.turns, "turn", "turns") : "", left.move.holes ? `${count(left.move.holes, "space", "spaces")} on ${left.move.circle}` : ""].filter(Boolean).join(" and ")}.</p>` : ""}
    <ul id="plate-notes">${list(notes)}</ul></section>`;
}

const sizes = (plate) => plate.sizes.length ? html`<section class="sheet"><h2>Sizes</h2>
  ${plate.hole_fits !== null ? html`<p class="mark ${plate.hole_fits ? "good" : "bad"}"><strong>${plate.hole_fits ? "The holes fit" : "The holes stand too close"}</strong> <span class="soft">by the rule of half a hole's diameter of metal between neighbours</span></p>` : ""}
  ${table("Sizes", ["Size, and whose formula", "Value"], plate.sizes.map((each) => [html`${each.name} <span class="under">${each.source}${each.note ? `; ${each.note}` : ""}</span>`, each.text]))}</section>` : "";

export function plateView(plate, { form, placing }) {
  const [circle, hole] = [Number(form.circle_diameter), Number(form.hole_diameter)];
  return html`${first(plate)}<div class="columns"><div class="column">${setting(plate)}${errors(plate, form.unit)}</div>
    <div class="column"><section class="sheet"><h2>The plate</h2><figure>${raw(drawBlank(plate, placing, circle && hole ? hole / circle : 0))}
      <figcaption>Hole 1 is filled; the arrow shows which way the numbers run.</figcaption></figure></section>
      <section class="sheet"><h2>Before you drill</h2><ul>${list(plate.cautions)}</ul></section></div></div>
    ${schedule(plate)}${sizes(plate)}<p class="soft">Worked out by version ${plate.service_version}.</p>`;
}
