// The numbers that a head does not reach, and the one circle and the one gear that would reach most of them. Pure.

import { html } from "../html.js";
import { count } from "../words.js";

const NAMED = 12;

// 127, 131, 137 to 139: neighbours are drawn together.
export function runs(numbers) {
  const found = [];
  for (const number of numbers) {
    const last = found.at(-1);
    if (last && last[1] === number - 1) last[1] = number;
    else found.push([number, number]);
  }
  return found.map(([first, end]) => (first === end ? String(first) : end === first + 1 ? `${first}, ${end}` : `${first} to ${end}`)).join(", ");
}

export function gapsView({ gaps }, tolerance) {
  if (!gaps.length) return html`<section class="sheet"><h2>No gaps</h2><p>Every number is reached${tolerance ? " within what you allow" : ""}.</p></section>`;
  return html`<section class="sheet"><h2>Not reached: ${gaps.length}</h2>
    <p class="hint">${tolerance ? "Neither exact nor within what you allow." : "No exact setting. The map leads to the nearest one."}</p>
    <p id="gaps" class="numbers" ${gaps.length > 60 ? html`tabindex="0" role="region" aria-label="Numbers not reached"` : ""}>${runs(gaps)}</p></section>`;
}

const named = (numbers) => `${numbers.slice(0, NAMED).join(", ")}${numbers.length > NAMED ? " …" : ""}`;

function best(list, name, title, none, more) {
  if (!list.length) return html`<div><h3>${title}</h3><p>${none}</p></div>`;
  const [first, ...others] = list;
  return html`<div><h3>${title}</h3><p class="best"><strong>${name(first)}</strong> makes ${count(first.closes, "number", "numbers")} exact that now are not: ${named(first.numbers)}</p>${more ? more(first) : ""}
    ${others.length ? html`<p>Next best:</p><ul>${others.map((each) => html`<li><strong>${name(each)}</strong>: ${each.closes} (${named(each.numbers)})</li>`)}</ul>` : ""}</div>`;
}

const make = ({ circle }) => html`<p class="unprinted"><button type="button" id="make-circle" data-do="makeCircle" data-holes="${circle}">Make this plate</button></p>`;

export function nextView({ next, gaps }) {
  if (!gaps.length) return "";
  if (!next) return html`<section class="sheet"><h2>What to own next</h2><p>Too much to work out for so many numbers at once. Ask for fewer numbers and it stands here.</p></section>`;
  return html`<section class="sheet" id="own-next"><h2>What to own next</h2>
    ${best(next.circles, ({ circle }) => `A circle of ${circle} holes`, "One more circle", "No single circle makes any of them exact.", make)}
    ${best(next.gears, ({ gear }) => `A gear of ${gear} teeth`, "One more change gear", "No single gear makes any of them exact.")}
    <p class="hint">Each stands for itself: what two together close is not the sum of both.</p></section>`;
}
