// The screen for somebody at the machine: one job, one cut at a time, the count kept after every step.
// start({title, asked, setup, hash}) begins a job and shows it; render(root, state, actions) draws state.shop.open.

import { html, mount } from "./html.js";
import { store } from "./store.js";
import { addJob, backward, changeJob, forward, jobOf, removeJob, rowOf } from "./jobs.js";
import { shake, speak, stayAwake } from "./shop-aids.js";
import { cutScreen } from "./shop-cut.js";
import { closingScreen, doneScreen, readyScreen } from "./shop-stages.js";
import { askLocate, lostScreen } from "./shop-lost.js";
import { spoken } from "./shop-words.js";

// A glove that bounces must not count two cuts.
const BOUNCE = 350;
const listening = new WeakSet();
let actions = null;
let lastStep = 0;

const open = () => jobOf(store.get());

export function start(job) {
  addJob(job);
  store.set({ view: "shop", lost: null });
  toTop();
}

function show(id) {
  store.set({ shop: { ...store.get().shop, open: id }, view: "shop", lost: null });
  toTop();
  announce();
}

function announce() {
  const job = open();
  if (!job) return;
  const words = spoken(job, job.phase === "trial" || job.phase === "cut" ? rowOf(job) : null);
  actions?.say(words);
  speak(store.get().shop, words);
}

function step(change, pattern) {
  const now = performance.now();
  if (now - lastStep < BOUNCE) return;
  lastStep = now;
  const job = open();
  const patch = change(job);
  const moved = patch.phase && patch.phase !== job.phase;
  changeJob(job.id, patch);
  shake(store.get().shop, pattern);
  announce();
  if (moved) toTop();
}

// A screen that differs altogether is read from its top.
function toTop() {
  window.scrollTo(0, 0);
  setTimeout(() => document.getElementById("shop-title")?.focus({ preventScroll: true }));
}

function leave(to) {
  document.getElementById("shop-leave")?.close();
  stayAwake(false);
  store.set({ view: to, shop: { ...store.get().shop, open: null }, lost: null });
}

const DO = {
  done: () => step(forward, 60),
  back: () => step(backward, [30, 60, 30]),
  trial: () => step(() => ({ phase: "trial", at: 0 }), 60),
  cut: () => step(() => ({ phase: "cut", at: 0 }), 60),
  tested: ({ way }) => changeJob(open().id, { tested: way }),
  aid: ({ aid }) => store.set({ shop: { ...store.get().shop, [aid]: !store.get().shop?.[aid] } }),
  asksLeave: () => document.getElementById("shop-leave").showModal(),
  stays: () => document.getElementById("shop-leave").close(),
  leave: () => leave("jobs"),
  finish: () => { const { id } = open(); leave("jobs"); removeJob(id); },
  lost: () => { store.set({ lost: {} }); setTimeout(() => document.getElementById("lost-hole")?.focus()); },
  found: () => { store.set({ lost: null }); toTop(); },
  goOn: ({ at }) => {
    store.set({ lost: null });
    lastStep = 0;
    step((job) => Number(at) < job.count ? { at: Number(at) } : forward({ ...job, at: job.count - 1 }), 60);
    toTop();
  },
  show: ({ id }) => show(id),
};

function clicked(event) {
  const pressed = event.target.closest("[data-shop]");
  if (!pressed) return;
  event.preventDefault();
  DO[pressed.dataset.shop](pressed.dataset);
}

// A key held down repeats; only its first stroke is a step.
function held(event) {
  if (event.repeat && (event.key === "Enter" || event.key === " ") && event.target.closest("[data-shop]")) event.preventDefault();
}

function submitted(event) {
  if (event.target.id !== "lost-form") return;
  event.preventDefault();
  askLocate(open(), new FormData(event.target), actions);
}

// For every root in which buttons of a job stand.
export function listen(root, given) {
  actions = given;
  if (listening.has(root)) return;
  listening.add(root);
  root.addEventListener("click", clicked);
  root.addEventListener("keydown", held);
  root.addEventListener("submit", submitted);
}

const SCREENS = { ready: readyScreen, trial: cutScreen, cut: cutScreen, closing: closingScreen, done: doneScreen };

const leaving = (job) => html`<dialog id="shop-leave" aria-labelledby="shop-leave-title"><h2 id="shop-leave-title">Leave ${job.title}?</h2>
  <p>The count is kept: you find the job again under Jobs.</p>
  <div class="shop-row"><button type="button" class="main" data-shop="stays">Stay</button><button type="button" data-shop="leave">Leave</button></div></dialog>`;

const nothing = html`<h1 tabindex="-1" id="shop-title">No job is open</h1><p>Work out a setup, then take it to the machine.</p>
  <button type="button" data-do="go" data-view="setup">Set up</button>`;

export function render(root, state, given) {
  listen(root, given);
  const job = jobOf(state);
  if (!job) return mount(root, nothing);
  stayAwake(true);
  const screen = state.lost ? lostScreen(job, state) : SCREENS[job.phase](job, state);
  return mount(root, html`<div class="shop" data-phase="${state.lost ? "lost" : job.phase}">${screen}${leaving(job)}</div>`);
}
