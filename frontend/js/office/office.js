// The document for the office: routing sheets, what a head can do, plates made in the shop.

import { openDocument } from "../document.js";
import { borrow, readHead } from "../link.js";
import { store } from "../store.js";
import { pageWords } from "./words-in-link.js";
import { connected, render as office, sheetActions } from "./sheet-view.js";

// #view=coverage&from=2&to=400&ratio=60: a view of this document, what it is asked, and the head.
function link(hash) {
  const words = new URLSearchParams(hash.slice(1));
  const view = words.get("view");
  if (!pageWords[view]) return false;
  const head = readHead(words);
  if (Object.keys(head).length) borrow(head);
  const asked = Object.fromEntries(pageWords[view].filter((name) => words.has(name)).map((name) => [name, words.get(name)]));
  store.set({ view, [`${view}Form`]: asked, [`${view}Asked`]: true });
  return true;
}

openDocument({
  name: "office", views: { office }, link, actions: sheetActions,
  later: { coverage: () => import("./coverage-view.js"), plate: () => import("./plate-view.js") },
  connected,
});
