// The lines of a sheet as they are answered: those to put right first, then those that are not exact, then the rest. Pure.

import { html } from "../html.js";
import { seconds } from "../words.js";

const SHOWN = 200;
const WORK = ["divisions", "angle", "angles", "part"];

const name = (title) => title.trim().toLowerCase();
export const workColumns = (heading) => heading.cells.map(name).filter((title) => WORK.includes(title));

const short = (text) => (text.length > 120 ? `${text.slice(0, 120)}…` : text);

// What the sheet calls the line, and what it asks: {row, ref, asked}.
function titled({ heading, named, column }, line) {
  const titles = heading.cells.map(name);
  if (line.fault) return { ref: "", asked: short(line.cells[0]) };
  const cell = (at) => (at >= 0 ? (line.cells[at] ?? "").trim() : "");
  const refAt = titles.indexOf("ref");
  const at = refAt >= 0 ? refAt : titles.findIndex((title, place) => !WORK.includes(title) && !(named && place === column));
  const asked = titles.map((title, place) => (WORK.includes(title) || (named && place === column)) && cell(place) ? `${heading.cells[place].trim()} ${cell(place)}` : "");
  return { ref: short(cell(at)), asked: short(asked.filter(Boolean).join(", ")) };
}

export function grouped(sheet, answers) {
  const groups = { wrong: [], off: [], exact: [] };
  for (const [at, told] of answers.entries()) {
    const kind = told.results.status !== "200" ? "wrong" : told.results.exact === "true" ? "exact" : "off";
    groups[kind].push({ line: sheet.lines[at], results: told.results });
  }
  return groups;
}

// The service speaks of its own column; where the sheet has another name for it, that is the one to put right.
function toChange(sheet, { problem }) {
  return sheet.named ? problem.replace(/^divisions: /, `${sheet.heading.cells[sheet.column].trim()}: `) : problem;
}

const place = ({ row }) => html`<strong>Row ${row}</strong>`;

function wrongLines(sheet, lines, all) {
  return html`<ul class="lines">${lines.slice(0, all ? Infinity : SHOWN).map(({ line, results }) => {
    const { ref, asked } = titled(sheet, line);
    return html`<li><span>${place(line)}</span><span class="asked-for">${[ref, asked].filter(Boolean).join(" · ") || "nothing asked"}</span><span>${toChange(sheet, results)}</span></li>`;
  })}</ul>`;
}

function setLines(sheet, lines, label, isOff) {
  return html`<div class="wide" tabindex="0" role="region" aria-label="${label}"><table><thead><tr><th scope="col">Row</th><th scope="col">Line</th><th scope="col">Asked</th>
    ${isOff && html`<th scope="col">Off by up to</th>`}<th scope="col">How to set the head</th></tr></thead><tbody>${lines.slice(0, SHOWN).map(({ line, results }) => {
    const { ref, asked } = titled(sheet, line);
    return html`<tr><th scope="row">${line.row}</th><td>${ref}</td><td>${asked}</td>${isOff && html`<td>${seconds(Number(results.worst_seconds.replace(",", ".")))}</td>`}<td>${results.summary}</td></tr>`;
  })}</tbody></table></div>`;
}

const rest = (lines) => (lines.length > SHOWN ? html`<p class="soft">The first ${SHOWN} of ${lines.length}; the file has them all.</p>` : "");

export const wrongView = (sheet, lines, all) => lines.length ? html`<section class="sheet" aria-labelledby="sheet-wrong"><h2 id="sheet-wrong">To put right: ${lines.length}</h2>
  ${wrongLines(sheet, lines, all)}${lines.length > SHOWN && !all ? html`<p><button type="button" id="sheet-all" data-do="allWrong">Show all ${lines.length}</button></p>` : ""}</section>` : "";

export const offView = (sheet, lines) => lines.length ? html`<section class="sheet"><h2>Not exact: ${lines.length}</h2>
  <p class="soft">The nearest setting of this head. Look whether the drawing allows it.</p>${setLines(sheet, lines, "Lines that are not exact", true)}${rest(lines)}</section>` : "";

export const exactView = (sheet, lines) => lines.length ? html`<section class="sheet"><h2>Exact: ${lines.length}</h2>
  ${setLines(sheet, lines, "Lines that are exact", false)}${rest(lines)}</section>` : "";
