/** The API described from the same zod schemas that check it: `/v1/openapi.json` and a page at `/v1/reference`. */
import swagger from '@fastify/swagger';
import type { FastifyInstance } from 'fastify';
import fp from 'fastify-plugin';
import { jsonSchemaTransform, jsonSchemaTransformObject } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { clientMessage, serverMessage } from '../../shared/wire/socket.js';
import { PROBLEMS } from './problems.js';
import { referencePage, type ApiDocument } from './reference-page.js';

const about = `Tellshelf keeps a spoken record of one kitchen. Every route but health, pairing and this description needs a device token: \`Authorization: Bearer tsf_…\`, or a page's session cookie together with an \`x-csrf-token\` header for changes.

Errors are RFC 9457 problem details with a \`code\`; \`/v1/problems\` lists them. What guidance says is reported, never that food is safe.`;

/** The socket's messages are not routes, so they are put beside the routes' schemas. */
const withMessages = (document: ApiDocument): ApiDocument => ({
  ...document,
  components: {
    ...document.components,
    schemas: {
      ...document.components?.schemas,
      ClientMessage: z.toJSONSchema(clientMessage, { io: 'input', target: 'draft-2020-12' }),
      ServerMessage: z.toJSONSchema(serverMessage, { io: 'output', target: 'draft-2020-12' }),
    },
  },
});

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
      tags: [
        { name: 'conversation', description: 'Speaking and being answered' },
        { name: 'kitchen', description: 'The kitchen for pages and sighted helpers' },
        { name: 'devices', description: 'Who may speak here' },
        { name: 'household', description: 'A household’s own data' },
        { name: 'operations', description: 'For whoever runs the service' },
      ],
      components: {
        securitySchemes: {
          device: { type: 'http', scheme: 'bearer', description: 'A device token.' },
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
          ...(open ? { security: [] } : { security: [{ device: [] }, { page: [] }], 'x-needs': needs }),
        },
      };
    },
    transformObject: (document) => withMessages(jsonSchemaTransformObject(document) as ApiDocument) as never,
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
  app.get('/v1/reference', hidden, async (_request, reply) =>
    reply.type('text/html; charset=utf-8').send((made.page ??= referencePage(describe(), PROBLEMS))),
  );
  app.get('/v1/problems', hidden, async () =>
    Object.entries(PROBLEMS).map(([code, { status, title }]) => ({ code, status, title })),
  );
};
