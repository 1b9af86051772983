/** A turn as one line of JSON, for scripts and tests. */
import type { TurnReply } from '../../../shared/wire/turn.js';
import type { WhyMove } from '../../turn/index.js';

/** `why`: how each move came to its answer. */
export const asJsonLine = (reply: TurnReply, why?: readonly WhyMove[]): string => {
  const { intents, slots, confidence, heard, verdict } = reply.understood;
  return JSON.stringify({
    heard,
    verdict,
    intent: intents[0] ?? null,
    slots: slots[0] ?? {},
    confidence,
    acts: intents.map((intent, n) => ({ intent, slots: slots[n] ?? {} })),
    changes: reply.changes,
    speech: { text: reply.speech.text, ssml: reply.speech.ssml },
    expects: reply.expects,
    at: reply.at,
    version: reply.version,
    ...(why ? { why } : {}),
  });
};

export const asPlainLine = (reply: TurnReply): string => reply.speech.text.replace(/\s+/g, ' ').trim();
