import { perLexicon } from '../lexicon.js';
import type { Word } from '../tokens.js';
import type { Pass } from './pass.js';

const tables = perLexicon(({ places }) => ({
  kinds: new Set(
    [...Object.values(places.kinds), ...Object.values(places.plurals)]
      .flat()
      .filter((kind) => !kind.includes(' ')),
  ),
}));

/** "Cup board", "store room": a kind of place that a recogniser wrote as two words. */
export const splitWords: Pass = (words, lexicon, note) => {
  const { kinds } = tables(lexicon);
  const at = words.findIndex(({ text }, from) => {
    const next = words[from + 1];
    const short = Math.min(text.length, next?.text.length ?? 0) < shortest;
    return next !== undefined && !next.pause && !short && kinds.has(text + next.text);
  });
  if (at < 0) return words;
  const [first, second] = [words[at]!, words[at + 1]!];
  note({ pass: 'split-words', from: `${first.text} ${second.text}`, to: first.text + second.text });
  const joined: Word = { ...first, text: first.text + second.text };
  return [...words.slice(0, at), joined, ...words.slice(at + 2)];
};
/** No half of a compound is shorter. */
const shortest = 3;
