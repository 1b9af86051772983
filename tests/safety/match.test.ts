import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { matchFood } from '../../src/safety/match.js';
import { safetyTables } from '../../src/safety/tables.js';
import { foodWords, singular } from '../../src/safety/words.js';

const inFridge = (name: string) => matchFood(name, { where: 'fridge' });

describe('names as cooks say them', () => {
  it.each([
    ["amara's white beans", 'cooked-beans'],
    ['mince', 'raw-ground-meat'],
    ['jerk chicken', 'cooked-poultry'],
    ['bean chilli', 'stew'],
    ['three bean chili', 'stew'],
    ['tub of cooked chicken', 'cooked-poultry'],
    ['chicken', 'raw-poultry-pieces'],
    ['raw chicken thighs', 'raw-poultry-pieces'],
    ['chicken noodle soup', 'soup-stew'],
    ['chicken and rice soup', 'soup-stew'],
    ['cream of tomato soup', 'soup-stew'],
    ['rice with chicken', 'cooked-rice'],
    ["Dele's jollof", 'cooked-rice'],
    ["shepherd's pie", 'casserole'],
    ['crème brûlée', 'custard'],
    ['peanut butter', 'peanut-butter'],
    ['peanut butter cookies', 'bread'],
    ['deli-sliced turkey', 'deli-sliced'],
    ['chicken caesar salad', 'mixed-salad'],
    ['half a melon', 'cut-melon'],
    ['sliced peaches', 'cut-fruit'],
    ['tinned peaches', 'tinned-fruit'],
    ['tin of soup', 'tin'],
    ['home-canned green beans', 'home-canned'],
    ['minced turkey', 'raw-ground-poultry'],
    ['cooked ground beef', 'cooked-meat'],
    ['BABY SPINACH', 'packaged-greens'],
    ['lasagna', 'pasta-dish'],
    ['yoghurt', 'yogurt'],
    ['hard-boiled eggs', 'eggs-hard'],
    ['prawns', 'shrimp'],
    // Which dressing is not known: the creamy one, which guidance keeps for less.
    ['salad dressing', 'creamy-dressing'],
    ['italian dressing', 'vinegar-dressing'],
  ])('%s: %s', (name, family) => expect(inFridge(name).family).toBe(family));

  it('where raw and cooked both fit, the shorter is taken and said', () => {
    expect(inFridge('chicken')).toMatchObject({ state: 'raw', notes: ['raw-assumed'] });
    expect(inFridge('lamb')).toMatchObject({ state: 'cooked', notes: ['several-fit'] });
    expect(matchFood('lamb', { where: 'fridge', state: 'raw' }).family).toBe('raw-roast');
  });
  it('dry goods on a shelf, the cooked dish in the fridge', () => {
    expect(matchFood('white beans', { where: 'pantry' }).family).toBe('dry-goods');
    expect(matchFood('white beans', { where: 'fridge' }).family).toBe('cooked-beans');
  });
  it('says how sure it is', () => {
    expect(inFridge('beef stew').sure).toBe('exact');
    expect(inFridge("auntie's famous stew").sure).toBe('contains');
    expect(inFridge('quandong')).toMatchObject({
      sure: 'unknown',
      family: 'general',
      notes: ['not-in-table'],
    });
  });
});

describe('the reviewed table', () => {
  const { foods, kinds } = safetyTables();
  const names = foods.flatMap((row) => [row.food, ...row.also]);
  it('has over four hundred names, each in one row only', () => {
    const keys = names.map((name) => foodWords(name).join(' '));
    expect(new Set(keys).size).toBeGreaterThan(400);
    const rows = new Map<string, string>();
    for (const row of foods) {
      for (const name of [row.food, ...row.also]) {
        const key = foodWords(name).join(' ');
        expect([name, rows.get(key) ?? row.food]).toEqual([name, row.food]);
        rows.set(key, row.food);
      }
    }
  });
  it('is found by every name in it, exactly', () => {
    for (const name of names) {
      const found = matchFood(name);
      expect([name, found.sure, kinds.has(found.family)]).toEqual([name, 'exact', true]);
    }
  });
  it('is found in the plural and behind a possessive', () => {
    for (const name of ['carrot', 'potato', 'berry', 'peach', 'radish', 'loaf', 'cookie', 'pie', 'tomato']) {
      const plural =
        {
          berry: 'berries',
          loaf: 'loaves',
          peach: 'peaches',
          radish: 'radishes',
          potato: 'potatoes',
          tomato: 'tomatoes',
        }[name] ?? `${name}s`;
      expect(matchFood(`Ada's ${plural}`).family).toBe(matchFood(name).family);
    }
  });
});

describe('any name', () => {
  it('gets some answer, of a kind that is in the table', () =>
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), (name) => {
        const found = matchFood(name, { where: 'fridge' });
        expect(safetyTables().kinds.has(found.family)).toBe(true);
        expect(found.name).toBe(name);
      }),
    ));
  it('takes a name that every object has for a name', () =>
    expect([foodWords('constructor'), foodWords('__proto__')]).toEqual([['constructor'], ['proto']]));
  it('singulars are stable', () =>
    fc.assert(
      fc.property(
        fc.constantFrom('soups', 'dishes', 'boxes', 'peas', 'fries', 'couscous', 'hummus', 'asparagus'),
        (word) => {
          expect(singular(singular(word))).toBe(singular(word));
        },
      ),
    ));
});
