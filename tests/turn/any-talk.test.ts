/**
 * Whatever is said, in whatever state of the conversation, is answered: nothing is thrown, no answer is a fault.
 * `FUZZ_TURNS=100000 npm run bench:load fuzz` is the long run.
 */
import { expect, it } from 'vitest';
import { problemsInSsml } from '../speech/ssml-structure.js';
import { talkAtRandom } from './any-talk.js';

it('any talk goes on', { timeout: 300_000 }, async () => {
  const { broken, changes, verdicts } = await talkAtRandom(450, 20_261_130, ({ speech, understood }) => {
    expect(problemsInSsml(speech.ssml)).toEqual([]);
    // Only who asks for silence gets it.
    if (speech.text === '') expect(understood.intents).toEqual(['stop']);
  });
  expect(broken).toEqual([]);
  // It gets far into the kitchen, and outside it.
  expect(changes).toBeGreaterThan(20);
  for (const verdict of ['act', 'confirm', 'ask-again', 'out-of-scope', 'nothing-heard'])
    expect(verdicts.get(verdict) ?? 0, verdict).toBeGreaterThan(0);
});
