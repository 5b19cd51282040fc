// The drawing of the plate that goes with a setup, and its caption.

import { html, raw } from "./html.js";
import { drawPlate } from "./draw-plate.js";
import { count, wholeHead } from "./words.js";

// A setup whose move changes from cut to cut is drawn at its first move.
function firstMove({ move, positions }) {
  if (move.holes !== null) return { from: 0, spaces: move.holes, turns: move.turns };
  const [start, first] = positions || [];
  return first ? { from: start.hole, spaces: first.holes, turns: first.turns } : { from: 0, spaces: 0, turns: 0 };
}

function caption(setup, { spaces, turns }) {
  const whole = turns ? `, after ${count(turns, "whole turn", "whole turns")}` : "";
  if (!spaces) return "Whole turns only: the pin drops back into the hole it came from.";
  if (setup.method === "direct") return `${count(spaces, "space")} on; the hole that the pin is in is not counted.`;
  const changing = setup.move.holes === null ? "The first move; each cut has its own. " : "";
  return `${changing}The pin (filled) goes to the ringed hole${whole}.`;
}

// The second move of compound indexing, from where its circle's pin stands.
function second(circles, { second_move: move }) {
  if (!move?.holes) return "";
  return html`<h3>Then, plate and crank together</h3><figure>${raw(drawPlate({ circles, circle: move.circle, from: 0, spaces: move.holes, turns: move.turns }))}</figure>`;
}

export function plateDrawing(setup, head) {
  if (!setup.move?.circle) return "";
  const whole = wholeHead(head);
  const direct = setup.method === "direct";
  const circles = direct ? whole.direct_circles : whole.plates[setup.move.plate - 1] || [setup.move.circle];
  const first = firstMove(setup);
  return html`<section class="sheet plate"><h2>${direct ? "The direct plate" : `Plate ${setup.move.plate}`}</h2>
    <figure>${raw(drawPlate({ circles, circle: setup.move.circle, ...first, direct, explain: first.spaces > 0 }))}<figcaption>${caption(setup, first)}</figcaption></figure>${second(circles, setup)}</section>`;
}
