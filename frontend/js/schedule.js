// The schedule of cuts, as a table and as a file for a spreadsheet. Pure.

import { html, sheet, table } from "./html.js";
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
  if (!rows) return sheet("Schedule of cuts", html`<p id="no-cuts" tabindex="-1">It comes a moment after the move. Beyond 20,000 rows it is left out, and there is no cutting by it.</p>`);
  const columns = columnsOf(setup);
  return sheet("Schedule of cuts", html`<p class="row"><button data-do="csv" id="csv">Save as CSV</button></p>
    ${table("Schedule of cuts", columns.map(([title]) => title), rows.slice(0, SHOWN).map((row) => columns.map(([, value], at) => (at || !row.free_check
      ? value(row) : html`${value(row)} <span class="soft">pin home</span>`))), (at) => (rows[at].free_check ? "check" : ""))}
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
