// The answered sheet as a file: every line in its place, with its answer, or with what became of it. Pure.

import { row } from "./records.js";

const FORMULA = /^(?:[\s\0]*[=+\-@＝＋－＠]|[\t\r\n])/;
const NUMBER = /^[+-]?[0-9]+(?:[.,][0-9]+)?$/;

// No cell may be run by the spreadsheet that opens the file; signed numbers stay numbers.
export function harmless(cell) {
  return FORMULA.test(cell) && !NUMBER.test(cell) ? `'${cell}` : cell;
}

// As many cells as the heading has; what is too many stays in the last.
function fitted(cells, wanted, parted) {
  if (cells.length > wanted) return [...cells.slice(0, wanted - 1), cells.slice(wanted - 1).join(parted)];
  return [...cells, ...Array(wanted - cells.length).fill("")];
}

export const NOT_ASKED = "Not asked: the work was stopped before this line.";

// `answers[at]` is what was told of `lines[at]`: its own cells as they came back and the results by name, or nothing yet.
export function answered({ heading, lines, parted }, results, answers) {
  const wanted = heading.cells.length;
  const rows = lines.map((line, at) => {
    const told = answers[at] || { own: fitted(line.cells, wanted, parted), results: { problem: NOT_ASKED } };
    return [...told.own, ...results.map((name) => told.results[name] ?? "")];
  });
  return "\ufeff" + [[...heading.cells, ...results], ...rows].map((cells) => row(cells.map(harmless), parted)).join("");
}

export const answeredName = (name) => `${(name || "sheet").replace(/\.[^.]{1,5}$/, "")}-answered.csv`;
