/** Lengths of time in sentences that are kept as they were said. */
import { describe, expect, it } from 'vitest';
import { saidDuration } from '../../src/understanding/index.js';

describe('the time a sentence tells', () => {
  it.each([
    ['Heat it for two minutes and stir.', 120],
    ['Heat for 90 seconds', 90],
    ['Heat it for another two minutes.', 120],
    ['Bake half an hour, then uncover.', 1800],
    // The shorter of a span: one looks early.
    ['Simmer three to four minutes', 180],
    ['Put it in the oven for an hour and ten minutes', 4200],
  ])('%s', (sentence, seconds) => expect(saidDuration(sentence, 'en-US')).toBe(seconds));
  it.each(['Stir every two minutes.', 'Eat it within two hours.', 'Cover it with two plates.', ''])(
    'none: %s',
    (sentence) => expect(saidDuration(sentence, 'en-US')).toBeNull(),
  );
});
