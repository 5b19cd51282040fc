// The answer in figures that read from two metres. Pure.

import { html } from "./html.js";
import { count, plural } from "./words.js";

const tile = (value, label) => html`<div class="tile${String(value).length > 5 ? " long" : ""}"><dt>${label}</dt><dd>${value}</dd></div>`;

function crankTiles(move) {
  const tiles = [];
  if (move.turns || !move.holes) tiles.push(tile(move.turns, plural(move.turns, "turn")));
  if (move.holes) tiles.push(tile(Math.abs(move.holes), plural(move.holes, "space") + (move.holes < 0 ? " back" : "")), tile(move.circle, "circle"));
  return tiles;
}

function dialTiles(dial) {
  const set = dial.set || dial.divisions;
  return [tile(dial.turns, plural(dial.turns, "turn")), tile(set, dial.set ? "then set the dial to" : "then dial divisions")];
}

const group = (tiles, heading) => html`<div>${heading && html`<h3>${heading}</h3>`}<dl class="tiles">${tiles}</dl></div>`;

// A setup without a constant move shows its first one.
function changing({ move, second_move: second, positions }) {
  const first = positions && positions[1];
  const note = html`<p>Every cut has its own move: follow the schedule${first ? html`. The first is:` : "."}</p>`;
  if (!first) return html`${note}${group([tile(move.circle, "circle"), second ? tile(second.circle, "then circle") : ""])}`;
  const one = { turns: first.turns, holes: first.holes, circle: move.circle };
  const two = second && first.second_holes !== null && { turns: 0, holes: first.second_holes, circle: second.circle };
  return html`${note}${two ? pair(one, two) : group(crankTiles(one))}`;
}

function pair(first, second) {
  const way = second.holes < 0 || second.turns < 0 ? "the opposite way" : "the same way";
  return html`${group(crankTiles(first), "First: the crank alone")}${second.holes || second.turns
    ? group(crankTiles(second), `Then: plate and crank together, ${way}`) : ""}`;
}

export function figures(setup) {
  if (setup.dial) return group(dialTiles(setup.dial));
  if (setup.method === "direct") {
    return group([tile(setup.move.holes, plural(setup.move.holes, "space")), tile(setup.move.circle, "direct plate")]);
  }
  if (setup.move.holes === null) return changing(setup);
  if (setup.second_move) return pair(setup.move, setup.second_move);
  return group(crankTiles(setup.move));
}

export function moveText(setup) {
  if (setup.dial) return `${count(setup.dial.turns, "turn")}, dial to ${setup.dial.set || setup.dial.divisions}`;
  const one = ({ turns, holes, circle }) => ([turns || !holes ? count(turns, "turn") : "",
    holes ? `${count(Math.abs(holes), "space")}${holes < 0 ? " back" : ""} on ${circle}` : ""].filter(Boolean).join(" and "));
  if (setup.move?.holes === null) return `A move of its own for every cut, on ${setup.move.circle}${setup.second_move ? ` and ${setup.second_move.circle}` : ""}`;
  if (setup.method === "direct") return `${count(setup.move.holes, "space")} on the ${setup.move.circle} direct plate`;
  return setup.second_move ? `${one(setup.move)}, then ${one(setup.second_move)}` : one(setup.move);
}
