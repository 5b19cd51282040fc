// Keeps the page for when there is no network (https only). Answers are not kept here: the page keeps its own.
// The service is asked first, so that an upgrade is seen at once; the kept copy serves when it stays silent.

const VERSION = "page-2";
const PATIENCE = 3000;
const DOCUMENTS = ["./", "check.html", "class.html", "head.html", "office.html"];
const FILE = /^(?:|icon\.svg|[\w-]+\.(?:html|css)|js\/[\w/-]+\.js)$/;
const NAMED = /(?:href|src)="([\w./-]+)"|\b(?:from|import)\b\s*\(?\s*"(\.[^"]+)"/g;

const pathOf = (url) => new URL(url).pathname.slice(new URL("./", self.location).pathname.length);

// A document, and whatever it and its modules name: nothing can be forgotten in a list.
async function keep(url, cache, seen) {
  if (seen.has(url) || !FILE.test(pathOf(url))) return;
  seen.add(url);
  const reply = await fetch(new Request(url, { cache: "reload" }));
  if (!reply.ok) throw new Error(`status ${reply.status}`);
  await cache.put(url, reply.clone());
  const text = await reply.text();
  await Promise.all([...text.matchAll(NAMED)].map(([, link, module]) => keep(new URL(link || module, url).href, cache, seen)));
}

async function keepAll() {
  const [cache, seen] = [await caches.open(VERSION), new Set()];
  await Promise.all(DOCUMENTS.map((name) => keep(new URL(name, self.location).href, cache, seen)));
  await self.skipWaiting();
}

async function clearOld() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name !== VERSION).map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function fresh(request) {
  const reply = await fetch(request, AbortSignal.timeout ? { signal: AbortSignal.timeout(PATIENCE) } : {});
  if (!reply.ok) throw new Error(`status ${reply.status}`);
  const cache = await caches.open(VERSION);
  await cache.put(request, reply.clone());
  return reply;
}

async function freshOrKept(request) {
  try {
    return await fresh(request);
  } catch (trouble) {
    const kept = await caches.match(request, { ignoreSearch: true });
    if (kept) return kept;
    throw trouble;
  }
}

const isPage = ({ method, url }) => method === "GET" && new URL(url).origin === self.location.origin && FILE.test(pathOf(url));

self.addEventListener("install", (event) => event.waitUntil(keepAll()));
self.addEventListener("activate", (event) => event.waitUntil(clearOld()));
self.addEventListener("fetch", (event) => {
  if (isPage(event.request)) event.respondWith(freshOrKept(event.request));
});
