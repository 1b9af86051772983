/** Foods by the words of other regions, through the index of a household's names. */
import { describe, expect, it } from 'vitest';
import { createHouseholdNames } from '../../../src/understanding/names/index.js';

const namesOf = (...items: string[]) => {
  const names = createHouseholdNames('en-US');
  for (const name of items) names.set('item', { id: name, name });
  return names;
};
const best = (names: ReturnType<typeof namesOf>, words: string) => names.find('item', words)[0];

describe('another word for the same food', () => {
  it.each([
    ['ground beef', 'mince'],
    ['ground beef', 'minced beef'],
    ['lean ground beef', 'lean minced beef'],
    ['courgettes', 'zucchini'],
    ['zucchini', 'courgette'],
    ['aubergine', 'eggplant'],
    ['coriander', 'cilantro'],
    ['arugula', 'rocket'],
    ['king prawns', 'king shrimp'],
    ['green onions', 'spring onions'],
    ['scallions', 'spring onion'],
    ['swede', 'rutabaga'],
    ['beetroot', 'beets'],
    ['natural yoghurt', 'plain yogurt'],
    ['baking soda', 'bicarb'],
    ['icing sugar', 'powdered sugar'],
    ['chickpeas', 'garbanzos'],
    ['broad beans', 'fava beans'],
    ['okra', "lady's fingers"],
    ['bell peppers', 'capsicum'],
    ['mange tout', 'snow peas'],
    ['porridge oats', 'oatmeal'],
  ])('finds %s by %s, not as surely as by its own name', (name, words) => {
    const names = namesOf(name, 'lentil stew', 'milk');
    expect(best(names, words)?.id).toBe(name);
    expect(best(names, words)!.fit).toBeLessThan(best(names, name)!.fit);
    expect(best(names, name)!.fit).toBe(1);
  });

  it('goes after the name on record, where she has both', () => {
    const names = namesOf('shrimp', 'prawns');
    expect(best(names, 'prawns')?.id).toBe('prawns');
    expect(best(names, 'shrimp')?.id).toBe('shrimp');
  });

  it('is asked about before a loss where it is often, not always the same', () => {
    for (const [name, words] of [
      ['ham', 'gammon'],
      ['heavy cream', 'double cream'],
      ['crisps', 'potato chips'],
    ] as const)
      expect(best(namesOf(name), words)!.fit).toBeLessThan(0.78);
  });

  it('is only the end of a name: a mince pie is no beef, beet soup no beetroot', () => {
    expect(namesOf('mince pies').find('item', 'ground beef')).toEqual([]);
    expect(namesOf('prawn crackers').find('item', 'shrimp')).toEqual([]);
  });

  it('is forgotten with the item', () => {
    const names = namesOf('ground beef');
    names.remove('item', 'ground beef');
    expect(names.find('item', 'mince')).toEqual([]);
  });
});

describe('the kind of food', () => {
  it('is the one of that kind', () => {
    expect(best(namesOf('cheddar', 'lime mint malt drink', 'milk'), 'cheese')?.id).toBe('cheddar');
  });

  it('is either where there are two', () => {
    const [one, other] = namesOf('cheddar', 'feta', 'lime mint malt drink').find('item', 'cheese');
    expect(new Set([one!.id, other!.id])).toEqual(new Set(['cheddar', 'feta']));
    expect(one!.fit).toBe(other!.fit);
  });
});
