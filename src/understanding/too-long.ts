/**
 * What is longer than anybody says in a breath is not read: reading costs more than its words, and others wait
 * meanwhile. Nor is its beginning taken for the whole. Only who is in trouble is heard, at its beginning and its end.
 */
import type { Hypothesis, Understanding } from './intents.js';
import type { Understander } from './understand.js';
import { longestInput, normalise } from './words/index.js';

const tooLong: Understanding = { readings: [], margin: 1, verdict: 'ask-again', tooLong: true };

/** A good part of what is read: short forms are more words when they are spelled out. */
const endsOf = (text: string): readonly string[] => {
  const [characters, words] = [longestInput.characters * 0.75, longestInput.words * 0.75];
  const all = (some: string): string[] => some.split(/\s+/).filter((word) => word !== '');
  return [
    all(text.slice(0, characters)).slice(0, words).join(' '),
    all(text.slice(-characters)).slice(-words).join(' '),
  ];
};

const isUrgent = ({ readings }: Understanding): boolean =>
  readings[0]?.acts.some(({ intent }) => intent === 'urgent') === true;

/** `alarm` hears those in trouble, and may hear more. */
export const withLimit = (inner: Understander, alarm: Understander): Understander => ({
  begins: (words, names, context) => inner.begins(words, names, context),
  understand(hypotheses, names, context) {
    const [first] = hypotheses;
    if (!first || !normalise(first.text, context.locale).cut)
      return inner.understand(hypotheses, names, context);
    const ends = endsOf(first.text).map((text): Hypothesis[] => [{ ...first, text }]);
    return ends.map((end) => alarm.understand(end, names, context)).find(isUrgent) ?? tooLong;
  },
});
