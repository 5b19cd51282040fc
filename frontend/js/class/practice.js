// A sheet asked for, worked and marked. What the pupil typed is kept after every key, sheet by sheet; the service keeps nothing.
// state.class: {form, sheet, work: {key: {typed: {"3": {turns: "1"}}, marked}}}; `marked` is what was typed when it was marked.

import { ask } from "../api.js";
import { focusOn, say } from "../document.js";
import { store } from "../store.js";
import { sentHead } from "../words.js";
import { entriesOf } from "./claims.js";
import { toSheet } from "./sheet-link.js";

const SHEETS_KEPT = 8;
let turn = 0;

export const classOf = (state) => ({ form: { count: "12", level: "1", kinds: [] }, sheet: null, work: {}, ...state.class });
export const keyOf = (state) => JSON.stringify([classOf(state).sheet, sentHead(state.head)]);
export const workOf = (state) => classOf(state).work[keyOf(state)] || { typed: {}, marked: null };

const keep = (patch) => store.set({ class: { ...classOf(store.get()), ...patch } });
const body = (state) => ({ ...classOf(state).sheet, head: sentHead(state.head) });

function keepWork(patch) {
  const state = store.get();
  const [key, { work }] = [keyOf(state), classOf(state)];
  const others = Object.entries(work).filter(([name]) => name !== key).slice(0, SHEETS_KEPT - 1);
  keep({ work: Object.fromEntries([[key, { ...workOf(state), ...patch }], ...others]) });
}

export const edit = (patch) => keep({ form: { ...classOf(store.get()).form, ...patch } });

export function type(number, field, value) {
  const { typed } = workOf(store.get());
  keepWork({ typed: { ...typed, [number]: { ...typed[number], [field]: value } } });
}

// The sheet that is wanted, and its marks where it was marked before. `loud` when somebody asked for it.
export async function fetchSheet({ loud = false } = {}) {
  const state = store.get();
  if (!classOf(state).sheet) return;
  const mine = ++turn;
  store.set({ sheetBusy: true, sheetProblem: null, markProblem: null, marks: null });
  const { ok, data, problem, saved } = await ask("/v1/practice", body(state));
  if (mine !== turn) return;
  store.set({ sheetBusy: false, practice: ok ? { key: keyOf(state), ...data } : null, sheetProblem: problem || null, saved: saved || null });
  if (loud) {
    say(ok ? `${data.exercises.length} exercises.` : "");
    setTimeout(() => focusOn(ok ? "sheet-title" : "problem"));
  }
  if (ok && workOf(store.get()).marked) return fetchMarks();
}

async function fetchMarks({ loud = false } = {}) {
  const state = store.get();
  const mine = turn;
  const { marked } = workOf(state);
  const claims = entriesOf(state.practice.exercises, marked);
  const { ok, data, problem } = await ask("/v1/practice/mark", { ...body(state), claims });
  if (mine !== turn) return;
  store.set({ marks: ok ? data : null, markProblem: ok ? null : { ...problem, numbers: claims.map(({ number }) => number) } });
  if (!ok && problem.status !== 0) keepWork({ marked: null });
  if (!loud) return;
  say(ok ? data.summary.sentence : "");
  setTimeout(() => focusOn(ok ? "marks-title" : "problem"));
}

export function wantSheet(form, loud = true) {
  keep({ form, sheet: toSheet(form) });
  return fetchSheet({ loud });
}

export const practiceActions = {
  makeSheet: () => wantSheet(classOf(store.get()).form),
  otherSheet() {
    const { form } = classOf(store.get());
    const seed = Number(form.seed);
    return wantSheet({ ...form, seed: String(Number.isInteger(seed) && seed < 999999999 ? seed + 1 : 1) });
  },
  nextSheet() {
    const { seed, kinds, level } = store.get().marks.summary.next;
    return wantSheet({ ...classOf(store.get()).form, seed: String(seed), kinds, level: String(level) });
  },
  markSheet() {
    keepWork({ marked: workOf(store.get()).typed });
    return fetchMarks({ loud: true });
  },
  clearSheet() {
    keepWork({ typed: {}, marked: null });
    store.set({ marks: null, markProblem: null });
    setTimeout(() => focusOn("sheet-title"));
  },
  printSheet({ key }) {
    store.set({ withKey: key === "with" });
    setTimeout(() => window.print());
  },
};

export function connected(online) {
  const { saved, sheetProblem, markProblem } = store.get();
  if (online && (saved || sheetProblem?.status === 0 || markProblem?.status === 0)) fetchSheet();
}
