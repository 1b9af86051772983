/** Long lists, said as a person would: how many first, then a few at a time. */
import type { Answer, Say, Value } from './answer.js';

/** Most that is said in one breath. */
const GROUP = 4;

export interface ListAnswerOptions {
  /** Says how many there are, and of what; the items follow it. */
  readonly lead: Say;
  /** Items in one group, at most; 4 unless told. */
  readonly group?: number;
  /** Groups said before asking whether to go on; 1 unless told. */
  readonly groups?: number;
}

/** Shares `n` out as evenly as goes in groups of at most `size`, larger ones first: 5 is 3 + 2, not 4 + 1. */
export const groupSizes = (n: number, size: number): number[] => {
  const groups = Math.ceil(n / size);
  return Array.from({ length: groups }, (_, i) => Math.floor(n / groups) + (i < n % groups ? 1 : 0));
};

const groupSay = (items: readonly Value[]): Say => ({
  kind: 'say',
  phrase: 'list-group',
  args: { items: { kind: 'list', of: items } },
});

const itemsIn = (group: Say): number => {
  const items = group.args?.['items'];
  return typeof items === 'object' && items.kind === 'list' ? items.of.length : 1;
};

const withRest = (said: readonly Say[], rest: readonly Say[]): Answer =>
  rest.length === 0
    ? { parts: said }
    : {
        parts: said,
        question: {
          kind: 'say',
          phrase: 'list-more',
          args: { left: rest.reduce((sum, group) => sum + itemsIn(group), 0) },
        },
        more: rest,
      };

/**
 * The answer that says `lead`, then the first group; what is left is in `more`, with a question
 * that says how many are left. No items: only the lead.
 */
export const listAnswer = (items: readonly Value[], options: ListAnswerOptions): Answer => {
  const groups: Say[] = [];
  let from = 0;
  for (const size of groupSizes(items.length, options.group ?? GROUP)) {
    groups.push(groupSay(items.slice(from, from + size)));
    from += size;
  }
  const first = options.groups ?? 1;
  return withRest([options.lead, ...groups.slice(0, first)], groups.slice(first));
};

/** The answer to "more": the next group of what `listAnswer` kept, or that it was all. */
export const moreOfList = (more: readonly Say[], groups = 1): Answer =>
  more.length === 0
    ? { parts: [{ kind: 'say', phrase: 'list-done' }] }
    : withRest(more.slice(0, groups), more.slice(groups));
