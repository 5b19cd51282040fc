// Keeps the page for when there is no network (https only). Answers are not kept here: the page keeps its own.
// The service is asked first, so that an upgrade is seen at once; the kept copy serves when it stays silent.

const VERSION = "page-1";
const PATIENCE = 3000;
const FILES = [
  "./", "card.css", "check.html", "class.css", "class.html", "dark.css", "desk.css", "drawings.css", "head.css", "head.html",
  "icon.svg", "office.css", "office.html", "print.css", "setup.css", "shop.css", "style.css",
  "js/actions.js", "js/answer-view.js", "js/api.js", "js/app.js", "js/ask-form.js", "js/card-schedule.js",
  "js/check/angles-view.js", "js/check/check-form.js", "js/check/check-view.js", "js/check/check.js", "js/check/fractions.js",
  "js/class/class.js", "js/class/handout-words.js", "js/class/handout.js", "js/document.js", "js/draw-part-side.js",
  "js/draw-part.js", "js/draw-plate.js", "js/draw-ring.js", "js/draw-svg.js", "js/draw-train.js", "js/drawings.js",
  "js/errors.js", "js/field.js", "js/figures.js", "js/file.js", "js/frame.js", "js/gears.js", "js/head/head-actions.js",
  "js/head/head-fields.js", "js/head/head-form.js", "js/head/head-view.js", "js/head/head.js", "js/html.js", "js/jobcard.js",
  "js/jobs-view.js", "js/jobs.js", "js/kept-form.js", "js/link.js", "js/office/decode.js", "js/office/desk-top.js",
  "js/office/office.js", "js/office/records.js", "js/office/sheet-ask.js", "js/office/sheet-groups.js",
  "js/office/sheet-out.js", "js/office/sheet-run.js", "js/office/sheet-view.js", "js/office/sheet-work.js",
  "js/office/words-in-link.js", "js/paper.js", "js/part-form.js", "js/part-kinds.js", "js/part-view.js", "js/question.js",
  "js/schedule.js", "js/setup-view.js", "js/share.js", "js/shop-aids.js", "js/shop-cut.js", "js/shop-lost.js",
  "js/shop-stages.js", "js/shop-words.js", "js/shop.js", "js/store.js", "js/words.js",
];

async function keepAll() {
  const cache = await caches.open(VERSION);
  await cache.addAll(FILES.map((file) => new Request(file, { cache: "reload" })));
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

function isPage({ method, url }) {
  const { origin, pathname } = new URL(url);
  const name = pathname.slice(new URL("./", self.location).pathname.length) || "./";
  return method === "GET" && origin === self.location.origin && FILES.includes(name);
}

self.addEventListener("install", (event) => event.waitUntil(keepAll()));
self.addEventListener("activate", (event) => event.waitUntil(clearOld()));
self.addEventListener("fetch", (event) => {
  if (isPage(event.request)) event.respondWith(freshOrKept(event.request));
});
