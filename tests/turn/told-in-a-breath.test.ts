/** Several things told in one breath: who made what, what is in which, where each part went. By the record. */
import { describe, expect, it } from 'vitest';
import { livingItems } from '../../src/kitchen/index.js';
import type { Item } from '../../src/kitchen/model.js';
import { talked } from '../support/said.js';

/** What came in by these turns, by name, and the last answer. */
const after = async (...lines: readonly string[]) => {
  const { said, before, kitchen } = await talked(...lines);
  const fresh = livingItems(kitchen).filter(({ id }) => !before.items.has(id));
  const named = (name: string): Item | undefined => fresh.find((item) => item.name === name);
  const placeOf = (name: string): string | undefined => kitchen.places.get(named(name)?.placeId ?? '')?.name;
  return { said, fresh, named, placeOf };
};

describe('who made or brought it, whom nobody has on record', () => {
  it.each([
    ['fish pie from janet made on sunday in the second drawer of the upright freezer', 'fish pie', 'Janet'],
    ['lamb curry from our Sheila made Tuesday bottom shelf of the fridge', 'lamb curry', 'Sheila'],
    ["Noreen's after bringing a trifle, it's in the fridge", 'trifle', 'Noreen'],
    ['my neighbor Walt sent over some ribs, they are in the fridge', 'ribs', 'Walt'],
    ["me mam's been round with a pan of scouse, it's on the fridge top shelf", 'scouse', 'mam'],
    ['the dumplings Mrs Patel made are in the fridge', 'dumplings', 'Mrs Patel'],
    ["Amara's after dropping over a fish pie", 'fish pie', 'Amara'],
  ])('is kept, and no food: %s', async (line, name, maker) => {
    const { fresh, named } = await after(line);
    expect(fresh).toHaveLength(1);
    expect(named(name)?.maker).toBe(maker);
    if (!line.includes('made ')) expect(named(name)?.dates.made).toBeUndefined();
  });

  it.each([
    ['fufu made on Sunday in the fridge', 'fufu'],
    ['a pot of jollof made yesterday, fridge top shelf', 'jollof'],
  ])('is no dish nobody knows: %s', async (line, name) => {
    expect((await after(line)).named(name)?.maker ?? null).toBeNull();
  });
});

describe('several things with their own', () => {
  it('have their places and what is in them', async () => {
    const { named, placeOf } = await after(
      'a loaf in the bread bin and a jar of pesto in the fridge that has got pine nuts in',
    );
    expect(placeOf('loaf')).toBe('bread bin');
    expect(placeOf('pesto')).toBe('fridge');
    expect(named('loaf')?.contains).toEqual([]);
    expect(named('pesto')?.contains).toEqual(['tree nuts']);
  });

  it('keep what is in one of them while a place is asked', async () => {
    const line =
      "six sausages in the fridge oh and my sister made us a curry, it's got cashews in, that's going in the freezer";
    const { named } = await after(line, 'the upright freezer');
    expect(named('sausages')?.contains).toEqual([]);
    expect(named('sausages')?.notes).toEqual([]);
    expect(named('curry')?.contains).toEqual(['tree nuts']);
    expect(named('curry')?.notes.join()).toContain('cashews');
    expect(named('curry')?.maker).toBe('sister');
  });

  it('are not done to by what was done to the next', async () => {
    const { placeOf } = await after(
      "there's some butter going in the fridge and Priya brought round samosas yesterday they're going in the upright freezer",
    );
    expect(placeOf('butter')).toBe('fridge');
    expect(placeOf('samosas')).toBe('upright freezer');
  });

  it('are heard where a recogniser cut a word in two', async () => {
    const { named, fresh } = await after(
      'theres a jar of chutney that can go in the cup board top shelf its got walnuts in mind',
    );
    expect(fresh).toHaveLength(1);
    expect(named('chutney')?.contains).toEqual(['tree nuts']);
  });
});

describe('a slip in what is told', () => {
  it.each([
    ['the hummus no the yogurt goes in the fridge'],
    ['the hummus, no, the cheese goes on the top shelf'],
  ])('is no lack: %s', async (line) => {
    expect((await after(line)).said).not.toMatch(/free from/);
  });

  it.each([
    ["there's a dozen eggs no tell a lie ten of em, one was cracked, in the fridge"],
    ['a dozen duck eggs, no, ten of them, one was cracked so I binned a couple, in the fridge'],
  ])('is put right, and its reason is no use: %s', async (line) => {
    const [item] = (await after(line)).fresh;
    expect(item?.amount?.value).toBe(10);
    expect(item?.dates.opened).toBeUndefined();
    expect(item?.notes.join()).toContain('one was cracked');
  });
});

describe('a batch over several places', () => {
  it('is counted without what was given away, which is kept', async () => {
    const { fresh } = await after(
      'eight jars of jam I boiled yesterday, six in the pantry, one in the fridge door, one I gave to Aunt Bea',
    );
    expect(fresh.reduce((sum, { amount }) => sum + (amount?.value ?? 1), 0)).toBe(7);
    expect(fresh.every(({ dates, notes }) => dates.made === '2026-05-13' && notes.length === 1)).toBe(true);
  });

  it.each([
    ['divvied up the stew, two tubs top shelf, three tubs chest freezer', 5],
    ['split up the chili: one jar fridge door, four jars in the pantry', 5],
  ])('without a word between: %s', async (line, many) => {
    const { fresh } = await after(line);
    expect(fresh.reduce((sum, { amount }) => sum + (amount?.value ?? 1), 0)).toBe(many);
  });

  it.each([
    ['the lasagna what I cooked yesterday is in the fridge', 'lasagna'],
    ['put the casserole what I made last night in the fridge', 'casserole'],
  ])('has "what" for "that": %s', async (line, name) => {
    expect((await after(line)).named(name)?.dates.made).toBe('2026-05-13');
  });
});
