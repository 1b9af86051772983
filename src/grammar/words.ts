/** How the tokens of a grammar become the words that are compared with an input (section 2.1, appendix E). */
import { collapse, foldToken } from './characters.js';

/** Keys that may be named by a word (appendix E). */
export const DTMF_KEY_NAMES: ReadonlyMap<string, string> = new Map([
  ['star', '*'],
  ['pound', '#'],
]);
const dtmfToken = (text: string): string => DTMF_KEY_NAMES.get(foldToken(text)) ?? foldToken(text);
/** The tokens of a touch-tone grammar (appendix E). */
export const isDtmfKey = (word: string): boolean => /^[0-9*#a-d]$/u.test(word);

/** Splits a token's text into the words an input has for it. */
export const wordsOfToken = (text: string, mode: 'voice' | 'dtmf'): string[] => {
  const words = collapse(text).split(' ');
  return words.map(mode === 'dtmf' ? dtmfToken : foldToken);
};

/** A token as it is shown in a logical parse: spaces collapsed, keys by their sign. */
export const shownToken = (text: string, mode: 'voice' | 'dtmf'): string => {
  const shown = collapse(text);
  if (mode === 'voice') return shown;
  return shown
    .split(' ')
    .map((word) => DTMF_KEY_NAMES.get(foldToken(word)) ?? word)
    .join(' ');
};
