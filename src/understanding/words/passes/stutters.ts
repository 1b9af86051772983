import { perLexicon } from '../lexicon.js';
import type { Word } from '../tokens.js';
import { textOf, textsOf, type Pass } from './pass.js';

const tables = perLexicon(({ tidying, numbers }) => ({
  doubled: new Set(tidying.doubled),
  numberWords: new Set([...Object.keys(numbers.words), ...Object.keys(numbers.scales), ...numbers.nought]),
}));

const longest = 4;
/** Words up to so long are begun twice: "the, the". */
const longestSlip = 3;

/**
 * "the the", "put the put the": said twice, meant once. Numbers and letters said one by one
 * may truly repeat, and so may words that come doubled ("piri piri").
 */
export const stutters: Pass = (words, lexicon, note) => {
  const { doubled, numberWords } = tables(lexicon);
  const texts = textsOf(words);
  const mayRepeat = (text: string): boolean =>
    doubled.has(text) ||
    numberWords.has(text) ||
    (text.length === 1 && text !== 'a' && text !== 'i') ||
    /\d/.test(text);
  for (let at = 0; at < texts.length; at += 1) {
    for (let many = Math.min(longest, (texts.length - at) >> 1); many > 0; many -= 1) {
      if (texts[at] !== texts[at + many]) continue;
      const first = texts.slice(at, at + many);
      if (!first.every((text, place) => text === texts[at + many + place])) continue;
      if (first.every(mayRepeat)) continue;
      // "A jar of honey, honey's in the pantry": named again after a pause, to say where it is.
      if (many === 1 && words[at + 1]!.pause && texts[at]!.length > longestSlip) continue;
      // "a a" among letters is spelling: "b a a".
      if (
        many === 1 &&
        first[0]!.length === 1 &&
        [texts[at - 1], texts[at + 2]].some((near) => near?.length === 1)
      )
        continue;
      note({ pass: 'stutters', from: textOf(words.slice(at, at + 2 * many)), to: first.join(' ') });
      const rest: Word[] = [...words.slice(0, at + many), ...words.slice(at + 2 * many)];
      return rest;
    }
  }
  return words;
};
