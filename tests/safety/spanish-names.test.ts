/** Spanish names are matched to the same reviewed rows as their English names. */
import { describe, expect, it } from 'vitest';
import { matchFood } from '../../src/safety/match.js';
import { safetyTables } from '../../src/safety/tables.js';

describe('a food named in Spanish', () => {
  it.each([
    ['guiso de lentejas', 'stew'],
    ['caldo de pollo', 'soup'],
    ['arroz con pollo', 'rice with chicken'],
    ['pollo asado', 'roast chicken'],
    ['pechuga de pollo cruda', 'raw chicken breast'],
    ['carne molida', 'ground beef'],
    ['pescado', 'fish'],
    ['frijoles negros', 'beans'],
    ['huevos', 'eggs'],
    ['queso rallado', 'grated cheese'],
    ['puré de papa', 'mashed potato'],
    ['atún enlatado', 'canned tuna'],
  ])('%s is treated as %s', (spanish, english) => {
    const [one, other] = [matchFood(spanish, { where: 'fridge' }), matchFood(english, { where: 'fridge' })];
    expect(one.family).toBe(other.family);
    expect(one.state).toBe(other.state);
    expect(one.sure).not.toBe('unknown');
  });

  it('that nobody put in the table gets the general figure, as in English', () => {
    expect(matchFood('pay de limón', { where: 'fridge' })).toMatchObject({
      family: 'general',
      sure: 'unknown',
    });
  });

  it('never changes what an English name stands for', () => {
    expect(matchFood('pan of lasagna').food).toBe('lasagne');
    expect(matchFood('chicken in a pan').food).toBe('chicken');
  });

  it('each Spanish name stands for one thing', () => {
    const names = safetyTables().spanishNames.flatMap(({ spanish }) => spanish);
    expect(names.length).toBeGreaterThan(200);
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
  });
});
