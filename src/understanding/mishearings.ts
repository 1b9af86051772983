/**
 * What may have been said where a sentence makes no sense as heard: one word or two (also two run
 * together) put back, by the list of words that recognisers mistake for one another.
 */
import { entriesOf } from './word-lists.js';
import { alternativesFor } from './names/index.js';
import { perLexicon, type Lexicon } from './words/index.js';

/** Small words are heard for one another too often to mean anything, but for these. */
const tellingSmallWords = new Set(['why', 'hi', 'here is', 'but', 'our']);

/** Mended sentences of one guess that are tried at most: with one word put right, and with two. */
const most = { once: 10, twice: 6 } as const;
/** Words put right at the same time are among so many of the likeliest. */
const likeliest = 5;

/** And with one word left out that was perhaps never said. */
const mostLeftOut = 6;
const strayWords = perLexicon(({ language }) => new Set(entriesOf(language, 'stray')));

interface Mend {
  readonly at: number;
  readonly length: number;
  readonly meant: readonly string[];
}

const mendsOf = (tokens: readonly string[], lexicon: Lexicon): readonly Mend[] => {
  const small = new Set([...lexicon.joining.stops, ...lexicon.joining.articles, ...lexicon.joining.inside]);
  const mends: Mend[] = [];
  for (let at = 0; at < tokens.length && mends.length < most.once; at += 1) {
    for (const length of [2, 1]) {
      if (at + length > tokens.length) continue;
      const heard = tokens.slice(at, at + length).join(' ');
      for (const words of alternativesFor(heard, lexicon)) {
        const meant = words.split(' ');
        if (meant.every((word) => small.has(word)) && !tellingSmallWords.has(heard)) continue;
        if (mends.length >= most.once) return mends;
        mends.push({ at, length, meant });
      }
    }
  }
  return mends;
};

const put = (tokens: readonly string[], { at, length, meant }: Mend): readonly string[] => [
  ...tokens.slice(0, at),
  ...meant,
  ...tokens.slice(at + length),
];

/** `tokens` less one word each that recognisers put in. */
export const withoutStrays = (
  tokens: readonly string[],
  lexicon: Lexicon,
): readonly (readonly string[])[] => {
  const stray = strayWords(lexicon);
  const places = tokens.flatMap((token, at) => (stray.has(token) ? [at] : []));
  return places
    .slice(0, mostLeftOut)
    .map((at) => [...tokens.slice(0, at), ...tokens.slice(at + 1)])
    .filter((rest) => rest.length > 1);
};

export interface Mended {
  readonly tokens: readonly string[];
  /** How many words were put right. */
  readonly words: 1 | 2;
}

/** `tokens` with one likely mishearing put right, then with two. */
export const mendedSentences = (tokens: readonly string[], lexicon: Lexicon): readonly Mended[] => {
  const mends = mendsOf(tokens, lexicon);
  const once = mends.map((mend): Mended => ({ tokens: put(tokens, mend), words: 1 }));
  const twice: Mended[] = [];
  for (const [rank, first] of mends.slice(0, likeliest).entries()) {
    for (const second of mends.slice(rank + 1, likeliest)) {
      if (second.at < first.at + first.length || twice.length >= most.twice) continue;
      // The later word first, so that the earlier one still stands where it stood.
      twice.push({ tokens: put(put(tokens, second), first), words: 2 });
    }
  }
  return [...once, ...twice];
};
