/**
 * Messages on `/v1/conversation`, one JSON object a text frame. Discriminated by `type`.
 * The server may speak first: timers, reminders and the nightly summary arrive as `unasked`,
 * again on each reconnect until the client acknowledges them. What somebody else did to the thing being
 * talked of ("Dele finished the rice just now") arrives as `unasked` of kind `note` too, on the socket the
 * talk is held on; when that breaks before the acknowledgement, the next turn tells it instead.
 */
import { z } from 'zod';
import { problem } from './problem.js';
import { changeMade, limits, speech, turnReply, turnRequest, wireId } from './turn.js';

/** The subprotocol a client may ask for (RFC 6455, section 1.9). */
export const SUBPROTOCOL = 'tellshelf.v1';

export const clientMessage = z.discriminatedUnion('type', [
  z
    .strictObject({ type: z.literal('turn'), turn: turnRequest })
    .describe('Something said. Answered by a `reply` or an `error` with the turn’s id.'),
  z
    .strictObject({
      type: z.literal('partial'),
      conversation: wireId.default('default'),
      text: z.string().max(limits.utterance),
    })
    .describe('Words so far, while the cook still speaks. Never acted on.'),
  z.strictObject({ type: z.literal('ping'), id: wireId.optional() }).describe('Answered by a `pong`.'),
  z
    .strictObject({ type: z.literal('ack'), id: wireId })
    .describe('The unasked message with this id was spoken.'),
]);
export type ClientMessage = z.infer<typeof clientMessage>;

export const serverMessage = z.discriminatedUnion('type', [
  z
    .strictObject({
      type: z.literal('welcome'),
      household: z.string().describe('Its id.'),
      device: z.string().describe('The id of the device that the key belongs to.'),
      version: z.number().int().describe('The kitchen’s version now.'),
    })
    .describe('The first message: the socket may be spoken on.'),
  z.strictObject({ type: z.literal('reply'), reply: turnReply }).describe('The answer to a turn.'),
  z
    .strictObject({
      type: z.literal('partial'),
      conversation: wireId,
      fits: z.boolean().describe('The words so far begin something this kitchen understands.'),
    })
    .describe('What came of words said so far.'),
  z.strictObject({ type: z.literal('pong'), id: wireId.optional() }).describe('The answer to a `ping`.'),
  z
    .strictObject({
      type: z.literal('unasked'),
      id: wireId,
      kind: z.enum(['timer', 'reminder', 'summary', 'note']),
      due: z.iso.datetime(),
      speech,
    })
    .describe('Something to say without being asked. Comes on each connection until an `ack` with its id.'),
  z
    .strictObject({
      type: z.literal('changed'),
      version: z.number().int(),
      changes: z.array(changeMade),
    })
    .describe(
      'The kitchen was changed, by whomever: what is shown of it is old. Told to whoever changed it too.',
    ),
  z
    .strictObject({
      type: z.literal('error'),
      problem,
      turn: wireId.optional().describe('The turn it is about, where one was readable.'),
    })
    .describe('A message that was refused. Nothing was changed by it, and the socket stays open.'),
]);
export type ServerMessage = z.infer<typeof serverMessage>;
