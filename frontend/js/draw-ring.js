// The work seen from its end: where the cuts come, which are made, which is being made.

import { arc, at, circle as ring, drawing, text } from "./draw-svg.js";

const RADIUS = 100;
const MARKS_AT_MOST = 720;

// One path for any number of marks; `turns` are their places round the work.
function marks(kind, turns, inner, outer) {
  if (!turns.length) return "";
  return `<path class="${kind}" data-marks="${turns.length}" d="${turns.map((turn) => `M${at(turn, inner)}L${at(turn, outer)}`).join("")}"/>`;
}

// Past what the eye can part, a band stands for the marks.
function bands(turns, now) {
  const end = turns[now] ?? 1;
  return ring("band", 92) + (end > 0 ? end < 1 ? arc("band done", 92, 0, end) : ring("band done", 92) : "");
}

// `angles` in degrees, in the order of cutting; `now` counts from 0, and cuts before it are done.
export function drawRing({ angles, now, reading = "", label = "" }) {
  const turns = angles.map((degrees) => (((degrees / 360) % 1) + 1) % 1);
  const many = turns.length > MARKS_AT_MOST;
  const here = turns[now];
  return drawing("ring-drawing", [-116, -116, 232, 232], label || `${angles.length} divisions of the work`,
    here === undefined ? "All are made." : `${now} made; the next stands at ${reading || "its place"}.`, [
      ring("blank", RADIUS),
      many ? bands(turns, now) : [marks("todo", turns.slice(now), 86, 98), marks("done", turns.slice(0, now), 80, 100)],
      here === undefined ? "" : `<path class="now" data-turn="${here.toFixed(6)}" d="M${at(here, 74)}L${at(here, 104)}"/>` +
        `<path class="tool" d="M${at(here, 103)}L${at(here - 0.012, 114)}L${at(here + 0.012, 114)}Z"/>`,
      reading ? text("reading", 0, 8, reading) : "",
    ]);
}
