/** Fifty invented histories, each verdict reckoned by hand: `tests/data/guidance/histories.md`. */
import { describe, expect, it } from 'vitest';
import { dayOf, histories, played } from './histories.js';

const all = histories();

it('there are fifty of them', () => expect(all.length).toBe(50));

describe('what a food went through', () => {
  it.each(all.map((one) => [one.no, one.food, one.through.join(', '), one] as const))(
    '%s: %s, %s',
    (_no, _food, _through, one) => {
      const found = played(one);
      expect(found.verdict).toBe(one.verdict);
      if (one.lastDay !== '') expect(found.lastDay).toBe(dayOf(one.lastDay));
    },
  );
});
