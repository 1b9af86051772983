/** The API described from the same zod schemas that check it: `/v1/openapi.json` and a page at `/v1/reference`. */
import swagger from '@fastify/swagger';
import type { FastifyInstance } from 'fastify';
import fp from 'fastify-plugin';
import { jsonSchemaTransform, jsonSchemaTransformObject } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { clientMessage, serverMessage } from '../../shared/wire/socket.js';
import { asComponents, finishDocument } from './api-document.js';
import { asyncapiDocument } from './asyncapi.js';
import { PROBLEMS } from './problems.js';
import { referencePage, type ApiDocument } from './reference-page.js';

const about = `Tellshelf keeps a spoken record of one kitchen. Every route but health, pairing and this description needs a device token: \`Authorization: Bearer tsf_…\`, or a page's session cookie together with an \`x-csrf-token\` header for changes.

Errors are RFC 9457 problem details with a \`code\`; \`/v1/problems\` lists them. What guidance says is reported, never that food is safe.

Within \`/v1\` nothing is taken away or changes its meaning: answers, messages and lists of codes may gain parts, so a client passes over what it does not know. What breaks a client gets a new path.`;

/** The socket's messages are not routes, so they are put beside the routes' schemas. */
const messages = {
  ...asComponents('ClientMessage', z.toJSONSchema(clientMessage, { io: 'input' }), 'Input'),
  ...asComponents('ServerMessage', z.toJSONSchema(serverMessage, { io: 'output' }), ''),
};

/** Must be registered before the routes it is to describe. */
export const openapi = fp(async (app) => {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Tellshelf',
        version: '1',
        description: about,
        license: { name: 'MIT', identifier: 'MIT' },
      },
      servers: [{ url: '/', description: 'This service' }],
      tags: [
        { name: 'conversation', description: 'Speaking and being answered' },
        { name: 'kitchen', description: 'The kitchen for pages and sighted helpers' },
        { name: 'feeds', description: 'For calendars, lists and other speech fronts' },
        { name: 'devices', description: 'Who may speak here' },
        { name: 'household', description: 'A household’s own data' },
        { name: 'lessons', description: 'What there is to practise, and how it went where that may be seen' },
        { name: 'operations', description: 'For whoever runs the service' },
      ],
      components: {
        securitySchemes: {
          device: { type: 'http', scheme: 'bearer', description: 'The key of a device.' },
          page: { type: 'apiKey', in: 'cookie', name: 'tellshelf_session', description: 'A page’s session.' },
        },
      },
    },
    transform: (route) => {
      // The websocket plugin hides its routes; ours is part of the API.
      const shown = (route.route as { websocket?: boolean }).websocket
        ? { ...route, schema: { ...route.schema, hide: false } }
        : route;
      const described = jsonSchemaTransform(shown);
      const needs = route.route.config?.needs;
      const open = needs === 'public' || needs === undefined;
      const schema = described.schema as Record<string, unknown>;
      return {
        ...described,
        schema: {
          ...schema,
          ...(schema['produces'] === undefined ? {} : { 'x-produces': schema['produces'] }),
          ...(open ? { security: [] } : { security: [{ device: [] }, { page: [] }], 'x-needs': needs }),
        },
      };
    },
    transformObject: (document) =>
      finishDocument(jsonSchemaTransformObject(document) as ApiDocument, messages) as never,
  });
});

const hidden = { config: { needs: 'public' as const }, schema: { hide: true } };

/** The description itself, once all routes are known. */
export const openapiRoutes = async (app: FastifyInstance): Promise<void> => {
  const made: { json?: string; page?: string } = {};
  const describe = (): ApiDocument => app.swagger() as unknown as ApiDocument;
  app.get('/v1/openapi.json', hidden, async (_request, reply) =>
    reply.type('application/json').send((made.json ??= JSON.stringify(describe()))),
  );
  const socket = JSON.stringify(asyncapiDocument());
  app.get('/v1/asyncapi.json', hidden, async (_request, reply) =>
    reply.type('application/json').send(socket),
  );
  app.get('/v1/reference', hidden, async (_request, reply) =>
    reply.type('text/html; charset=utf-8').send((made.page ??= referencePage(describe(), PROBLEMS))),
  );
  app.get('/v1/problems', hidden, async () =>
    Object.entries(PROBLEMS).map(([code, { status, title }]) => ({ code, status, title })),
  );
};
