/** One turn of a conversation, on the wire. HTTP and the socket speak the same shapes. */
import { z } from 'zod';

export const limits = {
  hypotheses: 10,
  /** Characters in one hypothesis. */
  utterance: 2_000,
  id: 128,
} as const;

const id = z
  .string()
  .min(1)
  .max(limits.id)
  .regex(/^[\w.:-]+$/, 'letters, digits, dot, colon, dash and underscore only');

export const hypothesis = z.strictObject({
  text: z.string().max(limits.utterance).describe('What the recogniser heard, as words.'),
  confidence: z.number().min(0).max(1).optional().describe('0 to 1, where the recogniser gives one.'),
});

export const turnRequest = z.strictObject({
  id: id.describe(
    'Made by the client. A retry with the same id is answered from the record, not done twice.',
  ),
  conversation: id.default('default').describe('Turns with the same name continue one conversation.'),
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
  locale: z.string().max(35).optional(),
});
export type TurnRequest = z.infer<typeof turnRequest>;

export const turnReply = z.strictObject({
  id,
  conversation: id,
  at: z.iso.datetime(),
  speech: z.strictObject({ ssml: z.string(), text: z.string(), sentences: z.array(z.string()) }),
  understood: z.strictObject({
    intents: z.array(z.string()),
    slots: z.array(z.record(z.string(), z.unknown())),
    confidence: z.number().min(0).max(1),
    heard: z.string(),
    verdict: z.enum(['act', 'confirm', 'ask-again', 'out-of-scope', 'nothing-heard']),
  }),
  expects: z.strictObject({
    kind: z.enum(['open', 'yes-no', 'choice', 'words', 'step']),
    choices: z.array(z.strictObject({ label: z.string(), say: z.string() })),
  }),
  changes: z.array(
    z.strictObject({
      verb: z.string(),
      about: z.array(z.string()),
      kind: z.string().optional(),
      ids: z.array(z.string()),
    }),
  ),
  version: z.number().int().describe('The kitchen’s version after the turn.'),
});
export type TurnReply = z.infer<typeof turnReply>;
