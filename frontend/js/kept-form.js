// A form whose words are kept in the state under one name, so that they outlive a reload. Values go in as properties: what is
// being typed is never written over.

import { store } from "./store.js";

const listening = new WeakMap();

export function fillForm(form, values) {
  for (const box of form.querySelectorAll("input[type=text], select")) {
    const value = String(values[box.name] ?? "");
    if (box.value !== value && document.activeElement !== box) box.value = value;
  }
}

// `changed(name)` after each change, `asked()` when the form is sent; both find the new words in the state.
export function keepForm(root, id, key, { changed, asked }) {
  const known = listening.get(root) || new Set();
  if (known.has(id)) return;
  listening.set(root, known.add(id));
  root.addEventListener("input", ({ target }) => {
    if (target.form?.id !== id) return;
    store.set({ [key]: { ...store.get()[key], [target.name]: target.value } });
    changed(target.name);
  });
  root.addEventListener("submit", (event) => {
    if (event.target.id !== id) return;
    event.preventDefault();
    asked();
  });
}
