/** What was put away in one breath and one place is read back in one sentence: "milk, eggs, and ham on the top shelf". */
import type { Say, Value } from '../../speech/answer.js';
import { list } from '../handler.js';

const isPut = ({ phrase, args }: Say): boolean =>
  phrase === 'put-away-done' && args?.['details'] === undefined;
const whereOf = ({ args }: Say): string => JSON.stringify(args?.['where']);

/** Sentences that are of one place become one, where the first of them stood; all else keeps its order. */
export const toldTogether = (parts: readonly Say[]): readonly Say[] => {
  const put = parts.filter(isPut);
  if (put.length < 2) return parts;
  return parts.flatMap((part) => {
    if (!isPut(part)) return [part];
    const there = put.filter((one) => whereOf(one) === whereOf(part));
    if (there[0] !== part) return [];
    const items = there.map(({ args }): Value => args?.['item'] ?? '');
    return [{ ...part, args: { ...part.args, item: list(items) } }];
  });
};
