// The answer in figures that read from two metres. Pure.

import { html } from "./html.js";
import { count } from "./words.js";

function tile(value, label, before = "") {
  return html`<div class="tile${String(value).length > 5 ? " long" : ""}"><dt>${label}</dt><dd>${before}${value}</dd></div>`;
}

function plural(number, one, many) {
  return Math.abs(number) === 1 ? one : many;
}

function crankTiles(move) {
  if (move.holes === null || move.turns === null) return [tile(move.circle, "circle")];
  const tiles = [];
  if (move.turns || !move.holes) tiles.push(tile(move.turns, plural(move.turns, "turn", "turns")));
  if (move.holes) tiles.push(tile(Math.abs(move.holes), plural(move.holes, "space", "spaces"), move.holes < 0 ? "−" : ""), tile(move.circle, "circle"));
  return tiles;
}

function dialTiles(dial) {
  const set = dial.set || dial.divisions;
  return [tile(dial.turns, plural(dial.turns, "turn", "turns")), tile(set, dial.set ? "then set the dial to" : "then dial divisions")];
}

function group(tiles, heading) {
  return html`<div class="move-group">${heading && html`<h3>${heading}</h3>`}<dl class="tiles">${tiles}</dl></div>`;
}

export function figures(setup) {
  if (setup.dial) return group(dialTiles(setup.dial));
  if (setup.method === "direct") {
    return group([tile(setup.move.holes, plural(setup.move.holes, "space", "spaces")), tile(setup.move.circle, "direct plate")]);
  }
  if (setup.second_move) {
    const way = setup.second_move.holes < 0 || setup.second_move.turns < 0 ? "the opposite way" : "the same way";
    return html`${group(crankTiles(setup.move), "First: the crank alone")}${group(crankTiles(setup.second_move),
      `Then: plate and crank together, ${way}`)}`;
  }
  return group(crankTiles(setup.move));
}

export function moveText(setup) {
  if (setup.dial) return `${count(setup.dial.turns, "turn", "turns")}, dial to ${setup.dial.set || setup.dial.divisions}`;
  const one = ({ turns, holes, circle }) => (holes === null || turns === null ? `a new move at every cut, circle ${circle}`
    : [turns || !holes ? count(turns, "turn", "turns") : "", holes ? `${count(holes, "space", "spaces")} on ${circle}` : ""].filter(Boolean).join(" and "));
  if (setup.method === "direct") return `${count(setup.move.holes, "space", "spaces")} on the ${setup.move.circle} direct plate`;
  return setup.second_move ? `${one(setup.move)}, then ${one(setup.second_move)}` : one(setup.move);
}
