// What a button, a field or a link of the first document sets going.

import { store } from "./store.js";
import * as api from "./api.js";
import { asWords, isBlank, toBody, withPositions } from "./question.js";
import { borrow, fromHash, toHash } from "./link.js";
import { sentHead } from "./words.js";
import { focusOn, say } from "./document.js";
import { jobOf } from "./jobs.js";
import { start as startJob } from "./shop.js";
import { paperActions } from "./paper.js";

const TYPING = 350;
const THEN = 400;
let pause = 0;
let turn = 0;

function remember() {
  const { question, head, chosen } = store.get();
  const hash = "#" + toHash(question, head, chosen);
  if (!isBlank(question) && hash !== location.hash) history.replaceState(null, "", hash);
}

// Positions come a moment later, so that the move is there at once.
async function schedule(asked, mine) {
  const { answer, chosen } = store.get();
  if (!answer || answer.setups[chosen]?.positions) return;
  const body = withPositions(asked, answer, chosen);
  const reply = body && await api.solve(body);
  if (!reply?.ok || mine !== turn || store.get().chosen !== chosen) return;
  const now = store.get().answer;
  const setups = now.setups.map((setup, at) => (at === chosen ? { ...setup, positions: reply.data.setups[at]?.positions || null } : setup));
  store.set({ answer: { ...now, setups } });
}

// A lost connection is told, but never takes the cursor from somebody who is typing.
function refused(problem, loud) {
  const told = loud || problem.status === 0;
  store.set({ busy: false, answer: null, saved: null, unsure: !told, problem: told ? problem : null });
  if (loud) setTimeout(() => focusOn("problem"));
}

// `loud` when the operator asked: then what is wrong is said and takes focus. While typing it stays quiet.
async function solve({ loud = false, chosen = 0 } = {}) {
  clearTimeout(pause);
  const { question, head } = store.get();
  const mine = ++turn;
  if (isBlank(question) && !loud) return store.set({ answer: null, saved: null, problem: null, unsure: false, busy: false });
  const asked = toBody(question, sentHead(head));
  store.set({ busy: true });
  const reply = await api.solve(asked);
  if (mine !== turn) return;
  if (!reply.ok) return refused(reply.problem, loud);
  const answer = reply.data;
  const first = Math.min(chosen, answer.setups.length - 1);
  store.set({ answer, asked, chosen: first, problem: null, unsure: false, busy: false, saved: reply.saved || null });
  remember();
  say(answer.setups[first].summary);
  setTimeout(() => mine === turn && schedule(asked, mine), loud ? 0 : THEN);
}

export const actions = {
  solve,
  // The answer follows a moment after the last key.
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
  askPart(name, value) {
    actions.ask({ part: { ...store.get().question.part, [name]: value } });
  },
  async cut() {
    const { asked, chosen, question } = store.get();
    await schedule(asked, turn);
    const setup = store.get().answer.setups[chosen];
    if (!setup.positions) return focusOn("no-cuts");
    startJob({ title: asWords(question), asked, setup });
  },
  ...paperActions,
};

export function link(hash) {
  const found = fromHash(hash);
  if (!found) return false;
  const mine = store.get();
  borrow(found.head);
  store.set({ question: { diameter: mine.question.diameter, ...found.question }, view: "setup" });
  solve({ loud: true, chosen: found.chosen });
  return true;
}

export function connected(online) {
  if (online && (store.get().saved || store.get().problem?.status === 0)) solve({ chosen: store.get().chosen });
}

export const renewed = () => solve({ chosen: store.get().chosen });

export function start() {
  if (jobOf(store.get())) store.set({ view: "shop" });
  if (!turn) solve();
}
