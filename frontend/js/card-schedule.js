// The schedule of cuts on paper, each row with a box to tick. Pure.

import { html } from "./html.js";

const ROWS_AT_MOST = 480;
// Rows that fit under one another on a page of Letter.
const DEEP = 44;

const COLUMNS = [
  ["Cut", (row) => row.cut, () => true],
  ["Division", (row) => row.division, (setup) => setup.every > 1],
  ["Turns", (row) => row.turns, changes],
  ["Spaces", (row) => row.holes, changes],
  ["Hole", (row) => row.hole, (setup) => !setup.dial],
  ["2nd hole", (row) => row.second_hole, (setup) => setup.second_move],
  ["Turns", (row) => row.dial?.turns, (setup) => setup.dial],
  ["Dial", (row) => row.dial?.set ?? row.dial?.divisions, (setup) => setup.dial],
  ["Scale", (row) => row.scale, () => true],
  ["Made", () => "☐", () => true],
];

function changes({ move }) {
  return move && (move.holes === null || move.turns === null);
}

const table = (columns, rows) => html`<table><thead><tr>${columns.map(([title]) => html`<th scope="col">${title}</th>`)}</tr></thead>
  <tbody>${rows.map((row) => html`<tr${row.free_check && row.cut > 1 ? html` class="check"` : ""}>${columns.map(([, value]) => html`<td>${value(row)}</td>`)}</tr>`)}</tbody></table>`;

const pieces = (rows, long) => Array.from({ length: Math.ceil(rows.length / long) }, (_, at) => rows.slice(at * long, (at + 1) * long));

// Cuts go down each column of a page before they go on to the next page.
const pages = (rows, across) => pieces(rows, DEEP * across).map((page) => pieces(page, Math.ceil(page.length / across)));

export function cardSchedule(setup) {
  const rows = setup.positions;
  if (!rows) return "";
  if (rows.length > ROWS_AT_MOST) return html`<p>The schedule has ${rows.length} cuts: save it as a file from the page.</p>`;
  const columns = COLUMNS.filter(([, , has]) => has(setup));
  const across = rows.length < 12 ? 1 : columns.length > 6 ? 2 : columns.length > 4 ? 3 : 4;
  const home = rows.some((row) => row.free_check && row.cut > 1);
  return html`<section class="card-schedule"><h2>Schedule of cuts</h2>${home ? html`<p>In bold rows the pin is back in its start hole: a free check.</p>` : ""}
    ${pages(rows, across).map((parts) => html`<div class="card-columns">${parts.map((part) => table(columns, part))}</div>`)}</section>`;
}
