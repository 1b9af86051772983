/** What was told of food made it past guidance: said with what was noted, though nobody asked. */
import type { Change, Item, Kitchen } from '../../kitchen/model.js';
import { isPlural, livingItems } from '../../kitchen/index.js';
import type { Assessment } from '../../safety/api.js';
import { assessIn } from '../../safety/index.js';
import type { Say } from '../../speech/answer.js';
import type { Clock } from '../../terms/dates.js';
import type { Intent } from '../../understanding/intents.js';
import { mustSay, reasonsOf, verdictWords } from '../describe/guidance.js';
import { list, say } from '../handler.js';

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
    const already = before !== null && assessIn(kitchen, before, clock).verdict === 'throw-out';
    return found.verdict === 'throw-out' && !already ? [{ item, found }] : [];
  });
};

export const pastByTelling = (
  intent: Intent | undefined,
  kitchen: Kitchen,
  changes: readonly Change[],
  clock: Clock,
): { readonly parts: readonly Say[]; readonly details: readonly Say[]; readonly sources: readonly Say[] } => {
  const past = intent && judging.has(intent) ? [] : madePast(kitchen, changes, clock);
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
