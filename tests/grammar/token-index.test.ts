/** The index a host fills: the same matches as a plain list, however it was changed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createTokenIndex } from '../../src/grammar/index.js';

const word = fc.constantFrom('red', 'lentil', 'soup', 'Soup', 'pot');
const phrase = fc.array(word, { minLength: 1, maxLength: 3 });
const change = fc.record({ add: fc.boolean(), tokens: phrase, key: fc.constantFrom('a', 'b', 'c') });

describe('a token index', () => {
  it('finds what a list of phrases finds, after any adding and removing', () => {
    fc.assert(
      fc.property(fc.array(change, { maxLength: 40 }), fc.array(word, { maxLength: 6 }), (changes, input) => {
        const index = createTokenIndex();
        const list = new Map<string, { tokens: string[]; key: string }>();
        for (const { add, tokens, key } of changes) {
          const lower = tokens.map((token) => token.toLowerCase());
          const id = `${lower.join(' ')}/${key}`;
          if (add) {
            index.add(tokens, key, key);
            list.set(id, { tokens: lower, key });
          } else expect(index.remove(tokens, key)).toBe(list.delete(id));
        }
        expect(index.size).toBe(list.size);
        const heard = input.map((token) => token.toLowerCase());
        for (let at = 0; at <= input.length; at++) {
          const found = index.matchesAt(input, at).map((match) => `${match.length} ${String(match.value)}`);
          const wanted = [...list.values()]
            .filter(({ tokens }) => tokens.every((token, i) => heard[at + i] === token))
            .map(({ tokens, key }) => `${tokens.length} ${key}`);
          expect([...found].sort()).toEqual(wanted.sort());
          const lengths = found.map((match) => Number(match.split(' ')[0]));
          expect(lengths).toEqual([...lengths].sort((a, b) => b - a));
          const rest = heard.slice(at);
          const begun = [...list.values()].some(
            ({ tokens }) => tokens.length > rest.length && rest.every((token, i) => tokens[i] === token),
          );
          expect(index.beginsAt!(input, at)).toBe(begun);
        }
      }),
    );
  });

  it('replaces an entry of the same key, and refuses one of no tokens', () => {
    const index = createTokenIndex();
    index.add(['soup'], 'k', 1);
    index.add(['soup'], 'k', 2, 0.5);
    expect(index.matchesAt(['soup'], 0)).toEqual([{ length: 1, value: 2, weight: 0.5 }]);
    expect(() => index.add([], 'k', 1)).toThrow(RangeError);
    expect(index.remove(['stew'], 'k')).toBe(false);
    expect(index.remove(['soup'], 'other')).toBe(false);
  });
});
