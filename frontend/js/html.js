// Markup with everything from outside escaped. html`<p>${name}</p>` gives a Safe; raw() vouches for markup made here, such as a drawing.

class Safe {
  constructor(markup) { this.markup = markup; }
  toString() { return this.markup; }
}

const ESCAPES = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

export const escape = (text) => String(text).replace(/[&<>"']/g, (sign) => ESCAPES[sign]);

function markupOf(value) {
  if (value === null || value === undefined || typeof value === "boolean") return "";
  if (value instanceof Safe) return value.markup;
  if (Array.isArray(value)) return value.map(markupOf).join("");
  return escape(value);
}

// A yes or no is said only as an attribute's value, aria-pressed="${chosen}"; elsewhere `condition && html`…`` leaves nothing.
export function html(strings, ...values) {
  const said = (value, before) => (typeof value === "boolean" && before.endsWith('="') ? String(value) : markupOf(value));
  return new Safe(strings.reduce((built, text, at) => built + said(values[at - 1], built) + text));
}

export const raw = (markup) => new Safe(String(markup));

export const items = (list) => list.map((each) => html`<li>${each}</li>`);

export const sheet = (title, body) => html`<section class="sheet"><h2>${title}</h2>${body}</section>`;

// A table that scrolls by itself; `kind` gives the class of a row.
export const table = (label, heads, rows, kind = () => "") => html`<div class="wide" tabindex="0" role="region" aria-label="${label}"><table><thead><tr>${heads.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
  <tbody>${rows.map(([first, ...rest], at) => html`<tr class="${kind(at)}"><th scope="row">${first}</th>${rest.map((cell) => html`<td>${cell}</td>`)}</tr>`)}</tbody></table></div>`;

const shown = new WeakMap();

function place(element) {
  const active = document.activeElement;
  if (!active || !active.id || !element.contains(active)) return null;
  const typed = typeof active.selectionStart === "number";
  return { id: active.id, from: typed ? active.selectionStart : null, to: typed ? active.selectionEnd : null };
}

function restore(spot) {
  const again = spot && document.getElementById(spot.id);
  if (!again) return;
  again.focus({ preventScroll: true });
  if (spot.from !== null && again.setSelectionRange) again.setSelectionRange(spot.from, spot.to);
}

const unfolded = (element) => [...element.querySelectorAll("details[id][open]")].map(({ id }) => id);

// True when written anew; what has not changed is not touched. Focus goes back to the same id, and what was unfolded stays so.
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
