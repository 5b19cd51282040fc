// Change gears by place.

import { html } from "./html.js";
import { plateWay } from "./words.js";
import { trainDrawing } from "./drawings.js";

export function gearPlaces(gearing) {
  const { spindle, worm, stud, idlers } = gearing;
  const places = [["Spindle", spindle]];
  if (stud) places.push(["Stud, first", stud[0]], ["Stud, second", stud[1]]);
  places.push(["Worm side", worm]);
  places.push(["Idlers", idlers]);
  return places;
}

export function gears(setup) {
  if (!setup.gearing) return "";
  return html`<h3>Change gears</h3><dl class="gears">${gearPlaces(setup.gearing).map(([place, teeth]) => html`<div><dt>${place}</dt><dd>${teeth}</dd></div>`)}</dl>
    <p>The plate turns <strong>${plateWay(setup.gearing)}</strong>: turn the crank and watch the plate before you cut.</p>${trainDrawing(setup.gearing)}`;
}
