import { describe, expect, it } from 'vitest';
import { reheatPlan, thawPlan, wallTime } from '../../src/safety/index.js';
import type { Preparation } from '../../src/kitchen/model.js';
import { clock } from './items.js';

type Question = Parameters<typeof reheatPlan>[0];
const plan = (food: string, more: Partial<Question> = {}) => {
  const found = reheatPlan({ food, method: 'microwave', from: 'fridge', region: 'us', watts: 800, ...more });
  if (found.kind !== 'plan') throw new Error(found.refusal);
  return found;
};
const codes = (...parts: Parameters<typeof plan>) => plan(...parts).steps.map(({ code }) => code);
const told = (more: Partial<Preparation>): Preparation => ({
  method: 'microwave',
  from: 'any',
  steps: [],
  minutes: null,
  watts: null,
  standMinutes: null,
  heat: null,
  portions: null,
  ...more,
});

describe('reheating', () => {
  it('every method ends on a temperature and a hot-dish caution', () => {
    for (const method of ['microwave', 'oven', 'hob', 'air fryer', 'steamer'] as const) {
      const { steps, target } = plan('lasagne', { method });
      expect(steps.find(({ code }) => code === 'probe')?.temperature).toEqual({
        degrees: 165,
        scale: 'fahrenheit',
      });
      expect(steps.at(-1)).toMatchObject({ code: 'serve', caution: { code: 'hot-dish' } });
      expect(target.temperature.degrees).toBe(165);
    }
  });
  it('microwave: cover, heat, stir midway, heat, stand, probe', () =>
    expect(codes('bean stew')).toEqual([
      'move-to-dish',
      'cover-vent',
      'set-microwave-short',
      'stir',
      'heat-again',
      'stand',
      'probe',
      'more-time',
      'serve',
    ]));
  it('steam is warned of before the lid comes off', () =>
    expect(plan('bean stew').steps.find(({ code }) => code === 'stir')?.caution?.code).toBe('hot-steam'));
  it('soup comes to a rolling boil in the US, and holds seventy degrees for two minutes in the UK', () => {
    expect(codes('lentil soup', { method: 'hob' })).toContain('bring-to-boil');
    const uk = plan('lentil soup', { method: 'hob', region: 'uk' });
    expect(uk.target).toEqual({
      temperature: { degrees: 70, scale: 'celsius' },
      boil: false,
      holdSeconds: 120,
    });
    expect(uk.steps.map(({ code }) => code)).toContain('probe-hold');
  });
  it("the cook's own steps come first and are kept word for word", () => {
    const found = plan('bean stew', {
      preparations: [
        told({ steps: ['Take the lid off', 'Put a plate over it'], minutes: 3, watts: 800, standMinutes: 2 }),
      ],
    });
    expect(found.steps.slice(0, 4).map(({ code, words, seconds }) => [code, words ?? seconds])).toEqual([
      ['own-words', 'Take the lid off'],
      ['own-words', 'Put a plate over it'],
      ['set-microwave', 180],
      ['stand', 120],
    ]);
  });
  it('in own words, steam is warned of where it comes out: never at covering', () => {
    const cautions = (...steps: string[]) =>
      plan('bean stew', { preparations: [told({ steps })] })
        .steps.filter(({ code }) => code === 'own-words')
        .map(({ caution }) => caution?.code ?? null);
    expect(cautions('Cover it with the vented lid', 'Heat it two minutes', 'Take the lid off')).toEqual([
      null,
      null,
      'hot-steam',
    ]);
    expect(cautions('Open the bag', 'Microwave three minutes and stir')).toEqual([null, 'hot-steam']);
    expect(cautions('Lift the lid and add a splash of water', 'Warm it')).toEqual([null, null]);
  });
  it('words that tell the time are not followed by the same heating again', () => {
    const heatings = (steps: string[]) =>
      plan('bean stew', { preparations: [told({ steps, minutes: 3, watts: 800 })] }).steps.filter(
        ({ code }) => code === 'set-microwave',
      ).length;
    expect(heatings(['Heat it for three minutes'])).toBe(0);
    expect(heatings(['Cover it'])).toBe(1);
  });
  it('watts not known: no time is promised', () => {
    const found = plan('bean stew', { watts: null, preparations: [told({ minutes: 3, watts: 1000 })] });
    expect(found.steps.map(({ code }) => code)).toContain('set-microwave-short');
    expect(found.reasons.map(({ code }) => code)).toContain('watts-unknown');
  });
  it('two portions of a time for one: from one and three quarters, with the latest said', () => {
    const found = plan('lasagne', {
      portions: 2,
      preparations: [told({ minutes: 3, watts: 800, portions: 1 })],
    });
    const total = found.steps
      .filter(({ code }) => code === 'set-microwave' || code === 'heat-again')
      .reduce((sum, { seconds }) => sum + (seconds ?? 0), 0);
    expect(total).toBe(315);
    expect(found.reasons.find(({ code }) => code === 'doubled-portions')?.args['latest']).toEqual({
      kind: 'duration',
      seconds: 360,
    });
  });
  it('six portions of a time for one: no figure', () =>
    expect(
      plan('lasagne', {
        portions: 6,
        preparations: [told({ minutes: 3, watts: 800, portions: 1 })],
      }).reasons.map(({ code }) => code),
    ).toContain('portions-beyond'));
  it('from frozen with a time from the fridge: half as long again', () => {
    const found = plan('lasagne', {
      method: 'oven',
      from: 'freezer',
      preparations: [
        told({ method: 'oven', from: 'fridge', minutes: 20, heat: { degrees: 350, scale: 'fahrenheit' } }),
      ],
    });
    expect(found.steps.find(({ code }) => code === 'into-oven')?.seconds).toBe(1800);
    expect(found.steps.find(({ code }) => code === 'preheat')?.temperature).toEqual({
      degrees: 350,
      scale: 'fahrenheit',
    });
  });
  it.each([
    ['bean stew', { method: 'slow cooker' }, 'slow-cooker'],
    ['breast milk', {}, 'no-microwave-for-infants'],
    ['bean stew', { method: 'none' }, 'method-unknown'],
    ['bean stew', { region: 'uk', timesReheated: 1 }, 'reheated-already'],
    ['bean stew', { region: null, timesReheated: 1 }, 'reheated-already'],
  ] as const)('%s %j is refused: %s', (food, more, refusal) =>
    expect(
      reheatPlan({ food, method: 'microwave', from: 'fridge', region: 'us', watts: 800, ...more }),
    ).toMatchObject({
      kind: 'refused',
      refusal,
    }),
  );
  it('in the US a second reheating is not refused', () =>
    expect(plan('bean stew', { timesReheated: 1 }).kind).toBe('plan'));
});

describe('thawing for a time', () => {
  const thaw = (food: string, pounds: number | null, wanted: string, region: 'us' | 'uk' = 'us') =>
    thawPlan({ food, pounds, wantedAt: wallTime(wanted, '17:00', clock.timeZone), clock, region });
  it('a turkey for four days from now: the fridge is too late, cold water is planned backward', () => {
    const found = thaw('turkey', 18, '2026-11-29');
    expect(found.best?.method).toBe('cold-water');
    const [start, change] = found.best?.reminders ?? [];
    expect(start).toEqual({ at: wallTime('2026-11-29', '07:00', clock.timeZone), code: 'start-cold-water' });
    expect(change).toEqual({ at: wallTime('2026-11-29', '07:30', clock.timeZone), code: 'change-water' });
    expect(found.best?.reminders.at(-1)?.code).toBe('cook-at-once');
  });
  it('in time for the fridge: low shelf, on a tray', () => {
    const found = thaw('turkey', 12, '2026-12-01');
    expect(found.best).toMatchObject({ method: 'fridge', tooLate: false });
    expect(found.best?.advice).toContain('low-shelf-on-tray');
    expect(found.best?.reminders[0]?.code).toBe('start-fridge');
  });
  it('UK: the fridge or the microwave, used within a day', () => {
    const found = thaw('chicken', 2, '2026-12-01', 'uk');
    expect(found.options.map(({ method }) => method)).toEqual(['fridge', 'microwave']);
    expect(found.best?.advice).toContain('use-within-day');
  });
  it('weight not known: said', () =>
    expect(thaw('chicken', null, '2026-12-01').best?.advice).toContain('weight-unknown'));
});
