/** Words as they were heard, lower case and without marks: "what's", "17:00" stay one. */
export const wordsIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .replace(/\u2019/g, "'")
    .split(/[^\p{L}\p{M}\p{N}':]+/u)
    .filter((word) => word !== '');

/** The same, with a word and what was written after it: "door," is not "door". */
export const writtenIn = (text: string): readonly { readonly word: string; readonly pause: boolean }[] =>
  text
    .toLowerCase()
    .replace(/\u2019/g, "'")
    .split(/\s+/u)
    .flatMap((written) => {
      const words = wordsIn(written);
      const marked = /[^\p{L}\p{M}\p{N}']$/u.test(written);
      return words.map((word, at) => ({ word, pause: marked && at === words.length - 1 }));
    });

/** Where these words stand among those, one after the other; null where they do not. */
export const placeOf = (words: readonly string[], among: readonly string[]): number | null => {
  if (words.length === 0) return null;
  const at = among.findIndex((_, from) => words.every((word, n) => among[from + n] === word));
  return at < 0 ? null : at;
};
