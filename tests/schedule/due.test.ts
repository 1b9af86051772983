/** What is due, when, and how it is said. */
import { describe, expect, it } from 'vitest';
import { applyChange } from '../../src/kitchen/index.js';
import type { Kitchen, Reminder } from '../../src/kitchen/model.js';
import { summaryHeardSince } from '../../src/dialogue/summary/heard.js';
import { rankUseFirst } from '../../src/safety/use-first.js';
import { dueBetween, dueNow, heardChange, nextDueAt } from '../../src/schedule/index.js';
import { createVoice } from '../../src/speech/index.js';
import { styleProblems } from '../speech/style.js';
import { at, item, kitchenWith, reminder } from './kitchens.js';

const voice = createVoice('en-US');
const NOON = '2026-05-14T17:00:00.000Z'; // in Chicago

const told = (kitchen: Kitchen, now: string) =>
  dueNow(kitchen, at(now)).map((one) => {
    const spoken = voice.render(
      one.answer,
      { length: 'usual', rate: 1, volume: 'medium', whisper: false, earcons: false },
      { clock: at(now), locale: 'en-US', measures: 'us' },
    );
    expect(styleProblems(spoken.text, { length: 'usual', kind: 'list' })).toEqual([]);
    return { id: one.id, text: spoken.text, soft: spoken.ssml.includes('volume="soft"') };
  });
const texts = (kitchen: Kitchen, now: string): string[] => told(kitchen, now).map((one) => one.text);

const hear = (kitchen: Kitchen, now: string, id: string): Kitchen => {
  const change = heardChange({ kitchen, clock: at(now), speaker: { personId: null }, newId: () => 'x' }, id);
  if (change === null) throw new Error(`${id} was not to be heard`);
  return applyChange(kitchen, change);
};

const noSummary = { summaryAt: null };
const withReminders = (...reminders: Reminder[]): Kitchen => kitchenWith({ reminders, household: noSummary });

describe('timers and reminders', () => {
  const rice = reminder('r1', NOON, { label: 'rice' });

  it('are due from their moment until they were heard', () => {
    const kitchen = withReminders(rice);
    expect(texts(kitchen, '2026-05-14T16:59:59.999Z')).toEqual([]);
    expect(texts(kitchen, NOON)).toEqual(['The rice timer is done.']);
    const heard = hear(kitchen, NOON, told(kitchen, NOON)[0]?.id ?? '');
    expect(texts(heard, '2026-05-14T17:00:10.000Z')).toEqual([]);
    expect(heard.reminders.get('r1')?.deliveredAt).toBe(NOON);
  });

  it('are told as late when they are', () => {
    const kitchen = withReminders(
      rice,
      reminder('r2', NOON, { kind: 'reminder', label: 'freeze the chicken' }),
    );
    expect(texts(kitchen, '2026-05-14T17:10:00.000Z')).toEqual([
      'The rice timer was done ten minutes ago.',
      'A late reminder, due ten minutes ago: freeze the chicken.',
    ]);
    expect(texts(kitchen, '2026-05-15T13:00:00.000Z')[0]).toBe(
      'The rice timer was done yesterday afternoon.',
    );
  });

  it('come oldest first, and those without a name are told too', () => {
    const kitchen = withReminders(
      reminder('b', NOON),
      reminder('a', '2026-05-14T16:59:30.000Z', { kind: 'reminder' }),
    );
    expect(texts(kitchen, NOON)).toEqual(['Here is the reminder you set.', 'Your timer is done.']);
  });

  it('say where the thing is', () => {
    const kitchen = kitchenWith({
      items: [item('chicken')],
      reminders: [reminder('r', NOON, { kind: 'reminder', label: 'freeze the chicken', itemId: 'chicken' })],
      household: noSummary,
    });
    expect(texts(kitchen, NOON)).toEqual([
      'Reminder: freeze the chicken. The chicken is on the second shelf of the fridge.',
    ]);
  });

  it('given more time after they rang ring again, under another id', () => {
    const kitchen = withReminders(rice);
    const first = told(kitchen, NOON)[0]?.id;
    const later = withReminders({ ...rice, due: '2026-05-14T17:01:00.000Z' });
    expect(told(later, NOON)).toEqual([]);
    expect(told(later, '2026-05-14T17:01:00.000Z')[0]?.id).not.toBe(first);
  });

  it('are heard once only, and only when due', () => {
    const kitchen = withReminders(rice);
    const doing = (k: Kitchen) => ({
      kitchen: k,
      clock: at(NOON),
      speaker: { personId: null },
      newId: () => 'x',
    });
    const id = told(kitchen, NOON)[0]?.id ?? '';
    expect(heardChange(doing(hear(kitchen, NOON, id)), id)).toBeNull();
    expect(heardChange(doing(kitchen), 'timer.unknown.1')).toBeNull();
  });

  it('between two moments: after the first, up to the second', () => {
    const kitchen = withReminders(reminder('a', NOON), reminder('b', '2026-05-14T17:05:00.000Z'));
    const ids = (from: string, to: string) => dueBetween(kitchen, from, to).map((one) => one.id);
    expect(ids('2026-05-14T16:00:00.000Z', NOON)).toEqual(['a']);
    expect(ids(NOON, '2026-05-14T17:05:00.000Z')).toEqual(['b']);
    expect(nextDueAt(kitchen, at(NOON))).toBe('2026-05-14T17:05:00.000Z');
  });
});

describe('quiet hours', () => {
  const quietHours = { from: '22:00', to: '07:00' };
  const NIGHT = '2026-05-15T05:00:00.000Z'; // midnight in Chicago
  const MORNING = '2026-05-15T12:00:00.000Z'; // seven
  it('whisper what was asked for at that time', () => {
    const kitchen = kitchenWith({
      reminders: [reminder('r', NIGHT, { label: 'bread' })],
      household: { quietHours, summaryAt: null },
    });
    expect(told(kitchen, NIGHT)).toEqual([
      expect.objectContaining({ text: 'The bread timer is done.', soft: true }),
    ]);
  });
  it('hold back what is older, and the summary, until they are over', () => {
    const kitchen = kitchenWith({
      items: [item('rice', { dates: { made: '2026-05-01' } })],
      reminders: [reminder('r', '2026-05-15T01:30:00.000Z', { label: 'bread' })],
      household: { quietHours, summaryAt: '22:30' },
    });
    expect(texts(kitchen, NIGHT)).toEqual([]);
    expect(texts(kitchen, MORNING)).toEqual([
      'The bread timer was done yesterday evening.',
      expect.stringMatching(/^Here is the summary from ten thirty at night, late\. Throw out the rice/),
    ]);
    expect(nextDueAt(kitchen, at(NIGHT))).toBe(MORNING);
  });
});

describe('the summary', () => {
  it('is told on the day, though a clock that was wrong told one of a day still to come', () => {
    const kitchen = kitchenWith({ items: [item('rice', { dates: { made: '2026-05-13' } })] });
    const july = hear(kitchen, '2026-07-19T01:00:00.000Z', 'summary.2026-07-18');
    expect(told(july, EVENING).map(({ id }) => id)).toEqual(['summary.2026-05-14']);
    const right = hear(july, EVENING, 'summary.2026-05-14');
    expect(told(right, EVENING)).toEqual([]);
    expect(told(right, '2026-05-16T01:00:00.000Z').map(({ id }) => id)).toEqual(['summary.2026-05-15']);
  });

  const EVENING = '2026-05-15T01:00:00.000Z'; // eight in Chicago, the fourteenth
  const kitchen = kitchenWith({ items: [item('lentil stew', { dates: { made: '2026-05-11' } })] });

  it('is due at its hour, once', () => {
    expect(texts(kitchen, '2026-05-15T00:59:00.000Z')).toEqual([]);
    const [first] = told(kitchen, EVENING);
    expect(first?.id).toBe('summary.2026-05-14');
    const heard = hear(kitchen, EVENING, 'summary.2026-05-14');
    expect(texts(heard, EVENING)).toEqual([]);
    expect(texts(heard, '2026-05-15T12:00:00.000Z')).toEqual([]);
    expect(told(heard, '2026-05-16T01:00:00.000Z')[0]?.id).toBe('summary.2026-05-15');
  });

  it('moved to a later hour of an evening on which it was heard is not told again', () => {
    const heard = hear(kitchen, EVENING, 'summary.2026-05-14');
    const moved = { ...heard, household: { ...heard.household, summaryAt: '21:00' } };
    expect(texts(moved, '2026-05-15T02:30:00.000Z')).toEqual([]);
  });

  it('is kept till noon for a household where nobody listened, said late, and then let go', () => {
    expect(texts(kitchen, '2026-05-15T12:00:00.000Z')[0]).toMatch(
      /^Here is the summary from eight in the evening, late\./,
    );
    expect(texts(kitchen, '2026-05-15T17:30:00.000Z')).toEqual([]);
  });

  it('is not told of evenings before anything was recorded', () => {
    expect(texts(kitchenWith(), EVENING)).toEqual([]);
    const young = kitchenWith({ items: [item('rice', { addedAt: '2026-05-15T02:00:00.000Z' })] });
    expect(texts(young, '2026-05-15T02:30:00.000Z')).toEqual([]);
  });

  it('is weekly on the household’s Sunday', () => {
    const soon = kitchenWith({ items: [item('milk', { dates: { useBy: '2026-05-22' } })] });
    expect(texts(soon, EVENING)).toEqual(['Nothing with a date needs using up tonight.']);
    expect(texts(soon, '2026-05-18T01:00:00.000Z')[0]).not.toMatch(
      /^Nothing with a date needs using up tonight/,
    );
  });

  it('that was heard is what "it" means afterwards', () => {
    const about = (...of: Parameters<typeof summaryHeardSince>) => summaryHeardSince(...of)?.about;
    expect(about(kitchen, null, at(EVENING), rankUseFirst)).toBeUndefined();
    const heard = hear(kitchen, EVENING, 'summary.2026-05-14');
    const soon = at('2026-05-15T01:02:00.000Z');
    expect(about(heard, '2026-05-15T00:00:00.000Z', soon, rankUseFirst)).toEqual([['lentil stew']]);
    expect(about(heard, null, soon, rankUseFirst)).toEqual([['lentil stew']]);
    expect(about(heard, null, at('2026-05-15T01:31:00.000Z'), rankUseFirst)).toBeUndefined();
    expect(about(heard, '2026-05-15T01:01:00.000Z', soon, rankUseFirst)).toBeUndefined();
  });

  it('leaves no reminder behind that could be told', () => {
    const heard = hear(kitchen, EVENING, 'summary.2026-05-14');
    expect(dueBetween(heard, '2020-01-01T00:00:00.000Z', '2030-01-01T00:00:00.000Z')).toEqual([]);
  });
});
