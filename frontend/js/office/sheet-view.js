// Routing sheets: a file or pasted lines in, every line answered, those to put right first, the sheet with its answers out.

import { html, mount } from "../html.js";
import { store } from "../store.js";
import { beside, marked, summary } from "../errors.js";
import { field } from "../field.js";
import { count, plural, wholeHead } from "../words.js";
import { deskTop } from "./desk-top.js";
import { exactView, grouped, offView, wrongView } from "./sheet-groups.js";
import { stop } from "./sheet-ask.js";
import { goOn, lastText, nameColumn, patch, save, start, take, takeFile, wrongOf } from "./sheet-work.js";

const SAMPLE = "ref,part,divisions,ratio\nOP10,take-up ratchet,64,\nOP20,\"cam, picking\",12,\nOP30,table work,17,90\n";
const INTRO = "A whole sheet of operations at once: every line comes back in its place, with how to set the head or with what is wrong with it.";
const LONG = 5000;
let pasted = "";

const parts = html`<div id="sheet-top"></div><div class="office"><div id="sheet-in"></div><div id="sheet-state"></div>
  <div id="sheet-lines-wrong"></div><div id="sheet-lines-off"></div><div id="sheet-lines-exact"></div></div>`;

function form(found) {
  return html`${summary(found)}<form id="sheet-form" class="sheet unprinted" novalidate>
    ${beside(found, "sheet-file")}<div class="row"><label class="button" for="sheet-file">Choose a CSV file</label><input type="file" id="sheet-file" class="unseen"
      accept=".csv,.txt,.tsv,text/csv,text/plain" ${marked(found, "sheet-file")}></div>
    ${field({ id: "sheet-paste", label: "Or paste the lines here", rows: 6, found, hint: "With the heading on top. Cells copied from a spreadsheet will do, or a bare column of numbers." })}
    <div class="row"><button class="main" id="sheet-go">Work out the lines</button></div>
    <details id="sheet-how"><summary>How a sheet is written</summary><div class="parts">
      <p>One line under the heading for each operation. A column <strong>divisions</strong> says how many, or <strong>angle</strong> with <strong>count</strong>, or <strong>angles</strong>;
        <strong>ref</strong> names the line. All other columns are your own and come back as they were.</p>
      <pre class="sample" tabindex="0" role="region" aria-label="A sheet as an example">${SAMPLE}</pre>
      <p>The head named above is used for every line that says nothing of a head. A line with a ratio, plates or another column of the head is worked out on that head alone.</p>
      <p>Commas or semicolons part the cells; both are read, and so are decimal commas in angles.</p></div></details></form>`;
}

function columnForm({ heading, lines, column, named }) {
  if (named) return "";
  return html`<form id="sheet-columns" class="sheet" novalidate><h2>Which column is it?</h2><p>No column is called divisions. Say which one holds the number of divisions.</p>
    <div class="field"><label for="sheet-column">Column with the divisions</label><select id="sheet-column" name="column">${heading.cells.map((title, at) => html`<option value="${at}"
      ${at === column ? html`selected` : ""}>${title.trim() || `Column ${at + 1}`} (first: ${(lines[0].cells[at] ?? "").slice(0, 30) || "empty"})</option>`)}</select></div>
    <div class="row"><button class="main" id="sheet-column-go">Take this column</button></div></form>`;
}

const TITLES = { ready: "Ready", running: "Being worked out", stopped: "Stopped", away: "No connection", done: "Answered" };

function buttons({ status, answers, read }, isOther) {
  const left = read.lines.length - answers.length;
  return html`${status === "running" ? html`<button type="button" id="sheet-stop" data-do="stopSheet">Stop</button>` : ""}
    ${status === "ready" ? html`<button type="button" class="main" id="sheet-start" data-do="startSheet">Work out ${count(read.lines.length, "line", "lines")}</button>` : ""}
    ${status === "stopped" && left ? html`<button type="button" class="main" id="sheet-on" data-do="goOnSheet">Go on with the other ${left}</button>` : ""}
    ${status !== "running" && answers.length ? html`<button type="button" class="${left ? "" : "main"}" id="sheet-save" data-do="saveSheet">Save the sheet as CSV</button>` : ""}
    ${isOther && status !== "running" ? html`<button type="button" id="sheet-again" data-do="startSheet">Work it out on the head above</button>` : ""}`;
}

function stateOf(sheet, head) {
  const { read, answers, status } = sheet;
  const wrong = wrongOf(answers);
  const isOther = answers.length > 0 && JSON.stringify(sheet.head) !== JSON.stringify(wholeHead(head));
  return html`<section class="sheet" aria-labelledby="sheet-found"><h2 id="sheet-found" tabindex="-1">${read.name || "Pasted lines"}: ${TITLES[status].toLowerCase()}</h2>
    ${read.note && html`<p class="note warn">${read.note}</p>`}${read.unheaded && html`<p>No heading: the numbers were taken for divisions.</p>`}
    ${sheet.trouble && html`<p class="note bad">${sheet.trouble}</p>`}
    <p><strong>${answers.length} of ${read.lines.length}</strong> ${plural(read.lines.length, "line")} answered${answers.length ? html`: ${answers.length - wrong} with a setting, <strong>${wrong}</strong> to put right` : ""}.
      ${status === "away" && "The page goes on by itself when the connection is back."}</p>
    ${status === "ready" ? "" : html`<progress max="${read.lines.length}" value="${answers.length}" aria-label="Lines answered"></progress>`}
    ${isOther ? html`<p class="note warn">These answers are for another head: ${sheet.headLine}.</p>` : ""}
    <div class="row unprinted">${buttons(sheet, isOther)}</div></section>`;
}

function showLines(root, { read, answers, all }) {
  const groups = grouped(read, answers);
  mount(root.querySelector("#sheet-lines-wrong"), wrongView(read, groups.wrong, all));
  mount(root.querySelector("#sheet-lines-off"), offView(read, groups.off));
  mount(root.querySelector("#sheet-lines-exact"), exactView(read, groups.exact));
}

// A browser takes minutes to put thousands of lines into a field as if they were typed; put in as a whole they are there at once.
function pasteWhole(event) {
  const text = event.target.id === "sheet-paste" && event.clipboardData?.getData("text/plain");
  if (!text || text.length < LONG) return;
  event.preventDefault();
  event.target.setRangeText(text, event.target.selectionStart, event.target.selectionEnd, "end");
  pasted = event.target.value;
}

function listen(root) {
  root.addEventListener("paste", pasteWhole);
  root.addEventListener("input", ({ target }) => { if (target.id === "sheet-paste") pasted = target.value; });
  root.addEventListener("change", ({ target }) => {
    if (target.id !== "sheet-file" || !target.files[0]) return;
    takeFile(target.files[0]);
    target.value = "";
  });
  root.addEventListener("submit", (event) => {
    if (event.target.id === "sheet-form") take({ text: pasted }, "sheet-paste");
    else if (event.target.id === "sheet-columns") nameColumn(Number(document.getElementById("sheet-column").value));
    else return;
    event.preventDefault();
  });
}

let listening = false;

export function render(root, state) {
  if (mount(root, parts) && !state.sheet && lastText()) setTimeout(() => take(lastText(), "sheet-paste", false));
  if (!listening) listen(root);
  listening = true;
  const sheet = state.sheet || {};
  mount(root.querySelector("#sheet-top"), deskTop(state, "Routing sheets", INTRO));
  const found = sheet.fault ? [sheet.fault] : [];
  if (mount(root.querySelector("#sheet-in"), form(found))) document.getElementById("sheet-paste").value = pasted;
  mount(root.querySelector("#sheet-state"), !sheet.read ? "" : sheet.status === "unsaid" ? columnForm(sheet.read) : stateOf(sheet, state.head));
  showLines(root, sheet.read ? sheet : { read: {}, answers: [] });
}

export const connected = (online) => online && store.get().sheet?.status === "away" && goOn();

export const sheetActions = { stopSheet: stop, startSheet: start, goOnSheet: goOn, saveSheet: save, allWrong: () => patch({ all: true }) };
