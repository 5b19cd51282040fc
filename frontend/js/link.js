// The link: what a setup depends on, after the # of the page's address, in the words of the service's query form.

import { DEFAULT_HEAD, list, numberOr, wholeHead } from "./words.js";
import { store } from "./store.js";
import { typedPart } from "./part-kinds.js";
import { angleList } from "./question.js";

const HEAD_LISTS = ["direct_circles", "change_gears", "stop_circles"];
const PLAIN_WORDS = ["tolerance", "at_rim", "diameter", "every"];

function same(one, other) {
  return JSON.stringify(one) === JSON.stringify(other);
}

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

export function headWords(head) {
  const words = {};
  if (head.ratio !== undefined) words.ratio = head.ratio;
  if (head.plates && !same(head.plates, DEFAULT_HEAD.plates)) words.plates = head.plates.map((plate) => plate.join(",")).join("/");
  if (head.mounted_plate && head.mounted_plate !== 1) words.mounted_plate = head.mounted_plate;
  for (const name of HEAD_LISTS) {
    if (head[name] && !same(head[name], DEFAULT_HEAD[name])) words[name] = head[name].join(",");
  }
  if (head.worm_disengages === false) words.worm_disengages = "false";
  if (head.idlers && !same(head.idlers, DEFAULT_HEAD.idlers)) {
    words.idlers = [head.idlers.simple.with, head.idlers.simple.against, head.idlers.compound.with, head.idlers.compound.against].join(",");
  }
  if (head.dial) words.dial = head.dial.divisions ? String(head.dial.divisions) : [head.dial.graduation, head.dial.vernier].filter(Boolean).join("/");
  if (head.screw) words.screw = `${head.screw.lead} ${head.screw.unit}`;
  return words;
}

// `chosen` counts from 0 and is named from 1, as people count; the first setup needs no word.
export function toHash(question, head, chosen = 0) {
  return Object.entries({ ...workWords(question), ...headWords(head), ...(chosen ? { setup: chosen + 1 } : {}) })
    .map(([name, value]) => `${name}=${encodeURIComponent(value).replace(/%2C/g, ",").replace(/%2F/g, "/").replace(/%20/g, "+")}`).join("&");
}

export function readHead(words) {
  const head = {};
  if (words.has("ratio")) head.ratio = numberOr(words.get("ratio"));
  if (words.has("plates")) head.plates = words.get("plates").split("/").map(list).filter((plate) => plate.length);
  if (words.has("mounted_plate")) head.mounted_plate = numberOr(words.get("mounted_plate"));
  for (const name of HEAD_LISTS) if (words.has(name)) head[name] = list(words.get(name));
  if (words.get("worm_disengages") === "false") head.worm_disengages = false;
  if (words.has("idlers")) {
    const [a, b, c, d] = list(words.get("idlers"));
    head.idlers = { simple: { with: a, against: b }, compound: { with: c, against: d } };
  }
  if (words.has("dial")) {
    const [graduation, vernier] = words.get("dial").split("/");
    head.dial = /^\d+$/.test(graduation) ? { divisions: Number(graduation) } : vernier ? { graduation, vernier } : { graduation };
  }
  if (words.has("screw")) {
    const [lead, unit] = words.get("screw").split(" ");
    head.screw = { lead: numberOr(lead), unit };
  }
  return head;
}

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
  const words = new URLSearchParams(hash.replace(/^#/, ""));
  const kind = ["divisions", "angles", "angle", "part"].find((name) => words.has(name));
  if (!kind) return null;
  const question = { kind, [kind]: words.get(kind) };
  if (kind === "angles") question.angles = words.get("angles").split(",").join("\n");
  if (kind === "part") question.part = readPart(words.get("part"));
  for (const name of ["count", ...PLAIN_WORDS]) if (words.has(name)) question[name] = words.get(name);
  return { question, head: readHead(words), chosen: Math.max(0, (Number(words.get("setup")) || 1) - 1) };
}

// Another head than the operator's own comes into use; the own one waits until it is asked back.
export function borrow(head) {
  const { head: mine, headName, ownHead } = store.get();
  if (same(wholeHead(head), wholeHead(mine))) return;
  if (ownHead && same(wholeHead(head), wholeHead(ownHead.head))) return store.set({ ...ownHead, ownHead: null });
  store.set({ head: wholeHead(head), headName: "", ownHead: ownHead || { head: mine, headName } });
}
