// Figures and terms as the shop reads them. Pure: no DOM, no state.

const TOWARDS = { with: "with the crank", against: "against the crank" };

// What the service takes for whatever a head leaves out.
export const DEFAULT_HEAD = {
  ratio: 40,
  plates: [[15, 16, 17, 18, 19, 20], [21, 23, 27, 29, 31, 33], [37, 39, 41, 43, 47, 49]],
  mounted_plate: 1, direct_circles: [24], worm_disengages: true, change_gears: [],
  idlers: { simple: { with: 1, against: 2 }, compound: { with: 0, against: 1 } },
  stop_circles: null, screw: null, dial: null,
};

export const wholeHead = (head) => ({ ...DEFAULT_HEAD, ...head });

// A head as it is sent: what it lacks is left out.
export function sentHead(head) {
  const whole = wholeHead(head);
  const kept = Object.entries(whole).filter(([name, value]) => value !== null && !(name === "mounted_plate" && !whole.plates.length));
  return Object.fromEntries(kept);
}

export function headLine(head) {
  const whole = wholeHead(head);
  const parts = [`${whole.ratio}:1`];
  if (whole.plates.length) parts.push("plates " + whole.plates.map(plateSpan).join(" / "));
  if (whole.direct_circles.length) parts.push(whole.direct_circles.join(", ") + " direct");
  if (whole.change_gears.length) parts.push(`${whole.change_gears.length} change gears`);
  if (whole.dial) parts.push(dialText(whole.dial));
  return parts.join(", ");
}

const plateSpan = (circles) => circles.length > 1 ? `${Math.min(...circles)}-${Math.max(...circles)}` : String(circles[0] ?? "none");

const dialText = (dial) => dial.divisions ? `dial of ${dial.divisions}` : `dial to ${dial.vernier || dial.graduation}`;

export const plural = (number, one, many = `${one}s`) => Math.abs(number) === 1 ? one : many;

export const count = (number, one, many) => `${number} ${plural(number, one, many)}`;

// Seconds of arc: 0.43″, 27″, 5′28″.
export function seconds(value) {
  const size = Math.abs(value);
  if (size < 0.005) return size ? "under 0.01″" : "0″";
  if (size < 10) return `${size.toFixed(2)}″`;
  if (size < 60) return `${size.toFixed(1)}″`;
  const whole = Math.round(size);
  return `${Math.floor(whole / 60)}′${String(whole % 60).padStart(2, "0")}″`;
}

// What an angular error comes to at the rim, e × D/2 with e in radians; nothing without a diameter.
export function rimWords(errorSeconds, { diameter: typed }) {
  const diameter = Number(String(typed || "").replace(",", "."));
  if (!(diameter > 0)) return "";
  const size = (Math.abs(errorSeconds) * Math.PI / 648000) * diameter / 2;
  return `, ${size >= 0.0001 ? size.toFixed(4) : size && size.toExponential(1)} at the rim of ${diameter}`;
}

// "22,5" gives 22.5; anything else goes as typed, for the service to say what is wrong with it.
export function numberOr(text) {
  const plain = String(text).trim().replace(/^(\d+),(\d+)$/, "$1.$2");
  return /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : String(text).trim();
}

// "1,000" and "1.000" might be a thousand or one, so they go as typed, to be asked about.
export function wholeOr(text) {
  const plain = String(text).trim();
  return /^-?\d+(\.(?!\d{3}$)\d+)?$/.test(plain) ? Number(plain) : plain;
}

export const list = (text) => String(text).split(/[\s,;]+/).filter(Boolean).map(numberOr);

export const METHODS = {
  direct: "Direct", plain: "Plain", compound: "Compound", differential: "Differential", dial: "By the dial", nearest: "Nearest hole",
};

export const plateWay = (gearing) => TOWARDS[gearing.plate] || "";

export function clock(iso) {
  const made = new Date(iso);
  return Number.isNaN(made.getTime()) ? String(iso) : made.toLocaleString([], { dateStyle: "medium", timeStyle: "short" });
}
