import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { listAnswer, moreOfList, type Say } from '../../src/speech/index.js';
import { american, listener, say, us } from './helpers.js';

const lead = say('test-extra');
const said = (parts: readonly Say[], question?: Say): string =>
  american.render(question ? { parts, question } : { parts }, listener, us).text;

describe('long lists', () => {
  it('lose nothing, keep their order, and come three or four at a time, never one alone', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60 }), (n) => {
        const names = Array.from({ length: n }, (_, i) => `thing ${i}`);
        const heard: string[] = [];
        let answer = listAnswer(names, { lead });
        for (let turn = 0; ; turn++) {
          for (const group of answer.parts.filter((part) => part.phrase === 'list-group')) {
            const items = group.args?.['items'];
            if (typeof items !== 'object' || items.kind !== 'list') throw new Error('not a list');
            expect(items.of.length).toBeLessThanOrEqual(4);
            if (n > 1) expect(items.of.length).toBeGreaterThan(1);
            heard.push(...items.of.map(String));
          }
          expect(answer.question !== undefined).toBe((answer.more ?? []).length > 0);
          if (answer.more === undefined) break;
          expect(turn).toBeLessThan(60);
          answer = moreOfList(answer.more);
        }
        expect(heard).toEqual(names);
      }),
    );
  });

  it('say how many are left', () => {
    const nine = listAnswer(['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i'], { lead });
    expect(said(nine.parts, nine.question)).toBe(
      'You may also freeze it. A, b, and c. Six more. Shall I go on?',
    );
    const rest = moreOfList(nine.more ?? []);
    expect(said(rest.parts, rest.question)).toBe('D, e, and f. Three more. Shall I go on?');
    const last = moreOfList(rest.more ?? []);
    expect(said(last.parts, last.question)).toBe('G, h, and i.');
    expect(said(moreOfList([]).parts)).toBe('That is all of them.');
  });
});
