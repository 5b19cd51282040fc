// What a sheet of exercises depends on, after the # of the address, so that a class works the same one. Pure.

import { headWords, readHead } from "../link.js";
import { numberOr, wholeHead, wholeOr } from "../words.js";

// The exercises of one seed stay the same for as long as this stays the same.
const GENERATOR = 1;

export const KINDS = {
  plain: "Plain", angular: "An angle", direct: "Direct plate", which_plate: "Which plate", sector_arms: "Sector arms",
  compound: "Compound", differential: "Differential, with gears", dial: "By the dial", find_the_slip: "Find the slip",
};

const given = (text) => text !== undefined && String(text).trim() !== "";

// The request of a sheet as it is typed: {seed, count, level, kinds}; no kind chosen is every kind.
export function toSheet({ seed, count, level = "1", kinds = [] }) {
  const sheet = { seed: given(seed) ? wholeOr(seed) : "", level: Number(level), generator: GENERATOR };
  if (given(count)) sheet.count = wholeOr(count);
  return kinds.length ? { ...sheet, kinds } : sheet;
}

const coded = (value) => encodeURIComponent(value).replace(/%2C/g, ",").replace(/%2F/g, "/").replace(/%20/g, "+");

export function toHash({ kinds, ...sheet }, head) {
  const words = { ...sheet, ...(kinds ? { kinds: kinds.join(",") } : {}), ...headWords(wholeHead(head)) };
  return `#${Object.entries(words).map(([name, value]) => `${name}=${coded(value)}`).join("&")}`;
}

// {form, sheet, head}, or null when the address names no sheet.
export function fromHash(hash) {
  const words = new URLSearchParams(hash.slice(1));
  if (!words.has("seed")) return null;
  const kinds = (words.get("kinds") || "").split(",").filter(Boolean);
  const form = { seed: words.get("seed"), count: words.get("count") || "", level: words.get("level") || "1", kinds };
  const generator = words.has("generator") ? numberOr(words.get("generator")) : GENERATOR;
  return { form, sheet: { ...toSheet(form), generator }, head: readHead(words) };
}
