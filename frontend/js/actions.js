// Everything that a button, a field or a link can set going.

import { store } from "./store.js";
import * as api from "./api.js";
import { asWords, isBlank, toBody, withPositions } from "./question.js";
import { toHash } from "./link.js";
import { sentHead, wholeHead } from "./words.js";
import { typeSign } from "./field.js";
import { jobOf } from "./jobs.js";
import { start as startJob } from "./shop.js";
import { headActions } from "./head-actions.js";
import { paperActions } from "./paper.js";

const TYPING = 350;
const THEN = 400;
let pause = 0;
let turn = 0;

function say(text) {
  const line = document.getElementById("status");
  line.textContent = "";
  setTimeout(() => { line.textContent = text; }, 50);
}

function focusOn(id) {
  const found = document.getElementById(id);
  if (!found) return;
  found.closest("details")?.setAttribute("open", "");
  found.focus();
  found.scrollIntoView({ block: "center" });
}

function remember() {
  const { question, head, chosen } = store.get();
  const hash = "#" + toHash(question, head, chosen);
  if (!isBlank(question) && hash !== location.hash) history.replaceState(null, "", hash);
}

// Positions come after the answer, so that the move is there at once and the schedule a moment later.
async function schedule(asked, mine) {
  const { answer, chosen } = store.get();
  if (!answer || (answer.setups[chosen] || {}).positions) return;
  const body = withPositions(asked, answer, chosen);
  const reply = body && await api.solve(body);
  if (!reply || !reply.ok || mine !== turn || store.get().chosen !== chosen) return;
  const now = store.get().answer;
  const setups = now.setups.map((setup, at) => (at === chosen ? { ...setup, positions: reply.data.setups[at]?.positions || null } : setup));
  store.set({ answer: { ...now, setups } });
}

// Without a connection the page says so, but never takes the cursor from somebody who is typing.
function refused(problem, loud) {
  const told = loud || problem.status === 0;
  store.set({ busy: false, answer: null, saved: null, unsure: !told, problem: told ? problem : null });
  if (loud) setTimeout(() => focusOn("problem"));
}

// `loud` when the operator asked for the answer: then what is wrong is said and takes focus. While typing it stays quiet.
async function solve({ loud = false, chosen = 0 } = {}) {
  clearTimeout(pause);
  const { question, head } = store.get();
  const mine = ++turn;
  if (isBlank(question) && !loud) return store.set({ answer: null, problem: null, unsure: false, busy: false });
  const asked = toBody(question, sentHead(head));
  store.set({ busy: true });
  const reply = await api.solve(asked);
  if (mine !== turn) return;
  if (!reply.ok) return refused(reply.problem, loud);
  const answer = reply.data;
  const first = Math.min(chosen, answer.setups.length - 1);
  store.set({
    answer, asked, chosen: first, problem: null, unsure: false, busy: false,
    saved: reply.saved || null, version: answer.service_version,
  });
  remember();
  say(answer.setups[first].summary);
  setTimeout(() => mine === turn && schedule(asked, mine), loud ? 0 : THEN);
}

function go({ view }) {
  store.set({ view });
  window.scrollTo(0, 0);
  setTimeout(() => document.querySelector("#main h1")?.focus());
}

export const actions = {
  say, focusOn, solve, go,
  skip: () => document.getElementById("main").focus(),
  focus: ({ on }) => focusOn(on),
  theme: ({ theme }) => store.set({ theme }),
  set: (patch) => store.set(patch),

  // A field of the question changed: the answer follows a moment after the last key.
  ask(patch) {
    store.set({ question: { ...store.get().question, ...patch }, shared: null });
    clearTimeout(pause);
    pause = setTimeout(solve, TYPING);
  },
  choose({ at }) {
    store.set({ chosen: Number(at), shared: null });
    remember();
    const { answer, asked } = store.get();
    say(answer.setups[Number(at)].summary);
    schedule(asked, turn);
    focusOn("move");
  },
  open({ question, head, chosen }) {
    const mine = store.get();
    const other = JSON.stringify(wholeHead(head)) !== JSON.stringify(wholeHead(mine.head));
    if (other) store.set({ ownHead: mine.ownHead || { head: mine.head, headName: mine.headName } });
    const { diameter } = mine.question;
    store.set({ question: { diameter, ...question }, head: wholeHead(head), ...(other ? { headName: "" } : {}), view: "setup" });
    solve({ loud: true, chosen });
  },
  connected(online) {
    store.set({ online });
    say(online ? "The connection is back." : "No connection to the service.");
    if (online && (store.get().saved || store.get().problem?.status === 0)) solve({ chosen: store.get().chosen });
  },
  askPart(name, value) {
    actions.ask({ part: { ...store.get().question.part, [name]: value } });
  },
  async cut() {
    const { asked, chosen, question } = store.get();
    await schedule(asked, turn);
    const setup = store.get().answer.setups[chosen];
    if (!setup.positions) return say("The schedule of cuts is not here yet. Try again in a moment.");
    startJob({ title: asWords(question), asked, setup, hash: location.hash });
  },
  async start() {
    if (jobOf(store.get())) store.set({ view: "shop" });
    const reply = await api.heads();
    if (reply.ok) store.set({ ready: reply.data.heads, version: reply.data.service_version });
    if (!location.hash) solve();
  },
  sign: ({ for: id, sign }) => typeSign(id, sign),
  ...headActions({ solve, go, say, focusOn }),
  ...paperActions({ say, focusOn }),
};
