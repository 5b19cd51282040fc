// The document for the classroom: exercises to be worked or printed, and a handout.

import { openDocument } from "../document.js";
import { borrow } from "../link.js";
import { store } from "../store.js";
import { render as handout } from "./handout.js";
import { classOf, connected, edit, fetchSheet, practiceActions } from "./practice.js";
import { fromHash } from "./sheet-link.js";
import { render } from "./sheet-view.js";

function link(hash) {
  const found = fromHash(hash);
  if (!found) return false;
  borrow(found.head);
  store.set({ view: "class", class: { ...classOf(store.get()), form: found.form, sheet: found.sheet } });
  fetchSheet();
  return true;
}

// A first sheet has some number, so that it can be made with one tap.
function start() {
  if (!classOf(store.get()).form.seed) edit({ seed: String(1 + Math.floor(Math.random() * 9999)) });
  if (!store.get().sheetBusy) fetchSheet();
}

openDocument({ name: "class", views: { class: render, handout }, actions: practiceActions, link, start, connected, renewed: fetchSheet });
