/** Why things are to be used or thrown out: what guidance gives each, and how much of it is over. */
import type { RankedItem } from '../../safety/api.js';
import { reasonsOf } from '../describe/guidance.js';
import { type Reply, say } from '../handler.js';

/** Things whose reason is told when it is asked of several at once. */
const mostTold = 4;

export const whyOf = (ranked: readonly RankedItem[]): Required<Pick<Reply, 'details' | 'sources'>> => {
  const why = ranked
    .slice(0, mostTold)
    .map(({ item, assessment }) => ({ name: item.name, found: reasonsOf(assessment) }));
  const sources = why.flatMap(({ found }) => found.sources);
  return {
    details: why.flatMap(({ name, found }) =>
      found.first.map((reason) => say('because-of', { name, reason })),
    ),
    sources: [...new Map(sources.map((source) => [JSON.stringify(source), source])).values()],
  };
};
