/** What somebody cooked and when, what is in it and for whom it is not, in many places; a freezer checked. By the record. */
import { describe, expect, it } from 'vitest';
import { livingItems } from '../../src/kitchen/index.js';
import type { Item, Kitchen } from '../../src/kitchen/model.js';
import { talked } from '../support/said.js';
import { THURSDAY } from '../support/service.js';

/** The kitchen after these turns, what came in that has a word in its name, and the last answer. */
const after = async (
  word: string,
  lines: readonly string[],
): Promise<{ said: string; items: readonly Item[]; kitchen: Kitchen }> => {
  const { said, before, kitchen } = await talked(...lines);
  const added = livingItems(kitchen).filter(({ id, name }) => !before.items.has(id) && name.includes(word));
  return { said, kitchen, items: added };
};
const today = THURSDAY.slice(0, 10);

describe('the day it was cooked', () => {
  it.each([
    ['rendang', 'I cooked rendang today, eight portions, in the fridge'],
    ['rendang', 'i was cooking beef rendang today ten portion, all of it in the chest freezer'],
    ['chicken', "I roasted a chicken today, it's on the top shelf"],
    ['boiled eggs', "we boiled six eggs today, they're on the top shelf"],
    ['potatoes', "Dele roasted potatoes today, they're on the second shelf"],
    ['congee', 'cooked congee today, two tubs in the fridge'],
  ])('is kept of %s, whatever the verb: %s', async (word, line) => {
    const { items, said } = await after(word, [line]);
    expect(items.length).toBeGreaterThan(0);
    expect(items.every(({ name }) => !name.startsWith('cooked'))).toBe(true);
    expect(items.every(({ dates }) => dates.made === today)).toBe(true);
    expect(said).toContain('made today');
  });

  it.each([
    ['put two tubs of cooked rice in the fridge', 'cooked rice'],
    ['two tubs of cooked lentils in the fridge', 'cooked lentils'],
  ])('is told by no verb that is part of a name: %s', async (line, name) => {
    const { items } = await after(name, [line]);
    expect(items.every(({ dates }) => dates.made === undefined)).toBe(true);
    expect(items).not.toHaveLength(0);
  });

  it('of both, told afterwards, is on both', async () => {
    const put = ['put two tubs of goulash in the fridge', 'and a tub of pilaf on the top shelf'];
    const { kitchen } = await after('', [...put, 'no no i cooked them both today i told you already']);
    const made = livingItems(kitchen).filter(({ name }) => name === 'goulash' || name === 'pilaf');
    expect(made).toHaveLength(3);
    expect(made.every(({ dates }) => dates.made === today)).toBe(true);
  });
});

describe('what is in it, and for whom it is not', () => {
  it.each([
    ['rendang', 'rendang, five portions in the chest freezer and it has coconut and candlenut inside so not for my sister', 'candlenut', 'not for my sister'],
    ['satay', 'satay, four portions in the fridge, with peanut in it, not for Amara', 'peanuts', 'not for amara'],
    ['brownies', 'I made brownies, twelve, in the pantry, it has walnut in, not for my uncle', 'tree nuts', 'not for my uncle'],
  ])('of %s is on record: %s', async (word, line, inside, caution) => {
    const { items } = await after(word, [line]);
    expect(items).not.toHaveLength(0);
    for (const item of items) {
      expect(JSON.stringify(item)).toContain(inside);
      expect(item.cautions).toContain(caution);
    }
  });
}); // prettier-ignore

describe('one dish in many places', () => {
  const counts = (items: readonly Item[]): Readonly<Record<string, number>> => {
    const by: Record<string, number> = {};
    for (const { placeId } of items) by[placeId ?? ''] = (by[placeId ?? ''] ?? 0) + 1;
    return by;
  };
  it.each([
    ['rendang ten portions, four in the upright freezer, four in the chest freezer, no wait, three in the chest freezer', [3, 4]],
    ['congee, six portions in the chest freezer, two in the fridge', [2, 6]],
    ['the goulash, ten portion, four in the upright freezer, four in chest freezer, no wait three in chest freezer, and three in the fridge', [3, 3, 4]],
  ])('keeps its unit and takes the slip back: %s', async (line, wanted) => {
    const { items } = await after(/rendang|congee|goulash/.exec(line)![0], [line]);
    expect(Object.values(counts(items)).sort((a, b) => a - b)).toEqual(wanted);
    expect(items.every(({ amount }) => amount?.unit === 'portion')).toBe(true);
  });
}); // prettier-ignore

describe('a freezer checked', () => {
  const start = 'check the upright freezer with me';
  it('takes a figure of what somebody took for no count of what is there', async () => {
    const put = 'put five tubs of pilaf in the upright freezer';
    const { items } = await after('pilaf', [put, start, 'pilaf only three, two my son took on tuesday']);
    expect(items).toHaveLength(3);
  });

  it('says what nothing was said of yet, however that is asked', async () => {
    const { said } = await after('', [start, 'what is still not checked']);
    expect(said).toContain('Still to check');
  });

  it('asks whether what was found besides is to be noted, and invents no day', async () => {
    const found = ["here also one bag of dumplings you don't have, about twenty, put it in", 'yes'];
    const asked = await after('dumplings', [start, found[0]!]);
    expect(asked.said).toContain('Note it there?');
    expect(asked.items).toHaveLength(0);
    const { items } = await after('dumplings', [start, ...found]);
    expect(items).toHaveLength(1);
    expect(items[0]!.dates).toEqual({});
  });

  it('says at its end what was changed and what was not reached', async () => {
    const { said } = await after('', [start, 'the sweetcorn is gone', 'stop the check']);
    expect(said).toContain('sweetcorn');
    expect(said).toContain('not looked at');
    expect(said).not.toContain('as it was');
  });
});
