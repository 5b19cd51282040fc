// The views by name; each is render(root, state, actions). What looking up and cutting need comes with the page. The rest is
// fetched a moment later, so that the first answer need not wait for it, and is there when the network goes.

import { html, mount } from "./html.js";
import { render as jobs } from "./jobs-view.js";
import { render as setup } from "./setup-view.js";
import { render as shop } from "./shop.js";

const MOMENT = 1500;
const ready = { setup, jobs, shop };
const LATER = {
  head: () => import("./head-view.js"),
  check: () => import("./check-view.js"),
  angles: () => import("./angles-view.js"),
  handout: () => import("./handout.js"),
  card: () => import("./jobcard.js"),
  part: () => import("./part-view.js"),
};

async function fetchView(name) {
  ready[name] ||= (await LATER[name]()).render;
}

const waiting = html`<h1 tabindex="-1">One moment</h1><p class="wait">This part of the page is being fetched.</p>`;
const missing = html`<h1 tabindex="-1">Not here yet</h1><p class="wait">This part of the page could not be fetched. Come back to it when the connection is back.</p>`;

export function show(root, state, actions) {
  const name = ready[state.view] || LATER[state.view] ? state.view : "setup";
  if (ready[name]) return ready[name](root, state, actions);
  mount(root, waiting);
  fetchView(name).then(() => {
    actions.redraw();
    setTimeout(() => root.querySelector("h1").focus());
  }, () => mount(root, missing));
}

export function fetchTheRest() {
  setTimeout(() => Object.keys(LATER).forEach((name) => fetchView(name).catch(() => {})), MOMENT);
}
