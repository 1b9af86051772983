/** An answer to the open question, with more after it; and what is put right of what was just done. */
import { describe, expect, it } from 'vitest';
import { livingItems, shoppingList } from '../../src/kitchen/index.js';
import type { Kitchen } from '../../src/kitchen/model.js';
import { talked } from '../support/said.js';

const listOf = (kitchen: Kitchen): readonly string[] =>
  shoppingList(kitchen).map(({ name }) => name.toLowerCase());

const after = async (...lines: readonly string[]) => {
  const { said, before, kitchen } = await talked(...lines);
  const placeOf = (name: string): string => {
    const item = livingItems(kitchen).find((one) => one.name.toLowerCase() === name);
    const place = item?.placeId ? kitchen.places.get(item.placeId) : undefined;
    const outer = place?.parentId ? kitchen.places.get(place.parentId) : undefined;
    return [place?.name, outer?.name].filter(Boolean).join(' of ').toLowerCase();
  };
  return {
    said,
    kitchen,
    placeOf,
    list: listOf(kitchen).filter((name) => !listOf(before).includes(name)),
    lost: livingItems(before).filter(({ id }) => kitchen.items.get(id)?.gone),
  };
};

describe('an answer with more after it', () => {
  it.each([
    ["the upright oh I say upright, it's the little one by the back door", 'upright'],
    ['upright, you know, that tall thing', 'upright'],
    ['the big one in the garage please love', 'chest'],
    ['I told you, the chest', 'chest'],
  ])('never loses what was told: %s', async (line, wanted) => {
    const { placeOf } = await after('put a lasagne in the freezer', line);
    expect(placeOf('lasagne')).toContain(wanted);
  });

  it.each(['either one', "don't care, whichever's got room", "I'm not fussed, you choose"])(
    'may leave it to us where it makes no odds: %s',
    async (line) => {
      const { placeOf, said } = await after('put a lasagne in the freezer', line);
      expect(placeOf('lasagne')).toContain('freezer');
      expect(said).toContain('freezer');
    },
  );

  it('does not leave a loss to us', async () => {
    const { lost, said } = await after('bin the rice', 'either one');
    expect(lost).toEqual([]);
    expect(said).toMatch(/Say|Which/);
  });

  it('answers first, then hears what was asked besides', async () => {
    const { said } = await after('bin the ham and the rice', 'cooked rice. and what should I use up tonight');
    expect(said).toContain('to use first');
    expect(said).toMatch(/Mark both as thrown out: sliced ham and cooked rice\?/);
  });

  it('told whole, the question is not put again', async () => {
    const { said, placeOf } = await after(
      'put the stew away',
      "the lamb stew, made it today, it's on the second shelf of the fridge",
    );
    expect(placeOf('lamb stew')).toContain('second shelf');
    expect(said).not.toContain('Where does');
  });
});

describe('what is put right of what was just done', () => {
  it.each([
    [['add tea to the shopping list', 'take that last one off again, I found a box'], []],
    [
      ['add eggs, bananas and coffee to the list', "the last one, leave that off, we're well stocked"],
      ['eggs', 'bananas'],
    ],
  ])('%s', async (lines, wanted) => {
    const { list } = await after(...lines);
    expect(list).toEqual(expect.arrayContaining(wanted));
    expect(list).toHaveLength(wanted.length);
  });

  it.each([
    "no it isn't, I've just found it at the back",
    "oh heavens, undo that, I've got the tub right here in my hand",
    "oh sorry that's not gone, it's here",
  ])('brings back what was not gone: %s', async (line) => {
    const { kitchen } = await after('the hummus is finished', line);
    expect(livingItems(kitchen).some(({ name }) => name === 'hummus')).toBe(true);
  });
});
