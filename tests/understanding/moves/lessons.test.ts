/** Talk of lessons and of markers that are owned, by whoever learns and by whoever teaches. */
import { describe, expect, it } from 'vitest';
import type { Act } from '../../../src/understanding/intents.js';
import { createHouseholdNames, createUnderstander } from '../../../src/understanding/index.js';

const actsOf = (text: string, locale: string): readonly Act[] =>
  createUnderstander(locale).understand([{ text }], createHouseholdNames(locale), {
    now: '2026-05-14T15:00:00.000Z',
    timeZone: 'Europe/London',
    locale,
    expecting: 'anything',
  }).readings[0]?.acts ?? [];

describe('a lesson', () => {
  it.each([
    ["ok dad's going to try a lesson", 'start-lesson', {}],
    ["let's have a go at lesson three", 'start-lesson', { number: 3 }],
    ["okay we'll stop the lesson there for now", 'end-session', {}],
    ['enough of lessons for today', 'end-session', { asked: 'lesson' }],
    ["she's not sure, could you give her a hint?", 'hint', {}],
    ['could we get a clue', 'hint', {}],
    ['how did she do?', 'lesson-report', {}],
    ['can you tell me how Dolores got on in that lesson?', 'lesson-report', {}],
  ])('%s', (text, intent, slots) => {
    expect(actsOf(text, 'en-GB')).toMatchObject([{ intent, slots }]);
  });

  it.each([
    ['vamos a hacer una lección', 'start-lesson'],
    ['dale una pista', 'hint'],
  ])('en español: %s', (text, intent) => {
    expect(actsOf(text, 'es-MX')).toMatchObject([{ intent }]);
  });

  it('is not what food is asked, nor who may see how it went', () => {
    for (const text of ['how did she do the soup', 'remind me of the lesson at five'])
      expect(actsOf(text, 'en-GB')[0]?.intent, text).not.toBe('lesson-report');
    expect(actsOf('can my teacher see how the lessons went', 'en-GB')[0]?.intent).toBe('share-lessons');
  });
});

describe('what there is to mark with', () => {
  it('is one marker of each kind, whatever they come in', () => {
    expect(actsOf("I've got some rubber bands and a bag of clothes pegs", 'en-GB')).toMatchObject([
      { intent: 'add-marker', slots: { marker: { touch: { fastening: 'band' } } } },
      { intent: 'add-marker', slots: { marker: { touch: { fastening: 'clip' } } } },
    ]);
  });

  it('is none that is on something, asked about, or put somewhere', () => {
    for (const text of [
      "it's got a bead on it",
      'have I got a rubber band',
      "I've got a bag of clothes pegs in the larder",
    ])
      expect(actsOf(text, 'en-GB').length > 1 ? 'several' : actsOf(text, 'en-GB')[0]?.intent, text).not.toBe(
        'several',
      );
  });
});

describe('a place by its number alone', () => {
  it.each([
    ['a tin of coconut milk in the pantry, third shelf, no, the fourth', ['pantry fourth shelf']],
    ["the rice is in the pantry on the first shelf and the dal's on the second", ['pantry on the first shelf', 'pantry on the second shelf']], // prettier-ignore
  ])('%s', (text, places) => {
    const [act] = actsOf(text, 'en-GB');
    expect(act?.slots.statements?.map(({ place }) => place?.words)).toEqual(places);
  });

  it('is still a day where one is told', () => {
    const [act] = actsOf('I put the jam on the third shelf of the pantry, use by the fourth', 'en-GB');
    expect(act?.slots.statements?.[0]?.dates).toEqual({ useBy: { day: '2026-06-04' } });
  });
});

it('tells what stands in a place from the place', () => {
  const [act] = actsOf('the fridge has a pint of milk and some ham', 'en-GB');
  expect(act?.slots.statements?.map(({ deed, thing }) => [deed, thing?.words])).toEqual([
    ['stored', 'milk'],
    ['stored', 'ham'],
  ]);
});
