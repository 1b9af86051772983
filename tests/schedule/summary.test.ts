/** The nightly summary, from real assessments of real kitchens. */
import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nightlySummary, type Ranked, type SummaryOptions } from '../../src/dialogue/summary/nightly.js';
import { demoKitchen } from '../../src/kitchen/index.js';
import type { Item, Kitchen } from '../../src/kitchen/model.js';
import { rankUseFirst } from '../../src/safety/use-first.js';
import { createVoice, type Length } from '../../src/speech/index.js';
import { plusDays } from '../../src/terms/dates.js';
import { styleProblems } from '../speech/style.js';
import { at, item, kitchenWith, person, ZONE } from './kitchens.js';

const voice = createVoice('en-US');
const TODAY = '2026-05-14';
const clock = at('2026-05-15T01:00:00.000Z'); // eight in the evening of the fourteenth
const ago = (days: number): string => plusDays(TODAY, -days);

const tell = (
  kitchen: Kitchen,
  options: SummaryOptions = {},
  length: Length = 'usual',
  ranked?: readonly Ranked[],
) => {
  const { answer, about } = nightlySummary(kitchen, ranked ?? rankUseFirst(kitchen, clock), clock, options);
  const spoken = voice.render(
    answer,
    { length, rate: 1, volume: 'medium', whisper: false, earcons: false },
    { clock, locale: 'en-US', measures: 'us' },
  );
  return { ...spoken, about: about.map((ids) => ids.join(' ')), more: answer.more ?? [] };
};

/** An item with a verdict of our choosing, for what the tables decide elsewhere. */
const judged = (
  of: Item,
  verdict: Ranked['assessment']['verdict'],
  daysLeft: number | null = null,
  facts: {
    raw?: boolean;
    phase?: Ranked['assessment']['clock']['phase'];
    where?: Ranked['assessment']['where'];
  } = {},
): Ranked => ({
  item: of,
  assessment: {
    verdict,
    daysLeft,
    lastDay: daysLeft === null ? null : plusDays(TODAY, daysLeft),
    where: facts.where ?? 'fridge',
    clock: {
      phase: facts.phase ?? 'fridge',
      startedOn: null,
      since: null,
      usedBefore: null,
      openedOn: null,
      frozenOn: null,
      thawedOn: null,
      outSince: null,
      freezings: [],
      timesReheated: 0,
    },
    match: {
      name: of.name,
      food: null,
      family: 'general',
      state: facts.raw ? 'raw' : 'cooked',
      sure: 'exact',
      notes: [],
    },
    hazard: 'high',
  },
});

describe('the nightly summary', () => {
  it('says in one sentence that there is nothing to do', () => {
    const { sentences, about } = tell(kitchenWith());
    expect(sentences).toEqual(['Nothing with a date needs using up tonight.']);
    expect(about).toEqual([]);
  });

  it('tells what to do, most urgent first', () => {
    const kitchen = kitchenWith();
    const { text, about } = tell(kitchen, {}, 'usual', [
      judged(item('yogurt'), 'use-soon', 2),
      judged(item('chicken', { placeId: 'shelf' }), 'use-soon', 1, { raw: true }),
      judged(item('rice'), 'throw-out', -1),
      judged(item('lentil stew'), 'last-day', 0),
      judged(item('ham'), 'fine', 9),
      judged(item('soup'), 'use-soon', 6),
    ]);
    expect(about).toEqual(['lentil stew', 'chicken', 'yogurt', 'rice']);
    expect(text).toBe(
      'Throw out the rice, second shelf of the fridge: its last day was yesterday. ' +
        'Three things to use. ' +
        'Eat or freeze the lentil stew tonight, second shelf of the fridge. ' +
        'Freeze the chicken tonight or cook it tomorrow, second shelf of the fridge. ' +
        'Eat or freeze the yogurt by Saturday, second shelf of the fridge.',
    );
  });

  it('speaks of many as many', () => {
    expect(tell(kitchenWith(), {}, 'short', [judged(item('black beans'), 'use-soon', 1)]).text).toBe(
      'Freeze the black beans tonight or eat them tomorrow.',
    );
  });

  it('does not send back to the freezer what came out of it, nor into it what is not in the fridge', () => {
    const { text } = tell(kitchenWith(), {}, 'short', [
      judged(item('turkey'), 'last-day', 0, { phase: 'thawed', raw: true }),
      judged(item('bread'), 'use-soon', 1, { where: 'pantry' }),
    ]);
    expect(text).toBe('Cook the turkey tonight. Eat the bread by tomorrow.');
  });

  it('goes by what guidance says of the food', () => {
    const kitchen = kitchenWith({
      items: [
        item('chicken breast', { dates: { bought: ago(1) } }),
        item('lentil stew', { dates: { made: ago(9) } }),
        item('peas', { placeId: 'freezer', dates: { frozen: ago(30) } }),
      ],
    });
    const { text } = tell(kitchen);
    expect(text).toMatch(/^Throw out the lentil stew/);
    expect(text).toMatch(
      /(?:Freeze the chicken breast tonight or cook it tomorrow|or freeze the chicken breast)/i,
    );
    expect(text).not.toContain('peas');
  });

  it('names who of those who eat here must not have it', () => {
    const { text } = tell(
      kitchenWith({ people: [person('Dele', ['peanuts']), person('Ada', ['peanuts'], false)] }),
      {},
      'usual',
      [judged(item('satay', { contains: ['Peanut'] }), 'use-soon', 1)],
    );
    expect(text).toContain('It has Peanut: not for Dele.');
    expect(text).not.toContain('Ada');
  });

  it('says that it is late, and from when', () => {
    const { sentences } = tell(kitchenWith(), { lateSince: '2026-05-14T01:00:00.000Z' });
    expect(sentences[0]).toBe('Here is the summary from eight in the evening, late.');
  });

  it('once a week looks a week ahead, at the freezer, and at what has no date', () => {
    const ranked = [
      judged(item('soup'), 'use-soon', 6),
      judged(item('peas', { placeId: 'freezer' }), 'past-best-quality', null, { where: 'freezer' }),
      judged(item('sauerkraut'), 'unknown'),
    ];
    expect(tell(kitchenWith(), { weekly: true }, 'usual', ranked).text).toBe(
      'Eat or freeze the soup by Wednesday, second shelf of the fridge. ' +
        'Past their best in the freezer, for taste only: peas. ' +
        'No date for sauerkraut, in the fridge. If in doubt, throw it out.',
    );
    expect(tell(kitchenWith(), {}, 'usual', ranked).text).toBe('Nothing with a date needs using up tonight.');
  });

  it('names what is to be thrown out in one breath, so that what can be saved is heard', () => {
    const gone = ['ham', 'rice', 'cream', 'sauerkraut', 'soup', 'peas'].map((name) =>
      judged(item(name), 'throw-out', -2),
    );
    const { text, more, about } = tell(kitchenWith(), {}, 'usual', [
      ...gone,
      judged(item('chicken'), 'use-soon', 1),
    ]);
    expect(text).toBe(
      'Throw out six things: ham, rice, cream, sauerkraut, and two more. ' +
        'Freeze the chicken tonight or eat it tomorrow, second shelf of the fridge.',
    );
    expect(more.map((one) => voice.phraseText(one, { clock, locale: 'en-US', measures: 'us' }))).toEqual([
      'Throw out soup and peas.',
    ]);
    expect(about[0]).toBe('chicken');
  });

  it('keeps the rest for "more" and loses none of it', () => {
    const many = Array.from({ length: 12 }, (_, i) =>
      judged(item(`dish of ${'abcdefghijkl'[i]}`), 'last-day', 0),
    );
    const { text, about, more } = tell(kitchenWith(), {}, 'usual', many);
    expect(new Set(about).size).toBe(12);
    expect(text).toMatch(/^Twelve things to use\. .* And \w+ more\. Ask for the summary to hear them\.$/);
    expect(text.match(/tonight/g)?.length ?? 0).toBe(12 - more.length);
  });
});

const secondsOf = (ssml: string): number => {
  const run = spawnSync('espeak-ng', ['-m', '-v', 'en-us', '-s', '175', '--stdin', '--stdout'], {
    input: ssml,
    maxBuffer: 64 * 1024 * 1024,
  });
  if (run.error !== undefined || run.status !== 0)
    throw new Error('install the Debian package "espeak-ng" to time what is spoken', { cause: run.error });
  return (run.stdout.length - 44) / 2 / run.stdout.readUInt32LE(24);
};

describe('at usual length', () => {
  const names = fc.constantFrom(
    'lentil and barley stew',
    'grandmother’s pickled cucumbers',
    'rice',
    'slow cooked beef shin',
  );
  const one = fc.tuple(
    names,
    fc.constantFrom('throw-out' as const, 'last-day' as const, 'use-soon' as const),
    fc.integer({ min: 0, max: 2 }),
  );

  it('is spoken within 45 seconds, however much there is', () => {
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 40 }), (facts) => {
        const ranked = facts.map(([name, verdict, days], i) =>
          judged(
            item(`${name} ${'abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyz'[i]}`, {
              contains: ['peanuts'],
            }),
            verdict,
            days,
          ),
        );
        const kitchen = kitchenWith({
          people: [person('Dele', ['peanuts']), person('Oluwaseun', ['peanuts'])],
        });
        const options = { weekly: true, lateSince: '2026-05-14T01:00:00.000Z' };
        expect(secondsOf(tell(kitchen, options, 'usual', ranked).ssml)).toBeLessThan(45);
      }),
      { numRuns: 12 },
    );
  });

  it('reads well for the demo kitchen on each evening of a fortnight', () => {
    const kitchen = demoKitchen({ now: '2026-05-14T17:00:00.000Z', timeZone: ZONE });
    const own = [...kitchen.items.values()].map((one) => one.name);
    for (let day = 0; day < 14; day++) {
      const evening = at(new Date(Date.parse('2026-05-15T01:00:00.000Z') + day * 86_400_000).toISOString());
      for (const length of ['short', 'usual', 'full'] as const) {
        const { answer } = nightlySummary(kitchen, rankUseFirst(kitchen, evening), evening, {
          weekly: day % 7 === 3,
        });
        const { text, ssml } = voice.render(
          answer,
          { length, rate: 1, volume: 'medium', whisper: false, earcons: false },
          { clock: evening, locale: 'en-US', measures: 'us' },
        );
        expect(styleProblems(text, { length, kind: 'list', own })).toEqual([]);
        if (length === 'usual') expect(secondsOf(ssml)).toBeLessThan(45);
      }
    }
  });
});
