import { describe, expect, it } from 'vitest';
import { rulesFor } from '../../../src/understanding/grammar-files.js';
import { stretchesOf } from '../../../src/understanding/moves/stretches.js';
import { hearing, martasNames } from '../household.js';

const context = hearing('anything');
const rules = rulesFor(martasNames(), 'en-US', { now: context.now, timeZone: context.timeZone });
const cut = (text: string): readonly string[] =>
  stretchesOf(text, rules, 'en', 'en-US').map(({ words }) => words);

describe('the stretches of a sentence nobody marked', () => {
  it('begin where a question opens', () => {
    expect(cut('i used two eggs where is the rice')).toEqual(['i used two eggs', 'where is the rice']);
  });
  it('leave the word that only leads on to what it leads to', () => {
    const [first, second] = stretchesOf('i used two eggs and where is the rice', rules, 'en', 'en-US');
    expect([first?.words, second?.joint, second?.words]).toEqual([
      'i used two eggs',
      'and',
      'where is the rice',
    ]);
  });
  it('are one where a question word asks nothing, or a verb goes on with what stands before it', () => {
    expect(cut('about half the milk is left')).toHaveLength(1);
    expect(cut('until what date may the rice be kept')).toHaveLength(1);
  });
  it('are as many as fit, however much is said', () => {
    expect(cut(Array(60).fill('and where is the rice').join(' ')).length).toBeLessThanOrEqual(8);
  });
});
