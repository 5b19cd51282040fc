// Puts the page together: which view fills it, the links after #, and one listener for every button.

import { mount } from "./html.js";
import { store } from "./store.js";
import { connection } from "./api.js";
import { actions } from "./actions.js";
import { fromHash } from "./link.js";
import { nav, foot, notices } from "./frame.js";
import { fetchTheRest, show } from "./views.js";

const part = (id) => document.getElementById(id);
let waiting = false;

function draw() {
  waiting = false;
  const state = store.get();
  document.documentElement.dataset.theme = state.theme;
  document.body.dataset.view = state.view;
  mount(part("nav"), nav(state));
  mount(part("notices"), notices(state));
  mount(part("foot"), foot(state));
  show(part("main"), state, actions);
}

function drawSoon() {
  if (waiting) return;
  waiting = true;
  queueMicrotask(draw);
}

// A button says what it does in data-do, with whatever else it needs beside it.
function clicked(event) {
  const pressed = event.target.closest("[data-do]");
  const act = pressed && actions[pressed.dataset.do];
  if (!act) return;
  event.preventDefault();
  act(pressed.dataset, pressed);
}

function openLink() {
  const found = fromHash(location.hash);
  if (found) actions.open(found);
}

store.addEventListener("change", drawSoon);
connection.addEventListener("change", () => actions.connected(connection.online));
document.addEventListener("click", clicked);
window.addEventListener("hashchange", openLink);

actions.redraw = drawSoon;
draw();
openLink();
actions.start();
fetchTheRest();

// A page from plain http has no service worker; the browser's own cache must do.
if ("serviceWorker" in navigator) navigator.serviceWorker.register("sw.js").catch(() => {});
