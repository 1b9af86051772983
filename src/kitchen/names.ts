/** When two names mean the same food. */

const ARTICLES = /^(?:the|a|an|some|my|our)\s+/;

/** One word without its plural: "tomatoes" → "tomato", "berries" → "berry". Good enough to compare with itself. */
const singular = (word: string): string => {
  if (word.length < 4 || /(?:ss|us|is)$/.test(word)) return word;
  if (/ies$/.test(word)) return word.length > 4 ? `${word.slice(0, -3)}y` : word.slice(0, -1);
  if (/(?:ch|sh|x|z|o|ss)es$/.test(word)) return word.slice(0, -2);
  return word.endsWith('s') ? word.slice(0, -1) : word;
};

/** Names are compared again at each turn, and there are only so many: what was worked out is kept. */
const REMEMBERED = 20_000;
const known = new Map<string, { readonly words: readonly string[]; readonly key: string }>();

const wordsOf = (name: string): readonly string[] =>
  name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[’']/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
    .replace(ARTICLES, '')
    .split(' ')
    .filter((word) => word !== '')
    .map(singular);

const compared = (name: string): { readonly words: readonly string[]; readonly key: string } => {
  const before = known.get(name);
  if (before) return before;
  if (known.size >= REMEMBERED) known.clear();
  const words = wordsOf(name);
  const made = { words, key: words.join(' ') };
  known.set(name, made);
  return made;
};

/** The words of a name as compared: lower case, no article, accents or plurals. */
export const foodWords = (name: string): readonly string[] => compared(name).words;

/** Two names with the same key mean the same food: "The Tomatoes" and "tomato". */
export const foodKey = (name: string): string => compared(name).key;

/** As `likeness`, of words already taken apart. */
export const likenessOf = (one: readonly string[], two: readonly string[]): number => {
  if (one.length === 0 || two.length === 0) return 0;
  const [few, many] = one.length <= two.length ? [one, two] : [two, one];
  if (few.length === many.length && few.every((word, at) => word === many[at])) return 1;
  const shared = few.filter((word) => many.includes(word)).length;
  return shared === few.length ? shared / (many.length + (few.length === many.length ? 1 : 0)) : 0;
};

/** 1 the same food, between 0 and 1 when one name holds the other ("sauerkraut", "caraway sauerkraut"), else 0. */
export const likeness = (a: string, b: string): number => likenessOf(foodWords(a), foodWords(b));

/** "chicken thighs", "oats", "slices of ham": spoken of as "them". */
export const isPlural = (name: string): boolean => {
  const head = name.toLowerCase().split(/ (?:of|with|in|and|from|for|without) /)[0] ?? '';
  const last = head.trim().split(/\s+/).at(-1) ?? '';
  return last !== '' && singular(last) !== last;
};
