/** Serves the pages: what is in `public`, the bundled scripts, and the addresses people type or touch. */
import serveFiles from '@fastify/static';
import type { FastifyPluginAsync } from 'fastify';
import { projectFile } from '../project-files.js';
import { bundlePages } from './bundle.js';

/** Each page's address and its file. `/this/…` is what labels' codes hold: the talk page, with that thing in hand. */
const addresses: readonly (readonly [string, string])[] = [
  ['/', 'index.html'],
  ['/kitchen', 'kitchen.html'],
  ['/labels', 'labels.html'],
  ['/plots', 'plots.html'],
  ['/this/:kind/:id', 'index.html'],
];

export const webPages: FastifyPluginAsync = async (app) => {
  const scripts = await bundlePages();
  await app.register(serveFiles, { root: projectFile('src', 'web', 'public'), prefix: '/', index: false });
  for (const [address, file] of addresses) app.get(address, (_request, reply) => reply.sendFile(file));
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
