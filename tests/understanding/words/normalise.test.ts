import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { projectFile } from '../../../src/project-files.js';
import { lexiconFor, longestInput, normalise } from '../../../src/understanding/words/index.js';

const tidy = (text: string): string => normalise(text, 'en-US').tokens.join(' ');

describe('writing', () => {
  it.each([
    ["What's on the second shelf?", 'what is on the second shelf'],
    ['WHERE IS THE MILK', 'where is the milk'],
    ['the chest-freezer basket', 'the chest freezer basket'],
    ['what’s old', 'what is old'],
    ['cre\u0300me fraîche', 'crème fraîche'],
    ['“the stew”, please…', 'the stew'],
    ['salt & pepper', 'salt and pepper'],
    ['', ''],
    ['?!…', ''],
  ])('%j is read as %j', (text, expected) => expect(tidy(text)).toBe(expected));
});

describe('contractions', () => {
  it.each([
    ["i've finished the milk", 'i have finished the milk'],
    ['whats in the fridge', 'what is in the fridge'],
    ["what 's in the fridge", 'what is in the fridge'],
    ["i do n't know", 'i do not know'],
    ["can't find it", 'can not find it'],
    ["the milk's gone", 'the milk is gone'],
    ["amara's white beans", "amara's white beans"],
    ['its gone', 'it is gone'],
    ['its lid is square', 'its lid is square'],
  ])('%j is %j', (text, expected) => expect(tidy(text)).toBe(expected));
});

describe('figures', () => {
  it.each([
    ['2 tubs', 'two tubs'],
    ['200g of rice', 'two hundred g of rice'],
    ['1,200 grams', 'one thousand two hundred grams'],
    ['the 9th of june', 'the ninth of june'],
    ['the 21st', 'the twenty first'],
    ['1.5 cups', 'one point five cups'],
    ['½ a jar', '1/2 a jar'],
    ['1½ cups', 'one 1/2 cups'],
    ['at 6:30pm', 'at 6:30 pm'],
    ['at 6 p.m.', 'at six pm'],
    ['best before 03/15/2027', 'best before 03/15/2027'],
    ['2027-05-14', '2027-05-14'],
    ['180°C', 'one hundred eighty degrees c'],
  ])('%j is %j', (text, expected) => expect(tidy(text)).toBe(expected));
});

describe('fillers and politeness', () => {
  it.each([
    ['um where is uh the milk', 'where is the milk'],
    ['could you please tell me where the milk is', 'where the milk is'],
    ['can you put oats on the list, please', 'put oats on the list'],
    ['i made, like, eight tubs', 'i made eight tubs'],
    ['okay so what is old', 'what is old'],
    ['tell me about the stew', 'tell me about the stew'],
    ['i would like to know how old the soup is', 'how old the soup is'],
  ])('%j is %j', (text, expected) => expect(tidy(text)).toBe(expected));

  it('marks doubt that goes with the fillers', () => {
    expect(normalise('i think the milk is gone', 'en')).toMatchObject({ hedged: true });
    expect(normalise('um the milk is gone', 'en')).toMatchObject({ hedged: false });
  });

  it.each(['okay', 'thank you', 'right', 'please', 'well done', 'now'])(
    'keeps %j, which means something alone',
    (text) => expect(tidy(text)).toBe(text),
  );

  it.each([
    // What may be done is not what is to be done.
    'can you freeze cooked rice',
    'could you eat this',
    'would you reheat rice twice',
    // Words that are fillers elsewhere.
    'is the milk okay',
    'the drawer on the right',
    'i think so',
    'i forgot the milk on the counter',
    'look for the sauerkraut',
  ])('leaves %j as it is', (text) => expect(tidy(text)).toBe(text));
});

describe('stutters', () => {
  it.each([
    ['put the the soup in', 'put the soup in'],
    ['put the put the soup in', 'put the soup in'],
    ['the fr- freezer', 'the freezer'],
    ['where is where is the milk', 'where is the milk'],
    ['piri piri chicken', 'piri piri chicken'],
    ['h a r r i s s a', 'h a r r i s s a'],
    ['b a a', 'b a a'],
    ['code four four two', 'code four four two'],
  ])('%j is %j', (text, expected) => expect(tidy(text)).toBe(expected));
});

describe('self-repairs', () => {
  it.each([
    ['two, no, three tubs', 'three tubs'],
    ['two tubs of chilli, no, three', 'three tubs of chilli'],
    ['put 2 tubs, no 3, on the top shelf', 'put three tubs on the top shelf'],
    ['put the milk i mean the cream on the door', 'put the cream on the door'],
    ['put the soup in the fridge no the freezer', 'put the soup in the freezer'],
    ['put the soup on the top shelf wait on the second shelf', 'put the soup on the second shelf'],
    ['i made it on monday no tuesday', 'i made it on tuesday'],
    ['finish the rice scratch that where is the milk', 'where is the milk'],
    ['a timer for ten no twelve minutes', 'a timer for twelve minutes'],
    ['three tubs of er sorry four tubs of stew', 'four tubs of stew'],
    ['put the soup on the list never mind', 'never mind'],
  ])('%j is %j', (text, expected) => expect(tidy(text)).toBe(expected));

  it.each([
    'no i meant the other one',
    'is there no milk left',
    'the jar with no dots',
    'wait a moment',
    'it was four cups not five',
    'will i have to wait to get it',
    'do you remember my name',
    'we have no more olive oil',
    'no',
    'actually',
  ])('leaves %j as it is', (text) => expect(tidy(text)).toBe(text));

  it('notes what was taken away, and by which pass', () => {
    const { notes } = normalise('two, no, three tubs', 'en');
    expect(notes).toContainEqual({ pass: 'repairs', from: 'two no three tubs', to: 'three tubs' });
  });
});

describe('any input', () => {
  const words = [
    ...Object.keys(lexiconFor('en').tidying.contractions),
    ...lexiconFor('en').tidying.fillersAnywhere,
    ...lexiconFor('en').tidying.fillersAtStart,
    ...lexiconFor('en').tidying.fillersAtEnd,
    ...Object.values(lexiconFor('en').tidying.repairCues).flatMap((cues) =>
      Array.isArray(cues) ? cues : [],
    ),
    ...[
      'the',
      'milk',
      'a',
      'two',
      'three',
      'stew',
      '9th',
      '1.5',
      '½',
      '6:30pm',
      "'s",
      "'",
      '-',
      'monday',
      'put',
      'h',
      "amara's",
    ],
  ];
  const sentence = fc
    .array(fc.tuple(fc.constantFrom(...words), fc.constantFrom(' ', ', ', '. ', ' - ')), { maxLength: 14 })
    .map((parts) => parts.flat().join(''));

  it('is read the same when read again', () => {
    fc.assert(
      fc.property(fc.oneof(sentence, fc.string({ unit: 'grapheme', maxLength: 60 })), (text) => {
        const once = tidy(text);
        expect(tidy(once)).toBe(once);
      }),
      { numRuns: 600 },
    );
  });

  it('gives tokens without spaces, capitals or sentence marks', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (text) => {
        for (const token of normalise(text, 'en').tokens) {
          expect(token).not.toMatch(/[\s,;!?]/);
          expect(token).toBe(token.toLowerCase());
        }
      }),
    );
  });

  it('is bounded, and says when it was cut', () => {
    const long = normalise('milk and bread '.repeat(5000), 'en');
    expect(long.tokens.length).toBeLessThanOrEqual(longestInput.words);
    expect(long.cut).toBe(true);
    expect(normalise('where is the milk', 'en').cut).toBe(false);
  });

  it('refuses a locale that is none', () => {
    expect(() => normalise('milk', '../x')).toThrow('Not a language');
  });
});

describe('the word lists', () => {
  it('hold lower-case words only', () => {
    const { about: _about, ...tidying } = JSON.parse(
      readFileSync(projectFile('grammars', 'en', 'words', 'tidying.json'), 'utf8'),
    ) as { about: string; contractions: Record<string, string> };
    for (const word of Object.keys(tidying.contractions)) expect(word).toBe(word.toLowerCase());
  });
});
