// The map of the numbers: a cell for each, coloured and patterned by the method that answers first. Pure.

import { html } from "../html.js";
import { seconds } from "../words.js";

export const BLOCK = 500;
export const KINDS = {
  direct: "Direct", plain: "Plain", differential: "Differential", compound: "Compound", dial: "By the dial", near: "Within the tolerance", gap: "Not reached",
};
const SPOKEN = { direct: "direct", plain: "plain", differential: "differential", compound: "compound", dial: "by the dial", nearest: "nearest hole" };

export const kindOf = ({ exact, method, within_tolerance: within }) => (exact ? method : within ? "near" : "gap");

// What a screen reader says of a cell, the number first.
export function spoken(each) {
  const kind = kindOf(each);
  if (kind === "gap") return `${each.divisions}: not reached${each.worst_seconds ? `, off by up to ${seconds(each.worst_seconds)}` : " exactly"}`;
  const blocks = each.every > 1 ? `, ${each.every} spaces a move` : "";
  return `${each.divisions}: ${SPOKEN[each.method]}${blocks}, ${kind === "near" ? `off by up to ${seconds(each.worst_seconds)}, within the tolerance` : "exact"}`;
}

export const swatch = (kind) => html`<span class="swatch k-${kind}" aria-hidden="true"></span>`;

function cell(each, at, link) {
  const { divisions } = each;
  return html`<span role="gridcell"><a id="n-${divisions}" class="k-${kindOf(each)}" href="${link(divisions)}" data-do="leave" data-n="${divisions}"
    tabindex="${divisions === at ? "0" : "-1"}" aria-label="${spoken(each)}">${divisions}<span class="band"></span></a></span>`;
}

// A row for every ten, so that a number is found as in a table; what is missing before the first is left blank.
function decade(cells, at, link) {
  const first = cells[0].divisions;
  const tens = first - (first % 10);
  return html`<div role="row" class="decade"><span role="rowheader" class="tens">${tens}<span class="unseen"> to ${tens + 9}</span></span>
    <span class="units" role="presentation">${Array.from({ length: first % 10 }, () => html`<span class="blank" aria-hidden="true"></span>`)}${cells.map((each) => cell(each, at, link))}</span></div>`;
}

export const blockOf = (number) => Math.floor(number / BLOCK);

export function blocks({ from, to }) {
  return Array.from({ length: blockOf(to) - blockOf(from) + 1 }, (_, on) => {
    const block = blockOf(from) + on;
    return { block, from: Math.max(from, block * BLOCK), to: Math.min(to, block * BLOCK + BLOCK - 1) };
  });
}

function blockButtons(answer, shown) {
  const all = blocks(answer);
  if (all.length < 2) return "";
  return html`<div class="row unprinted" role="group" aria-label="Which numbers the map shows">${all.map(({ block, from, to }) => html`<button type="button" id="block-${block}"
    data-do="showBlock" data-block="${block}" aria-pressed="${block === shown}">${from === to ? from : `${from}–${to}`}</button>`)}</div>`;
}

export function mapView(answer, at, link) {
  const shown = blockOf(at);
  const cells = answer.numbers.filter(({ divisions }) => blockOf(divisions) === shown);
  return html`<section class="sheet map-sheet" aria-labelledby="map-title"><h2 id="map-title">The numbers ${cells[0].divisions} to ${cells.at(-1).divisions}</h2>
    <p class="hint unprinted" id="map-hint">Choose a number to see its setting. With the keyboard: arrow keys, then Enter.</p>${blockButtons(answer, shown)}
    <div role="grid" id="map" class="map" aria-labelledby="map-title" aria-describedby="map-hint">${byTens(cells).map((row) => decade(row, at, link))}</div></section>`;
}

function byTens(cells) {
  const rows = [];
  for (const each of cells) {
    if (!rows.length || each.divisions % 10 === 0) rows.push([]);
    rows.at(-1).push(each);
  }
  return rows;
}

export function legend({ counts, within, gaps }, tolerance) {
  const all = { ...counts, near: within, gap: gaps.length };
  return html`<ul class="legend" id="legend">${Object.entries(KINDS).filter(([kind]) => kind !== "near" || tolerance).map(([kind, name]) => html`<li>${swatch(kind)}
    <span>${name}</span> <strong>${all[kind]}</strong></li>`)}</ul>`;
}
