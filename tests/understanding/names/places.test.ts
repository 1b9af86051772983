import { describe, expect, it } from 'vitest';
import { createHouseholdNames, type PlaceMatch } from '../../../src/understanding/names/index.js';
import { normalise } from '../../../src/understanding/words/index.js';

const names = createHouseholdNames('en-US');
const place = (
  id: string,
  parentId: string | null,
  name: string,
  kind: string,
  position: number | null = null,
  aliases: string[] = [],
): void => names.set('place', { id, parentId, name, kind, position, aliases });
place('fridge', null, 'fridge', 'fridge');
place('fridge 1', 'fridge', 'top shelf', 'shelf', 1);
place('fridge 2', 'fridge', 'second shelf', 'shelf', 2);
place('fridge 3', 'fridge', 'bottom shelf', 'shelf', 3);
place('fridge door', 'fridge', 'door', 'door');
place('fridge left', 'fridge', 'left drawer', 'drawer', 1);
place('fridge right', 'fridge', 'right drawer', 'drawer', 2);
place('upright', null, 'upright freezer', 'freezer');
for (const [at, name] of ['top', 'second', 'third', 'fourth'].entries()) {
  place(`upright ${at + 1}`, 'upright', `${name} shelf`, 'shelf', at + 1);
}
place('chest', null, 'chest freezer', 'freezer');
place('chest 1', 'chest', 'top basket', 'basket', 1, ['bread basket']);
place('chest 2', 'chest', 'middle basket', 'basket', 2);
place('chest 3', 'chest', 'bottom basket', 'basket', 3);
place('pantry', null, 'pantry', 'pantry');

const read = (text: string): PlaceMatch | undefined => {
  const { tokens } = normalise(text, 'en-US');
  return names.rules
    .get('kitchen:place')!
    .matchesAt(tokens, 0)
    .find(({ length }) => length === tokens.length)?.value as unknown as PlaceMatch | undefined;
};
const ids = (text: string): string[] | undefined => read(text)?.candidates.map(({ id }) => id);

describe('one place', () => {
  it.each([
    ['the fridge', 'fridge'],
    ['the refrigerator', 'fridge'],
    ['the door', 'fridge door'],
    ['fridge door', 'fridge door'],
    ['the door of the fridge', 'fridge door'],
    ['the second shelf of the fridge', 'fridge 2'],
    ['the second shelf in the upright freezer', 'upright 2'],
    ['second shelf from the bottom of the upright freezer', 'upright 3'],
    ['the second shelf from the bottom of the fridge', 'fridge 2'],
    ['the top shelf in the freezer', 'upright 1'],
    ['the last shelf of the upright freezer', 'upright 4'],
    ['fridge top shelf', 'fridge 1'],
    ['the upright freezer third shelf', 'upright 3'],
    ['the left drawer', 'fridge left'],
    ['the left hand drawer', 'fridge left'],
    ['the drawer on the left', 'fridge left'],
    ['the right drawer of the fridge', 'fridge right'],
    ['bottom basket of the chest freezer', 'chest 3'],
    ['the middle basket', 'chest 2'],
    ['the bread basket', 'chest 1'],
    ['the third shelf', 'upright 3'],
    ['the chest freezer', 'chest'],
    ['shelf four', 'upright 4'],
    ['the larder', 'pantry'],
    ['the second self of the fridge', 'fridge 2'],
  ])('%j is %s', (text, id) => expect(ids(text)?.[0]).toBe(id));
});

describe('places that several are', () => {
  it('offers each', () => {
    expect(ids('the second shelf')?.sort()).toEqual(['fridge 2', 'upright 2']);
    expect(ids('the freezer')?.sort()).toEqual(['chest', 'upright']);
    expect(ids('the second shelf from the bottom')?.sort()).toEqual(['fridge 2', 'upright 3']);
  });
});

describe('places this household does not have', () => {
  it('are heard, with nothing behind them', () => {
    expect(read('the fifth shelf')).toEqual({
      words: 'fifth shelf',
      candidates: [],
      spot: null,
      path: [{ words: 'fifth shelf', kind: 'shelf', whole: false, candidates: [] }],
    });
    expect(ids('the second shelf of the pantry')).toEqual([]);
    expect(ids('the top basket of the fridge')).toEqual([]);
  });
  it('never become their neighbours', () => {
    for (const nth of ['fifth', 'sixth', 'tenth']) expect(ids(`the ${nth} shelf`)).toEqual([]);
  });
  it.each(['stew', 'the second', 'the lentil stew', 'two'])('%j is no place', (text) =>
    expect(read(text)).toBeUndefined(),
  );
});

describe('spots within a place', () => {
  it.each([
    ['the top shelf of the fridge on the left side', 'fridge 1', 'left side'],
    ['the left side of the top shelf of the fridge', 'fridge 1', 'left side'],
    ['the back of the fridge', 'fridge', 'back'],
    ['the pantry at the front', 'pantry', 'front'],
  ])('%j', (text, id, spot) => {
    expect(ids(text)?.[0]).toBe(id);
    expect(read(text)?.spot).toBe(spot);
  });
  it('keeps the spot out of the place words', () => {
    expect(read('the pantry at the front')?.words).toBe('pantry');
  });
});

describe('a kitchen that is rebuilt', () => {
  it('counts from the bottom of what there is now', () => {
    const tokens = ['bottom', 'shelf', 'of', 'the', 'larder'];
    const found = (): string[] =>
      names.rules
        .get('kitchen:place')!
        .matchesAt(tokens, 0)
        .filter(({ length }) => length === tokens.length)
        .flatMap(({ value }) => (value as unknown as PlaceMatch).candidates.map(({ id }) => id));
    place('pantry 1', 'pantry', 'shelf one', 'shelf', 1);
    expect(found()).toEqual(['pantry 1']);
    place('pantry 2', 'pantry', 'shelf two', 'shelf', 2);
    expect(found()).toEqual(['pantry 2']);
    names.remove('place', 'pantry 2');
    expect(found()).toEqual(['pantry 1']);
    names.remove('place', 'pantry 1');
    expect(found()).toEqual([]);
  });

  it('is not caught by places that hold each other', () => {
    place('a', 'b', 'box a', 'basket', 1);
    place('b', 'a', 'box b', 'basket', 1);
    expect(ids('the top basket of the fridge')).toEqual([]);
    names.remove('place', 'a');
    names.remove('place', 'b');
  });
});

describe('the parts of a place that is not on record', () => {
  const bare = createHouseholdNames('en-US');
  const parts = (text: string, names = bare): string[] | undefined => {
    const { tokens } = normalise(text, 'en-US');
    const match = names.rules
      .get('kitchen:place')!
      .matchesAt(tokens, 0)
      .find(({ length }) => length === tokens.length)?.value as unknown as PlaceMatch | undefined;
    return match?.path?.map(({ words, whole }) => `${words}${whole ? ' by itself' : ''}`);
  };

  it('are told from the outermost inwards', () => {
    expect(parts('the fridge door')).toEqual(['fridge by itself', 'door']);
    expect(parts('the top shelf of the fridge')).toEqual(['fridge by itself', 'top shelf']);
    expect(parts('the bottom drawer in the garage freezer')).toEqual([
      'garage freezer by itself',
      'bottom drawer',
    ]);
    expect(parts('the second shelf')).toEqual(['second shelf']);
  });

  it('name the record they are part of', () => {
    const path = read('the second shelf of the pantry')?.path;
    expect(path?.map(({ candidates }) => candidates[0]?.id)).toEqual(['pantry', undefined]);
  });

  it('are not told of what is on record', () => {
    expect(read('the fridge door')?.path).toBeUndefined();
  });

  it('do not make a new freezer of words before the one there is', () => {
    expect(read('the garage freezer')).toBeUndefined();
  });
});
