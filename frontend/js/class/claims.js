// From what a pupil typed to the claims that are marked, and from what the service says of a claim back to its field. Pure.

import { numberOr, wholeOr } from "../words.js";

const filled = (text) => text !== undefined && String(text).trim() !== "";
const signed = (text) => String(text).replace(/^\s*[−–]\s*/, "-");
const read = (field, text) => field === "reading" ? numberOr(text) : wholeOr(signed(text));

export const idOf = (number, field) => `ex-${number}-${field.replaceAll(".", "-")}`;

export const isAnswered = (exercise, typed = {}) => Boolean(typed.none) || exercise.asked.some(({ field }) => filled(typed[field]));

// "gearing.stud.0" of a claim is claim.gearing.stud[0].
function put(claim, path, value) {
  const [first, ...rest] = path;
  if (!rest.length) claim[first] = value;
  else put(claim[first] ||= /^\d+$/.test(rest[0]) ? [null, null] : {}, rest, value);
}

function entry({ number, asked }, typed) {
  if (typed.none) return { number, none: true };
  const claim = {};
  const made = { number };
  for (const { field } of asked.filter((each) => filled(typed[each.field]))) {
    if (field === "slip") made.slip = typed.slip;
    else put(claim, field.split("."), read(field, typed[field]));
  }
  return Object.keys(claim).length ? { ...made, claim } : made;
}

export const entriesOf = (exercises, typed) =>
  exercises.filter((each) => isAnswered(each, typed[each.number])).map((each) => entry(each, typed[each.number]));

// The field that a pointer means: the numbers of the claims sent say which exercise it is.
export function fieldOf(pointer, exercises, numbers = []) {
  const [, at, path] = /^#\/claims\/(\d+)\/?(?:claim\/)?(.*)$/.exec(pointer) || [];
  const exercise = at !== undefined && exercises.find(({ number }) => number === numbers[at]);
  if (!exercise) return pointer.startsWith("#/head") ? "class-head" : `class-${/^#\/(seed|count|level|kinds)/.exec(pointer)?.[1] || "seed"}`;
  const field = path.replaceAll("/", ".");
  const known = exercise.asked.some((each) => each.field === field);
  return idOf(exercise.number, known ? field : exercise.asked[0].field);
}
