// Markup with everything from outside escaped. html`<p>${name}</p>` gives a Safe; raw() vouches for markup made here,
// such as a drawing; mount() puts a Safe into the page, touching nothing when nothing has changed.

class Safe {
  constructor(markup) { this.markup = markup; }
  toString() { return this.markup; }
}

const ESCAPES = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

export function escape(text) {
  return String(text).replace(/[&<>"']/g, (sign) => ESCAPES[sign]);
}

function markupOf(value) {
  if (value === null || value === undefined || typeof value === "boolean") return "";
  if (value instanceof Safe) return value.markup;
  if (Array.isArray(value)) return value.map(markupOf).join("");
  return escape(value);
}

// A yes or no is said only as the value of an attribute: aria-pressed="${chosen}"; elsewhere `condition && html`…`` leaves nothing.
export function html(strings, ...values) {
  const said = (value, before) => (typeof value === "boolean" && before.endsWith('="') ? String(value) : markupOf(value));
  return new Safe(strings.reduce((built, text, at) => built + said(values[at - 1], built) + text));
}

export function raw(markup) {
  return new Safe(String(markup));
}

const shown = new WeakMap();

function place(element) {
  const active = document.activeElement;
  if (!active || !active.id || !element.contains(active)) return null;
  const typed = typeof active.selectionStart === "number" && active.type !== "number";
  return { id: active.id, from: typed ? active.selectionStart : null, to: typed ? active.selectionEnd : null };
}

function restore(spot) {
  const again = spot && document.getElementById(spot.id);
  if (!again) return;
  again.focus({ preventScroll: true });
  if (spot.from !== null && again.setSelectionRange) again.setSelectionRange(spot.from, spot.to);
}

const unfolded = (element) => [...element.querySelectorAll("details[id][open]")].map(({ id }) => id);

// Gives true when the element was written anew. Focus goes back to the element that has the same id, and what was unfolded stays so.
export function mount(element, safe) {
  const markup = markupOf(safe);
  if (shown.get(element) === markup) return false;
  const [spot, open] = [place(element), unfolded(element)];
  element.innerHTML = markup;
  shown.set(element, markup);
  for (const id of open) document.getElementById(id)?.setAttribute("open", "");
  restore(spot);
  return true;
}
