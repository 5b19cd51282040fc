// What a setup depends on, after the # of the address, in the words of the service's query form.

import { DEFAULT_HEAD, list, numberOr, wholeHead } from "./words.js";
import { store } from "./store.js";
import { typedPart } from "./part-kinds.js";
import { angleList } from "./question.js";

export const PLAIN_WORDS = ["tolerance", "at_rim", "diameter", "every"];

const same = (one, other) => JSON.stringify(one) === JSON.stringify(other);

function workWords(question) {
  const words = {};
  if (question.kind === "angles") words.angles = angleList(question.angles).map((each) => each.replace(",", ".")).join(",");
  else if (question.kind === "part") words.part = JSON.stringify(typedPart(question.part || {}));
  else words[question.kind] = question[question.kind] || "";
  if (question.kind === "angle" && question.count) words.count = question.count;
  for (const name of PLAIN_WORDS) if (question[name]) words[name] = question[name];
  // A diameter by itself only turns errors into lengths: it is no part of the setup.
  if (!words.at_rim) delete words.diameter;
  return words;
}

function readIdlers(text) {
  const [a, b, c, d] = list(text);
  return { simple: { with: a, against: b }, compound: { with: c, against: d } };
}

function readDial(text) {
  const [graduation, vernier] = text.split("/");
  return /^\d+$/.test(graduation) ? { divisions: Number(graduation) } : vernier ? { graduation, vernier } : { graduation };
}

function readScrew(text) {
  const [lead, unit] = text.split(" ");
  return { lead: numberOr(lead), unit };
}

// How each word of the head is written, and how it is read.
const HEAD = {
  ratio: [String, numberOr],
  plates: [(plates) => plates.join("/"), (text) => text.split("/").map(list).filter((plate) => plate.length)],
  mounted_plate: [String, numberOr],
  direct_circles: [String, list], change_gears: [String, list], stop_circles: [String, list],
  worm_disengages: [String, (text) => text !== "false"],
  idlers: [({ simple, compound }) => String([simple.with, simple.against, compound.with, compound.against]), readIdlers],
  dial: [({ divisions, graduation, vernier }) => divisions ? String(divisions) : [graduation, vernier].filter(Boolean).join("/"), readDial],
  screw: [({ lead, unit }) => `${lead} ${unit}`, readScrew],
};

// What is as usual needs no word, save the ratio.
const isTold = (head, name) => head[name] !== undefined && head[name] !== null && (name === "ratio" || !same(head[name], DEFAULT_HEAD[name]));

export const headWords = (head) =>
  Object.fromEntries(Object.entries(HEAD).filter(([name]) => isTold(head, name)).map(([name, [write]]) => [name, write(head[name])]));

export const readHead = (words) =>
  Object.fromEntries(Object.entries(HEAD).filter(([name]) => words.has(name)).map(([name, [, read]]) => [name, read(words.get(name))]));

// `chosen` counts from 0 and is named from 1, as people count; the first setup needs no word.
export const toHash = (question, head, chosen = 0) => Object.entries({ ...workWords(question), ...headWords(head), ...(chosen ? { setup: chosen + 1 } : {}) })
    .map(([name, value]) => `${name}=${encodeURIComponent(value).replace(/%2C/g, ",").replace(/%2F/g, "/").replace(/%20/g, "+")}`).join("&");

function readPart(text) {
  try {
    const part = JSON.parse(text);
    return part && typeof part === "object" && !Array.isArray(part) ? part : {};
  } catch {
    return {};
  }
}

// {question, head, chosen}, or null when the address asks nothing.
export function fromHash(hash) {
  const words = new URLSearchParams(hash.slice(1));
  const kind = ["divisions", "angles", "angle", "part"].find((name) => words.has(name));
  if (!kind) return null;
  const question = { kind, [kind]: words.get(kind) };
  if (kind === "angles") question.angles = words.get("angles").split(",").join("\n");
  if (kind === "part") question.part = readPart(words.get("part"));
  for (const name of ["count", ...PLAIN_WORDS]) if (words.has(name)) question[name] = words.get(name);
  return { question, head: readHead(words), chosen: Math.max(0, (Number(words.get("setup")) || 1) - 1) };
}

// Another head comes into use; the operator's own waits until it is asked back.
export function borrow(head) {
  const { head: mine, headName, ownHead } = store.get();
  if (same(wholeHead(head), wholeHead(mine))) return;
  if (ownHead && same(wholeHead(head), wholeHead(ownHead.head))) return store.set({ ...ownHead, ownHead: null });
  store.set({ head: wholeHead(head), headName: "", ownHead: ownHead || { head: mine, headName } });
}
