/** How what is said now stands to what was done in the turn before. */
import type { LastDone } from '../../intents.js';
import { is, type Bit } from './bits.js';

const wordsOf = (name: string): readonly string[] =>
  name
    .toLowerCase()
    .split(/[^\p{L}\p{N}']+/u)
    .filter((word) => word !== '')
    .map((word) => word.replace(/'s?$/u, '').replace(/(?<=..)e?s$/u, ''));

/** It was done to that: by its whole name, or by part of it. */
export const isNamed = (bit: Bit, { names }: LastDone): boolean => {
  const said = bit.kind === 'thing' && bit.mention.words ? wordsOf(bit.mention.words) : [];
  return said.length > 0 && names.some((name) => said.every((word) => wordsOf(name).includes(word)));
};

/** One of these words is one of its name. */
export const hasWord = (said: string, { names }: LastDone): boolean =>
  wordsOf(said).some((word) => names.some((name) => wordsOf(name).includes(word)));

/** By its whole name. */
export const isJust = (bit: Bit, { names }: LastDone): boolean => {
  const said = bit.kind === 'thing' && bit.mention.words ? wordsOf(bit.mention.words).join(' ') : '';
  return names.some((name) => wordsOf(name).join(' ') === said);
};

const valued: ReadonlySet<Bit['kind']> = new Set<Bit['kind']>([
  ...(['place', 'amount', 'number', 'share', 'day', 'time', 'span', 'marker', 'person'] as const),
]);

/** Surely a thing: a name that anybody knows, or one of hers that it fits well. */
export const isKnown = (bit: Bit): boolean =>
  bit.kind === 'thing' && bit.source !== 'open' && (bit.source !== 'hers' || bit.fit >= fitsWell);
const fitsWell = 0.9;

/** What might be put in the place of something: a name that anybody knows, a place, a figure, a day. */
export const values = (bits: readonly Bit[]): readonly Bit[] =>
  bits.filter((bit) => valued.has(bit.kind) || isKnown(bit));

/** "Its shelf", "in the jar": any of its kind, so no other place. */
export const isAnyPart = (bit: Bit): boolean =>
  bit.kind === 'place' && bit.place.candidates.length > 1 && !(bit.place.words ?? '').includes(' ');

/** Put as a question; "Junie who made it" is none. */
export const asks = (bits: readonly Bit[]): boolean =>
  bits.some((bit, at) => {
    if (!is(bit, 'wh', 'aux') || is(bit, 'a')) return false;
    const before = bits[at - 1]?.kind;
    return before !== 'person' && before !== 'thing';
  });
