// Keeps the page of a cupping table and its files, so that it opens again while the network is gone. What is asked of
// the API is never answered from here.
const kept = "greenledger-table-1";
const patience = 4000;

self.addEventListener("install", event => event.waitUntil(self.skipWaiting()));
self.addEventListener("activate", event => event.waitUntil(self.clients.claim()));

const isOurs = request => request.method === "GET" && new URL(request.url).origin === self.location.origin
  && !new URL(request.url).pathname.startsWith("/api");

async function keep(address) {
  const request = new Request(address, { credentials: "same-origin" });
  if (isOurs(request)) {
    const answer = await fetch(request);
    if (answer.ok && !answer.redirected) {
      await (await caches.open(kept)).put(request, answer);
    }
  }
}

self.addEventListener("message", event => {
  if (Array.isArray(event.data?.keep)) {
    event.waitUntil(Promise.allSettled(event.data.keep.map(keep)));
  }
});

self.addEventListener("fetch", event => {
  const { request } = event;
  if (!isOurs(request)) {
    return;
  }
  event.respondWith((async () => {
    const cache = await caches.open(kept);
    try {
      const answer = await fetch(request, request.mode === "navigate" ? { signal: AbortSignal.timeout(patience) } : {});
      if (answer.ok && !answer.redirected) {
        await cache.put(request, answer.clone());
      }
      return answer;
    } catch (away) {
      const found = await cache.match(request, { ignoreVary: true });
      if (found) {
        return found;
      }
      throw away;
    }
  })());
});
