/** A turn's outcome as the wire tells it. */
import type { Outcome, Surroundings } from '../dialogue/api.js';
import type { Change } from '../kitchen/model.js';
import type { Answer, Say, Spoken } from '../speech/answer.js';
import type { Expectation, Understanding } from '../understanding/intents.js';
import type { ChangeMade, TurnReply, TurnRequest } from '../../shared/wire/turn.js';

export const changesMade = (changes: readonly Change[]): ChangeMade[] =>
  changes.map((change) => {
    const kinds = new Set(change.ops.map((op) => op.kind));
    const [kind] = kinds;
    return {
      verb: change.verb,
      about: [...change.about],
      ...(kinds.size === 1 && kind ? { kind } : {}),
      ids: [...new Set(change.ops.map((op) => op.id))],
    };
  });

/** A screen needs to know how to take the next answer, not which slot it fills. */
const kindOfNext = (expecting: Expectation): TurnReply['expects']['kind'] => {
  switch (expecting) {
    case 'anything':
    case 'detail':
    case 'outage':
      return 'open';
    case 'outage-state':
      return 'yes-no';
    case 'allergen':
      return 'choice';
    case 'yes-no':
    case 'choice':
    case 'step':
      return expecting;
    default:
      return 'words';
  }
};

/** Which sound an answer begins with, for clients that want one: what happened before what is asked. */
export const withEarcon = (
  { answer, changes, conversation }: Outcome,
  { verdict }: Understanding,
): Answer => {
  if (answer.earcon !== undefined) return answer;
  if (verdict === 'ask-again' || verdict === 'out-of-scope' || verdict === 'nothing-heard')
    return { ...answer, earcon: 'problem' };
  if (changes.length > 0) return { ...answer, earcon: 'done' };
  if (answer.question !== undefined) return { ...answer, earcon: 'question' };
  return conversation.expecting === 'step' ? { ...answer, earcon: 'step' } : answer;
};

export const toReply = (
  request: TurnRequest,
  around: Surroundings,
  understanding: Understanding,
  outcome: Outcome,
  spoken: Spoken,
  /** One phrase in words, as a sentence. */
  inWords: (phrase: Say) => string,
): TurnReply => {
  const best = understanding.readings[0];
  return {
    id: request.id,
    conversation: request.conversation,
    at: around.clock.now,
    speech: { ssml: spoken.ssml, text: spoken.text, sentences: [...spoken.sentences] },
    understood: {
      intents: best?.acts.map((act) => act.intent) ?? [],
      slots: best?.acts.map((act) => ({ ...act.slots })) ?? [],
      confidence: best?.confidence ?? 0,
      heard: best?.heard ?? request.hypotheses[0]?.text ?? '',
      verdict: understanding.verdict,
    },
    expects: {
      kind: kindOfNext(outcome.conversation.expecting),
      choices: (outcome.answer.choices ?? []).map(({ label, say }) => ({
        label: typeof label === 'string' ? label : inWords(label).replace(/[.?!]+$/, ''),
        say,
      })),
    },
    changes: changesMade(outcome.changes),
    version: around.kitchen.version + outcome.changes.length,
  };
};

/** The reply to a turn that broke: what was said, and where to look for why. */
export const toFaultReply = (
  request: TurnRequest,
  told: {
    readonly fault: string;
    readonly at: string;
    readonly version: number;
    readonly expecting: Expectation;
  },
  spoken: Spoken,
): TurnReply => ({
  id: request.id,
  conversation: request.conversation,
  at: told.at,
  speech: { ssml: spoken.ssml, text: spoken.text, sentences: [...spoken.sentences] },
  understood: {
    intents: [],
    slots: [],
    confidence: 0,
    heard: request.hypotheses[0]?.text ?? '',
    verdict: 'ask-again',
  },
  expects: { kind: kindOfNext(told.expecting), choices: [] },
  changes: [],
  version: told.version,
  fault: told.fault,
});
