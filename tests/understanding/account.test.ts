/** What was told and stands nowhere in what was understood is named, whichever reader understood it. */
import { describe, expect, it } from 'vitest';
import { demoKitchen } from '../../src/kitchen/index.js';
import { namesOf } from '../../src/turn/names.js';
import { accounted } from '../../src/understanding/account.js';
import {
  emptyMention,
  type Act,
  type HearingContext,
  type Understanding,
} from '../../src/understanding/intents.js';

const clock = { now: '2026-05-14T18:00:00.000Z', timeZone: 'Europe/London' };
const names = namesOf(demoKitchen(clock));
const context: HearingContext = { ...clock, locale: 'en-GB', expecting: 'anything' };

const understood = (acts: readonly Act[], more: Partial<Understanding> = {}): Understanding => ({
  readings: [{ acts, confidence: 0.7, heard: '', normalised: '' }],
  margin: 1,
  verdict: 'act',
  ...more,
});
const left = (said: string, acts: readonly Act[], more: Partial<Understanding> = {}): readonly string[] =>
  accounted(understood(acts, more), said, names, context).left ?? [];

const thing = (words: string) => ({ ...emptyMention, words });
const place = (words: string) => ({ words, candidates: [] }) as never;
const putAway = (words: string, slots: Act['slots'] = {}): Act => ({
  intent: 'put-away',
  slots: { item: thing(words), place: place('chest freezer'), ...slots },
});

describe('of what is written', () => {
  it.each<readonly [string, Act, readonly string[]]>([
    ['congee in the chest freezer with peanuts on top', putAway('congee'), ['peanuts']],
    ['congee in the chest freezer', putAway('congee'), []],
    ['put the fish pie in the chest freezer, and the butter', putAway('fish pie'), ['butter']],
    ['congee in the chest freezer, three tubs of it', putAway('congee'), ['three tubs']],
    [
      'congee in the chest freezer, three tubs of it',
      putAway('congee', { amount: { value: 3, unit: 'tub' } }),
      [],
    ],
    // Who reads the whole knows that these were taken back.
    ['butter, no, congee in the chest freezer', putAway('congee'), []],
    ['congee in the chest freezer, not the butter', putAway('congee'), []],
  ])('%s', (said, act, expected) => {
    expect(left(said, [act])).toEqual(expected);
  });

  it('what somebody must not eat is named first, and three pieces at most', () => {
    const said =
      'congee in the chest freezer, two tubs, beside the apples, under the green peas, next to the lentil stew, with walnuts in';
    const pieces = left(said, [putAway('congee')]);
    expect(pieces[0]).toContain('walnuts');
    expect(pieces).toHaveLength(3);
  });

  it('whom somebody watches over holds the nuts by their kinds', () => {
    const act: Act = {
      intent: 'add-person',
      slots: { person: thing('jack') as never, allergens: ['tree nuts'] },
    };
    expect(left('jack can not have walnuts', [act])).toEqual([]);
    expect(left('jack can not have walnuts or sesame', [act])).toEqual(['sesame']);
  });
});

describe('of what is asked', () => {
  const asks: Act = { intent: 'keeps', slots: { item: thing('hummus') } };
  it('an allergen and a marker are missed, and nothing else', () => {
    expect(left('how long does the hummus keep, it has walnuts in', [asks])).toEqual(['walnuts']);
    expect(left('how long does the hummus keep, two tubs, beside the apples', [asks])).toEqual([]);
  });
});

describe('is not asked for', () => {
  it('of talk about the talk, of what was not understood, and of a rule that holds every word', () => {
    const said = 'congee with peanuts on top';
    expect(left(said, [{ intent: 'repeat', slots: {} }])).toEqual([]);
    expect(left(said, [putAway('congee')], { verdict: 'ask-again' })).toEqual([]);
    const whole = { score: 0, part: 1, mended: false };
    const reading = {
      acts: [putAway('congee')],
      confidence: 0.99,
      heard: '',
      normalised: '',
      evidence: whole,
    };
    expect(left(said, [], { readings: [reading] })).toEqual([]);
  });
});

describe('of a yes and something more', () => {
  it('the rest is accounted for by itself', () => {
    const settles = {
      intent: 'yes' as const,
      parted: true,
      said: 'congee in the chest freezer with peanuts on top',
      rest: understood([putAway('congee')]),
    };
    const { settles: heard } = accounted(understood([], { settles }), 'yes, congee …', names, context);
    expect(heard?.rest.left).toEqual(['peanuts']);
  });
});
