/** The pieces of a request, and what a frame takes of them. */
import type { DynamicRules } from '../../../grammar/api.js';
import type {
  Act,
  Answered,
  ClockAtHand,
  Expectation,
  LastDone,
  ListAtHand,
  PlaceMention,
  TalkedOf,
} from '../../intents.js';
import type { Chunk, ChunkOf, Span, Offer } from '../api.js';
import { cheapestCover, constituentsAt, openNamesAt, placeLike } from '../chunks.js';
import { wordFormsOf, type WordForms } from '../../languages/index.js';
import { movesLexicon } from '../lexicon.js';
import type { RequestWords } from './lexicon.js';

/** A constituent, or the name of a timer or a reminder that is running. */
export type Bit = Chunk | (Span & { readonly kind: 'clock'; readonly clock: ClockAtHand });
export type BitOf<K extends Bit['kind']> = Extract<Bit, { readonly kind: K }>;

/** What was said as pieces of talk of one matter, with endings spelled out. */
export interface SaidAside {
  readonly bits: readonly Bit[];
  readonly tokens: readonly string[];
  readonly pauses: ReadonlySet<number>;
}

export interface Request {
  readonly bits: readonly Bit[];
  readonly tokens: readonly string[];
  /** Before which tokens a pause stood. */
  readonly pauses: ReadonlySet<number>;
  readonly clocks: readonly ClockAtHand[];
  readonly expecting: Expectation;
  /** What the answer before was about besides food. */
  readonly talkedOf: TalkedOf | null;
  /** What the turn before changed, and what was said now as pieces that such talk is made of. */
  readonly last: LastDone | null;
  readonly after: readonly Bit[];
  /** The list to buy, and what was said as pieces of talk of it; null where nothing is known of either. */
  readonly list: ListAtHand | null;
  readonly onList: () => SaidAside | null;
  /** As pieces of short talk of other matters, and what the answer before was to. */
  readonly asAsides: () => SaidAside | null;
  readonly answered: Answered | null;
  /** The same with its endings spelled out, as what is told is read. */
  readonly spelledOut: () => { readonly bits: readonly Bit[]; readonly tokens: readonly string[] };
  /** Whether a word stands in that list. */
  readonly says: (word: string, list: string) => boolean;
  /** Whether it is a small word of that list, which is no constituent (`beside` in requests.json). */
  readonly beside: (word: string, list: string) => boolean;
  /** A length of time that is said there, and where it ends. */
  readonly lengthAt: (from: number) => { readonly seconds: number; readonly to: number } | null;
  /** Constituents of a kind, wherever they stand, though their words may say something else as well. */
  readonly anywhere: <K extends Chunk['kind']>(kind: K) => readonly ChunkOf<K>[];
  /** One place inside the other, whichever way round they were said; null where that names none. */
  readonly oneInside: (a: string, b: string) => PlaceMention | null;
}

/** What one frame makes of the words: acts, and which words said it. */
export interface Made {
  readonly acts: readonly Act[];
  readonly used: ReadonlySet<number>;
  /** The words left over are why: "nobody has eaten them yet". */
  readonly reason?: boolean;
  /** It accounts for every word by itself. */
  readonly whole?: boolean;
  /** And it is surely of this kitchen: no other reading says more of it. */
  readonly ours?: boolean;
  /** It is of a marker, or of what the answer before was about: rules that know of neither take it for food. */
  readonly follows?: boolean;
}
export type Frame = (request: Request) => Made | null;

const costs = { word: 0.12, clock: 0.15, position: 0.1, unknown: 1.4 } as const;

/** Words of a label that name it: "shepherd's pie" is called the pie. */
const labelWords = (label: string): readonly string[] =>
  label
    .toLowerCase()
    .split(/[^\p{L}\p{N}']+/u)
    .filter((word) => word.length > 2);

const stem = (word: string): string => word.replace(/(?<=..)e?s$/u, '');

export const clocksAt = (
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

/** Those of a kind, at every position: the longest there, and none within another; a name only where it fits well. */
export const anywhereIn =
  (tokens: readonly string[], rules: DynamicRules): Request['anywhere'] =>
  (kind) => {
    const found: ChunkOf<typeof kind>[] = [];
    for (let from = 0; from < tokens.length; from += 1) {
      const [longest] = constituentsAt(tokens, from, rules)
        .flatMap(({ chunk }) =>
          chunk.kind === kind && !isFaint(chunk) ? [chunk as ChunkOf<typeof kind>] : [],
        )
        .sort((a, b) => b.to - a.to);
      if (longest && from >= (found.at(-1)?.to ?? 0)) found.push(longest);
    }
    return found;
  };
const isFaint = (chunk: Chunk): boolean => 'fit' in chunk && chunk.fit < fitsWell;
const fitsWell = 0.8;

/** "The bottom one", "not the middle": a part of the kind that was just spoken of. */
const partsAt = (
  tokens: readonly string[],
  from: number,
  rules: DynamicRules,
  words: RequestWords,
  { part }: LastDone,
  { partOf, kindOf }: WordForms,
): readonly Offer<Bit>[] =>
  part === null
    ? []
    : words.allAt(tokens, from).flatMap(({ length, value }) => {
        if (!value.has('position')) return [];
        const place = placeLike(partOf(tokens.slice(from, from + length), kindOf(part)), rules);
        const fit = place?.candidates[0]?.fit ?? 0;
        if (!place || fit < partFits) return [];
        const to = from + length;
        const one = words.allAt(tokens, to).find((next) => next.value.has('one'));
        const chunk = { kind: 'place' as const, from, place, fit };
        return [
          { chunk: { ...chunk, to }, cost: costs.position },
          ...(one ? [{ chunk: { ...chunk, to: to + one.length }, cost: costs.position }] : []),
        ];
      });
const partFits = 0.8;

/** What the words do in a request and in what is told, at one position. */
const doing = (
  words: RequestWords,
  language: string,
  tokens: readonly string[],
  from: number,
): readonly Offer<Bit>[] => {
  const classes = new Map<number, Set<string>>();
  for (const phrases of [words, movesLexicon(language)?.phrases])
    for (const { length, value } of phrases?.allAt(tokens, from) ?? [])
      classes.set(length, new Set([...(classes.get(length) ?? []), ...value]));
  return [...classes].map(([length, all]) => ({
    chunk: { kind: 'word' as const, from, to: from + length, classes: all },
    cost: costs.word,
  }));
};

/**
 * The pieces of what is said right after something was done: names nobody knows among them, parts called by
 * where they are alone, and the words of deeds.
 */
export const bitsAfter = (
  tokens: readonly string[],
  rules: DynamicRules,
  words: RequestWords,
  language: string,
  last: LastDone,
): readonly Bit[] =>
  cheapestCover<Bit>(tokens.length, (from) => [
    { chunk: { kind: 'unknown', from, to: from + 1, word: tokens[from]! }, cost: costs.unknown },
    ...doing(words, language, tokens, from),
    ...partsAt(tokens, from, rules, words, last, wordFormsOf(language)),
    ...constituentsAt(tokens, from, rules),
    ...openNamesAt(tokens, from, rules, language),
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
