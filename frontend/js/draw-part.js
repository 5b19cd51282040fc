// The part seen from its end, 200 across. `sizes` is what the service gives to draw from, in the operator's unit.

import { at, circle, drawing, line, number, point, text } from "./draw-svg.js";
import { bevel, helix, tilted } from "./draw-part-side.js";

const RADIUS = 100;
const TEETH_DRAWN = 150;
const NUMBERED = 40;
const TURN = 2 * Math.PI;

const each = (count, make) => Array.from({ length: count }, (_, order) => make(order));
const outline = (points, kind = "body") => `<path class="${kind}" d="M${points.map(([turn, radius]) => at(turn, radius)).join("L")}Z"/>`;
const ray = (turn, from, to, kind = "thin") => line(kind, at(turn, from), at(turn, to));

// Dimension lines under the picture, one below the other: [words, length in the picture].
function dimensions(list, unit, scale, top) {
  return list.filter(([, size]) => size > 0).map(([words, size], order) => {
    const [half, y] = [size * scale / 2, top + 22 * order];
    return `<path class="thin" d="M${number(-half)} ${y - 4}v8M${number(half)} ${y - 4}v8M${number(-half)} ${y}H${number(half)}"/>` +
      text("size", 0, y - 5, `${words} ${Number(size.toFixed(unit === "in" ? 4 : 3))} ${unit}`);
  });
}

function whole(title, parts, list, unit, scale) {
  const sized = dimensions(list, unit, scale, RADIUS + 26);
  return drawing("part-drawing", [-124, -118, 248, 236 + 22 * sized.length], title, list.map(([words, size]) => `${words} ${size} ${unit}`).join(", "), [parts, sized]);
}

function gear({ teeth, outside, pitch, root, flank }, unit) {
  const scale = RADIUS / (outside / 2);
  const drawn = teeth > NUMBERED ? [flank[0], flank[Math.floor(flank.length / 2)], flank.at(-1)] : flank;
  const side = (sign, points) => points.map(([radius, half]) => [sign * half / TURN, radius * scale]);
  const tooth = [...side(-1, drawn), ...side(1, [...drawn].reverse())];
  const points = each(teeth, (order) => tooth.map(([turn, radius]) => [order / teeth + turn, radius])).flat();
  const parts = teeth > TEETH_DRAWN ? [circle("body", RADIUS), circle("thin", root / 2 * scale)] : [outline(points)];
  return whole(`Gear of ${teeth} teeth`, [parts, circle("thin dashed", pitch / 2 * scale), circle("hub", 12)],
    [["outside", outside], ["pitch", pitch], ["root", root]], unit, scale);
}

// Where the round is too small for full corners, what is left of it stays between the flats.
function flats({ sides, across_flats: across, round, corners }, unit) {
  const most = Math.max(round, corners);
  const scale = RADIUS / (most / 2);
  const reach = Math.min(round, corners) / 2;
  const half = Math.acos(Math.min(1, across / 2 / reach)) / TURN;
  const size = number(reach * scale);
  const path = each(sides, (order) => `${order ? "L" : "M"}${at(order / sides - half, reach * scale)}L${at(order / sides + half, reach * scale)}` +
    `A${size} ${size} 0 0 1 ${at((order + 1) / sides - half, reach * scale)}`).join("");
  return whole(`${sides} flats`, [`<path class="body" d="${path}Z"/>`, circle("thin dashed", round / 2 * scale)],
    [[sides % 2 ? "twice centre to flat" : "across flats", across], ["round", round]], unit, scale);
}

function holes({ diameter, centre, holes: places, hole_diameter: bore }, unit) {
  const scale = 84 / (diameter / 2);
  const size = bore ? bore / 2 * scale : Math.min(7, 84 * Math.PI / places.length / 2);
  const spots = places.map(([x, y], order) => {
    const [across, down] = [(x - centre[0]) * scale, -(y - centre[1]) * scale];
    const name = places.length <= NUMBERED ? text("mark", across * 1.22, down * 1.22 + 4, order + 1) : "";
    return circle("bore", size, "", across, down) + name;
  });
  return whole(`${places.length} holes on a circle`, [circle("thin dashed", 84), `<path class="thin" d="M-8 0H8M0-8V8"/>`, spots],
    [["circle", diameter]], unit, scale);
}

function dial({ diameter, divisions, label_every: every }, unit) {
  if (!diameter || divisions > 720) return "";
  const inner = (order) => (order % every === 0 ? 82 : order % (every / 2 || 1) === 0 ? 87 : 92);
  const lines = each(divisions, (order) => ray(order / divisions, inner(order), RADIUS));
  const numbers = each(divisions / every <= NUMBERED ? Math.ceil(divisions / every) : 0, (order) => {
    const [x, y] = point(order * every / divisions, 72);
    return text("mark", x, y + 4, order * every);
  });
  return whole(`Dial of ${divisions} lines`, [circle("body", RADIUS), lines, numbers], [["rim", diameter]], unit, RADIUS / (diameter / 2));
}

function spline({ form, teeth, major, minor, width }, unit) {
  if (form !== "straight") return "";
  const scale = RADIUS / (major / 2);
  const half = (across) => Math.asin(Math.min(1, width / across)) / TURN;
  const key = [[-half(minor), minor], [-half(major), major], [half(major), major], [half(minor), minor]];
  const bottom = number(minor / 2 * scale);
  const path = each(teeth, (order) => {
    const corners = key.map(([turn, across]) => at(order / teeth + turn, across / 2 * scale)).join("L");
    return `${order ? "L" : "M"}${corners}A${bottom} ${bottom} 0 0 1 ${at((order + 1) / teeth - half(minor), minor / 2 * scale)}`;
  }).join("");
  return whole(`Spline of ${teeth} keys`, [`<path class="body" d="${path}Z"/>`, circle("thin dashed", minor / 2 * scale)],
    [["over keys", major], ["at the bottom", minor], ["key", width]], unit, scale);
}

function flutes({ turns, diameter }, unit) {
  const spaces = turns.map((turn, order) => {
    const gap = (turns[order + 1] ?? 1) - turn;
    const [x, y] = point(turn + gap / 2, 66);
    return ray(turn, 0, RADIUS, "body") + text("mark", x, y + 4, `${Number((gap * 360).toFixed(2))}°`);
  });
  return whole(`${turns.length} flutes, unequal`, [circle("body", RADIUS), spaces], diameter ? [["diameter", diameter]] : [], unit, diameter ? 200 / diameter : 1);
}

const KINDS = {
  __proto__: null,
  spur_gear: gear, helical_gear: gear, flats, bolt_circle: holes, dial, spline, reamer: flutes, helix, bevel_gear: bevel, end_teeth: tilted,
};

export const drawPart = (kind, sizes, unit) => KINDS[kind] && sizes ? KINDS[kind](sizes, unit) : "";
