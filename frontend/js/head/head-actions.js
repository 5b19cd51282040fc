// The heads: started from a ready-made one, counted, checked by the service, kept by name, saved to a file and read back.

import { store } from "../store.js";
import { solve } from "../api.js";
import { focusOn, go, say } from "../document.js";
import { counted, fromDraft, toDraft } from "./head-form.js";
import { sentHead, wholeHead } from "../words.js";
import { saveFile } from "../file.js";

const HEADS_AT_MOST = 40;

function draft() {
  const { headDraft, head, headName } = store.get();
  return headDraft || toDraft(head, headName);
}

function edit(patch) {
  store.set({ headDraft: { ...draft(), ...patch }, headProblem: null });
}

function kept(heads, name, head) {
  return [{ name, head }, ...heads.filter((each) => each.name !== name)].slice(0, HEADS_AT_MOST);
}

// A file is from outside: only names and heads are taken from it, and the service judges a head when it is used.
function readHeads(text) {
  const found = JSON.parse(text).heads;
  return found.filter((each) => each && typeof each.name === "string" && each.head && typeof each.head === "object")
    .map(({ name, head }) => ({ name: name.slice(0, 60), head: sound(head) }));
}

function sound(head) {
  const whole = wholeHead(head);
  const numbers = (value) => (Array.isArray(value) ? value.filter((each) => typeof each === "number") : []);
  return {
    ...whole, plates: Array.isArray(whole.plates) ? whole.plates.map(numbers) : [], direct_circles: numbers(whole.direct_circles),
    change_gears: numbers(whole.change_gears), stop_circles: whole.stop_circles && numbers(whole.stop_circles),
  };
}

function take(head, headName) {
  store.set({ head, headName, headDraft: null, headProblem: null, ownHead: null, filled: null });
  go({ view: "setup" });
}

export const headActions = {
  edit,
  addPlate() {
    const plates = [...draft().plates, ""];
    edit({ plates });
    setTimeout(() => focusOn(`head-plate-${plates.length - 1}`));
  },
  dropPlate({ at }) {
    edit({ plates: draft().plates.filter((_, row) => row !== Number(at)), mounted: 1 });
    say(`Plate ${Number(at) + 1} taken off the list.`);
  },
  startFrom({ id }) {
    const { head } = store.get().ready.find((each) => each.id === id);
    store.set({ headDraft: toDraft(head, ""), headProblem: null, filled: true });
    say("The fields are filled in: change what differs, then use the head.");
    setTimeout(() => focusOn("head-name"));
  },
  async useHead() {
    const typed = draft();
    const head = sentHead(fromDraft(typed));
    const name = typed.name.trim().slice(0, 60);
    const reply = await solve({ work: { divisions: 2 }, head, limit: 1 });
    if (!reply.ok && reply.status !== 0) {
      store.set({ headProblem: reply.problem });
      return setTimeout(() => focusOn("problem"));
    }
    if (name) store.set({ heads: kept(store.get().heads, name, head) });
    take(head, name);
  },
  useKept: ({ at }) => take(store.get().heads[at].head, store.get().heads[at].name),
  // A glove hits the button beside it: the head that went can be had back.
  dropKept({ at }) {
    const { heads } = store.get();
    store.set({ heads: heads.filter((_, row) => row !== Number(at)), dropped: heads[at] });
    say("Taken off the list.");
    setTimeout(() => focusOn("put-back"));
  },
  putBack() {
    const { heads, dropped } = store.get();
    store.set({ heads: kept(heads, dropped.name, dropped.head), dropped: null });
    setTimeout(() => focusOn("use-0"));
  },
  useCount() {
    const found = counted(draft().crank || "", draft().rounds || "1");
    if (!found) return say("Give the crank turns that you counted.");
    edit({ ratio: String(found.ratio) });
    setTimeout(() => focusOn("head-ratio"));
  },
  saveHeads() {
    const { heads, head, headName } = store.get();
    const all = heads.length ? heads : [{ name: headName || "My head", head: wholeHead(head) }];
    saveFile("heads.json", "application/json", JSON.stringify({ heads: all }, null, 1));
  },
  async readHeads(file) {
    try {
      const found = readHeads(await file.text());
      const heads = found.reduceRight((all, each) => kept(all, each.name, each.head), store.get().heads);
      store.set({ heads, fileNote: found.length ? `${found.length} read from the file.` : "No heads in that file." });
    } catch {
      store.set({ fileNote: "That file holds no heads saved from this page. Nothing was changed." });
    }
    say(store.get().fileNote);
  },
};
