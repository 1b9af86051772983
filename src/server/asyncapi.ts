/** The socket described from the schemas that check its frames, as AsyncAPI 3: `/v1/asyncapi.json`. */
import { z } from 'zod';
import { clientMessage, serverMessage, SUBPROTOCOL } from '../../shared/wire/socket.js';
import { asComponents } from './api-document.js';

type Side = 'ClientMessage' | 'ServerMessage';

/** Each message by its `type`, and the schema of that one. */
const messagesOf = (side: Side, schema: Record<string, unknown>): readonly (readonly [string, object])[] => {
  const kinds = (schema['oneOf'] ?? schema['anyOf'] ?? []) as readonly {
    readonly description?: string;
    readonly properties: { readonly type: { readonly const: string } };
  }[];
  const from = side === 'ClientMessage' ? 'client' : 'server';
  return kinds.map((kind) => {
    const { const: name } = kind.properties.type;
    return [
      `${from}-${name}`,
      {
        name,
        title: `${name}, from the ${from}`,
        ...(kind.description === undefined ? {} : { summary: kind.description }),
        contentType: 'application/json',
        payload: kind,
      },
    ];
  });
};

/** The document. Versions are those of the path: within `/v1` messages only gain parts and types. */
export const asyncapiDocument = (): Record<string, unknown> => {
  const client = asComponents('ClientMessage', z.toJSONSchema(clientMessage, { io: 'input' }), 'Input');
  const server = asComponents('ServerMessage', z.toJSONSchema(serverMessage, { io: 'output' }), '');
  const { ClientMessage, ...clientParts } = client;
  const { ServerMessage, ...serverParts } = server;
  const received = messagesOf('ClientMessage', ClientMessage as Record<string, unknown>);
  const sent = messagesOf('ServerMessage', ServerMessage as Record<string, unknown>);
  const operation = (action: 'receive' | 'send', which: typeof sent) => ({
    action,
    channel: { $ref: '#/channels/conversation' },
    messages: which.map(([name]) => ({ $ref: `#/channels/conversation/messages/${name}` })),
    security: [{ $ref: '#/components/securitySchemes/device' }],
  });
  return {
    asyncapi: '3.0.0',
    info: {
      title: 'Tellshelf, a conversation over a socket',
      version: '1',
      description:
        'One JSON object a text frame. The same turns as `POST /v1/turns`; besides, words so far, and the service may speak first. What is unasked comes again on each connection until it is acknowledged.',
      license: { name: 'MIT' },
    },
    defaultContentType: 'application/json',
    channels: {
      conversation: {
        address: '/v1/conversation',
        description: `A client may ask for the subprotocol ${SUBPROTOCOL}.`,
        messages: Object.fromEntries(
          [...received, ...sent].map(([name]) => [name, { $ref: `#/components/messages/${name}` }]),
        ),
        bindings: { ws: { method: 'GET', bindingVersion: '0.1.0' } },
      },
    },
    operations: { hear: operation('receive', received), speak: operation('send', sent) },
    components: {
      messages: Object.fromEntries([...received, ...sent]),
      schemas: { ...clientParts, ...serverParts },
      securitySchemes: {
        device: { type: 'http', scheme: 'bearer', description: 'The key of a device.' },
      },
    },
  };
};
