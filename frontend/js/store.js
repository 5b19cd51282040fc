// One state for the whole page. A change fires "change" with the names that changed in `detail`.
//
//   view      "setup" | "shop" | "check" | "angles" | "head" | …: what fills the screen
//   question  what the operator asks: {kind: "divisions"|"angle"|"angles"|"part", divisions, angle, count, angles,
//             tolerance, every, diameter, part: {kind, …}}, all as typed
//   head      the head as the contract writes it; headName  the operator's name for it; ownHead  {head, headName} while a
//             link lends another
//   heads     [{name, head}] kept by the operator
//   answer    the last answer of /v1/solve, or null; its chosen setup has `positions` once they have come
//   chosen    which of answer.setups is in use
//   problem   the last refusal, or null; saved  when a stored answer was made (ISO), or null
//   busy      a question is on its way; online  the service was reached the last time
//   asked     the body of the request that gave `answer`
//   theme     "auto" | "light" | "dark"
//   class, office  what those documents keep

const PREFIX = "dividing.";
// Each document keeps what it needs under a name of its own; the head is everybody's.
const KEPT = ["question", "head", "headName", "ownHead", "heads", "theme", "jobs", "shop", "check", "angles", "class", "office"];

export function recall(name, otherwise = null) {
  try {
    const text = localStorage.getItem(PREFIX + name);
    return text === null ? otherwise : JSON.parse(text);
  } catch {
    return otherwise;
  }
}

// Kept answers give way to what cannot be asked for again: heads and counts.
function makeRoom() {
  for (const name of Object.keys(localStorage)) if (name.startsWith(`${PREFIX}answer.`)) localStorage.removeItem(name);
}

function write(name, value) {
  try {
    localStorage.setItem(PREFIX + name, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

// False when the browser keeps nothing (private window, full, forbidden): the page then works for the moment only.
export function keep(name, value) {
  if (write(name, value)) return true;
  if (name.startsWith("answer.")) return false;
  try {
    makeRoom();
  } catch { /* the store itself is forbidden */ }
  return write(name, value);
}

export function forget(name) {
  try {
    localStorage.removeItem(PREFIX + name);
  } catch { /* nothing was kept */ }
}

class Store extends EventTarget {
  #state;

  constructor(first) {
    super();
    this.#state = { ...first };
    for (const name of KEPT) {
      const value = recall(name);
      if (value !== null) this.#state[name] = value;
    }
  }

  get() {
    return this.#state;
  }

  set(patch) {
    const changed = Object.keys(patch).filter((name) => patch[name] !== this.#state[name]);
    if (!changed.length) return;
    this.#state = { ...this.#state, ...patch };
    for (const name of changed) if (KEPT.includes(name)) keep(name, this.#state[name]);
    this.dispatchEvent(new CustomEvent("change", { detail: changed }));
  }
}

export const store = new Store({
  view: "setup",
  question: { kind: "divisions", divisions: "" },
  head: {},
  headName: "",
  heads: [],
  answer: null,
  asked: null,
  chosen: 0,
  problem: null,
  saved: null,
  busy: false,
  online: true,
  theme: "auto",
});

// What was kept since this document last looked; what is typed here stays.
export function recallKept() {
  const found = KEPT.filter((name) => name !== "question").map((name) => [name, recall(name)]);
  store.set(Object.fromEntries(found.filter(([, value]) => value !== null)));
}
