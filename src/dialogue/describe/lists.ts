/** Lists as they are read: counted first, in groups of four, the rest for "more". */
import type { Say, Value } from '../../speech/answer.js';
import { list, say } from '../handler.js';

export const groupSize = 4;

/** The first group to say now, and the groups that wait for "more". */
export const inGroups = (
  of: readonly Value[],
): { readonly first: readonly Value[]; readonly more: readonly Say[]; readonly left: number } => {
  const more: Say[] = [];
  for (let at = groupSize; at < of.length; at += groupSize) {
    more.push(say('list-group', { items: list(of.slice(at, at + groupSize)) }));
  }
  return { first: of.slice(0, groupSize), more, left: Math.max(0, of.length - groupSize) };
};

/** The question whether to go on, when there is more. */
export const andMore = (left: number): Say[] => (left > 0 ? [say('list-more', { left })] : []);
