/** The pieces of a request, and what a frame takes of them. */
import type { DynamicRules } from '../../../grammar/api.js';
import type { Act, ClockAtHand, Expectation, PlaceMention } from '../../intents.js';
import type { Chunk, ChunkOf, Span } from '../api.js';
import { cheapestCover, constituentsAt, type Offer } from '../chunks.js';
import type { RequestWords } from './lexicon.js';

/** A constituent, or the name of a timer or a reminder that is running. */
export type Bit = Chunk | (Span & { readonly kind: 'clock'; readonly clock: ClockAtHand });
export type BitOf<K extends Bit['kind']> = Extract<Bit, { readonly kind: K }>;

export interface Request {
  readonly bits: readonly Bit[];
  readonly tokens: readonly string[];
  readonly clocks: readonly ClockAtHand[];
  readonly expecting: Expectation;
  /** Whether a word stands in that list. */
  readonly says: (word: string, list: string) => boolean;
  /** One place inside the other, whichever way round they were said; null where that names none. */
  readonly oneInside: (a: string, b: string) => PlaceMention | null;
}

/** What one frame makes of the words: acts, and which words said it. */
export interface Made {
  readonly acts: readonly Act[];
  readonly used: ReadonlySet<number>;
}
export type Frame = (request: Request) => Made | null;

const costs = { word: 0.12, clock: 0.15, unknown: 1.4 } as const;

/** Words of a label that name it: "shepherd's pie" is called the pie. */
const labelWords = (label: string): readonly string[] =>
  label
    .toLowerCase()
    .split(/[^\p{L}\p{N}']+/u)
    .filter((word) => word.length > 2);

const stem = (word: string): string => word.replace(/(?<=..)e?s$/u, '');

const clocksAt = (
  tokens: readonly string[],
  from: number,
  clocks: readonly ClockAtHand[],
): readonly Offer<Bit>[] =>
  clocks.flatMap((clock) => {
    const words = new Set(labelWords(clock.label).map(stem));
    let to = from;
    while (to < tokens.length && words.has(stem(tokens[to]!))) to += 1;
    return to > from ? [{ chunk: { kind: 'clock' as const, from, to, clock }, cost: costs.clock }] : [];
  });

const said = (words: RequestWords, tokens: readonly string[], from: number): readonly Offer<Bit>[] =>
  words.allAt(tokens, from).map(({ length, value }) => ({
    chunk: { kind: 'word', from, to: from + length, classes: value },
    cost: costs.word,
  }));

export const bitsOf = (
  tokens: readonly string[],
  rules: DynamicRules,
  words: RequestWords,
  clocks: readonly ClockAtHand[],
): readonly Bit[] =>
  cheapestCover<Bit>(tokens.length, (from) => [
    { chunk: { kind: 'unknown', from, to: from + 1, word: tokens[from]! }, cost: costs.unknown },
    ...said(words, tokens, from),
    ...clocksAt(tokens, from, clocks),
    ...constituentsAt(tokens, from, rules),
  ]).pieces;

export const is = (bit: Bit | undefined, ...classes: readonly string[]): boolean =>
  bit?.kind === 'word' && classes.some((name) => bit.classes.has(name));

export const ofKind = <K extends Bit['kind']>(bits: readonly Bit[], kind: K): readonly BitOf<K>[] =>
  bits.filter((bit): bit is BitOf<K> => bit.kind === kind);

export const some = (bits: readonly Bit[], ...classes: readonly string[]): boolean =>
  bits.some((bit) => is(bit, ...classes));

export const classed = (bits: readonly Bit[], ...classes: readonly string[]): readonly ChunkOf<'word'>[] =>
  ofKind(bits, 'word').filter((bit) => is(bit, ...classes));

/** A bare figure: how many of nothing that was named. */
export const figureOf = (bit: Bit | undefined): number | null =>
  bit?.kind === 'number'
    ? bit.value
    : bit?.kind === 'amount' && bit.amount.unit === 'piece' && !bit.amount.rough
      ? bit.amount.value
      : null;

/** All words of these pieces, by index. */
export const wordsIn = (bits: readonly Span[]): ReadonlySet<number> => {
  const all = new Set<number>();
  for (const { from, to } of bits) for (let at = from; at < to; at += 1) all.add(at);
  return all;
};
