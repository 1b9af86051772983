import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createUnderstander, movesOf } from '../../src/understanding/index.js';
import type { Expectation } from '../../src/understanding/intents.js';
import { sentencesOf } from '../../src/understanding/words/sentences.js';
import { hearing, martasNames } from './household.js';

const understander = createUnderstander('en-US');
const names = martasNames();
const moves = (text: string, expecting: Expectation = 'anything') => {
  const [said, context] = [[{ text }], hearing(expecting)] as const;
  return movesOf(understander, said, names, context, understander.understand(said, names, context));
};
const cut = (text: string, expecting?: Expectation): readonly string[] =>
  moves(text, expecting).map(({ said }) => said[0]!.text);

describe('sentences', () => {
  it('end where a mark and a space stand', () => {
    expect(sentencesOf('Done. Next! How long is left? two minutes')).toEqual([
      'Done.',
      'Next!',
      'How long is left?',
      'two minutes',
    ]);
  });
  it('do not end within a figure or after a letter', () => {
    expect(sentencesOf('It was 2.5 pounds at 6 a.m. today')).toEqual(['It was 2.5 pounds at 6 a.m. today']);
  });
  it('lose no word of what was said', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (text) => {
        const words = (all: string): readonly string[] => all.split(/\s+/u).filter(Boolean);
        expect(words(sentencesOf(text).join(' '))).toEqual(words(text));
      }),
    );
  });
});

describe('the moves of a turn', () => {
  it('are one for each question', () => {
    expect(cut('Where is the lentil stew? How many eggs have we got?')).toHaveLength(2);
  });
  it('are one for what is told in several sentences of one thing', () => {
    expect(cut('There is a tub of okra stew on the door. It has celery in it.')).toHaveLength(1);
  });
  it('part what is told from what is asked', () => {
    expect(
      cut('I have put two tins of okra in the pantry and the flour on the counter. And where is the rice?'),
    ).toEqual([
      'I have put two tins of okra in the pantry and the flour on the counter.',
      'And where is the rice?',
    ]);
  });
  it('keep a word that only leads on with what it leads to', () => {
    expect(cut('Right. No to that.', 'yes-no')).toHaveLength(1);
  });
  it('are what was said, in order', () => {
    const said = [
      'Where is the rice?',
      'I threw out the salmon.',
      'Set a timer for ten minutes.',
      'No.',
      'Lovely.',
    ];
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...said), { minLength: 1, maxLength: 5 }), (sentences) => {
        expect(cut(sentences.join(' ')).join(' ')).toBe(sentences.join(' '));
      }),
      { numRuns: 30 },
    );
  });
  it('begin inside a sentence that nobody marked, and pass over what is for nobody here', () => {
    expect(cut('i used two eggs and the flour')).toHaveLength(1);
    expect(cut('about half the milk is left')).toHaveLength(1);
  });
  it('leave no fact of a sentence over', () => {
    expect(cut('a bag of okra in the pantry, use by Saturday').join(' ')).toContain('use by');
  });
  it('say where one names something of this kitchen', () => {
    const [first, second] = moves(
      'It was heaving in there. And then what about the okra, I have put two tins in the pantry.',
    );
    expect([first?.matters, second?.matters]).toEqual([false, true]);
  });
});
