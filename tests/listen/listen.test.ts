import { beforeAll, describe, expect, it } from 'vitest';
import { agreement, combine, wordErrorRate } from '../../src/cli/listen/combine.js';
import { dictionaryFor, wordsOf } from '../../src/cli/listen/pronounce.js';
import { demoKitchen } from '../../src/kitchen/index.js';
import { namesOf } from '../../src/turn/names.js';
import { createUnderstander } from '../../src/understanding/index.js';
import { errorRate, hearAll, utterances, type HeardUtterance } from './loop.js';

const kitchen = demoKitchen({ now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' });

/** Speaking and hearing takes most of a minute, so it is done once. */
let hearing: Promise<readonly HeardUtterance[]> | undefined;
const once = (): Promise<readonly HeardUtterance[]> => (hearing ??= hearAll(kitchen, utterances()));

describe('sixty sentences, spoken and heard', () => {
  let heard: readonly HeardUtterance[] = [];
  const part = (inside: boolean): readonly HeardUtterance[] => heard.filter((one) => one.inside === inside);
  const rate = (of: readonly HeardUtterance[], best: (one: HeardUtterance) => string | undefined): number =>
    errorRate(of.map((one) => [one.sentence, best(one) ?? '']));

  beforeAll(async () => {
    heard = await once();
    for (const inside of [true, false])
      console.log(
        `word error, ${inside ? 'inside' : 'outside'} the grammar:`,
        `open ${rate(part(inside), (one) => one.open[0]).toFixed(3)},`,
        `closed ${rate(part(inside), (one) => one.closed[0]).toFixed(3)},`,
        `both ${rate(part(inside), (one) => one.both[0]?.text).toFixed(3)}`,
      );
  }, 300_000);

  it('are forty inside the listening grammar and twenty outside', () => {
    expect([part(true).length, part(false).length]).toEqual([40, 20]);
  });

  it('inside the grammar, two recognisers hear far better than the open one', () => {
    const open = rate(part(true), (one) => one.open[0]);
    const both = rate(part(true), (one) => one.both[0]?.text);
    expect(open).toBeGreaterThan(0.1);
    expect(both).toBeLessThan(open / 2);
  });

  it('outside it, the closed recogniser alone makes up sentences of ours', () => {
    expect(rate(part(false), (one) => one.closed[0])).toBeGreaterThan(0.6);
  });

  it('and together they do not: no made-up sentence is ever the first guess', () => {
    for (const one of part(false)) {
      const madeUp = one.both[0]?.text === one.closed[0] && one.closed[0] !== one.open[0];
      expect(madeUp, `${one.sentence} → ${one.closed[0]}`).toBe(false);
    }
  });
});

describe('what is understood of them', () => {
  const understander = createUnderstander('en-US');
  const names = namesOf(kitchen);
  const context = {
    now: '2026-05-14T23:00:00.000Z',
    timeZone: 'America/Chicago',
    locale: 'en-US',
    expecting: 'anything',
  } as const;

  /** The right intent about the right item; for what is not ours, declined. */
  const succeeds = (
    one: HeardUtterance,
    guesses: readonly { text: string; confidence?: number }[],
  ): boolean => {
    const { readings, verdict } = understander.understand(guesses, names, context);
    const declined = verdict !== 'act' && verdict !== 'confirm';
    if (one.intent === '') return declined;
    const act = readings[0]?.acts[0];
    if (declined || act?.intent !== one.intent) return false;
    if (one.item === '') return true;
    const id = (act.slots.item ?? act.slots.items?.[0])?.candidates[0]?.id;
    return id !== undefined && kitchen.items.get(id)?.name === one.item;
  };

  it('is told with the closed recogniser beside the open one and without', async () => {
    const heard = await once();
    const count = (inside: boolean, guesses: (one: HeardUtterance) => readonly { text: string }[]): number =>
      heard.filter((one) => one.inside === inside && succeeds(one, guesses(one))).length;
    const open = (one: HeardUtterance) => one.open.map((text) => ({ text }));
    const table = {
      inside: [count(true, open), count(true, (one) => one.both)],
      outside: [count(false, open), count(false, (one) => one.both)],
    };
    console.log(
      `task success: inside the grammar ${table.inside[0]} of 40 by the open recogniser, ${table.inside[1]} by both;`,
      `outside ${table.outside[0]} and ${table.outside[1]} of 20`,
    );
    expect(table.inside[1]).toBeGreaterThanOrEqual(36);
    expect(table.inside[1]).toBeGreaterThan(table.inside[0] ?? 0);
    // The closed one makes nothing up: beside the open one it loses none of what lies outside its grammar.
    expect(table.outside[1]).toBeGreaterThanOrEqual(table.outside[0] ?? 20);
  }, 300_000);
});

describe('combining two recognisers', () => {
  it('puts a sentence of the grammar first where the open one bears it out', () => {
    expect(combine(['where is the lentils to'], ['where is the lentil stew'])[0]?.text).toBe(
      'where is the lentil stew',
    );
  });
  it('drops one that is not borne out', () => {
    const guesses = combine(['play some music in the kitchen'], ['plain yogurt is gone']);
    expect(guesses.map((guess) => guess.text)).toEqual(['play some music in the kitchen']);
  });
  it('keeps confidences between nought and one, best first', () => {
    for (const guesses of [
      combine(['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'], []),
      combine(['stop'], ['stop']),
      combine([], []),
    ])
      for (const [index, guess] of guesses.entries()) {
        expect(guess.confidence).toBeGreaterThan(0);
        expect(guess.confidence).toBeLessThanOrEqual(guesses[index - 1]?.confidence ?? 1);
      }
  });
  it('hears nothing in silence', () => {
    expect(combine([], ['finish the rice'])).toEqual([]);
  });
  it('counts wrong words as the trade does', () => {
    // NIST sclite's measure: substitutions, deletions and insertions over the words of the reference.
    expect(wordErrorRate('put the milk on the door', 'but the milk on a door')).toBeCloseTo(2 / 6);
    expect(wordErrorRate('stop', 'stop')).toBe(0);
    expect(agreement('lentil stew', ['lentils to'])).toBeGreaterThan(0.6);
  });
});

describe('a pronouncing dictionary', () => {
  it('takes the recogniser’s own entries, alternatives too, and makes what is missing', () => {
    const known = 'the DH AH\nthe(2) DH IY\nstew S T UW\nother AH DH ER\n';
    const { text, unknown } = dictionaryFor(['the', 'stew', 'egusi', 'xq'], known, (word) =>
      word === 'egusi' ? 'EH G UW S IY' : null,
    );
    expect(text).toBe('the DH AH\nthe(2) DH IY\nstew S T UW\negusi EH G UW S IY\n');
    expect(unknown).toEqual(['xq']);
  });
  it('finds the words of a grammar and no rule names or weights', () => {
    expect(wordsOf('#JSGF V1.0;\ngrammar g;\n<a> = /0.5/ don\'t <b> | "ice" cream;\n')).toEqual([
      "don't",
      'ice',
      'cream',
    ]);
  });
});
