/** The socket described from the schemas that check its frames, as AsyncAPI 3: `/v1/asyncapi.json`. */
import { z } from 'zod';
import { clientMessage, serverMessage, SUBPROTOCOL } from '../../shared/wire/socket.js';
import { asComponents } from './api-document.js';
import { EXAMPLES, readAnswers } from './api-examples.js';
import { CLOSE } from './conversation/hub.js';
import { toProblem } from './problems.js';

type Side = 'ClientMessage' | 'ServerMessage';

/** Each message by its `type`, and the schema of that one. */
const messagesOf = (
  side: Side,
  schema: Record<string, unknown>,
  examples: Readonly<Record<string, object>>,
): readonly (readonly [string, object])[] => {
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
        examples: [{ name: 'one', payload: examples[`${from}-${name}`] }],
        contentType: 'application/json',
        payload: kind,
      },
    ];
  });
};

/** One of each message, by its name in the document. */
const exampleMessages = (): Readonly<Record<string, object>> => {
  const reply = readAnswers()['POST /v1/turns']?.['application/json'];
  const rings = 'The rice timer is done.';
  return {
    'client-turn': { type: 'turn', turn: EXAMPLES['POST /v1/turns'] },
    'client-partial': { type: 'partial', text: 'where is the' },
    'client-ping': { type: 'ping', id: 'p1' },
    'client-ack': { type: 'ack', id: 'timer.r12.1778778000' },
    'server-welcome': { type: 'welcome', household: 'marta-okafor', device: 'demo-1', version: 1 },
    'server-reply': { type: 'reply', reply },
    'server-partial': { type: 'partial', conversation: 'default', fits: true },
    'server-pong': { type: 'pong', id: 'p1' },
    'server-unasked': {
      type: 'unasked',
      id: 'timer.r12.1778778000',
      kind: 'timer',
      due: '2026-05-14T17:00:00.000Z',
      speech: { ssml: `<speak version="1.1"><s>${rings}</s></speak>`, text: rings, sentences: [rings] },
    },
    'server-changed': {
      type: 'changed',
      version: 2,
      changes: [{ verb: 'put on the list', about: ['oats'], kind: 'purchase', ids: ['t1.1'] }],
    },
    'server-error': { type: 'error', problem: toProblem('id-reused', {}, 'r1-1'), turn: 't1' },
  };
};

/** The document. Versions are those of the path: within `/v1` messages only gain parts and types. */
export const asyncapiDocument = (): Record<string, unknown> => {
  const client = asComponents('ClientMessage', z.toJSONSchema(clientMessage, { io: 'input' }), 'Input');
  const server = asComponents('ServerMessage', z.toJSONSchema(serverMessage, { io: 'output' }), '');
  const { ClientMessage, ...clientParts } = client;
  const { ServerMessage, ...serverParts } = server;
  const examples = exampleMessages();
  const received = messagesOf('ClientMessage', ClientMessage as Record<string, unknown>, examples);
  const sent = messagesOf('ServerMessage', ServerMessage as Record<string, unknown>, examples);
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
        description: `A client may ask for the subprotocol ${SUBPROTOCOL}. It gives the key of its device as \`Authorization: Bearer\`, a page its session’s cookie. Closed by ${CLOSE.goingAway}: connect again. Closed by ${CLOSE.policy}: the device may no longer speak, or sent too much that was refused.`,
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
