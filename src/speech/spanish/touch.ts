/** What hands find, from the record's words ("large glass jar") to Spanish order and agreement. */
import type { PhraseWords } from '../language.js';
import { CLOSE, OPEN } from '../marks.js';
import type { Nouns } from './nouns.js';

interface Part {
  readonly said: string | null;
  readonly feminine: string | null;
}

/** Words of the record one by one, or two that are one there: "safety pin", "freezer bag". */
const partsOf = (recorded: string, phrases: PhraseWords): readonly Part[] => {
  const all = recorded.split(' ');
  const parts: Part[] = [];
  for (let at = 0; at < all.length;) {
    const many = [3, 2].find(
      (length) =>
        at + length <= all.length && phrases.entry(`touch-${all.slice(at, at + length).join('-')}`) !== null,
    );
    const id = `touch-${all.slice(at, at + (many ?? 1)).join('-')}`;
    parts.push({ said: phrases.entry(id), feminine: phrases.entry(id, 'feminine') });
    at += many ?? 1;
  }
  return parts;
};

/**
 * "frasco grande de vidrio", "cuenta de madera chica". Nouns first, then the rest from the inside
 * out. Words without a phrase `touch-…` are the household's own: then all is said as recorded.
 */
export const touchWords = (recorded: string, phrases: PhraseWords, nouns: Nouns): string => {
  const words = partsOf(recorded, phrases);
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
