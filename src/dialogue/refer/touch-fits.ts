/** "The small one" of a large and a jumbo jar: sizes compared among the things at hand. */
import type { Item } from '../../kitchen/model.js';

/** Sizes by the words of the record, from the smallest. */
const ranks = [
  ['tiny', 'mini', 'smallest'],
  ['small', 'little', 'short', 'thin'],
  ['medium', 'middle', 'mid'],
  ['large', 'big', 'tall', 'wide', 'long'],
  ['huge', 'giant', 'biggest', 'largest'],
] as const;
const rank = (word: string | undefined): number | null => {
  const at = ranks.findIndex((words) => words.some((one) => word?.startsWith(one)));
  return at < 0 ? null : at;
};

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
