/**
 * Words of one country for another's: "el refrigerador" is "la nevera" in Spain. The pairs stand in
 * `grammars/es/phrases/regions.ftl`; what the household named is never changed.
 */
import type { PhraseWords } from '../language.js';
import { CLOSE, OPEN } from '../marks.js';

type Reword = (text: string) => string;

const same: Reword = (text) => text;
const marked = new RegExp(`(${OPEN}[^${CLOSE}]*${CLOSE})`, 'u');

/** "Repisa" said at the beginning of a sentence stays large. */
const likeCase = (said: string, word: string): string =>
  /^\p{Lu}/u.test(said) ? word.charAt(0).toUpperCase() + word.slice(1) : word;

/** How that country words what the phrase files say; as they stand, where no pairs are for it. */
export const regional = (locale: string, phrases: PhraseWords): Reword => {
  const country = locale.split('-').at(-1)?.toLowerCase() ?? '';
  const pairs = phrases
    .words(`region-${country}`)
    .map((pair) => pair.split('/'))
    .flatMap(([from, to]) => (from && to ? [[from, to] as const] : []));
  if (pairs.length === 0) return same;
  const table = new Map(pairs);
  const ways = [...table.keys()].sort((a, b) => b.length - a.length).join('|');
  const pattern = new RegExp(`(?<!\\p{L})(?:${ways})(?!\\p{L})`, 'giu');
  return (text) =>
    text
      .split(marked)
      .map((part) =>
        part.startsWith(OPEN)
          ? part
          : part.replace(pattern, (said) => likeCase(said, table.get(said.toLowerCase()) ?? said)),
      )
      .join('');
};
