// One state for the page, its parts listed in DEVELOPERS.md. A change fires "change".

const PREFIX = "dividing.";
const KEPT = ["question", "head", "headName", "ownHead", "heads", "theme", "jobs", "shop", "check", "angles", "class", "office"];

export function recall(name, otherwise = null) {
  try {
    const text = localStorage.getItem(PREFIX + name);
    return text === null ? otherwise : JSON.parse(text);
  } catch {
    return otherwise;
  }
}

// Kept answers give way to what cannot be asked for again.
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

// False when the browser keeps nothing: the page then works for the moment only.
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

const allKept = () => Object.fromEntries(KEPT.map((name) => [name, recall(name)]).filter(([, value]) => value !== null));

class Store extends EventTarget {
  #state;

  constructor(first) {
    super();
    this.#state = { ...first, ...allKept() };
  }

  get() { return this.#state; }

  set(patch) {
    const changed = Object.keys(patch).filter((name) => patch[name] !== this.#state[name]);
    if (!changed.length) return;
    this.#state = { ...this.#state, ...patch };
    for (const name of changed) if (KEPT.includes(name)) keep(name, this.#state[name]);
    this.dispatchEvent(new Event("change"));
  }
}

export const store = new Store({
  question: { kind: "divisions", divisions: "" }, head: {}, headName: "", heads: [], chosen: 0, online: true, theme: "auto",
});

// What was kept since this document last looked; the question typed here stays.
export const recallKept = () => store.set({ ...allKept(), question: store.get().question });
