/** What is older than a day, what is oldest, and what was done when. */
import type { DateKind, Item } from '../../kitchen/model.js';
import { assessIn } from '../../safety/index.js';
import type { Say, Value } from '../../speech/answer.js';
import { type PlainDate, dayOf } from '../../terms/dates.js';
import type { Slots } from '../../understanding/intents.js';
import { ageFrom } from './age-parts.js';
import { dateSaidAs } from '../describe/came.js';
import { reasonsOf, verdictWords } from '../describe/guidance.js';
import { andMore, inGroups } from '../describe/lists.js';
import { placeAt } from '../describe/place.js';
import { type Reply, type Turn, about, day, list, say } from '../handler.js';
import { oldestFirst } from '../refer/tell-apart.js';
import { byAge, askedKind } from './by-age.js';

export const olderThan = (turn: Turn, before: PlainDate, among: readonly Item[]): Reply => {
  const old = oldestFirst(
    among.filter((item) => {
      const from = ageFrom(item);
      return from !== null && from.at < before;
    }),
  );
  if (old.length === 0) return { parts: [say('none-older', { date: day(before) })], count: 0, names: [] };
  return tellAges(turn, old, (count, entries) => say('older', { count, date: day(before), entries }));
};

const ageEntry = (turn: Turn, item: Item, kind?: DateKind | 'added'): Say => {
  if (kind === 'added')
    return say('item-where', {
      item: say('item-name', { name: item.name }),
      where: placeAt(turn.kitchen, item.placeId),
    });
  const from = kind && item.dates[kind] ? { kind, at: item.dates[kind] } : ageFrom(item);
  const at = placeAt(turn.kitchen, item.placeId);
  return from
    ? say('age-entry', { name: item.name, at, what: dateSaidAs(from.kind, item), date: day(from.at) })
    : say('age-entry-unknown', { name: item.name, at });
};

const tellAges = (
  turn: Turn,
  items: readonly Item[],
  head: (count: number, entries: Value) => Say,
  kind?: DateKind | 'added',
): Reply => {
  const groups = byAge(items);
  const { first, more, left } = inGroups(groups.map((group) => ageEntry(turn, group.first, kind)));
  return {
    parts: [head(groups.length, list(first)), ...andMore(left)],
    more,
    memory: about(turn, items),
    names: groups.map((group) => group.first.name),
    count: groups.length,
  };
};

/** "What is the oldest thing in the freezer": that one, by whatever date it has. */
export const tellOldest = (turn: Turn, among: readonly Item[]): Reply | null => {
  const dated = oldestFirst(among.filter((item) => ageFrom(item) !== null));
  const first = dated[0];
  if (!first) return null;
  const found = assessIn(turn.kitchen, first, turn.clock);
  const alike = dated.filter(({ name, dates }) => name === first.name && dates.made === first.dates.made);
  const { first: because, rest, sources } = reasonsOf(found);
  return {
    parts: [say('oldest-is', { entry: ageEntry(turn, first) }), verdictWords(found, null)],
    details: [...because, ...rest],
    sources,
    more: dated
      .filter((item) => !alike.includes(item))
      .slice(0, 3)
      .map((item) => say('list-entry', { entry: ageEntry(turn, item) })),
    memory: about(turn, [first]),
    names: [first.name],
    count: 1,
  };
};

/** "What did I freeze before May", "what did I put away in the last two days". */
export const doneWithin = (turn: Turn, deed: string, slots: Slots, among: readonly Item[]): Reply => {
  const kind = askedKind[deed];
  const { when, asked } = slots;
  const said = when && when !== 'unknown' ? when : null;
  const from = said && asked !== 'before' ? said.day : null;
  const until = !said || asked === 'since' ? null : asked === 'before' ? said.day : (said.until ?? said.day);
  const dateOf = (item: Item): PlainDate | undefined =>
    kind ? item.dates[kind] : dayOf(item.addedAt, turn.clock.timeZone);
  const fits = oldestFirst(
    among.filter((item) => {
      const at = dateOf(item);
      if (!at || (from && at < from)) return false;
      return !until || (asked === 'before' ? at < until : at <= until);
    }),
  );
  if (fits.length === 0) return { parts: [say('none-done-then', { deed })], count: 0, names: [] };
  return tellAges(turn, fits, (count, entries) => say('done-then', { count, entries }), kind ?? 'added');
};
