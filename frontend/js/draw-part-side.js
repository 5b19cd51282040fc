// The part seen from its side: a helix, a cone, a spindle set at an angle.

import { drawing, line, number, text } from "./draw-svg.js";

const STEPS = 48;
const LENGTH = 220;

const spot = (angle, reach) => `${number(reach * Math.cos(angle))} ${number(-reach * Math.sin(angle))}`;
const radians = (degrees) => degrees * Math.PI / 180;

// The half of each start that faces the reader; a right-hand one rises to the right.
export function helix({ starts, diameter, lead, hand }, unit) {
  const scale = Math.min(60 / diameter, LENGTH / Math.max(lead, diameter));
  const [radius, long] = [diameter / 2 * scale, LENGTH];
  const shown = long / (lead * scale);
  const sign = hand === "left" ? 1 : -1;
  const lines = Array.from({ length: Math.min(starts, 40) * Math.ceil(shown + 1) }, (_, order) => {
    const first = (order / Math.min(starts, 40) - 1) * lead * scale;
    const points = Array.from({ length: STEPS + 1 }, (__, step) => [first + lead * scale * step / STEPS / 2, sign * -radius * Math.cos(Math.PI * step / STEPS)]);
    const inside = points.filter(([x]) => x >= 0 && x <= long);
    return inside.length > 1 ? `<path class="thin" d="M${inside.map(([x, y]) => `${number(x)} ${number(y)}`).join("L")}"/>` : "";
  });
  const [first, second] = [`lead ${lead} ${unit}`, `diameter ${diameter} ${unit}, ${hand} hand`];
  return drawing("part-drawing", [-8, -radius - 12, LENGTH + 16, 2 * radius + 54], `${starts} starts on a helix`, `${first}, ${second}`, [
    `<rect class="body" x="0" y="${number(-radius)}" width="${LENGTH}" height="${number(2 * radius)}"/>`, lines, text("size", LENGTH / 2, radius + 18, first), text("size", LENGTH / 2, radius + 34, second),
  ]);
}

const ray = (angle, kind) => line(kind, spot(angle, 0), spot(angle, 190));

const arc = (angle, reach, words) => `<path class="thin" d="M${number(reach)} 0A${number(reach)} ${number(reach)} 0 0 0 ${spot(angle, reach)}"/>` +
    text("size", reach * Math.cos(angle / 2) + 6, -reach * Math.sin(angle / 2) - 4, words);

const degrees = (value) => `${Number(value.toFixed(3))}°`;

// Half of the cone above its axis, the apex on the left.
export function bevel({ members }) {
  const [{ teeth, cone_distance: cone, face, pitch_angle: pitch, face_angle: outer, root_angle: root }] = members;
  const inner = 190 * (1 - face / cone);
  const [low, middle, high] = [root, pitch, outer].map(radians);
  const tooth = `<path class="body" d="M${spot(low, inner)}L${spot(low, 190)}L${spot(high, 190)}L${spot(high, inner)}Z"/>`;
  const [first, second] = [`pitch ${degrees(pitch)}`, `root ${degrees(root)}, face ${degrees(outer)}`];
  const tall = Math.max(60, 190 * Math.sin(high));
  return drawing("part-drawing", [-14, -tall - 16, 236, tall + 62], `Bevel gear of ${teeth} teeth`, `${first}, ${second}`, [
    line("thin dashed", "-10 0", "210 0"), tooth, ray(low, "thin"), ray(middle, "thin dashed"), ray(high, "thin"), text("size", 104, 20, first), text("size", 104, 36, second),
  ]);
}

export function tilted({ teeth, tilt }) {
  if (tilt === null || tilt === undefined) return "";
  const angle = radians(tilt);
  const tall = Math.max(60, 150 * Math.sin(angle) + 30 * Math.cos(angle));
  const corner = (along, across) => `${number(along * Math.cos(angle) - across * Math.sin(angle))} ${number(-along * Math.sin(angle) - across * Math.cos(angle))}`;
  const blank = `<path class="body" d="M${corner(108, -30)}L${corner(130, -30)}L${corner(130, 30)}L${corner(108, 30)}Z"/>`;
  return drawing("part-drawing", [-50, -tall - 40, 260, tall + 70], `Spindle ${degrees(tilt)} above the table`, `Work of ${teeth} teeth on the spindle`, [
    line("body", "-40 0", "200 0"), blank, line("body", "0 0", spot(angle, 110)), arc(angle, 60, degrees(tilt)), text("size", 120, 22, "table"),
  ]);
}
