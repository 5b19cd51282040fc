// Jobs under way. The small record of each, with its count, is kept after every step; its schedule never changes and is kept once.
// phase: "ready" -> "trial" -> "closing" -> "cut" -> "done"; `at` counts from 0 the mark or cut that is to be made.

import { forget, keep, recall, store } from "./store.js";

const JOBS_AT_MOST = 20;
const schedules = new Map();

// Twenty thousand rows must fit into what a browser keeps.
const pack = (row) => [row.division, row.turns, row.holes, row.hole, row.second_holes ?? null, row.second_hole ?? null,
  row.dial ? { turns: row.dial.turns, set: row.dial.set ?? row.dial.divisions } : null,
  row.scale, row.free_check ? 1 : 0, Math.round(row.angle.degrees * 1e4) / 1e4];

function unpack(packed, index) {
  const [division, turns, holes, hole, secondHoles, secondHole, dial, scale, free, degrees] = packed;
  return { cut: index + 1, division, turns, holes, hole, secondHoles, secondHole, dial, scale, free: Boolean(free), degrees };
}

function schedule(id) {
  if (!schedules.has(id)) schedules.set(id, recall(`job.${id}`, []));
  return schedules.get(id);
}

export function rowOf(job, index = job.at) {
  const packed = schedule(job.id)[index];
  return packed ? unpack(packed, index) : null;
}

export const anglesOf = (job) => schedule(job.id).map((packed) => packed[9]);

export const jobOf = (state, id = state.shop?.open) => (state.jobs || []).find((job) => job.id === id) || null;

const plateCircles = (head, move) => !move ? [] : move.plate ? head.plates[move.plate - 1] : head.direct_circles;

export function addJob({ title, asked, setup }) {
  const id = Date.now().toString(36);
  const rows = setup.positions.map(pack);
  const job = {
    id, title, asked: { work: asked.work, head: asked.head, every: setup.every || asked.every || 1 },
    method: setup.method, circles: plateCircles(asked.head, setup.move), move: setup.move, second: setup.second_move,
    gearing: setup.gearing, exact: setup.exact, worst: setup.error.worst_seconds, count: rows.length, summary: setup.summary,
    constant: constantMove(setup, asked.work), phase: "ready", at: 0, tested: null, touched: new Date().toISOString(),
  };
  const jobs = [job, ...(store.get().jobs || [])];
  for (const old of jobs.slice(JOBS_AT_MOST)) forgetSchedule(old.id);
  schedules.set(id, rows);
  store.set({ jobs: jobs.slice(0, JOBS_AT_MOST), shop: { ...store.get().shop, open: id, kept: keep(`job.${id}`, rows) } });
}

// Whether one more of the same move leads from the last cut home to the first.
const constantMove = (setup, work) => Boolean(work.divisions || work.part) && setup.method !== "nearest" && setup.method !== "dial";

function forgetSchedule(id) {
  schedules.delete(id);
  forget(`job.${id}`);
}

export function changeJob(id, patch) {
  const touched = new Date().toISOString();
  store.set({ jobs: store.get().jobs.map((job) => (job.id === id ? { ...job, ...patch, touched } : job)) });
}

export function removeJob(id) {
  const { jobs, shop } = store.get();
  forgetSchedule(id);
  store.set({ jobs: jobs.filter((job) => job.id !== id), shop: shop?.open === id ? { ...shop, open: null } : shop });
}

// The step that follows, and the step before, as patches of the record. Pure.
export function forward({ phase, at, count, constant }) {
  if (phase === "closing") return { phase: "cut", at: 0 };
  if (phase !== "trial" && phase !== "cut") return {};
  if (at + 1 < count) return { at: at + 1 };
  if (phase === "cut") return { phase: "done", at: count };
  return constant ? { phase: "closing", at: count } : { phase: "cut", at: 0 };
}

export function backward({ phase, at, count }) {
  if (phase === "closing") return { phase: "trial", at: count - 1 };
  if (phase === "done") return { phase: "cut", at: count - 1 };
  return at > 0 ? { at: at - 1 } : { phase: "ready", at: 0 };
}

// Another page of this browser counted on: follow it rather than write over it.
window.addEventListener("storage", ({ key }) => {
  if (key !== "dividing.jobs") return;
  store.set({ jobs: recall("jobs", []) });
});
