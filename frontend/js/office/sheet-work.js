// A routing sheet on its way through the service: read, asked part by part, stopped, gone on with, saved.

import { store } from "../store.js";
import { saveFile } from "../file.js";
import { say, focusOn } from "../document.js";
import { count, headLine, wholeHead } from "../words.js";
import { addressFor, askSheet, stop } from "./sheet-ask.js";
import { decode } from "./decode.js";
import { readSheet, row } from "./records.js";
import { answered, answeredName } from "./sheet-out.js";
import { workColumns } from "./sheet-groups.js";
import { run } from "./sheet-run.js";
import { remember } from "./words-in-link.js";

const LOUD = 4;
const LIKELY = /divis|teeth|tooth|number|count|holes|z(?:ä|ae|a)hne|^z$/i;
const EMPTY = "There is nothing in it yet. Choose a file, or paste the lines with their heading.";
const KEPT = "dividing.sheet";
let turn = 0;

export const patch = (more) => store.set({ sheet: { ...store.get().sheet, ...more } });

// The sheet outlives the way to another page and back, not the tab: other people's routings are no business of the next visitor.
function keepText(given) {
  try {
    sessionStorage.setItem(KEPT, JSON.stringify(given));
  } catch { /* too long to keep */ }
}

export function lastText() {
  try {
    return JSON.parse(sessionStorage.getItem(KEPT));
  } catch {
    return null;
  }
}

function fault(text, field) {
  store.set({ sheet: { status: "faulty", fault: { field, text } } });
  setTimeout(() => focusOn("problem"));
}

// A sheet that does not say what to divide: the operator says which column does.
function opened(given) {
  const sheet = readSheet(given.text);
  if (!sheet.heading || !sheet.lines.length) return null;
  const column = Math.max(0, sheet.heading.cells.findIndex((title) => LIKELY.test(title)));
  return { ...given, ...sheet, column, unsaid: !workColumns(sheet.heading).length };
}

// Text from a file or a paste; asked at once unless it has to be said first which column counts.
export function take(given, field, begin = true) {
  const sheet = opened(given);
  if (!sheet) return fault(given.text.trim() ? "It has a heading but no lines under it, or cannot be read. Begin with a heading such as ref,divisions." : EMPTY, field);
  turn += 1;
  stop();
  keepText(given);
  store.set({ sheet: { read: sheet, answers: [], names: [], status: sheet.unsaid ? "unsaid" : "ready" } });
  if (begin && !sheet.unsaid) start();
  else if (begin) setTimeout(() => focusOn("sheet-column"));
}

export async function takeFile(file) {
  const { text, note, wrong } = decode(new Uint8Array(await file.arrayBuffer()));
  if (wrong) return fault(wrong, "sheet-file");
  take({ text, note, name: file.name }, "sheet-file");
}

export function nameColumn(column) {
  const { read } = store.get().sheet;
  const heading = read.heading.cells.map((title, at) => (at === column ? "divisions" : title));
  patch({ read: { ...read, column, unsaid: false, named: row(heading, read.parted) } });
  start();
}

function told(done, all, wrong) {
  return `${done} of ${count(all, "line", "lines")} answered${wrong ? `, ${wrong} to put right` : ""}.`;
}

export const wrongOf = (answers) => answers.filter(({ results }) => results.status !== "200").length;

function ended({ stopped, away, problem }) {
  const { read, answers } = store.get().sheet;
  const trouble = problem && (problem.detail || problem.title);
  // A sheet that is refused at once is wrong as a whole; later on, what has been answered stays.
  if (trouble && !answers.length) return fault(trouble, "sheet-paste");
  patch({ status: stopped || trouble ? "stopped" : away ? "away" : "done", trouble });
  say(`${trouble ? `${trouble} ` : stopped ? "Stopped. " : away ? "No connection. " : ""}${told(answers.length, read.lines.length, wrongOf(answers))}`);
  if (!away) setTimeout(() => focusOn("sheet-found"));
}

export function start() {
  const { head } = store.get();
  patch({ answers: [], names: [], head: wholeHead(head), headLine: headLine(head) });
  remember("office", {}, head);
  return goOn();
}

// From the first line that has no answer yet, on the head that the others were worked out on.
export async function goOn() {
  const { read, answers, head } = store.get().sheet;
  const mine = ++turn;
  patch({ status: "running", trouble: null });
  let quarter = 0;
  const keep = (_, more, names) => {
    if (mine !== turn) return false;
    const all = [...store.get().sheet.answers, ...more];
    patch({ answers: all, names: names || store.get().sheet.names });
    const now = Math.floor((LOUD * all.length) / read.lines.length);
    if (now > quarter && now < LOUD) say(told(all.length, read.lines.length, wrongOf(all)));
    quarter = now;
    return true;
  };
  const end = await run(read, answers.length, { ask: (text) => askSheet(addressFor(head), text), keep });
  if (mine === turn) ended(end);
}

export function save() {
  const { read, answers, names } = store.get().sheet;
  saveFile(answeredName(read.name), "text/csv;charset=utf-8", answered(read, names.length ? names : ["status", "problem"], answers));
  say("The answered sheet is saved as a file.");
}
