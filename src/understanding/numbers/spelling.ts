/** Letters and digits said one by one: "h a r i s s a", "hotel alpha", "h as in hotel", "oh seven double two". */
import { perLexicon, type Lexicon } from '../words/lexicon.js';
import { phraseSet, phraseTable } from '../words/phrases.js';
import { cardinalAt } from './cardinals.js';

interface Spelled {
  readonly text: string;
  readonly length: number;
}

const tables = perLexicon(({ numbers }) => ({
  letters: phraseTable(Object.entries(numbers.letters)),
  homophones: new Map(Object.entries(numbers.letterHomophones)),
  as: phraseSet(numbers.letterAs),
  double: new Set(numbers.double),
  triple: new Set(numbers.triple),
  nought: new Set(numbers.nought),
  digits: new Map(Object.entries(numbers.words).filter(([, value]) => value < 10)),
}));

const letterAt = (
  tokens: readonly string[],
  from: number,
  lexicon: Lexicon,
): { letter: string; end: number; sure: boolean } | null => {
  const { letters, homophones, as } = tables(lexicon);
  const token = tokens[from];
  if (token === undefined) return null;
  const said = letters.longestAt(tokens, from);
  const single = [...token].length === 1 && /\p{L}/u.test(token) ? token : null;
  const letter = said?.value ?? single ?? homophones.get(token);
  if (letter === undefined) return null;
  const end = from + (said?.length ?? 1);
  // "h as in hotel": the word only explains.
  const like = as.longestAt(tokens, end);
  const word = like ? tokens[end + like.length] : undefined;
  const explained = like && word?.startsWith(letter) && word.length > 1;
  return { letter, end: explained ? end + like.length + 1 : end, sure: said !== null || single !== null };
};

/**
 * Letters from `from`, at least two of them; null when too few are plain letters.
 * Words that sound like letters ("see", "are") count only among plain ones.
 */
export const lettersAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Spelled | null => {
  const { double } = tables(lexicon);
  let text = '';
  let sure = 0;
  let at = from;
  let spelled: Spelled | null = null;
  for (;;) {
    const twice = double.has(tokens[at] ?? '') && letterAt(tokens, at, lexicon) === null;
    const read = letterAt(tokens, twice ? at + 1 : at, lexicon);
    if (!read) break;
    text += twice ? read.letter + read.letter : read.letter;
    sure += read.sure ? 1 : 0;
    at = read.end;
    if ([...text].length >= 2 && sure * 2 >= [...text].length) spelled = { text, length: at - from };
  }
  return spelled;
};

/** "h a r i s s a" is "harissa". Null when the tokens are not all letters. */
export const joinLetters = (tokens: readonly string[], lexicon: Lexicon): string | null => {
  const read = lettersAt(tokens, 0, lexicon);
  return read?.length === tokens.length ? read.text : null;
};

/** "harissa" is "h a r i s s a"; words are kept apart by a comma, for reading aloud. */
export const spellOut = (words: string): string =>
  words
    .split(/\s+/)
    .filter(Boolean)
    .map((word) => [...word.normalize('NFC')].join(' '))
    .join(', ');

/**
 * "four two one", "oh seven double three", "42", and figures a recogniser drew together: "twelve thirty
 * four" and "one thousand two hundred thirty four" are both 1234. At least one digit.
 */
export const digitsAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Spelled | null => {
  const { digits, nought, double, triple } = tables(lexicon);
  let text = '';
  let at = from;
  for (;;) {
    const times = triple.has(tokens[at] ?? '') ? 3 : double.has(tokens[at] ?? '') ? 2 : 1;
    if (times > 1) at += 1;
    const token = tokens[at] ?? '';
    const one = nought.has(token) ? '0' : digits.get(token)?.toString();
    if (times > 1) {
      if (one === undefined) return text === '' ? null : { text, length: at - 1 - from };
      text += one.repeat(times);
      at += 1;
      continue;
    }
    if (/^\d+$/.test(token) || nought.has(token)) {
      text += one ?? token;
      at += 1;
      continue;
    }
    const number = cardinalAt(tokens, at, lexicon);
    if (!number || !Number.isInteger(number.value)) break;
    text += String(number.value);
    at += number.length;
  }
  return text === '' ? null : { text, length: at - from };
};
