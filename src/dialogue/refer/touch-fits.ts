/** "The small one" of a large and a jumbo jar: sizes compared among the things at hand. */
import type { Item } from '../../kitchen/model.js';

const ranks: readonly (readonly [RegExp, number])[] = [
  [/^(tiny|mini|smallest)/, 0],
  [/^(small|little|short|thin)/, 1],
  [/^(medium|middle|mid)/, 2],
  [/^(large|big|tall|wide|long)/, 3],
  [/^(huge|giant|biggest|largest)/, 4],
];
const rank = (word: string | undefined): number | null =>
  word ? (ranks.find(([pattern]) => pattern.test(word))?.[1] ?? null) : null;

/** Those at the end of the scale that the word names; none when no sizes are recorded. */
export const bySize = (said: string, items: readonly Item[]): Item[] => {
  const wanted = rank(said);
  const sized = items.flatMap((item) => {
    const size = rank(item.touch.size);
    return size === null ? [] : [{ item, size }];
  });
  if (wanted === null || sized.length === 0) return [];
  const sizes = sized.map(({ size }) => size);
  const end = wanted >= 2 ? Math.max(...sizes) : Math.min(...sizes);
  return sized.filter(({ size }) => size === end).map(({ item }) => item);
};
