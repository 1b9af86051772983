/** One turn of a conversation, on the wire. HTTP and the socket speak the same shapes. */
import { z } from 'zod';

export const limits = {
  hypotheses: 10,
  /** Characters in one hypothesis. */
  utterance: 2_000,
  /** A device's id is put before it in the store, whose ids are at most 128. */
  id: 80,
} as const;

/** An id a client may make: no spaces, nothing that means something in a path, a log or a page. */
export const wireId = z
  .string()
  .min(1)
  .max(limits.id)
  .regex(/^[\w.:-]+$/, 'letters, digits, dot, colon, dash and underscore only');

export const hypothesis = z.strictObject({
  text: z.string().max(limits.utterance).describe('What the recogniser heard, as words.'),
  confidence: z.number().min(0).max(1).optional().describe('0 to 1, where the recogniser gives one.'),
});

export const turnRequest = z
  .strictObject({
    id: wireId.describe(
      'Made by the client, new for each turn. A retry with the same id is answered from the record, not done twice.',
    ),
    conversation: wireId
      .default('default')
      .describe('Turns of one device with the same name continue one conversation.'),
    hypotheses: z.array(hypothesis).max(limits.hypotheses).describe('Best first. Empty: nothing was heard.'),
    touched: z
      .string()
      .max(2_000)
      .optional()
      .describe('Text of the marker just touched: an NFC record, a printed code.'),
    cutAt: z
      .string()
      .max(32)
      .optional()
      .describe('Name of the last SSML mark reached, when the answer was cut off.'),
    locale: z
      .string()
      .max(35)
      .optional()
      .describe('BCP 47. The household’s own when left out or not spoken here.'),
    sounds: z
      .boolean()
      .optional()
      .describe('This client plays `<audio>` (see /sounds): a short sound says of what kind the answer is.'),
  })
  .meta({ id: 'TurnRequest' });
export type TurnRequest = z.infer<typeof turnRequest>;

/** What is said, as marked-up speech and as plain text. */
export const speech = z
  .strictObject({
    ssml: z
      .string()
      .describe('A whole W3C SSML 1.1 document, with a `<mark name="s1"/>` before each sentence.'),
    text: z.string(),
    sentences: z.array(z.string()),
  })
  .meta({ id: 'Speech' });

/** One change as a client sees it. */
export const changeMade = z
  .strictObject({
    verb: z.string().describe('What was done: "put away", "moved", "finished".'),
    about: z.array(z.string()).describe('What it was about, as spoken.'),
    kind: z.string().optional().describe('Kind of record, where all are of one kind.'),
    ids: z.array(z.string()).describe('Ids of the records that changed.'),
  })
  .meta({ id: 'ChangeMade' });
export type ChangeMade = z.infer<typeof changeMade>;

export const turnReply = z
  .strictObject({
    id: wireId,
    conversation: wireId,
    at: z.iso.datetime(),
    speech,
    understood: z.strictObject({
      intents: z.array(z.string()).describe('In the order they were said.'),
      slots: z
        .array(z.record(z.string(), z.unknown()))
        .describe('The parts of each intent, in the same order.'),
      confidence: z.number().min(0).max(1),
      heard: z.string().describe('The hypothesis it was understood from.'),
      verdict: z.enum(['act', 'confirm', 'ask-again', 'out-of-scope', 'nothing-heard']),
    }),
    expects: z.strictObject({
      kind: z.enum(['open', 'yes-no', 'choice', 'words', 'step']),
      choices: z.array(z.strictObject({ label: z.string(), say: z.string() })),
    }),
    changes: z.array(changeMade),
    version: z.number().int().describe('The kitchen’s version after the turn.'),
    fault: z
      .string()
      .optional()
      .describe('Something broke here while this was worked out; the speech says so. The id to ask about.'),
  })
  .meta({ id: 'TurnReply' });
export type TurnReply = z.infer<typeof turnReply>;
