// The service, asked by fetch. Each call resolves, never rejects, to {ok, status, data | problem, saved?}: out of reach, `saved` is when
// the stored answer was made, and status 0 means that there is none. `connection` fires "change" when the service goes or comes back.

import { forget, keep, recall, store } from "./store.js";

const KEEP = 50;
const LONGEST = 400000;
const PATIENCE = 5000;
const PATIENCE_AWAY = 2500;

class Connection extends EventTarget {
  online = true;

  report(online) {
    if (this.online === online) return;
    this.online = online;
    this.dispatchEvent(new Event("change"));
    if (!online) this.#retry(2000);
  }

  #retry(after) {
    setTimeout(async () => {
      if (this.online) return;
      try {
        const reply = await fetch("/health", { cache: "no-store", signal: patience() });
        if (reply.ok) return this.report(true);
      } catch { /* still away */ }
      this.#retry(Math.min(after * 1.5, 15000));
    }, after);
  }
}

export const connection = new Connection();

const patience = () => AbortSignal.timeout?.(connection.online ? PATIENCE : PATIENCE_AWAY);

function storeAnswer(key, data) {
  if (JSON.stringify(data).length > LONGEST) return;
  const list = recall("answers", []).filter((old) => old !== key);
  list.unshift(key);
  while (list.length > KEEP) forget("answer." + list.pop());
  while (!keep("answer." + key, { saved: new Date().toISOString(), data }) && list.length > 1) {
    forget("answer." + list.pop());
  }
  keep("answers", list);
}

function storedAnswer(key) {
  const found = recall("answer." + key);
  const detail = "The service cannot be reached and this question has no saved answer.";
  return found ? { ok: true, status: 200, ...found } : { ok: false, status: 0, problem: { title: "No connection", status: 0, detail } };
}

const request = (path, body) => fetch(path, {
  signal: patience(), headers: { Accept: "application/json", "Content-Type": "application/json" },
  ...(body && { method: "POST", body: JSON.stringify(body) }),
});

async function reach(path, body) {
  try {
    return await request(path, body);
  } catch (trouble) {
    if (!connection.online) throw trouble;
    await new Promise((done) => setTimeout(done, 300));
    return request(path, body);
  }
}

export async function ask(path, body) {
  const key = path + (body ? JSON.stringify(body) : "");
  let reply, data;
  try {
    reply = await reach(path, body);
    data = await reply.json();
  } catch {
    // A proxy's page instead of the service's answer is as good as no connection.
    connection.report(false);
    return storedAnswer(key);
  }
  connection.report(true);
  if (!reply.ok) return { ok: false, status: reply.status, problem: data };
  storeAnswer(key, data);
  store.set({ version: data.service_version });
  return { ok: true, status: reply.status, data };
}

// Whether a document can be had now; having been asked for, it is in the browser's own cache.
export async function reaches(href) {
  try {
    const found = (await fetch(href, { signal: patience() })).ok;
    connection.report(true);
    return found;
  } catch {
    connection.report(false);
    return false;
  }
}

export const solve = (body) => ask("/v1/solve", body);
export const locate = (body) => ask("/v1/locate", body);
export const heads = () => ask("/v1/heads");
