/** What may become the name of a record: nothing of talk, whichever reader proposes it. */
import { describe, expect, it } from 'vitest';
import { demoKitchen } from '../../src/kitchen/index.js';
import { namesOf } from '../../src/turn/names.js';
import { worthNaming, worthOf, type Worth } from '../../src/understanding/gate/index.js';
import { rulesFor } from '../../src/understanding/grammar-files.js';
import { emptyMention } from '../../src/understanding/intents.js';
import { normalise } from '../../src/understanding/words/index.js';

const clock = { now: '2026-05-14T18:00:00.000Z', timeZone: 'Europe/London' };
const rules = rulesFor(namesOf(demoKitchen(clock)), 'en-GB', clock);
const worth = (words: string): Worth => worthOf({ ...emptyMention, words }, rules, 'en');

describe('a name is worth', () => {
  const cases: readonly (readonly [string, Worth])[] = [
    ['carrot soup', 'food'],
    ['smoked salmon pie', 'food'],
    ['bin bags', 'goods'],
    ['harissa', 'food'],
    ['zorvak', 'unknown'],
    ['half full', 'everyday'],
    ['undo the celery', 'never'],
    ['eaten i do not', 'never'],
    ['not new rice', 'never'],
    ['what is that soup', 'never'],
    ['omg tortillas', 'never'],
    ['against', 'never'],
  ];
  it.each(cases)('%s: %s', (words, expected) => {
    expect(worth(words)).toBe(expected);
  });
});

describe('of what nobody understood', () => {
  it('only what could be put right is named', () => {
    const left = ['want', 'home', 'end', 'undo', 'omg', 'zorvak', 'celery', 'reckon'];
    expect(worthNaming(left, rules, 'en')).toEqual(['zorvak', 'celery']);
  });
});

describe('who is spoken to', () => {
  const cases: readonly (readonly [string, string])[] = [
    ['do not forget the turkey, sugar, that is raw', 'do not forget the turkey that is raw'],
    ['Alright honey, I am home', 'i am home'],
    ['flour, sugar, they are in the pantry', 'flour sugar they are in the pantry'],
    ['we need milk, sugar, eggs', 'we need milk sugar eggs'],
    ['put honey and sugar on the list', 'put honey and sugar on the list'],
  ];
  it.each(cases)('%s', (said, tokens) => {
    expect(normalise(said, 'en-GB').tokens.join(' ')).toBe(tokens);
  });
});
