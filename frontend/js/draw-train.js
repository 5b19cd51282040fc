// The change gears from spindle to worm side, to scale, and which way each turns.

import { circle as ring, drawing, line, number, round, text, turnArrow } from "./draw-svg.js";

const IDLER_TEETH = 32;
const PER_TOOTH = 0.5;
const GAP = 22;
const APART = 58;

const radius = (teeth) => teeth * PER_TOOTH;

// Shafts in order of mesh. A shaft carries one gear, or two on a stud: `from` meshes with the shaft before, `to` with the next.
function shafts({ spindle, worm, stud, idlers }) {
  const idle = Array.from({ length: idlers }, () => ({ name: "idler", from: IDLER_TEETH, to: IDLER_TEETH, idle: true }));
  const double = stud ? [{ name: "stud", from: stud[1], to: stud[0] }] : [];
  return [{ name: "spindle", from: spindle, to: spindle }, ...idle, ...double, { name: "worm side", from: worm, to: worm }];
}

// Up and down by turns, so that a long train keeps within a narrow screen; gears touch at their pitch circles.
function placed(line) {
  const spots = [];
  line.forEach((shaft, order) => {
    const before = spots[order - 1];
    if (!before) return spots.push({ ...shaft, x: 0, y: 0, clockwise: true });
    const apart = radius(before.to) + radius(shaft.from);
    const tilt = line.length < 3 ? 0 : (order % 2 ? -1 : 1) * 0.5;
    spots.push({ ...shaft, x: before.x + apart * Math.cos(tilt), y: before.y + apart * Math.sin(tilt), clockwise: !before.clockwise });
  });
  return spots;
}

function gear(teeth, x, y, kind) {
  const size = radius(teeth);
  return ring(`gear ${kind}`, size, "", x, y) +
    round(`teeth ${kind}`, size, teeth, ` stroke-dasharray="0.5 0.5" data-teeth="${kind === "idle" ? 0 : teeth}"`, x, y);
}

// Gears in the spindle's plane lie behind, idlers too; those in the worm's plane in front.
function wheels({ from, to, x, y, idle, name }) {
  if (from !== to) return { behind: gear(from, x, y, "one"), before: gear(to, x, y, "front") };
  const drawn = gear(from, x, y, idle ? "idle" : name === "spindle" ? "one" : "front");
  return name === "worm side" ? { behind: "", before: drawn } : { behind: drawn, before: "" };
}

function sense({ from, to, x, y, clockwise }) {
  const reach = Math.max(6, radius(Math.max(from, to)) - 6);
  return ring("shaft", 2, "", x, y) +
    `<g transform="translate(${number(x)} ${number(y)})">${turnArrow("sense", reach, -0.11, 0.11, !clockwise, 3.4)}</g>`;
}

function named(spots) {
  return spots.flatMap(({ from, to, idle, name, x, y }) => {
    if (from === to) return [{ count: idle ? "any" : from, name, x, y }];
    const [driven, driving] = [{ count: from, name: "stud, second", x, y: y + radius(from) }, { count: to, name: "stud, first", x, y: y + radius(to) }];
    return [driven, driving];
  });
}

// Labels stand under the train, kept apart, each joined to its gear by a line.
function labels(spots, bottom) {
  const tags = named(spots);
  const wanted = tags.map((tag) => tag.x);
  wanted.forEach((x, order) => { if (order) wanted[order] = Math.max(x, wanted[order - 1] + APART); });
  const shift = (wanted.at(-1) - tags.at(-1).x) / 2;
  return tags.map((tag, order) => {
    const x = wanted[order] - shift;
    return { x, markup: line("leader", `${number(tag.x)} ${number(tag.y)}`, `${number(x)} ${number(bottom + 8)}`) +
      text("teeth-count", x, bottom + 20, tag.count) + text("place", x, bottom + 32, tag.name) };
  });
}

function plateSense(plate, x, y) {
  const mark = (way, back, offset) => `<g transform="translate(${number(x + offset)} ${number(y)})">` +
    turnArrow("sense", 11, -0.3, 0.3, back, 4) + text("place", 0, 25, way) + "</g>";
  return mark("crank", false, -38) + text("with-or-against", x, y + 3, plate) + mark("plate", plate === "against", 38);
}

const described = ({ spindle, worm, stud, idlers, plate }) =>
  `${spindle} teeth on the spindle, ${stud ? `${stud[1]} and ${stud[0]} on the stud, ` : ""}${worm} on the worm side, ` +
  `${idlers} idler${idlers === 1 ? "" : "s"}. The plate turns ${plate} the crank.`;

export function drawTrain(gearing) {
  const spots = placed(shafts(gearing));
  const reach = (spot) => radius(Math.max(spot.from, spot.to)) + 4;
  const top = Math.min(...spots.map((spot) => spot.y - reach(spot)));
  const bottom = Math.max(...spots.map((spot) => spot.y + reach(spot)));
  const drawn = spots.map(wheels);
  const tags = labels(spots, bottom);
  const left = Math.min(...spots.map((spot) => spot.x - reach(spot)), ...tags.map(({ x }) => x - 32));
  const right = Math.max(...spots.map((spot) => spot.x + reach(spot)), ...tags.map(({ x }) => x + 32));
  const middle = (left + right) / 2;
  const width = Math.max(right - left, 190);
  return drawing("train-drawing", [middle - width / 2 - 4, top - 4, width + 8, bottom - top + 46 + GAP + 42], "Change gears", described(gearing), [
    drawn.map(({ behind }) => behind), drawn.map(({ before }) => before), spots.map(sense), tags.map(({ markup }) => markup), plateSense(gearing.plate, middle, bottom + 42 + GAP),
  ]);
}
