// Change gears by place.

import { html, raw } from "./html.js";
import { drawTrain } from "./draw-train.js";
import { plateWay } from "./words.js";

export const byPlace = (places) => html`<dl class="gears">${places.map(([place, teeth]) => html`<div><dt>${place}</dt><dd>${teeth}</dd></div>`)}</dl>`;

export const gearList = ({ spindle, worm, stud, idlers }) =>
  byPlace([["Spindle", spindle], ...(stud ? [["Stud, first", stud[0]], ["Stud, second", stud[1]]] : []), ["Worm side", worm], ["Idlers", idlers]]);

export const gears = ({ gearing }) => gearing ? html`<h3>Change gears</h3>${gearList(gearing)}
  <p>The plate turns <strong>${plateWay(gearing)}</strong>: turn the crank and watch the plate before you cut.</p><figure>${raw(drawTrain(gearing))}</figure>` : "";
