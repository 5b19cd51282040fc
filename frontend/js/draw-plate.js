// The very plate behind the crank: its circles to scale, the pin, the arms, the hole to go to.

import { at, circle as ring, dots, drawing, line, number, point, sector, text, turnArrow } from "./draw-svg.js";
import { count as counted } from "./words.js";

const RIM = 112;
const OUTERMOST = 102;
const INNERMOST = 40;
const HUB = 24;
const DOTS_AT_MOST = 600;

// The most holes lie outermost, at equal distances, as plates are drilled. Gives {holes: radius}.
function radii(circles) {
  const sorted = [...new Set(circles)].sort((a, b) => b - a);
  const gap = sorted.length > 1 ? Math.min(14, (OUTERMOST - INNERMOST) / (sorted.length - 1)) : 0;
  return { gap: gap || 14, of: new Map(sorted.map((holes, place) => [holes, OUTERMOST - gap * place])) };
}

const holeSize = (radius, holes, gap) => Math.max(0.5, Math.min(5.2, 0.62 * gap, (0.62 * 2 * Math.PI * radius) / holes));

function otherCircles({ gap, of }, inUse) {
  const rest = [...of].filter(([holes]) => holes !== inUse);
  const many = gap < 3 || rest.reduce((sum, [holes]) => sum + holes, 0) > DOTS_AT_MOST;
  return rest.map(([holes, radius]) => many ? ring("ring fine", radius) : dots("other", radius, holes, holeSize(radius, holes, gap) * 0.8));
}

function holesInUse(radius, holes, size, embraced) {
  return Array.from({ length: holes }, (_, hole) => {
    const [x, y] = point(hole / holes, radius);
    return ring(embraced.has(hole) ? "hole embraced" : "hole", size / 2, ` data-hole="${hole}"`, x, y);
  });
}

// One arm: its straight edge lies along `turn`, its body on the side away from the sector.
function arm(turn, side, reach) {
  const body = turn + side * 0.25;
  const [x, y] = point(body, 5);
  const [nearX, nearY] = point(turn, HUB - 4);
  const [tipX, tipY] = point(turn, reach);
  const [offX, offY] = point(body, 2.4);
  return `<path class="arm" data-turn="${turn.toFixed(5)}" d="M${number(nearX)} ${number(nearY)}L${number(tipX)} ${number(tipY)}` +
    `L${number(tipX + offX)} ${number(tipY + offY)}L${number(nearX + x)} ${number(nearY + y)}Z"/>`;
}

function sectorArms({ first, last, pitch, clear }) {
  const [start, end] = [first - clear * pitch, last + clear * pitch];
  return {
    under: sector("sector", HUB, RIM, start, end),
    over: [arm(start, -1, RIM + 3), arm(end, 1, RIM + 3), ring("hub", HUB - 4)],
  };
}

// Where there is no room for all counts, the first four and the last.
function counts({ from, spaces, holes, radius }) {
  const room = (2 * Math.PI * 121) / holes;
  const steps = Math.abs(spaces);
  const all = room >= 12 && steps <= 24;
  return Array.from({ length: steps + 1 }, (_, count) => count)
    .filter((count) => all || count === steps || (count < 4 && room >= 12) || count === 0)
    .map((count) => {
      const turn = (from + Math.sign(spaces) * count) / holes;
      const [x, y] = point(turn, 121);
      return line("leader", at(turn, radius + 3), at(turn, 115)) + text("count", x, y + 3.4, count);
    });
}

const plainWords = (words, y) => words.map((line, row) => text("note", 0, y + 13 * row, line));

function explanation(spaces, direct) {
  const steps = Math.abs(spaces);
  return plainWords([
    "A space is the step from hole to hole. The pin's own",
    `hole is 0: it is left, not stepped into. ${counted(steps, "space")}`,
    direct ? `on is the hole marked ${steps}.` : `reach hole ${steps}, so the arms embrace ${steps + 1} holes.`,
  ], 142);
}

function describe({ circles, circle, from, spaces, armed, next }) {
  const rest = circles.filter((holes) => holes !== circle);
  const others = rest.length ? ` The other circles have ${rest.join(", ")} holes.` : "";
  if (!spaces) return `The pin is in hole ${from} and comes back to it.${others}`;
  const arms = !armed ? "" : ` The sector arms embrace ${Math.abs(spaces) + 1} holes.`;
  const way = spaces < 0 ? "anticlockwise" : "clockwise";
  return `The pin is in hole ${from}; ${counted(Math.abs(spaces), "space")} ${way} on is hole ${next}.${arms}${others}`;
}

export function drawPlate({ circles, circle, from = 0, spaces = 0, turns = 0, direct = false, arms: armed = !direct, explain = false }) {
  const all = circles.includes(circle) ? circles : [...circles, circle];
  const laid = radii(all);
  const radius = laid.of.get(circle);
  const size = Math.max(1.2, holeSize(radius, circle, laid.gap));
  const steps = spaces || 0;
  const next = (((from + steps) % circle) + circle) % circle;
  const [first, last] = steps < 0 ? [from + steps, from] : [from, from + steps];
  const embraced = new Set(Array.from({ length: steps ? last - first + 1 : 0 }, (_, on) => (((first + on) % circle) + circle) % circle));
  const clear = Math.min(0.45, 0.2 + (size / 2) * circle / (2 * Math.PI * radius));
  const arms = steps && armed
    ? sectorArms({ first: first / circle, last: last / circle, pitch: 1 / circle, clear }) : { under: "", over: ring("hub", HUB - 4) };
  const [pinX, pinY] = point(from / circle, radius);
  const [nextX, nextY] = point(next / circle, radius);
  const mark = Math.max(size * 0.75, 3.2);
  return drawing("plate-drawing", explain ? [-130, -130, 260, 306] : [-130, -130, 260, 260],
    direct ? `Direct plate of ${circle} holes` : `Plate, circle of ${circle} holes`,
    describe({ circles: all, circle, from, spaces: steps, armed, next }), [
      ring("rim", RIM), arms.under, otherCircles(laid, circle), ring("ring in-use", radius),
      holesInUse(radius, circle, size, embraced), arms.over,
      steps ? wayToGo(steps, first / circle, last / circle) : "",
      ring("next", mark + 1.8, ` data-hole="${next}"`, nextX, nextY), ring("pin", mark, ` data-hole="${from}"`, pinX, pinY),
      turns ? text("turns", 0, 5, `+${turns}`) : "",
      explain && steps ? [counts({ from, spaces: steps, holes: circle, radius }), explanation(steps, direct)] : "",
    ]);
}

const wayToGo = (steps, start, end) => turnArrow("way", 30, start, end, steps < 0, 4);
