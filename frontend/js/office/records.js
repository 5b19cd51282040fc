// A sheet of cells taken apart without changing it: where each line of it begins and ends, line breaks within quotes
// included. The rules are those of the service, so that the page can cut a long sheet where the service would. Pure.

const SPAN = 50;
const LONGEST = 131072;
const BREAK = /\r\n|\n|\r/g;

const cellOf = (parted) => new RegExp(`(?:"([^"]*(?:""[^"]*)*)"|([^"${parted}\\r\\n][^${parted}\\r\\n]*|))(${parted}|\\r\\n|\\n|\\r|$)`, "y");

// Where each written line begins, and the end of the last.
function linesOf(text) {
  const starts = [0, ...[...text.matchAll(BREAK)].map((found) => found.index + found[0].length)];
  if (starts.at(-1) !== text.length) starts.push(text.length);
  return starts;
}

// The cells from `from` on and where they end; null where a quote is not closed, or closed and written on.
function cellsFrom(text, from, cell) {
  const cells = [];
  cell.lastIndex = from;
  for (;;) {
    const found = cell.exec(text);
    if (!found) return null;
    const [, quoted, plain, after] = found;
    cells.push(quoted === undefined ? plain : quoted.replaceAll('""', '"'));
    if (cells.at(-1).length > LONGEST) return null;
    if (!after || after === "\n" || after[0] === "\r") return { cells, to: cell.lastIndex };
  }
}

function heard(text) {
  const first = text.split(/[\r\n]+/).find((line) => line.trim()) || "";
  const outside = first.replace(/"[^"]*"/g, "");
  const [commas, semicolons, tabs] = [",", ";", "\t"].map((sign) => outside.split(sign).length);
  if (tabs > commas && tabs > semicolons) return "\t";
  return semicolons > commas ? ";" : ",";
}

// [{cells, fault, from, to}] of every line, blank ones too. A line that cannot be read stands whole in its first cell.
function* recordsOf(text, parted, begin) {
  const starts = linesOf(text);
  const cell = cellOf(parted);
  for (let at = starts.indexOf(begin); at < starts.length - 1;) {
    const [from, next] = [starts[at], starts[at + 1]];
    const end = starts[Math.min(at + SPAN, starts.length - 1)];
    const found = cellsFrom(end === text.length ? text : text.slice(0, end), from, cell);
    yield found ? { ...found, from, fault: false } : { cells: [text.slice(from, next).replace(/[\r\n]+$/, "")], from, to: next, fault: true };
    const to = found ? found.to : next;
    while (at < starts.length - 1 && starts[at] < to) at += 1;
  }
}

const isBlank = ({ cells, fault }) => !fault && cells.length === 1 && cells[0] === "";

const cellText = (cell, parted) => (cell.includes(parted) || /["\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

export const row = (cells, parted) => cells.map((cell) => cellText(cell, parted)).join(parted) + "\r\n";

// Cells copied out of a spreadsheet come parted by tabs, which the service does not read.
function withoutTabs(text) {
  const records = [...recordsOf(text, "\t", 0)].map(({ cells, fault }) => (fault ? cells[0].split("\t") : cells));
  const parted = records.some((cells) => cells.some((cell) => cell.includes(","))) ? ";" : ",";
  return records.map((cells) => row(cells, parted)).join("");
}

// {text, parted, heading, lines: [{row, cells, fault, from, to}]}; `row` as a spreadsheet counts. A bare column of counts gets a heading.
export function readSheet(given, told) {
  let [text, skipped, begin] = [given.replace(/^\ufeff/, ""), 0, 0];
  const said = /^sep=([;,])[^\S\r\n]*(?:\r\n|\n|\r|$)/i.exec(text);
  if (said) begin = said[0].length;
  let parted = told || (said ? said[1] : heard(text));
  if (parted === "\t") {
    text = withoutTabs(text);
    parted = heard(text);
  }
  if (!said && !/[^\d\s]/.test(text) && /\d/.test(text)) [text, skipped] = [`divisions\r\n${text}`, 1];
  const all = [...recordsOf(text, parted, begin)].map((record, at) => ({ ...record, row: at + 1 - skipped }));
  const [heading, ...lines] = all.filter((record) => !isBlank(record));
  return { text, parted, heading: heading || null, lines, unheaded: skipped === 1 };
}
