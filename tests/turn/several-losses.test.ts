/** Several things thrown out or used up in one breath: each that was named is dealt with or asked after. */
import { describe, expect, it } from 'vitest';
import type { Item } from '../../src/kitchen/model.js';
import { talked } from '../support/said.js';

/** How each went that went, by its name, after these turns; and the last answer. */
const after = async (...lines: readonly string[]) => {
  const { said, before, kitchen } = await talked(...lines);
  const gone = Object.fromEntries(
    [...kitchen.items.values()].flatMap(({ id, name, gone: how }: Item) =>
      how && !before.items.get(id)?.gone ? [[name, how.how]] : [],
    ),
  );
  return { said, gone };
};

describe('several losses in one breath', () => {
  it.each([
    // What is only named after it goes the same way.
    [
      'the hummus is gone, poured it out, and that sour cream too',
      { Hummus: 'thrown out', 'Sour cream': 'thrown out' },
    ],
    [
      "the ham's in the bin, and the hummus, carrot soup too",
      { 'Sliced ham': 'thrown out', Hummus: 'thrown out', 'Carrot soup': 'thrown out' },
    ],
    [
      "yogurt's off so that's in the bin, the sour cream and all",
      { 'Plain yogurt': 'thrown out', 'Sour cream': 'thrown out' },
    ],
    // A verb of its own is of that alone.
    ['got rid of the carrot soup, the hummus we finished', { 'Carrot soup': 'thrown out', Hummus: 'used' }],
    [
      'tossed the carrot soup, not the hummus, I ate that last night',
      { 'Carrot soup': 'thrown out', Hummus: 'used' },
    ],
    ['I throw the carrot soup, hummus not, that I eat', { 'Carrot soup': 'thrown out', Hummus: 'used' }],
    // What is taken back is not done.
    ['tossed the ham, wait no, keep the ham, tossed the hummus', { Hummus: 'thrown out' }],
    ['threw out the hummus but left the jollof', { Hummus: 'thrown out' }],
    // The particle stands after what it was done to.
    ['threw the hummus out and poured the milk away', { Hummus: 'thrown out', Milk: 'thrown out' }],
  ])('%s', async (line, wanted) => {
    const { gone, said } = await after(line);
    const asked = said.endsWith('Yes or no.') ? (await after(line, 'yes')).gone : gone;
    expect(lower(asked)).toEqual(lower(wanted));
  });

  it('takes nothing along of which something else is said', async () => {
    const { gone } = await after('the hummus is gone and the butter is in the door');
    expect(lower(gone)).toEqual({ hummus: 'used' });
  });

  it('asks which was meant, and not what to buy, before anything else', async () => {
    const line = "chicken's goin in the trash, and the ham, sour cream too";
    expect((await after(line)).said).toMatch(/roast chicken.*Which one\?$/);
    expect(lower((await after(line, 'the roast one')).gone)).toEqual({
      'sliced ham': 'thrown out',
      'sour cream': 'thrown out',
      'roast chicken': 'thrown out',
    });
  });

  it.each(['all three are in the bin', 'done, binned the lot', 'the three of them are thrown out'])(
    'is of what was told to be thrown out, and of no other food: %s',
    async (line) => {
      const { said, gone } = await after('what should I throw out', line);
      expect(gone).toEqual({});
      expect(said).toMatch(/^Mark all three as thrown out: sliced ham, jollof rice, and sour cream\?/);
    },
  );

  it('is of the other one of two that were told', async () => {
    const { gone } = await after(
      'what soup have I got',
      'the carrot soup is finished',
      "and the other one, that's all gone as well",
      'yes',
    );
    expect(lower(gone)).toEqual({ 'carrot soup': 'used', 'egusi soup': 'used' });
  });
});

const lower = (gone: object): object =>
  Object.fromEntries(Object.entries(gone).map(([name, how]) => [name.toLowerCase(), how]));
