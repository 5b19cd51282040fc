// A part of a sheet, asked of the service. It may take longer than a single question, and the operator may stop it.

import { connection } from "../api.js";
import { headWords } from "../link.js";

const PATIENCE = 30000;

let running = null;

export const stop = () => running?.abort("stopped");

// Lines that name nothing of a head are worked out on the head of the page.
export const addressFor = (head) => `/v1/solve/batch?${new URLSearchParams(headWords(head))}`;

async function send(address, text, mine) {
  const limit = setTimeout(() => mine.abort("slow"), PATIENCE);
  try {
    const reply = await fetch(address, { method: "POST", body: text, signal: mine.signal, headers: { "Content-Type": "text/csv", Accept: "text/csv" } });
    return reply.ok ? { ok: true, status: reply.status, text: await reply.text() } : { ok: false, status: reply.status, problem: await reply.json() };
  } finally {
    clearTimeout(limit);
  }
}

// {ok, status, text | problem}, {stopped: true}, or status 0 when the service is out of reach; never rejects.
export async function askSheet(address, text) {
  const mine = new AbortController();
  running = mine;
  try {
    const reply = await send(address, text, mine);
    connection.report(true);
    return reply;
  } catch {
    if (mine.signal.reason === "stopped") return { stopped: true };
    connection.report(false);
    return { ok: false, status: 0 };
  }
}
