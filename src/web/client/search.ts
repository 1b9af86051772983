/**
 * Finding food as speech does: by sound, plural and spelling, and by anything a card says (place, maker,
 * allergen, marker). Every word asked for must fit some word of it, at its beginning or by sound.
 */

const fold = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

const joining = new Set([
  'the',
  'a',
  'an',
  'of',
  'in',
  'on',
  'with',
  'and',
  'my',
  'de',
  'la',
  'el',
  'en',
  'con',
]);

/** "tomatoes" and "tomato", "berries" and "berry" are one. */
const singular = (word: string): string =>
  word.length < 4
    ? word
    : word
        .replace(/ies$/, 'y')
        .replace(/(ch|sh|x|o|ss)es$/, '$1')
        .replace(/([^s])s$/, '$1');

/** Spellings that sound alike come out alike: chili and chilli, yogurt and yoghurt, fillet and filet. */
const soundOf = (word: string): string =>
  singular(word)
    .replace(/gh|ph/g, (pair) => (pair === 'ph' ? 'f' : 'g'))
    .replace(/ck|q|c(?![eiyh])/g, 'k')
    .replace(/c(?=[eiy])/g, 's')
    .replace(/z/g, 's')
    .replace(/y/g, 'i')
    .replace(/ou|oo|ew/g, 'u')
    .replace(/ee|ea|ie/g, 'i')
    .replace(/(.)\1+/g, '$1')
    .replace(/(?<=.)e$/, '');

const wordsOf = (text: string): readonly string[] =>
  fold(text)
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== '' && !joining.has(word));

/** True when at most one letter was put in, left out, changed, or two changed places. */
const nearly = (one: string, other: string): boolean => {
  if (Math.abs(one.length - other.length) > 1) return false;
  let at = 0;
  while (at < one.length && one[at] === other[at]) at++;
  const [a, b] = [one.slice(at), other.slice(at)];
  return (
    a.slice(1) === b.slice(1) ||
    a === b.slice(1) ||
    a.slice(1) === b ||
    (a[0] === b[1] && a[1] === b[0] && a.slice(2) === b.slice(2))
  );
};

/** What is searched of one thing, prepared once. */
export interface Searchable {
  readonly sounds: readonly string[];
}

export const searchable = (...texts: readonly (string | null | undefined)[]): Searchable => ({
  sounds: [...new Set(texts.flatMap((text) => wordsOf(text ?? '').map(soundOf)))],
});

/** 0 does not fit; more is better. */
export const fitOf = (wanted: string, { sounds }: Searchable): number => {
  const asked = wordsOf(wanted).map(soundOf);
  let fit = 0;
  for (const word of asked) {
    const found = sounds.some((sound) => sound === word)
      ? 3
      : sounds.some((sound) => sound.startsWith(word))
        ? 2
        : word.length > 3 && sounds.some((sound) => nearly(sound, word))
          ? 1
          : 0;
    if (found === 0) return 0;
    fit += found;
  }
  return fit;
};

export const isAsked = (wanted: string): boolean => wordsOf(wanted).length > 0;
