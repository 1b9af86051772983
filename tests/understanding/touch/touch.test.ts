import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Touch } from '../../../src/terms/touch.js';
import { fitTouch, touchRules } from '../../../src/understanding/touch/index.js';
import { lexiconFor, normalise } from '../../../src/understanding/words/index.js';

const rule = touchRules(lexiconFor('en')).get('kitchen:touch')!;
/** What the longest description from the start says, and the words it took. */
const felt = (text: string): [Touch | undefined, string] => {
  const { tokens } = normalise(text, 'en');
  const [best] = rule.matchesAt(tokens, 0);
  return [best?.value as Touch | undefined, tokens.slice(0, best?.length ?? 0).join(' ')];
};

describe('descriptions by touch', () => {
  it.each<[string, Touch]>([
    [
      'the big jar with the star magnet and one notch',
      { size: 'large', container: 'jar', shape: 'star', fastening: 'magnet', dots: 1, counted: 'notch' },
    ],
    ['the one with the sticker in the middle', { fastening: 'sticker', spot: 'middle of the lid' }],
    ['two rubber bands', { fastening: 'band', fastenings: 2 }],
    [
      'a glass jar with two elastic bands around the neck',
      { texture: 'glass', container: 'jar', fastening: 'band', fastenings: 2, spot: 'neck' },
    ],
    ['one dot and a round magnet', { dots: 1, shape: 'round', fastening: 'magnet' }],
    ['the one with no dots', { dots: 0 }],
    ['the one without any dots', { dots: 0 }],
    ['a bump dot on it', { dots: 1 }],
    ['the jar with dots', { container: 'jar', counted: 'dot' }],
    ['the string with two knots', { fastening: 'string', dots: 2, counted: 'knot' }],
    ['a cloth patch with one ridge', { texture: 'cloth', fastening: 'patch', dots: 1, counted: 'ridge' }],
    ['the one with no knots', { dots: 0, counted: 'knot' }],
    ['the lid with notches', { counted: 'notch' }],
    ['the glass jar with the wooden bead', { container: 'jar', texture: 'wooden', fastening: 'bead' }],
    ['the lid with three dots', { dots: 3 }],
    ['the small round tub', { size: 'small', shape: 'round', container: 'tub' }],
    ['the oval one', { shape: 'oval' }],
    [
      'the star sticker on the lid with two dots',
      { shape: 'star', fastening: 'sticker', spot: 'lid', dots: 2 },
    ],
    ['the one that is ribbed', { texture: 'ribbed' }],
  ])('%j', (text, touch) => expect(felt(text)).toEqual([touch, text]));

  it('leaves a place to the place', () => {
    expect(felt('the large tub on the top shelf')).toEqual([
      { size: 'large', container: 'tub' },
      'the large tub',
    ]);
    expect(felt('the one on the top shelf')).toEqual([undefined, '']);
    expect(felt('the second shelf')).toEqual([undefined, '']);
  });

  it('may end before each further part', () => {
    const { tokens } = normalise('the big jar with the square clip', 'en');
    expect(rule.matchesAt(tokens, 0).map(({ length }) => tokens.slice(0, length).join(' '))).toEqual([
      'the big jar with the square clip',
      'the big jar',
    ]);
  });

  it('is the same in any order of parts', () => {
    const parts = fc.shuffledSubarray(['a square clip', 'one dot', 'a glass jar'], { minLength: 1 });
    fc.assert(
      fc.property(parts, (said) => {
        const [touch] = felt(`the one with ${said.join(' and ')}`);
        const sorted = (value: Touch): unknown => Object.entries(value).sort();
        const [other] = felt(`the one with ${[...said].reverse().join(' and ')}`);
        expect(sorted(touch!)).toEqual(sorted(other!));
      }),
    );
  });
});

describe('fit of a description', () => {
  const clip: Touch = { shape: 'square', fastening: 'clip', dots: 1 };
  it('is whole when all that was said is recorded', () => {
    expect(fitTouch({ shape: 'square', fastening: 'clip' }, clip)).toBe(1);
    expect(fitTouch({ container: 'jar', shape: 'square' }, { container: 'jar' }, clip)).toBe(1);
  });
  it('is nothing for another fastening or other dots', () => {
    expect(fitTouch({ fastening: 'band' }, clip)).toBe(0);
    expect(fitTouch({ dots: 2 }, clip)).toBe(0);
    expect(fitTouch({ dots: 1 }, { fastening: 'clip' })).toBe(0);
  });
  it('takes unrecorded dots for none', () => {
    expect(fitTouch({ dots: 0 }, { fastening: 'clip' })).toBe(1);
    expect(fitTouch({ counted: 'dot' }, clip)).toBe(1);
    expect(fitTouch({ counted: 'dot' }, { fastening: 'clip' })).toBe(0);
  });
  it('takes dots for whatever is counted, and knots for knots', () => {
    const knotted: Touch = { fastening: 'string', dots: 2, counted: 'knot' };
    expect(fitTouch({ dots: 2 }, knotted)).toBe(1);
    expect(fitTouch({ dots: 2, counted: 'knot' }, knotted)).toBe(1);
    expect(fitTouch({ dots: 2, counted: 'ridge' }, knotted)).toBe(0);
    expect(fitTouch({ counted: 'knot' }, knotted)).toBe(1);
    expect(fitTouch({ counted: 'ridge' }, knotted)).toBe(0);
    expect(fitTouch({ dots: 2, counted: 'knot' }, { ...clip, dots: 2 })).toBe(0);
  });
  it('falls with what is unrecorded or otherwise', () => {
    const said: Touch = { size: 'large', fastening: 'clip' };
    expect(fitTouch(said, clip)).toBe(0.75);
    expect(fitTouch(said, { ...clip, size: 'small' })).toBe(0.5);
  });
});
