/**
 * Keeps the pages themselves, so that they open without a network. What they show then they kept themselves;
 * nothing private is kept here.
 */
const worker = self as unknown as ServiceWorkerGlobalScope;

const shelf = 'tellshelf-pages-2';
const pages = ['/', '/home', '/labels', '/charts'];
const kept = [
  ...pages,
  '/style.css',
  '/icon.svg',
  '/manifest.webmanifest',
  '/js/board.js',
  '/js/home.js',
  '/js/labels.js',
  '/js/charts.js',
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

/** What a label's code holds opens the board; a page that is not kept opens the board too. */
const standIn = (request: Request): string | Request => (request.mode === 'navigate' ? '/' : request);

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { pathname, origin } = new URL(request.url);
  if (request.method !== 'GET' || origin !== worker.location.origin) return;
  const isPage = request.mode === 'navigate' && !pathname.startsWith('/v1/');
  if (!kept.includes(pathname) && !isPage) return;
  // The network first: a page is only old when there is no other.
  event.respondWith(
    fetch(request)
      .then(async (response) => {
        if (response.ok && kept.includes(pathname))
          await (await caches.open(shelf)).put(request, response.clone());
        return response;
      })
      .catch(
        async () =>
          (await caches.match(request)) ?? (await caches.match(standIn(request))) ?? Response.error(),
      ),
  );
});

export {};
