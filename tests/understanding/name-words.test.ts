/** What the words of a name say beside it. */
import { describe, expect, it } from 'vitest';
import {
  ageIn,
  isLeftovers,
  isMetric,
  oneIn,
  partedPlace,
  personPointed,
  placesNamed,
  regionIn,
  standsIn,
  statedIn,
} from '../../src/understanding/name-words.js';

const [english, spanish] = ['en-US', 'es-MX'];

describe('the words of a name', () => {
  it('tell the state of a food', () => {
    expect(statedIn('opened sauerkraut', english)).toEqual({ words: 'sauerkraut', state: 'opened' });
    expect(statedIn('lamb leftovers', english)).toEqual({ words: 'lamb', state: 'cooked' });
    expect(statedIn('frijoles congelados', spanish)).toEqual({ words: 'frijoles', state: 'frozen' });
    expect(statedIn('frozen', english)).toBeNull();
    expect(statedIn('openedness', english)).toBeNull();
  });
  it('tell how old, and of what', () => {
    expect(ageIn('the older one', english)).toEqual({ age: 'old', of: '' });
    expect(ageIn('that fresh red lasagna', english)).toEqual({ age: 'new', of: 'red lasagna' });
    expect(ageIn('el caldo más viejo', spanish)).toEqual({ age: 'old', of: 'caldo' });
    expect(ageIn('gold dust', english)).toBeNull();
  });
  it('tell which of several, and what is left over', () => {
    expect([oneIn('beef one', english), oneIn('beef', english), oneIn('one', english)]).toEqual([
      'beef',
      null,
      null,
    ]);
    expect(oneIn('la de frijol', spanish)).toBe('frijol');
    expect([isLeftovers('the leftovers', english), isLeftovers('sobras', spanish)]).toEqual([true, true]);
    expect(isLeftovers('leftover stew', english)).toBe(false);
  });
  it('tell what kinds of place are named', () => {
    expect(placesNamed('Top drawer of the freezer', english)[0]).toBe('freezer');
    expect(placesNamed('bread bin', english)).toEqual(['cupboard']);
    expect(placesNamed('laundry bin', english)).toEqual(['basket']);
    expect(placesNamed('moon', english)).toEqual([]);
    expect(placesNamed('puerta del refrigerador', spanish)).toEqual(['door', 'fridge']);
  });
  it('tell how places lie, and what they are parts of', () => {
    expect(standsIn('top basket', english)).toEqual({ upright: true, sideways: false });
    expect(standsIn('laptop basket', english)).toEqual({ upright: false, sideways: false });
    expect(standsIn('canasta de la izquierda', spanish)).toEqual({ upright: false, sideways: true });
    expect(partedPlace('door of the fridge', english)).toEqual({ inner: 'door', outer: 'fridge' });
    expect(partedPlace('puerta del refri', spanish)).toEqual({ inner: 'puerta', outer: 'refri' });
    expect(partedPlace('door', english)).toEqual({ inner: 'door', outer: undefined });
  });
  it('tell whose guidance, which measures and who is pointed at', () => {
    expect([regionIn('British guidance', english), regionIn('las de Estados Unidos', spanish)]).toEqual([
      'uk',
      'us',
    ]);
    expect(regionIn('the bus', english)).toBeNull();
    expect([isMetric('kilos and grams', english), isMetric('pounds', english)]).toEqual([true, false]);
    expect([
      personPointed('Her', english),
      personPointed('me', english),
      personPointed('Mel', english),
    ]).toEqual(['other', 'speaker', null]);
  });
});
