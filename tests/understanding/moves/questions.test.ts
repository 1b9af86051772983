/** Questions put together from their pieces: what they are about, and what is asked. */
import { describe, expect, test } from 'vitest';
import type { Query } from '../../../src/protocol/query.js';
import { rulesFor } from '../../../src/understanding/grammar-files.js';
import { questionIn } from '../../../src/understanding/moves/questions.js';
import { normalise } from '../../../src/understanding/words/index.js';
import { martasNames } from '../household.js';

const clock = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' };
const rules = rulesFor(martasNames(), 'en-US', clock);
const read = (said: string) => questionIn(normalise(said, 'en-US').tokens, rules, '2026-05-14', 'en');
const whole = (said: string): Query | undefined => read(said)?.acts[0]?.slots.query;
const edit = (said: string) => read(said)?.acts[0]?.slots.edit;
const facts = (query: Query | undefined) => query?.where.map(({ by }) => by).sort();

describe('questions', () => {
  test.each([
    ['whereabouts might the lentil stew be', ['where'], ['named']],
    ['the lentil stew, whereabouts is it', ['where'], ['named']],
    ["how long's that lentil stew been open", ['date:opened'], ['named']],
    ['how many tubs of bean chilli in the chest freezer', ['how-many'], ['felt', 'named', 'place']],
    ['what in the fridge is out of date', ['what'], ['keeping', 'place']],
  ])('%s', (said, asks, by) => {
    expect(whole(said)?.ask).toEqual(asks);
    expect(facts(whole(said))).toEqual(by);
  });

  test('two in one breath keep their order', () => {
    expect(whole('who made the lentil stew and when was it made')?.ask).toEqual(['maker', 'date:made']);
  });

  test('a day is reckoned to', () => {
    expect(whole('will the lentil stew keep till sunday')?.by).toBe('2026-05-17');
    expect(whole('will the lentil stew keep')?.by ?? null).toBeNull();
  });

  test.each([
    ['would you trust that lentil stew', true],
    ['the lentil stew, it can wait until sunday', true],
    ['the lentil stew how long has it been open', true],
    ['lentil stew, how many', true],
    ['lentil stew where the beans are', false],
    ['i will have the lentil stew till sunday', false],
  ])('%s: nothing but a question %s', (said, outright) => {
    expect(read(said)?.outright ?? false).toBe(outright);
  });

  test('a day to come makes it a question of keeping, in whatever words', () => {
    expect(whole('must the lentil stew be eaten by sunday')).toMatchObject({ by: '2026-05-17' });
    expect(whole('will the lentil stew be any company for us on sunday')?.ask).toEqual(['keeps']);
    expect(whole('who made the lentil stew on sunday')?.ask).toEqual(['maker']);
  });

  test('a figure parted from what it counts is of the feel', () => {
    const [held] = whole('i feel two ribbed bands, what have i in the hand')?.where ?? [];
    expect(held).toMatchObject({ by: 'felt', touch: { fastening: 'band', fastenings: 2 } });
    const [dotted] = whole('big jar, wooden disc, and there is one dot, what is that')?.where ?? [];
    expect(dotted).toMatchObject({ by: 'felt', touch: { fastening: 'disc', dots: 1 } });
  });

  test('what is left out of what was told is no name to look for', () => {
    expect(facts(edit('minus the lentil stew')?.query)).toEqual(['not']);
    expect(facts(edit('not the lentil stew')?.query)).toEqual(['named']);
  });

  test.each([
    ['at what hour do you go quiet', { intent: 'household', slots: { setting: 'quiet' } }],
    ['what oclock do i get the round up', { intent: 'household', slots: { setting: 'summary' } }],
    ['what have i still got ticking', { intent: 'timers', slots: {} }],
    ['what have we wasted', { intent: 'what-changed', slots: { asked: 'threw out' } }],
    ['remind me what three dots is again', { intent: 'markers', slots: { dots: 3 } }],
  ])('no food: %s', (said, act) => {
    expect(read(said)?.acts).toMatchObject([act]);
  });

  test.each(['what should be binned', 'how many dots on the lentil stew', 'what has three dots on it'])(
    'of food all the same: %s',
    (said) => {
      expect(read(said)?.acts[0]?.intent ?? 'ask').toBe('ask');
    },
  );

  test('what a mark means narrows by it, in whatever words it stands', () => {
    expect(facts(whole('which things have the bone dry dot on'))).toEqual(['means']);
    expect(facts(whole('anything marked for dele in the fridge'))).toEqual(['means', 'place']);
  });

  test('what somebody must not have, of a place', () => {
    expect(facts(whole('what in the pantry must dele keep clear of'))).toEqual(['place', 'suits']);
    expect(facts(whole('which stuff in the fridge is dele not allowed'))).toEqual(['place', 'suits']);
  });

  test('follow-ups are changes to the question before', () => {
    expect(edit('which of those has milk in it')).toMatchObject({
      point: 'told',
      query: { where: [{ by: 'contains', allergens: ['milk'] }] },
    });
    expect(edit('and in the pantry')).toMatchObject({ point: null, query: { where: [{ by: 'place' }] } });
    expect(edit('just the frozen ones')).toMatchObject({ only: true, query: { where: [{ by: 'state' }] } });
    expect(edit('the other one')?.point).toBe('other');
  });

  test.each([
    'i put the lentil stew in the fridge',
    'the milk is use by the twentieth',
    'we had the beans for dinner and they were lovely',
  ])('no question: %s', (said) => {
    expect(read(said)).toBeNull();
  });

  test.each([
    ['since when', { ask: ['since'] }, 'it'],
    ['what is that altogether', { ask: ['sum'] }, 'it'],
    ['how many are there of the second', { ask: ['how-many'] }, { nth: 2 }],
    ['whose cooking was it', { ask: ['maker'] }, 'it'],
    ['same question for the lentil stew', { where: [{ by: 'named' }] }, null],
    ['which of them lots is the ancient one', { order: 'oldest' }, 'told'],
  ])('after an answer: %s', (said, query, point) => {
    expect(edit(said)).toMatchObject({ query, point });
  });

  test('what was before a question, and is no part of it, is not left over', () => {
    const said = 'i have gone and lost my train of thought where was it we put that lentil stew';
    expect(read(said)).toMatchObject({ hers: true, left: [] });
  });

  test('so long ago is no day to come', () => {
    expect(whole('is the lentil stew still good if it has been there for a week')?.by ?? null).toBeNull();
    expect(whole('is the lentil stew still good in a week')?.by).toBe('2026-05-21');
  });

  test('words of another world are left over, and said to be', () => {
    expect(read('where does the carburettor sit on a moped')?.hers ?? false).toBe(false);
  });
});
