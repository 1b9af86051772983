import { describe, expect, it } from 'vitest';
import { fitOf, searchable } from '../../src/web/client/search.js';

const fits = (wanted: string, ...texts: string[]): boolean => fitOf(wanted, searchable(...texts)) > 0;

describe('finding food', () => {
  it('by sound and spelling', () => {
    for (const [wanted, name] of [
      ['chili', 'bean chilli'],
      ['chilli', 'bean chili'],
      ['yoghurt', 'plain yogurt'],
      ['filet', 'salmon fillet'],
      ['tomatos', 'tinned tomatoes'],
      ['tomatoes tinned', 'tinned tomatoes'],
      ['berries', 'frozen berry mix'],
      ['jolof', 'jollof rice'],
      ['pure', 'purée of carrot'],
    ] as const)
      expect(fits(wanted, name), wanted).toBe(true);
  });

  it('by place, maker, marker and allergen together with the name', () => {
    expect(fits('rice in the fridge', 'jollof rice', 'second shelf, fridge')).toBe(true);
    expect(fits('rice freezer', 'jollof rice', 'second shelf, fridge')).toBe(false);
    expect(fits('peanuts', 'stew', 'fridge', 'peanuts')).toBe(true);
  });

  it('does not find what only looks a little alike', () => {
    for (const [wanted, name] of [
      ['ham', 'jam'],
      ['rice', 'ricotta'],
      ['beans', 'beef'],
      ['stew', 'stem ginger'],
    ] as const)
      expect(fits(wanted, name), wanted).toBe(false);
  });

  it('takes any text', () => {
    for (const text of ['', '   ', '()[]*', 'ñ', '苹果', '\u0000'])
      expect(() => fits(text, text)).not.toThrow();
  });
});
