// From what the operator typed to the body of a request. Pure.

import { isBlankPart, isCount, partTitle, typedPart } from "./part-kinds.js";
import { numberOr, wholeOr } from "./words.js";

export const LIMIT = 6;
const ROWS = 20000;

const given = (text) => text !== undefined && String(text).trim() !== "";

// One angle a line, or ";" between; only where neither occurs does a comma part angles: it may be a decimal comma.
export function angleList(text) {
  const typed = String(text || "");
  return typed.split(/[;\n]/.test(typed) ? /[;\n]+/ : /,+/).map((each) => each.trim()).filter(Boolean);
}

function workOf(question) {
  if (question.kind === "angle") {
    const work = { angle: String(question.angle || "").trim() };
    if (given(question.count)) work.count = wholeOr(question.count);
    return work;
  }
  if (question.kind === "angles") return { angles: angleList(question.angles) };
  if (question.kind === "part") return { part: partOf(question.part || {}) };
  return { divisions: wholeOr(question.divisions || "") };
}

function partOf(part) {
  const body = {};
  for (const [name, value] of Object.entries(typedPart(part))) body[name] = isCount(part, name) ? wholeOr(value) : numberOr(value);
  return body;
}

export function isBlank(question) {
  if (question.kind === "part") return isBlankPart(question.part);
  return !given(question[question.kind]);
}

// The head goes whole, so that the answer never depends on what the service takes for granted.
export function toBody(question, head) {
  const body = { work: workOf(question), head, limit: LIMIT };
  if (given(question.tolerance)) body.tolerance = { angle: question.tolerance.trim() };
  else if (given(question.at_rim)) {
    body.tolerance = { at_rim: numberOr(question.at_rim), diameter: numberOr(question.diameter || "") };
  }
  if (given(question.every)) body.every = wholeOr(question.every);
  return body;
}

// The same question with its schedule, or null when that would be too long to send.
export function withPositions(body, answer, chosen) {
  const cuts = answer.work.divisions || answer.work.count || answer.work.angles?.length || 2;
  const laps = answer.setups[chosen]?.laps || 1;
  if (cuts * laps * (chosen + 1) > ROWS) return null;
  return { ...body, positions: true, limit: chosen + 1 };
}

const partWords = (part) => `${partTitle(part)}, ${Object.entries(part).filter(([name]) => name !== "kind").map(([name, value]) => `${name.replace(/_/g, " ")} ${value}`).join(", ")}`;

export function asWords(question) {
  if (question.kind === "angle") return `${question.angle}${given(question.count) ? `, ${question.count} features` : ""}`;
  if (question.kind === "angles") return angleList(question.angles).join(", ");
  if (question.kind === "part") return partWords(typedPart(question.part || {}));
  return `${question.divisions} divisions`;
}
