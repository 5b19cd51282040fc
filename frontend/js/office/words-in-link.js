// The words after # that belong to the views of the office, and the address for what a view was asked. Pure.

import { headWords } from "../link.js";
import { wholeHead } from "../words.js";

export const pageWords = {
  office: [],
  coverage: ["from", "to", "tolerance"],
  plate: ["what", "number", "circle_diameter", "hole_diameter", "unit", "circles", "start", "sense", "zero", "x", "y"],
};

const written = (value) => encodeURIComponent(value).replace(/%2C/g, ",").replace(/%2F/g, "/").replace(/%20/g, "+");

// What is as usual needs no word.
export function addressOf(view, form, head, usual = {}) {
  const asked = pageWords[view].filter((name) => String(form[name] ?? "").trim() && form[name] !== usual[name]).map((name) => [name, String(form[name]).trim()]);
  return `#${[["view", view], ...asked, ...Object.entries(headWords(wholeHead(head)))].map(([name, value]) => `${name}=${written(value)}`).join("&")}`;
}

export function remember(view, form, head, usual) {
  const hash = addressOf(view, form, head, usual);
  if (hash !== location.hash) history.replaceState(null, "", hash);
}
