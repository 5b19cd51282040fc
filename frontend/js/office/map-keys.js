// The keyboard on the map: one stop for the tab key, arrows from number to number, pages and ends as in any table.

const STEPS = { ArrowLeft: -1, ArrowRight: 1, ArrowUp: -10, ArrowDown: 10, PageUp: -100, PageDown: 100 };

// The number to go to from `now`, or null when the key means nothing here. Pure.
export function target({ key, ctrlKey }, now, { from, to }) {
  const tens = now - (now % 10);
  if (key === "Home") return ctrlKey ? from : Math.max(from, tens);
  if (key === "End") return ctrlKey ? to : Math.min(to, tens + 9);
  if (!STEPS[key]) return null;
  const next = now + STEPS[key];
  // A step up or down that leads off the map is not taken; a page goes as far as there is map.
  if (key.startsWith("Page")) return Math.min(to, Math.max(from, next));
  return next < from || next > to ? now : next;
}

function stopAt(map, link) {
  map.querySelector('[tabindex="0"]')?.setAttribute("tabindex", "-1");
  link.setAttribute("tabindex", "0");
}

export function moveTo(number) {
  const link = document.getElementById(`n-${number}`);
  if (!link) return false;
  stopAt(link.closest("#map"), link);
  link.focus();
  return true;
}

// `range()` gives {from, to}; `turn(number)` shows the part of the map with that number.
export function listenToMap(root, range, turn) {
  root.addEventListener("keydown", (event) => {
    const link = event.target.closest?.("#map a");
    if (!link || event.altKey || event.metaKey) return;
    const next = target(event, Number(link.dataset.n), range());
    if (next === null) return;
    event.preventDefault();
    if (!moveTo(next)) turn(next);
  });
  root.addEventListener("focusin", ({ target: link }) => {
    if (link.matches("#map a")) stopAt(link.closest("#map"), link);
  });
}
