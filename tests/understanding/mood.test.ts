import { describe, expect, it } from 'vitest';
import { statSync } from 'node:fs';
import { projectFile } from '../../src/project-files.js';
import { moodOf, MOODS, type Mood } from '../../src/understanding/learned/index.js';
import { normalise } from '../../src/understanding/words/index.js';
import { keptOutTalk } from '../accuracy/mood-examples.js';
import { DECIDING, likeliest, rightOf } from '../accuracy/moods.js';
import { judgeAll } from '../accuracy/mood-learning.js';
import { readFileSync } from 'node:fs';

const sharesOf = (text: string) => moodOf(normalise(text, 'en-GB').tokens, 'en')!;
const moodSaid = (text: string): Mood => likeliest(sharesOf(text));

describe('the mood of a stretch of words', () => {
  it('has a share for each, adding up to one, the same each time', () => {
    const shares = sharesOf('i put two pints of milk in the fridge door');
    expect(MOODS.reduce((sum, mood) => sum + shares[mood], 0)).toBeCloseTo(1, 9);
    expect(sharesOf('i put two pints of milk in the fridge door')).toEqual(shares);
  });

  it.each([
    ["I've got two pints of milk, use by the twenty-first, that's gone in the fridge door", 'told'],
    ["I'm telling you, the stew contains celery", 'told'],
    ['and is that for all three places?', 'asked'],
    ['have I got any left', 'asked'],
    ['any milk left', 'asked'],
    ['the chili still good', 'asked'],
    ['take the lemons off the list', 'ordered'],
    ['the one on the bottom shelf', 'answered'],
    ['who won the match last night', 'not-ours'],
  ] as const)('%s: %s', (text, mood) => {
    expect(moodSaid(text)).toBe(mood);
  });

  it('needs no mark, and is surer of a question with one', () => {
    const words = normalise('the ham is still good', 'en-US').tokens;
    expect(moodOf([...words, '?'], 'en')!.asked).toBeGreaterThan(moodOf(words, 'en')!.asked);
  });

  it('takes a name alone for an answer sooner where one is waited for', () => {
    const words = ['the', 'chest', 'freezer'];
    const awaited = moodOf(words, 'en', { expecting: 'place' })!;
    expect(awaited.answered).toBeGreaterThan(moodOf(words, 'en', { expecting: 'anything' })!.answered);
  });

  it('says nothing of a language that none were learned of, and nothing breaks on no words', () => {
    expect(moodOf(['queda', 'leche'], 'es')).toBeNull();
    expect(moodOf([], 'en')).not.toBeNull();
  });

  it('is right of what people said in talk that was not learned from', () => {
    const file = readFileSync(projectFile('grammars', 'en', 'learned', 'mood.bin'));
    for (const [, kept] of keptOutTalk()) {
      const judged = judgeAll(kept, file);
      expect(judged.length).toBeGreaterThan(90);
      expect(rightOf(judged.filter(({ example }) => DECIDING.has(example.mood)))).toBeGreaterThan(0.9);
    }
  });

  it('is small', () => {
    expect(statSync(projectFile('grammars', 'en', 'learned', 'mood.bin')).size).toBeLessThan(200_000);
  });
});
