/** What was told of food made it past guidance, or brought it to its last days: said with it, though nobody asked. */
import type { Change, Item, Kitchen } from '../../kitchen/model.js';
import { isPlural, livingItems } from '../../kitchen/index.js';
import type { Assessment } from '../../safety/api.js';
import { anyoneAtRisk, assessIn, guidanceFor } from '../../safety/index.js';
import type { Say } from '../../speech/answer.js';
import type { Clock } from '../../terms/dates.js';
import type { Intent } from '../../understanding/intents.js';
import { mustSay, reasonsOf, verdictWords } from '../describe/guidance.js';
import { day, list, say } from '../handler.js';
import type { Frame } from '../state.js';

/** These judge what they note, in their own words; and what is taken back is no news. */
const judging: ReadonlySet<Intent> = new Set<Intent>([
  'left-out',
  'guidance',
  'keeps',
  'power-cut',
  'power-back',
  'undo',
  'finish',
]);

interface Past {
  readonly item: Item;
  readonly found: Assessment;
}

/** What waits no longer is said: past, or the last day of what was not put away just today. */
const isDue = ({ verdict, daysUsed }: Assessment): boolean =>
  verdict === 'throw-out' || (verdict === 'last-day' && (daysUsed ?? 0) > 0);

/** @param changes Those of this turn, in order; the last word on an item counts. */
const madePast = (kitchen: Kitchen, changes: readonly Change[], clock: Clock): readonly Past[] => {
  const first = new Map<string, Item | null>();
  for (const { ops } of changes)
    for (const op of ops) if (op.kind === 'item' && !first.has(op.id)) first.set(op.id, op.before);
  if (first.size === 0) return [];
  const living = new Set(livingItems(kitchen).map(({ id }) => id));
  return [...first].flatMap(([id, before]): Past[] => {
    const item = living.has(id) ? kitchen.items.get(id) : undefined;
    if (!item) return [];
    const found = assessIn(kitchen, item, clock);
    const already = before !== null && assessIn(kitchen, before, clock).verdict === found.verdict;
    return isDue(found) && !already ? [{ item, found }] : [];
  });
};

export const pastByTelling = (
  intent: Intent | undefined,
  kitchen: Kitchen,
  changes: readonly Change[],
  clock: Clock,
): { readonly parts: readonly Say[]; readonly details: readonly Say[]; readonly sources: readonly Say[] } => {
  const due = intent && judging.has(intent) ? [] : madePast(kitchen, changes, clock);
  const lost = due.filter(({ found }) => found.verdict === 'throw-out');
  // What is past stands before what ends soon.
  const past = lost.length > 0 ? lost : due.slice(0, 1);
  const [only] = past;
  if (!only) return { parts: [], details: [], sources: [] };
  const told = past.map(({ found }) => reasonsOf(found));
  const names = [...new Set(past.map(({ item }) => item.name))];
  const [name = ''] = names;
  return {
    parts: [
      ...mustSay(only.found),
      names.length === 1
        ? verdictWords(only.found, name, isPlural(name))
        : say('verdict-throw-out', { name: list(names), many: 'yes' }),
    ],
    details: told.flatMap(({ first: deciding, rest }) => [...deciding, ...rest]),
    sources: told.flatMap(({ sources }) => sources),
  };
};

/**
 * "I bought scallops two days ago": where they go is asked, and what their age comes to does not wait for the answer.
 * Judged as kept in the fridge, and said to be.
 */
export const dueWhileAsked = (
  raised: readonly Frame[],
  { household, people }: Kitchen,
  clock: Clock,
): { readonly parts: readonly Say[]; readonly sources: readonly Say[] } => {
  const asked = raised.find(({ kind, act }) => kind === 'slot' && act.intent === 'put-away')?.act.slots;
  const dates = Object.fromEntries(
    Object.entries(asked?.dates ?? {}).flatMap(([kind, said]) =>
      said === 'unknown' ? [] : [[kind, said.day]],
    ),
  );
  const name = asked?.item?.words;
  const where = dates['frozen'] !== undefined && dates['thawed'] === undefined ? 'freezer' : 'fridge';
  if (!name || Object.keys(dates).length === 0 || where === 'freezer') return { parts: [], sources: [] };
  const found = guidanceFor({
    food: name,
    where,
    region: household.region,
    dates,
    atRisk: anyoneAtRisk(people),
    clock,
  });
  const due = isDue(found) || (found.verdict === 'use-soon' && (found.daysUsed ?? 0) > 0);
  if (!due) return { parts: [], sources: [] };
  const places = say('kept-at', { where });
  return {
    parts: [
      say('list-entry', {
        entry: say('verdict-entry', {
          name: say('food-stored-at', { food: name, places }),
          verdict: found.verdict,
          ...(found.lastDay && found.verdict !== 'throw-out' ? { last: day(found.lastDay) } : {}),
        }),
      }),
    ],
    sources: reasonsOf(found).sources,
  };
};
