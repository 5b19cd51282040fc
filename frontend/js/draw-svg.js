// Shared by the drawings. A drawing is a string of SVG, made of numbers and our own words alone. Angles are in turns, clockwise from
// the top, as a crank goes and as hole 0 stands.

export const number = (value) => String(Math.round(value * 100) / 100);

export const point = (turn, radius) => [radius * Math.sin(2 * Math.PI * turn), -radius * Math.cos(2 * Math.PI * turn)];

export const at = (turn, radius) => point(turn, radius).map(number).join(" ");

export const circle = (kind, radius, more = "", x = 0, y = 0) =>
  `<circle class="${kind}" cx="${number(x)}" cy="${number(y)}" r="${number(radius)}"${more}/>`;

export const text = (kind, x, y, words) => `<text class="${kind}" x="${number(x)}" y="${number(y)}">${words}</text>`;

export const line = (kind, from, to) => `<path class="${kind}" d="M${from}L${to}"/>`;

// Once round from the top, reckoned as `count` long; of a path all checkers know the length.
export const round = (kind, radius, count, more = "", x = 0, y = 0) => {
  const half = `a${number(radius)} ${number(radius)} 0 1 1 0`;
  return `<path class="${kind}" d="M${number(x)} ${number(y - radius)}${half} ${number(2 * radius)}${half} ${number(-2 * radius)}"` +
    ` pathLength="${count}" data-radius="${number(radius)}"${more}/>`;
};

// A ring of `count` round dots, the first on top: one element however many there are.
export const dots = (kind, radius, count, size) =>
  round(kind, radius, count, ` stroke-dasharray="0 1" stroke-linecap="round" stroke-width="${number(size)}"`);

export function arc(kind, radius, start, end, more = "") {
  const wide = end - start > 0.5 ? 1 : 0;
  return `<path class="${kind}" d="M${at(start, radius)}A${number(radius)} ${number(radius)} 0 ${wide} 1 ${at(end, radius)}"${more}/>`;
}

export function sector(kind, inner, outer, start, end) {
  const wide = end - start > 0.5 ? 1 : 0;
  const [small, large] = [inner, outer].map((radius) => `${number(radius)} ${number(radius)}`);
  return `<path class="${kind}" d="M${at(start, inner)}L${at(start, outer)}A${large} 0 ${wide} 1 ${at(end, outer)}` +
    `L${at(end, inner)}A${small} 0 ${wide} 0 ${at(start, inner)}Z"/>`;
}

// Clockwise unless `back`; its head is drawn, not referred to, so that two drawings on a page never clash.
export function turnArrow(kind, radius, start, end, back = false, size = 5) {
  const [tip, tail] = back ? [start, end] : [end, start];
  const [x, y] = point(tip, radius);
  const direction = 360 * tip + (back ? 180 : 0);
  const ends = [Math.min(tip, tail), Math.max(tip, tail)];
  return `<g class="${kind}">${arc("line", radius, ...ends)}<path class="head" d="M${number(size)} 0L${number(-size)} ${number(-size * 0.8)}` +
    `L${number(-size)} ${number(size * 0.8)}Z" transform="translate(${number(x)} ${number(y)}) rotate(${number(direction)})"/></g>`;
}

export const drawing = (kind, box, title, described, parts) =>
  `<svg class="drawing ${kind}" viewBox="${box.map(number).join(" ")}" role="img" xmlns="http://www.w3.org/2000/svg">` +
  `<title>${title}</title><desc>${described}</desc>${parts.flat(Infinity).join("")}</svg>`;
