/** What was just told, put right; facts told over several turns; what was eaten up. By the record, not by the words. */
import { describe, expect, it } from 'vitest';
import { livingItems } from '../../src/kitchen/index.js';
import type { Item } from '../../src/kitchen/model.js';
import { talked } from '../support/said.js';

/** What is here by that name after these turns, and the last answer. */
const after = async (name: string, lines: readonly string[]) => {
  const { said, kitchen } = await talked(...lines);
  const items: readonly Item[] = livingItems(kitchen).filter((item) => item.name === name);
  return { said, items };
};

const brought =
  "Dele brought round a lasagne yesterday, it's in the fridge on the third shelf, about four portions";

describe('what was brought round', () => {
  it('came in, and was not bought', async () => {
    const { said, items } = await after('lasagne', [brought]);
    expect(items).toHaveLength(4);
    expect(said).toContain('came in yesterday');
    expect(said).toContain('When it was made is not known');
    expect(said).not.toContain('bought');
  });

  it.each([
    ['no she brought it she didnt buy it she made it on monday i think'],
    ['thats not right it was made on monday change the date please'],
    ["that's not right, it was made on Monday"],
  ])('is put right by what is told of it next: %s', async (line) => {
    const { said, items } = await after('lasagne', [brought, line]);
    const bought = (await after('lasagne', [brought])).items[0]!.dates.bought;
    expect(items.map(({ dates }) => dates.made)).toEqual(Array(4).fill('2026-05-11'));
    expect(items.every(({ dates }) => dates.bought === bought)).toBe(true);
    expect(said).toContain('made last Monday');
  });

  it('has the use-by that is put on it', async () => {
    const { items } = await after('lasagne', [
      brought,
      'put Saturday the sixteenth on it as the use-by',
      'yes',
    ]);
    expect(items.map(({ dates }) => dates.useBy)).toEqual(Array(4).fill('2026-05-16'));
  });

  it('has contents and a marker told in one breath, a slip mended', async () => {
    const { items } = await after('lasagne', [
      brought,
      "oh and it's got milk and wheat in and put a cloth no a rubber patch on it with the one ridge",
    ]);
    expect(items.every(({ contains }) => contains.includes('milk') && contains.includes('wheat'))).toBe(true);
    expect(items.some(({ markerId }) => markerId === 'marker.rubber-patch-1')).toBe(true);
    expect(items.every(({ touch }) => touch.texture === undefined)).toBe(true);
  });
});

describe('a batch in two places', () => {
  const made =
    'made a big pot of leek and potato soup this afternoon ten portions want it split between the two freezers';
  const places = (items: readonly Item[]) => items.map(({ placeId }) => placeId).sort();
  const fiveIn = (...ids: readonly string[]) => ids.flatMap((id) => Array<string>(5).fill(id));

  it('is as much in each, and said again stays so', async () => {
    const { items } = await after('leek and potato soup', [made, 'both I said. five and five.']);
    expect(places(items)).toEqual(fiveIn('place.chest', 'place.upright'));
    expect(items.every(({ amount }) => amount?.value === 1)).toBe(true);
  });

  it('is told more closely where, and what is in it is no food of its own', async () => {
    const { items } = await after('leek and potato soup', [
      made,
      "five portions in the chest freezer, right basket, other five in the upright, bottom basket. cooked today, there's cream in it and celery.",
    ]);
    expect(places(items)).toEqual(fiveIn('place.chest.basket3', 'place.upright.basket3'));
    expect(items.every(({ contains }) => contains.includes('milk') && contains.includes('celery'))).toBe(
      true,
    );
  });

  it('is so many in each', async () => {
    const { items } = await after('pumpkin soup', ['ten portions of pumpkin soup, five in each freezer']);
    expect(places(items)).toEqual(fiveIn('place.chest', 'place.upright'));
  });
});

describe('what was eaten up', () => {
  it.each([
    ['cooked rice', ['We ate the cooked rice, Peter and me, all.']],
    ['cooked rice', ['We ate the cooked rice, Peter and me.', 'All of it. The two portions.']],
    ['roast chicken', ['the half chicken I already ate with Peter, all', 'yes']],
  ])('is gone: %s', async (name, lines) => {
    expect((await after(name, lines)).items).toEqual([]);
  });
});
