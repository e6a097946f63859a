"use strict";
// Keeps what was shown, so that a page can be opened again while the machine is out of reach. A browser
// runs it for a page that it trusts alone: over TLS. What the machine answers always comes first.
const KEPT = "maltwright";
const others = /^\/(pulse|kept|due\.ics|K\/)|\.pdf$|\/report$/;

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (e) => e.waitUntil(self.clients.claim()));
self.addEventListener("fetch", (e) => {
  const url = new URL(e.request.url);
  if (e.request.method !== "GET" || url.origin !== location.origin || others.test(url.pathname)) return;
  e.respondWith(answer(e, url));
});

async function answer(e, url) {
  const key = e.request.mode === "navigate" || /^\/(batch|process)\/[^/]*$/.test(url.pathname) ? url.origin + url.pathname : url.href;
  try {
    const a = await fetch(e.request);
    if (a.ok && !a.redirected) {
      const copy = a.clone();
      e.waitUntil(caches.open(KEPT).then((c) => c.put(key, copy)));
    }
    return a;
  } catch (err) {
    const was = await (await caches.open(KEPT)).match(key);
    if (was) return was;
    throw err;
  }
}
