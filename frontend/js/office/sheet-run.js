// A sheet of any length, asked in calls of a size that the service takes, in order. Pure: the call itself is given.

import { readSheet } from "./records.js";

export const AT_ONCE = 100;
const BYTES = 900000;

const size = (text) => new TextEncoder().encode(text).length;
const isTooMuch = ({ status, problem }) => status === 413 || /too-much-work$/.test(problem?.type || "");

// The lines from `at` on that go into one call.
function taken({ text, lines }, at, most) {
  let to = at + 1;
  while (to < Math.min(lines.length, at + most) && size(text.slice(lines[at].from, lines[to].to)) < BYTES) to += 1;
  return lines.slice(at, to);
}

// The separator is named, so that a part of the sheet is read as the whole; the heading is written as the service knows it.
function callText(sheet, part) {
  const { text, parted, heading, named } = sheet;
  return `sep=${parted}\r\n${named || text.slice(heading.from, heading.to)}${text.slice(part[0].from, part.at(-1).to)}`;
}

// What came back, line for line; null where it is not as many lines as went.
function told(reply, sheet, part) {
  const { heading, lines } = readSheet(reply.text, sheet.parted);
  if (lines.length !== part.length) return null;
  const own = sheet.heading.cells.length;
  const names = heading.cells.slice(own);
  const answers = lines.map(({ cells }) => ({ own: cells.slice(0, own), results: Object.fromEntries(names.map((name, at) => [name, cells[own + at]])) }));
  return { names, answers };
}

function refused(sheet, line, { status, problem }) {
  return { own: sheet.heading.cells.map((_, at) => line.cells[at] ?? ""), results: { status: String(status === 200 ? 422 : status), problem: problem?.detail || "The service gave no answer to this line." } };
}

// Asks from line `at` on; `ask(text)` gives {ok, status, text | problem}. `keep(from, answers, names)` after every call;
// it says whether to go on. Gives {} at the end, {stopped}, {away} without a connection, or {problem} for the sheet as a whole.
export async function run(sheet, at, { ask, keep }) {
  let most = AT_ONCE;
  while (at < sheet.lines.length) {
    const part = taken(sheet, at, most);
    const reply = await ask(callText(sheet, part));
    if (reply.stopped) return { stopped: true };
    if (reply.status === 0) return { away: true };
    const found = reply.ok ? told(reply, sheet, part) : null;
    if (!found && (reply.ok || isTooMuch(reply)) && part.length > 1) {
      most = Math.floor(part.length / 2);
      continue;
    }
    if (!found && !reply.ok && !isTooMuch(reply)) return { problem: reply.problem };
    const { names, answers } = found || { names: null, answers: [refused(sheet, part[0], reply)] };
    if (!keep(at, answers, names)) return { stopped: true };
    at += part.length;
    most = Math.min(AT_ONCE, most * 2);
  }
  return {};
}
