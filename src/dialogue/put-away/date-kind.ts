/** "Saturday", of a carton: which of its dates that is. Asked where the kinds mean different things. */
import { lastGone } from '../../kitchen/index.js';
import type { DateKind, Item } from '../../kitchen/model.js';
import { isHomeMade } from '../../safety/index.js';
import type { Qualifier } from '../../protocol/qualifiers.js';
import type { SaidDate } from '../../understanding/intents.js';
import { type Turn, day, say, todayOf } from '../handler.js';
import type { Ask } from '../state.js';

const kinds: readonly DateKind[] = ['useBy', 'bestBefore', 'bought', 'made', 'opened', 'frozen'];

/** "It's the use by." */
export const dateKindSaid = ({
  qualifiers,
}: {
  readonly qualifiers: ReadonlySet<Qualifier>;
}): DateKind | null => kinds.find((kind) => qualifiers.has(`date-${kind}` as Qualifier)) ?? null;

const printed = ['useBy', 'bestBefore'] as const;

const onlyPrinted = (dates: Item['dates'] | undefined): DateKind | null => {
  const known = printed.filter((kind) => dates?.[kind]);
  return known.length === 1 ? known[0]! : null;
};

/** The kind meant, or the question. A date to come is printed; one gone by is when a dish was made. */
export const dateKindOf = (turn: Turn, item: Item, said: SaidDate): { kind: DateKind } | { ask: Ask } => {
  const [picked] = turn.picked.dateKind ?? [];
  if (picked) return { kind: picked as DateKind };
  const named = dateKindSaid(turn);
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
