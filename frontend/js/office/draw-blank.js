// The plate to be made, seen from the drill: its circle of holes, the first hole, which way the numbers run, zero and the axes. Pure.

import { at, circle, drawing, number, point, text, turnArrow } from "../draw-svg.js";

const RADIUS = 100;
const NAMED_AT_MOST = 24;

// Where each hole stands, in turns clockwise from the top, as it will be drilled.
export function turnsOf(schedule, { start = 0, sense, zero }) {
  const from = zero === "12 o'clock" ? 0 : 0.25;
  const way = sense === "clockwise" ? 1 : -1;
  return schedule.map(({ angle }) => from + way * (start + angle.degrees) / 360);
}

function numbers(turns) {
  const every = Math.ceil(turns.length / NAMED_AT_MOST);
  return turns.map((turn, hole) => [turn, hole + 1]).filter(([, hole]) => (hole - 1) % every === 0 && (hole === 1 || turns.length - hole >= every - 1))
    .map(([turn, hole]) => { const [x, y] = point(turn, RADIUS + 15); return text(hole === 1 ? "count first" : "count", x, y + 3.5, hole); });
}

const axes = `<path class="axis" d="M-92 0H92M0 92V-92"/><path class="head" d="M92 0l-7 -3v6zM0 -92l-3 7h6z"/>` + text("axis-name", 84, -6, "x") + text("axis-name", 8, -82, "y");

export function drawBlank({ holes, schedule }, placing, size) {
  const turns = turnsOf(schedule, placing);
  const largest = Math.max(0.7, Math.min(7, size ? RADIUS * size : 0.31 * (2 * Math.PI * RADIUS) / holes));
  const clockwise = placing.sense === "clockwise";
  const from = turns[0];
  const wide = Math.min(0.16, 3 / Math.max(holes, 8));
  const ends = clockwise ? [from, from + wide] : [from - wide, from];
  const way = turnArrow("way", RADIUS - 16, ends[0], ends[1], !clockwise, 4);
  return drawing("plate-drawing", [-128, -128, 256, 256], `Plate of ${holes} holes to drill`,
    `Hole 1 stands at ${placing.zero}${placing.start ? `, ${number(placing.start)} degrees on` : ""}; the numbers run ${placing.sense}.`, [
      circle("rim", RADIUS + 25), circle("ring in-use", RADIUS), axes,
      turns.map((turn, hole) => { const [x, y] = point(turn, RADIUS); return circle(hole ? "hole" : "hole embraced", largest, ` data-hole="${hole + 1}"`, x, y); }),
      circle("hub", 4), way, numbers(turns), `<path class="leader" d="M${at(from, RADIUS - 24)}L${at(from, RADIUS - 8)}"/>`,
    ]);
}
