/** The rest of a list, a group at a time. */
import type { Say } from '../../speech/answer.js';
import { andMore } from '../describe/lists.js';
import { type Reply, say } from '../handler.js';
import type { Told } from '../state.js';

const isList = ({ phrase }: Say): boolean => phrase === 'list-group';

const groupCount = ({ phrase, args }: Say): number => {
  if (phrase !== 'list-group') return 0;
  const items = args?.items;
  return typeof items === 'object' && items.kind === 'list' ? items.of.length : 1;
};

/** The next group, and whether there is more after it. */
export const restOf = (told: Told): Reply => {
  const [next, ...rest] = told.rest;
  const left = rest.reduce((sum, group) => sum + groupCount(group), 0);
  // Only lists are counted; what was held back otherwise is just said.
  const closing =
    rest.length > 0 && (left === 0 || !isList(next!))
      ? [say('power-more')]
      : !isList(next!)
        ? []
        : left > 0
          ? andMore(left)
          : [say('list-done')];
  return { parts: [next!, ...closing], keepTold: true, rest };
};
