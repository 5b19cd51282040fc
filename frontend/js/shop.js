// The screen for somebody at the machine: one job, one cut at a time, the count kept after every step.

import { focusOn, say, turnTo } from "./document.js";
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
let lastStep = 0;

const open = () => jobOf(store.get());
const shop = () => store.get().shop;

export function start(job) {
  addJob(job);
  store.set({ lost: null });
  turnTo("shop");
  toTop();
}

function announce() {
  const job = open();
  if (!job) return;
  const words = spoken(job, job.phase === "trial" || job.phase === "cut" ? rowOf(job) : null);
  say(words);
  speak(shop(), words);
}

function step(change, pattern) {
  const now = performance.now();
  if (now - lastStep < BOUNCE) return;
  lastStep = now;
  const job = open();
  const patch = change(job);
  changeJob(job.id, patch);
  shake(shop(), pattern);
  announce();
  if (patch.phase && patch.phase !== job.phase) toTop();
}

// A screen that differs altogether is read from its top.
function toTop() {
  window.scrollTo(0, 0);
  setTimeout(() => document.getElementById("shop-title")?.focus({ preventScroll: true }));
}

function away() {
  document.getElementById("shop-leave")?.close();
  stayAwake(false);
  store.set({ view: "jobs", shop: { ...shop(), open: null }, lost: null });
}

export const shopActions = {
  away,
  done: () => step(forward, 60),
  back: () => step(backward, [30, 60, 30]),
  trial: () => step(() => ({ phase: "trial", at: 0 }), 60),
  begin: () => step(() => ({ phase: "cut", at: 0 }), 60),
  tested: ({ way }) => changeJob(open().id, { tested: way }),
  aid: ({ aid }) => store.set({ shop: { ...shop(), [aid]: !shop()?.[aid] } }),
  opens: ({ dialog }) => document.getElementById(dialog).showModal(),
  closes: (_, pressed) => pressed.closest("dialog").close(),
  drop: ({ id }) => removeJob(id),
  finish: () => { const { id } = open(); away(); removeJob(id); },
  lost: () => { store.set({ lost: {} }); setTimeout(() => focusOn("lost-hole")); },
  found: () => { store.set({ lost: null }); toTop(); },
  goOn({ at }) {
    store.set({ lost: null });
    lastStep = 0;
    step((job) => Number(at) < job.count ? { at: Number(at) } : forward({ ...job, at: job.count - 1 }), 60);
    toTop();
  },
  show({ id }) {
    store.set({ shop: { ...shop(), open: id }, lost: null });
    turnTo("shop");
    toTop();
    announce();
  },
};

// A key held down repeats; only its first stroke is a step.
document.addEventListener("keydown", (event) => {
  if (event.repeat && (event.key === "Enter" || event.key === " ") && event.target.closest(".shop button")) event.preventDefault();
});

document.addEventListener("submit", (event) => {
  if (event.target.id !== "lost-form") return;
  event.preventDefault();
  askLocate(open(), new FormData(event.target));
});

const SCREENS = { ready: readyScreen, trial: cutScreen, cut: cutScreen, closing: closingScreen, done: doneScreen };

const leaving = ({ title }) => html`<dialog id="shop-leave" aria-labelledby="shop-leave-title"><h2 id="shop-leave-title">Leave ${title}?</h2>
  <p>The count is kept: you find the job again under Jobs.</p>
  <div class="shop-row"><button class="main" data-do="closes">Stay</button><button data-do="away">Leave</button></div></dialog>`;

const nothing = html`<h1 tabindex="-1" id="shop-title">No job is open</h1><p>Work out a setup, then take it to the machine.</p>
  <button data-do="go" data-view="setup">Set up</button>`;

export function render(root, state) {
  const job = jobOf(state);
  if (!job) return mount(root, nothing);
  stayAwake(true);
  const screen = state.lost ? lostScreen(job, state) : SCREENS[job.phase](job, state);
  return mount(root, html`<div class="shop" data-phase="${state.lost ? "lost" : job.phase}">${screen}${leaving(job)}</div>`);
}
