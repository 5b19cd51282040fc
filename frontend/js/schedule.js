// The schedule of cuts, as a table and as a file for a spreadsheet. Pure.

import { html, sheet } from "./html.js";
import { seconds } from "./words.js";

const SHOWN = 400;

// [heading, value of a row, whether this setup has it]
const COLUMNS = [
  ["Cut", (row) => row.cut, () => true],
  ["Division", (row) => row.division, (setup) => setup.every > 1],
  ["Angle", (row) => row.angle.dms, () => true],
  ["Turns", (row) => row.turns, (setup) => !setup.dial],
  ["Spaces", (row) => row.holes, (setup) => !setup.dial],
  ["Hole", (row) => row.hole, (setup) => !setup.dial],
  ["Second move, spaces", (row) => row.second_holes, (setup) => setup.second_move],
  ["Second move, hole", (row) => row.second_hole, (setup) => setup.second_move],
  ["Dial turns from zero", (row) => row.dial && row.dial.turns, (setup) => setup.dial],
  ["Dial", (row) => row.dial && (row.dial.set || row.dial.divisions), (setup) => setup.dial],
  ["Nose scale", (row) => row.scale, () => true],
  ["Off by", (row) => seconds(row.error_seconds), (setup) => !setup.exact],
];

const columnsOf = (setup) => COLUMNS.filter(([, , has]) => has(setup));

export function schedule(setup) {
  const rows = setup.positions;
  if (!rows) return sheet("Schedule of cuts", html`<p class="soft">Comes a moment after the move; beyond 20,000 rows it is left out.</p>`);
  const columns = columnsOf(setup);
  return sheet("Schedule of cuts", html`<p class="row"><button data-do="csv" id="csv">Save as CSV</button></p>
    <div class="wide" tabindex="0" role="region" aria-label="Schedule of cuts"><table><thead><tr>${columns.map(([title]) => html`<th scope="col">${title}</th>`)}</tr></thead>
    <tbody>${rows.slice(0, SHOWN).map((row) => html`<tr class="${row.free_check ? "check" : ""}">${columns.map(([, value], at) => (at
      ? html`<td>${value(row)}</td>` : html`<th scope="row">${value(row)}${row.free_check ? html` <span class="soft">pin home</span>` : ""}</th>`))}</tr>`)}</tbody></table></div>
    ${rows.length > SHOWN && html`<p class="soft">The first ${SHOWN} of ${rows.length} cuts; the file has them all.</p>`}`);
}

function cell(value) {
  const text = String(value ?? "");
  return /[",\n]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text;
}

export function csv(setup) {
  const columns = columnsOf(setup);
  const rows = [columns.map(([title]) => title), ...setup.positions.map((row) => columns.map(([, value]) => value(row)))];
  return "\ufeff" + rows.map((row) => row.map(cell).join(",")).join("\r\n") + "\r\n";
}
