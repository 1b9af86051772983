/** "half of it", "about a third", "most of it", "fifty percent", "all of them". */
import type { Share } from '../../terms/amount.js';
import { perLexicon, type Lexicon } from '../words/lexicon.js';
import { phraseSet, phraseTable } from '../words/phrases.js';
import { cardinalAt } from './cardinals.js';
import { fractionAt, numberTables } from './quantities.js';

interface ShareReading {
  readonly share: Share;
  readonly length: number;
}

const tables = perLexicon(({ numbers: { shares } }) => ({
  words: phraseTable<Share>([
    ...Object.entries(shares.plain).map(([said, fraction]) => [said, { fraction }] as const),
    ...Object.entries(shares.rough).map(([said, fraction]) => [said, { fraction, rough: true }] as const),
  ]),
  tails: phraseSet(shares.tails),
  percent: phraseSet(shares.percent),
}));

const headAt = (tokens: readonly string[], from: number, lexicon: Lexicon): ShareReading | null => {
  const { words, percent } = tables(lexicon);
  const word = words.longestAt(tokens, from);
  if (word) return { share: word.value, length: word.length };
  const fraction = fractionAt(tokens, from, lexicon);
  if (fraction) return { share: { fraction: fraction.value }, length: fraction.length };
  const number = cardinalAt(tokens, from, lexicon);
  const sign = number && number.value <= 100 ? percent.longestAt(tokens, from + number.length) : null;
  return number && sign
    ? { share: { fraction: number.value / 100 }, length: number.length + sign.length }
    : null;
};

/** Shares at `from`, with and without "of it". */
export const sharesAt = (tokens: readonly string[], from: number, lexicon: Lexicon): ShareReading[] => {
  const plain = headAt(tokens, from, lexicon);
  const hedge = plain ? null : numberTables(lexicon).rough.longestAt(tokens, from);
  const hedged = hedge ? headAt(tokens, from + hedge.length, lexicon) : null;
  const head =
    plain ??
    (hedge && hedged && { share: { ...hedged.share, rough: true }, length: hedge.length + hedged.length });
  if (!head) return [];
  const tail = tables(lexicon).tails.longestAt(tokens, from + head.length);
  return tail ? [{ share: head.share, length: head.length + tail.length }, head] : [head];
};
