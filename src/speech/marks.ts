/**
 * Private-use characters that mark, inside a phrase being put together, which words came from
 * the household (names, notes, steps) and not from our own phrase files. Household words keep
 * their digits, full stops and spelling; ours are checked and turned into speech.
 * They never leave this room.
 */
export const OPEN = '\uE000';
export const CLOSE = '\uE001';

// Control characters (XML forbids most), our own marks, halves of surrogate pairs, non-characters,
// and the invisible controls that could reorder text around a right-to-left name.
const UNSPEAKABLE =
  // eslint-disable-next-line no-control-regex
  /[\u0000-\u001F\u007F-\u009F\uE000-\uE001\uFFFE\uFFFF\u2028\u2029\u202A-\u202E\u2066-\u2069\uFEFF]|\p{Surrogate}/gu;

/** Words as a cook or a file gave them, with what cannot be spoken or written in XML taken out. */
export const clean = (text: string): string => text.replace(UNSPEAKABLE, ' ').replace(/\s+/gu, ' ').trim();

/** Marks words as the household's own. Empty stays empty. */
export const quote = (text: string): string => {
  const words = clean(text);
  return words === '' ? '' : OPEN + words + CLOSE;
};

export const unmark = (text: string): string => text.replace(/[\uE000\uE001]/g, '');
