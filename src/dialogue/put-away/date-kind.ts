/** "Saturday", of a carton: which of its dates that is. Asked where the kinds mean different things. */
import { lastGone } from '../../kitchen/index.js';
import type { DateKind, Item } from '../../kitchen/model.js';
import { isHomeMade } from '../../safety/index.js';
import type { SaidDate } from '../../understanding/intents.js';
import { type Turn, day, say, todayOf } from '../handler.js';
import type { Ask } from '../state.js';

const kinds: readonly (readonly [RegExp, DateKind])[] = [
  [/\b(use by|used by|sell by|expir|goes off)/i, 'useBy'],
  [/\bbest\b/i, 'bestBefore'],
  [/\b(bought|got it|purchased)\b/i, 'bought'],
  [/\b(made|cooked|baked|roasted|grilled|fried|boiled)\b/i, 'made'],
  [/\b(opened)\b/i, 'opened'],
  [/\b(froze|frozen)\b/i, 'frozen'],
];

/** "It's the use by." */
export const dateKindIn = (words: string): DateKind | null =>
  kinds.find(([pattern]) => pattern.test(words))?.[1] ?? null;

const printed = ['useBy', 'bestBefore'] as const;

const onlyPrinted = (dates: Item['dates'] | undefined): DateKind | null => {
  const known = printed.filter((kind) => dates?.[kind]);
  return known.length === 1 ? known[0]! : null;
};

/** The kind meant, or the question. A date to come is printed; one gone by is when a dish was made. */
export const dateKindOf = (turn: Turn, item: Item, said: SaidDate): { kind: DateKind } | { ask: Ask } => {
  const [picked] = turn.picked.dateKind ?? [];
  if (picked) return { kind: picked as DateKind };
  const named = dateKindIn(turn.heard ?? '');
  if (named) return { kind: named };
  const past = said.day <= todayOf(turn);
  if (past && isHomeMade(item)) return { kind: 'made' };
  const usual = onlyPrinted(item.dates) ?? onlyPrinted(lastGone(turn.kitchen, item.name)?.dates);
  // Dele's stew may keep a shop's date of its own: never assumed for what was cooked here.
  if (usual && !past) return { kind: usual };
  const choices = [...printed, ...(past ? (['bought'] as const) : [])].map((kind) => ({
    ids: [kind],
    label: say('date-kind', { what: kind }),
  }));
  const args = { name: item.name, date: day(said.day) };
  return {
    ask: {
      slot: 'dateKind',
      question: say(past ? 'ask-date-kind-past' : 'ask-date-kind', args),
      again: say('ask-date-kind-again'),
      expecting: 'words',
      choices,
    },
  };
};
