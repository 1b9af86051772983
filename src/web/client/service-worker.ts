/** Keeps the pages themselves, so that they open when the network hiccups. Nothing private is kept. */
const worker = self as unknown as ServiceWorkerGlobalScope;

const shelf = 'tellshelf-pages-1';
const kept = [
  '/',
  '/kitchen',
  '/labels',
  '/plots',
  '/style.css',
  '/icon.svg',
  '/js/talk.js',
  '/js/kitchen.js',
  '/js/labels.js',
  '/js/plots.js',
];

worker.addEventListener('install', (event) => {
  event.waitUntil(caches.open(shelf).then((cache) => cache.addAll(kept)));
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(names.filter((name) => name !== shelf).map((name) => caches.delete(name))),
      ),
  );
});

worker.addEventListener('fetch', (event) => {
  const { pathname, origin } = new URL(event.request.url);
  if (event.request.method !== 'GET' || origin !== worker.location.origin || !kept.includes(pathname)) return;
  // The network first: a page is only old when there is no other.
  event.respondWith(
    fetch(event.request)
      .then(async (response) => {
        if (response.ok) await (await caches.open(shelf)).put(event.request, response.clone());
        return response;
      })
      .catch(async () => (await caches.match(event.request)) ?? Response.error()),
  );
});

export {};
