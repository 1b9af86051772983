/** Serves the pages: what is in `public`, the bundled scripts, and the addresses people type or touch. */
import { readFile } from 'node:fs/promises';
import serveFiles from '@fastify/static';
import type { FastifyPluginAsync } from 'fastify';
import { projectFile } from '../project-files.js';
import { readPages } from './bundle.js';

/** Each page's address, title and script. `/this/…` is what labels' codes hold: the board, with that thing in hand. */
const pages: readonly { readonly address: string; readonly title: string; readonly script: string }[] = [
  { address: '/', title: 'Board', script: 'board' },
  { address: '/this/:kind/:id', title: 'Board', script: 'board' },
  { address: '/home', title: 'Home', script: 'home' },
  { address: '/labels', title: 'Labels', script: 'labels' },
  { address: '/charts', title: 'Charts', script: 'charts' },
  { address: '/teach', title: 'Lessons', script: 'teach' },
];

/** Addresses that pages once had, and those that people guess. */
const moved: Readonly<Record<string, string>> = {
  '/kitchen': '/',
  '/talk': '/',
  '/plots': '/charts',
  '/lessons': '/teach',
  '/settings': '/home',
  '/devices': '/home#devices',
  '/people': '/home#people',
  '/favicon.ico': '/icon.svg',
};

export const webPages: FastifyPluginAsync = async (app) => {
  const [scripts, shell] = await Promise.all([
    readPages(),
    readFile(projectFile('src', 'web', 'page.html'), 'utf8'),
  ]);
  await app.register(serveFiles, { root: projectFile('src', 'web', 'public'), prefix: '/', index: false });
  for (const { address, title, script } of pages) {
    const html = shell.replace('{title}', title).replace('{script}', script);
    app.get(address, (_request, reply) => reply.type('text/html; charset=utf-8').send(html));
  }
  for (const [from, to] of Object.entries(moved)) app.get(from, (_request, reply) => reply.redirect(to, 301));
  app.get<{ Params: { name: string } }>('/js/:name', (request, reply) => {
    const script = scripts.get(request.params.name);
    if (script === undefined) return reply.callNotFound();
    return reply.type('text/javascript; charset=utf-8').header('cache-control', 'no-cache').send(script);
  });
  // A worker speaks for the pages below its own address, so it stands at the top.
  app.get('/service-worker.js', (_request, reply) =>
    reply
      .type('text/javascript; charset=utf-8')
      .header('cache-control', 'no-cache')
      .send(scripts.get('service-worker.js')),
  );
};
