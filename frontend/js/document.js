// A document of the site: nav, notices, a view and the foot round one state, one listener for every button, the link after #.
// What openDocument takes is told in DEVELOPERS.md.

import { html, mount } from "./html.js";
import { recallKept, store } from "./store.js";
import { connection, heads, reaches } from "./api.js";
import { typeSign } from "./field.js";
import { PLACES, foot, nav, notices } from "./frame.js";

const MOMENT = 1500;
const QUESTION = /^#(?:.*&)?(?:divisions|angles?|part)=/;
const part = (id) => document.getElementById(id);
const ready = {};
let own = {};
let waiting = false;

export function say(text) {
  part("status").textContent = "";
  setTimeout(() => { part("status").textContent = text; }, 50);
}

export function focusOn(id) {
  const found = part(id);
  if (!found) return;
  found.closest("details")?.setAttribute("open", "");
  found.focus();
  found.scrollIntoView({ block: "center" });
}

const isHere = (view) => Object.hasOwn(ready, view) || Object.hasOwn(own.later || {}, view);

// On plain http a document out of reach would put the browser's own error in place of this one.
async function leave(href, title) {
  if (navigator.serviceWorker?.controller || await reaches(href)) return location.assign(href);
  store.set({ astray: title });
  say(`${title} cannot be fetched without a connection.`);
}

// Back leads to the view before.
export function turnTo(view, address) {
  if (view !== store.get().view) history.pushState({ view }, "", address);
  store.set({ view, astray: null });
}

export function go({ view }, pressed) {
  if (!isHere(view)) return leave(pressed?.href || PLACES[view][1], pressed?.textContent || PLACES[view][0]);
  // A question stays in the address; without one the view does.
  turnTo(view, QUESTION.test(location.hash) ? undefined : view === own.name ? location.pathname : `#${view}`);
  window.scrollTo(0, 0);
  setTimeout(() => document.querySelector("#main h1")?.focus());
}

export const actions = {
  say, focusOn, go,
  skip: () => part("main").focus(),
  focus: ({ on }) => focusOn(on),
  theme: ({ theme }) => store.set({ theme }),
  set: (patch) => store.set(patch),
  sign: ({ for: id, sign }) => typeSign(id, sign),
  leave: (_, link) => leave(link.href, link.textContent),
  ownHead() {
    store.set({ ...store.get().ownHead, headDraft: null, headProblem: null, ownHead: null });
    own.renewed?.();
  },
};

async function fetchView(name) {
  ready[name] ||= (await own.later[name]()).render;
}

const absent = (title, words) => html`<h1 tabindex="-1">${title}</h1><p class="wait">This part of the page ${words}</p>`;

function show(root, state) {
  const view = isHere(state.view) ? state.view : own.name;
  if (ready[view]) return ready[view](root, state, actions);
  mount(root, absent("One moment", "is being fetched."));
  fetchView(view).then(() => {
    drawSoon();
    setTimeout(() => root.querySelector("h1").focus());
  }, () => mount(root, absent("Not here yet", "could not be fetched. Come back to it when the connection is back.")));
}

function draw() {
  waiting = false;
  const state = store.get();
  part("dark").media = { dark: "all", light: "not all" }[state.theme] || "(prefers-color-scheme: dark)";
  document.body.dataset.view = state.view;
  mount(part("nav"), nav(state, own.name));
  mount(part("notices"), notices(state));
  mount(part("foot"), foot(state));
  show(part("main"), state);
}

function drawSoon() {
  if (!waiting) queueMicrotask(draw);
  waiting = true;
}

// What a button or a link does stands in its data-do.
function clicked(event) {
  const pressed = event.target.closest("[data-do]");
  const act = pressed && actions[pressed.dataset.do];
  if (!act || (pressed.href && (event.ctrlKey || event.metaKey || event.shiftKey))) return;
  event.preventDefault();
  act(pressed.dataset, pressed);
}

// A view by its name, the document's own words, or a question, which the first document answers.
function openLink() {
  const { hash } = location;
  const view = hash.slice(1);
  if (isHere(view)) return store.set({ view });
  if (Object.hasOwn(PLACES, view)) return location.replace(PLACES[view][1]);
  if (!own.link?.(hash) && QUESTION.test(hash)) location.replace(`./${hash}`);
}

export function openDocument(given) {
  own = given;
  Object.assign(ready, given.views);
  Object.assign(actions, given.actions);
  store.set({ view: given.name });
  store.addEventListener("change", drawSoon);
  connection.addEventListener("change", () => {
    const { online } = connection;
    store.set({ online, astray: null });
    say(online ? "The connection is back." : "No connection to the service.");
    given.connected?.(online);
  });
  document.addEventListener("click", clicked);
  window.addEventListener("popstate", ({ state }) => store.set({ view: state?.view || own.name }));
  window.addEventListener("hashchange", openLink);
  // Put aside by the browser meanwhile, it may show an old count or head.
  window.addEventListener("pageshow", ({ persisted }) => {
    if (!persisted) return;
    recallKept();
    given.renewed?.();
  });
  draw();
  openLink();
  given.start?.();
  // Asking for the ready-made heads shows at once whether the service is there.
  heads().then(({ ok, data }) => ok && store.set({ ready: data.heads }));
  setTimeout(() => Object.keys(given.later || {}).forEach((name) => fetchView(name).catch(() => {})), MOMENT);
  if ("serviceWorker" in navigator) navigator.serviceWorker.register("sw.js").catch(() => {});
}
