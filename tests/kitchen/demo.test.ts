import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import {
  demoKitchen,
  itemsAt,
  kitchenFromFile,
  livingItems,
  lookAlikes,
  marksOf,
  spareMarkers,
  storageOf,
  storagesOf,
} from '../../src/kitchen/index.js';
import { daysBetween } from '../../src/terms/dates.js';

const clock = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' };
const file = join(import.meta.dirname, '..', '..', 'shared', 'demo', 'marta-okafor.json');

describe('the demo kitchen', () => {
  const kitchen = demoKitchen(clock);
  const named = (name: string) => livingItems(kitchen).filter((item) => item.name === name);

  it('holds at least sixty things in a fridge, two freezers and a pantry', () => {
    expect(livingItems(kitchen).length).toBeGreaterThanOrEqual(60);
    expect(storagesOf(kitchen, 'freezer').map(({ name }) => name)).toEqual([
      'upright freezer',
      'chest freezer',
    ]);
    for (const kind of ['fridge', 'freezer', 'pantry'] as const) {
      for (const { id } of storagesOf(kitchen, kind)) expect(itemsAt(kitchen, id).length).toBeGreaterThan(5);
    }
    expect(livingItems(kitchen).every(({ placeId }) => storageOf(kitchen, placeId) !== null)).toBe(true);
  });

  it('keeps its days relative to the clock', () => {
    const made = named('lentil stew')[0]?.dates.made ?? '';
    expect(daysBetween(made, '2026-05-14')).toBe(2);
    const later = demoKitchen({ ...clock, now: '2027-01-01T12:00:00.000Z' });
    expect(later.items.get('item.lentil-stew')?.dates.made).toBe('2026-12-30');
  });

  it('has what makes a kitchen hard: overdue, undated, alike but for the marker, one batch in two places', () => {
    const past = livingItems(kitchen).filter(({ dates }) => (dates.useBy ?? '9999') < '2026-05-14');
    expect(past.length).toBeGreaterThan(1);
    expect(
      livingItems(kitchen).filter(({ dates }) => Object.keys(dates).length === 0).length,
    ).toBeGreaterThan(1);
    const jars = ['caraway sauerkraut', 'mango pickle', 'plum chutney'].map((name) => named(name)[0]!);
    const shelves = new Set(jars.map(({ placeId }) => placeId));
    expect(shelves.size).toBe(1);
    expect(jars.flatMap((jar) => lookAlikes(kitchen, jar))).toEqual([]);
    const bare = { ...kitchen, markers: new Map() };
    expect(lookAlikes(bare, jars[0]!).map(({ name }) => name)).toEqual(
      expect.arrayContaining(['mango pickle', 'plum chutney']),
    );
    const batch = named('bean chilli').filter(({ batchId }) => batchId !== null);
    expect(batch.map(({ amount }) => amount?.value)).toEqual(expect.arrayContaining([2, 6]));
    expect(spareMarkers(kitchen).length).toBeGreaterThan(3);
    expect(marksOf(kitchen, named('sorghum malt drink')[0]!).diets).toContain('for Auntie');
    expect(marksOf(kitchen, named('basil pesto')[0]!).contains).toContain('tree nuts');
  });

  it('names allergens as the reference table does', () => {
    const table = readFileSync(
      join(import.meta.dirname, '..', '..', 'shared', 'tables', 'allergens.csv'),
      'utf8',
    );
    const known = new Set(table.split('\n').map((line) => line.split(',')[1]));
    const used = [
      ...livingItems(kitchen).flatMap(({ contains }) => contains),
      ...[...kitchen.people.values()].flatMap(({ allergens }) => allergens),
    ];
    expect(used.filter((name) => !known.has(name))).toEqual([]);
  });

  it('is checked: a wrong word or a name that leads nowhere is an error that says which', () => {
    const data = JSON.parse(readFileSync(file, 'utf8'));
    const text = (change: (copy: typeof data) => void): string => {
      const copy = structuredClone(data);
      change(copy);
      return JSON.stringify(copy);
    };
    expect(() =>
      kitchenFromFile(
        text((copy) => (copy.items[0].at = 'attic')),
        clock,
      ),
    ).toThrow(/"attic"/);
    expect(() =>
      kitchenFromFile(
        text((copy) => (copy.items[1].marker = copy.items[0].marker)),
        clock,
      ),
    ).toThrow(/cloth-patch" is there twice/);
    expect(() =>
      kitchenFromFile(
        text((copy) => (copy.items[0].colour = 'red')),
        clock,
      ),
    ).toThrow(/colour/);
  });
});
