import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Item } from '../../src/kitchen/model.js';
import { agesPlot, calendarPlot, useAndWastePlot } from '../../src/plots/index.js';
import { createVoice } from '../../src/speech/index.js';
import { plusDays } from '../../src/terms/dates.js';

const day = '2026-05-14';

const item = (part: Partial<Item>): Item => ({
  id: 'i',
  name: 'stew',
  batchId: null,
  amount: null,
  amountAtFirst: null,
  touch: {},
  placeId: null,
  spot: null,
  markerId: null,
  dates: {},
  outSince: null,
  timesReheated: 0,
  maker: null,
  ownerId: null,
  diets: [],
  contains: [],
  freeFrom: [],
  cautions: [],
  preparations: [],
  notes: [],
  addedAt: '2026-05-01T12:00:00.000Z',
  addedBy: null,
  gone: null,
  ...part,
});

const total = (counts: readonly number[]): number => counts.reduce((sum, count) => sum + count, 0);

describe('the ages plot', () => {
  it('counts every item once, with the undated in a group of their own', () => {
    fc.assert(
      fc.property(fc.array(fc.option(fc.integer({ min: -3, max: 900 }))), (ages) => {
        const items = ages.map((age) => item(age === null ? {} : { dates: { made: plusDays(day, -age) } }));
        const { series, groups } = agesPlot(items, day);
        const counts = series[0]?.counts ?? [];
        expect(counts).toHaveLength(groups.length);
        expect(total(counts)).toBe(ages.length);
        expect(counts.at(-1)).toBe(ages.filter((age) => age === null).length);
      }),
    );
  });

  it('goes by the earliest date known', () => {
    const { series } = agesPlot([item({ dates: { made: '2026-05-04', opened: '2026-05-13' } })], day);
    expect(series[0]?.counts.indexOf(1)).toBe(3);
  });
});

describe('the calendar', () => {
  it('puts what is past first, then a bar a day', () => {
    const last = ['2026-05-10', '2026-05-14', '2026-05-14', '2026-05-27', '2026-05-28', null];
    const { series } = calendarPlot(
      last.map((lastDay) => ({ lastDay })),
      day,
    );
    expect(series[0]?.counts).toEqual([1, 2, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1]);
  });
});

describe('use and waste', () => {
  it('goes by the household’s months, not by UTC’s', () => {
    // One in the morning UTC on 1 May is still April in Chicago.
    const items = [
      item({ gone: { at: '2026-05-01T01:00:00.000Z', how: 'thrown out' } }),
      item({ gone: { at: '2026-05-02T12:00:00.000Z', how: 'used' } }),
      item({ gone: { at: '2025-05-02T12:00:00.000Z', how: 'used' } }),
    ];
    const { series } = useAndWastePlot(items, day, 'America/Chicago');
    expect(series.map(({ counts }) => counts.slice(-2))).toEqual([
      [0, 1],
      [1, 0],
      [0, 0],
    ]);
    expect(total(series[0]?.counts ?? [])).toBe(1);
  });
});

describe('the sentence', () => {
  const voice = createVoice('en-US');
  const around = {
    clock: { now: '2026-05-14T18:00:00.000Z', timeZone: 'America/Chicago' },
    locale: 'en-US',
    measures: 'us',
  } as const;
  const listener = { length: 'usual', rate: 1, volume: 'medium', whisper: false, earcons: false } as const;

  it('names ages by ranges that do not overlap', () => {
    const names = agesPlot([], day).groups.map((group) =>
      voice
        .render(
          {
            parts: [
              typeof group === 'object' && group.kind === 'say'
                ? group
                : { kind: 'say', phrase: 'plot-group', args: { group } },
            ],
          },
          listener,
          around,
        )
        .text.replace(/\.$/, ''),
    );
    expect(names.slice(0, 4)).toEqual([
      'Up to one day',
      'Two to three days',
      'Four to seven days',
      'Eight to fourteen days',
    ]);
  });

  it('says what the plot shows', () => {
    const said = (plot: { readonly sentence: Parameters<typeof voice.phraseText>[0] }): string =>
      voice.render({ parts: [plot.sentence] }, listener, around).text;
    expect(said(agesPlot([item({}), item({ dates: { made: '2026-05-12' } })], day))).toBe(
      'Of two items, one is from the last seven days, and one has no date.',
    );
    expect(said(calendarPlot([{ lastDay: '2026-05-10' }, { lastDay: day }], day))).toBe(
      'One item is past its last day, one reaches it today, and one does in the next seven days.',
    );
    expect(said(useAndWastePlot([], day, 'America/Chicago'))).toBe(
      'This month nothing was used up, none were thrown out and none were given away. Last month none were thrown out.',
    );
  });
});
