/** What hands find, from the record's words ("large glass jar") to Spanish order and agreement. */
import type { PhraseWords } from '../language.js';
import { CLOSE, OPEN } from '../marks.js';
import type { Nouns } from './nouns.js';

/**
 * "frasco grande de vidrio", "cuenta de madera chica". Nouns first, then the rest from the inside
 * out. Words without a phrase `touch-…` are the household's own: then all is said as recorded.
 */
export const touchWords = (recorded: string, phrases: PhraseWords, nouns: Nouns): string => {
  const words = recorded.split(' ').map((word) => ({
    said: phrases.entry(`touch-${word}`),
    feminine: phrases.entry(`touch-${word}`, 'feminine'),
  }));
  if (words.some(({ said }) => said === null)) return recorded === '' ? '' : OPEN + recorded + CLOSE;
  const noun = words.at(-1)?.said ?? '';
  const gender = nouns.gender(noun);
  const rest = words
    .slice(0, -1)
    .map(({ said, feminine }) => (gender === 'f' && feminine ? feminine : said!));
  // What it is made of goes last: "frasco grande de vidrio".
  const plain = rest.filter((word) => !word.startsWith('de ')).reverse();
  const made = rest.filter((word) => word.startsWith('de '));
  return [noun, ...plain, ...made].join(' ');
};
