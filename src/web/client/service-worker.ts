/**
 * Keeps the pages themselves, so that they open without a network. What they show then they kept themselves;
 * nothing private is kept here.
 */
const worker = self as unknown as ServiceWorkerGlobalScope;

const shelf = 'tellshelf-pages-3';
const pages = ['/', '/home', '/labels', '/charts', '/teach'];
const kept = [
  ...pages,
  '/style.css',
  '/icon.svg',
  '/manifest.webmanifest',
  '/js/board.js',
  '/js/home.js',
  '/js/labels.js',
  '/js/charts.js',
  '/js/teach.js',
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

/** A notice while no page is open: a timer, a reminder, the summary (`Notice` in src/schedule/push.ts). */
interface Notice {
  readonly id: string;
  readonly kind: 'timer' | 'reminder' | 'summary';
  readonly text: string;
  readonly quiet: boolean;
}

const windows = (): Promise<readonly WindowClient[]> =>
  worker.clients.matchAll({ type: 'window', includeUncontrolled: true });

worker.addEventListener('push', (event) => {
  const notice = event.data?.json() as Notice | undefined;
  if (notice === undefined) return;
  const show = async (): Promise<void> => {
    // A page that is seen rings by itself.
    if ((await windows()).some(({ visibilityState }) => visibilityState === 'visible')) return;
    const options: NotificationOptions & {
      readonly vibrate?: readonly number[];
      readonly renotify?: boolean;
    } = {
      body: notice.text,
      // The same told twice stands there once.
      tag: notice.id,
      requireInteraction: notice.kind !== 'summary',
      silent: notice.quiet,
      icon: '/icon-192.png',
      data: notice.id,
      ...(notice.quiet ? {} : { vibrate: [400, 200, 400, 200, 400], renotify: true }),
    };
    await worker.registration.showNotification('Tellshelf', options);
  };
  event.waitUntil(show());
});

worker.addEventListener('notificationclick', (event) => {
  event.notification.close();
  const open = async (): Promise<void> => {
    const [page] = await windows();
    // The page hears from the service what is due, rings, and stops it for everybody.
    await (page === undefined ? worker.clients.openWindow('/') : page.focus());
  };
  event.waitUntil(open());
});

export {};
