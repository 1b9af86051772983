/** What to use first, and what is past. */
import { livingItems } from '../../kitchen/index.js';
import type { Item } from '../../kitchen/model.js';
import type { RankedItem } from '../../safety/api.js';
import { rankUseFirst } from '../../safety/index.js';
import type { Say, Value } from '../../speech/answer.js';
import { daysBetween, plusDays, today } from '../../terms/dates.js';
import type { Slots } from '../../understanding/intents.js';
import { whyOf } from './why.js';
import { type Group, groupName } from '../describe/item.js';
import { groupSize, inGroups } from '../describe/lists.js';
import { placeAt } from '../describe/place.js';
import { type Handler, type Turn, about, day, list, say, todayOf } from '../handler.js';
import { findPlace, insidePlace } from '../refer/places.js';
import { byAge } from './by-age.js';
import { olderThan, tellOldest, doneWithin } from './older.js';

/** Days ahead that "what is old" looks. */
const soonDays = 2;

const windowDays = (turn: Turn, slots: Slots): number | null => {
  if (slots.duration !== undefined) return Math.round(slots.duration / 86_400);
  const { when } = slots;
  if (!when || when === 'unknown') return null;
  if (slots.asked === 'before') return daysBetween(today(turn.clock), when.day) - 1;
  return daysBetween(today(turn.clock), when.until ?? when.day);
};

/** "What should I use up tonight" is when she cooks: what goes off by then, and soon after. */
const windowAsked = (turn: Turn, slots: Slots): number | null => {
  const within = windowDays(turn, slots);
  const cooking = turn.qualifiers.has('to-use');
  return within !== null && within >= 0 && within < soonDays && cooking ? null : within;
};

const useWords = (turn: Turn, { item, assessment }: RankedItem, group: Group): Say =>
  say('use-entry', {
    name: groupName(group),
    at: placeAt(turn.kitchen, item.placeId),
    verdict: assessment.verdict,
    ...(assessment.lastDay ? { last: day(assessment.lastDay) } : {}),
  });

const due = new Set(['throw-out', 'refrigerate-now', 'last-day', 'cook-thoroughly', 'use-soon']);

interface Ranked {
  readonly ranked: RankedItem;
  readonly group: Group;
}

/** Things that are due alike are told together: "roast chicken and chicken thighs, by tomorrow"; of many, without their places. */
const alikeWords = (turn: Turn, soon: readonly Ranked[], placed: boolean): Say[] => {
  const keyOf = ({ ranked: { assessment } }: Ranked): string =>
    `${assessment.verdict} ${assessment.lastDay ?? ''}`;
  const keys = [...new Set(soon.map(keyOf))];
  return keys.map((key) => {
    const of = soon.filter((one) => keyOf(one) === key);
    const { assessment } = of[0]!.ranked;
    return say('use-entry', {
      name: list(of.map(({ group }) => groupName(group))),
      ...(of.length === 1 && placed ? { at: placeAt(turn.kitchen, of[0]!.group.first.placeId) } : {}),
      verdict: assessment.verdict,
      ...(assessment.lastDay ? { last: day(assessment.lastDay) } : {}),
    });
  });
};

/** What is to be used: the first few, and the rest a group at a time. In full, each with its place. */
const soonWords = (
  turn: Turn,
  soon: readonly Ranked[],
): { readonly first: readonly Value[]; readonly more: readonly Say[]; readonly left: number } => {
  if (turn.listener.length === 'full' || soon.length === 1)
    return inGroups(soon.map(({ ranked, group }) => useWords(turn, ranked, group)));
  const { more, left } = inGroups(soon.map((one) => alikeWords(turn, [one], false)[0]!));
  return { first: alikeWords(turn, soon.slice(0, groupSize), soon.length <= groupSize), more, left };
};

/** How many more there are of each kind: what is past is never taken for what can still be used. */
const stillMore = (past: number, soon: number): Say[] =>
  past + soon === 0
    ? []
    : [say('use-more', { ...(past > 0 ? { past } : {}), ...(soon > 0 ? { soon } : {}) })];

/** Ranked items, like with like. */
const rankedGroups = (ranked: readonly RankedItem[]): Ranked[] =>
  byAge(ranked.map(({ item }) => item)).flatMap((group) => {
    const first = ranked.find(({ item }) => item.id === group.first.id);
    return first ? [{ ranked: first, group: { items: group.items, first: group.first } }] : [];
  });

/** "What is old" asks for what is past; "what should I use first" for what still can be. */
const asksForPast = (turn: Turn, { asked }: Slots): boolean =>
  asked === 'past' || turn.qualifiers.has('past');

const isPast = ({ assessment }: RankedItem): boolean => assessment.verdict === 'throw-out';

/** Everything past guidance in one breath: they all come to the same. */
const pastWords = (
  turn: Turn,
  past: readonly Ranked[],
  asked: boolean,
): { readonly parts: readonly Say[]; readonly more: readonly Say[]; readonly left: number } => {
  if (past.length === 0) return { parts: [], more: [], left: 0 };
  // Where it is goes unsaid at usual length, unless it is what was asked for: "where are they" is another question.
  const entries = past.map(({ group }) =>
    (asked && past.length <= groupSize) || past.length === 1 || turn.listener.length === 'full'
      ? say('item-where', { item: groupName(group), where: placeAt(turn.kitchen, group.first.placeId) })
      : groupName(group),
  );
  const { first, left } = inGroups(entries);
  // A later group stands alone, and must not be taken for what can still be used.
  const more: Say[] = [];
  for (let at = groupSize; at < entries.length; at += groupSize)
    more.push(say('use-past-rest', { items: list(entries.slice(at, at + groupSize)) }));
  return { parts: [say('use-past', { count: past.length, items: list(first) })], more, left };
};

/** "Which ones are the oldest": of those just told. */
const ofThose = (turn: Turn, inside: readonly Item[]): readonly Item[] => {
  if (!turn.qualifiers.has('of-those')) return inside;
  // "Which was made first", after one and then the other.
  const { items, before } = turn.memory;
  const two = items.length === 1 && before.length === 1 ? [...items, ...before] : [];
  const both = inside.filter(({ id }) => two.includes(id));
  if (both.length === 2) return both;
  const told = inside.filter(({ id }) => turn.memory.items.includes(id) || turn.memory.them.includes(id));
  return told.length > 1 ? told : inside;
};

/** "What should I use this week", "what is old", "what did I freeze before May". */
export const useFirst: Handler = (act, turn) => {
  const { slots } = act;
  const place = findPlace(turn, slots.place);
  const { maker } = slots;
  const inside = livingItems(turn.kitchen)
    .filter(insidePlace(turn, place))
    .filter((item) => !maker || item.maker?.toLowerCase() === maker.toLowerCase());
  if (slots.deed) return doneWithin(turn, slots.deed, slots, inside);
  if (slots.asked === 'older' && slots.duration !== undefined)
    return olderThan(turn, plusDays(todayOf(turn), -Math.round(slots.duration / 86_400)), inside);
  const within = windowAsked(turn, slots);
  if (within !== null && within < 0 && slots.when && slots.when !== 'unknown')
    return olderThan(turn, slots.when.day, inside);
  if (within === null && turn.qualifiers.has('oldest')) {
    const oldest = tellOldest(turn, ofThose(turn, inside));
    if (oldest) return oldest;
  }
  const kitchen = { ...turn.kitchen, items: new Map(inside.map((item) => [item.id, item])) };
  const ranked = rankUseFirst(kitchen, turn.clock, within === null ? {} : { withinDays: within });
  const at = place.found === 'one' ? { at: placeAt(turn.kitchen, place.place.id) } : {};
  const past = rankedGroups(ranked.filter(isPast));
  const soon = rankedGroups(
    ranked.filter(
      (one) =>
        !isPast(one) &&
        (within === null
          ? due.has(one.assessment.verdict) && (one.assessment.daysLeft ?? 0) <= soonDays
          : (one.assessment.daysLeft ?? Infinity) <= within),
    ),
  );
  const pastFirst = within === null && asksForPast(turn, slots);
  const told = pastFirst ? [...past, ...soon] : [...soon, ...past];
  const offered = told.map(({ group }) => group.first);
  const { first, more: soonMore, left: soonLeft } = soonWords(turn, soon);
  const next = rankedGroups(ranked.filter((one) => !isPast(one) && one.assessment.lastDay !== null))[0];
  const soonParts: Say[] =
    soon.length > 0
      ? [
          ...(soon.length > 1 ? [say('use-first', { count: soon.length, ...at })] : []),
          ...first.map((entry) => say('list-entry', { entry })),
        ]
      : [
          ...(pastFirst && past.length > 0
            ? []
            : [say('nothing-due', { ...at, ...(within === null ? {} : { window: 'yes' }) })]),
          ...(next && within === null
            ? [say('next-due', { entry: useWords(turn, next.ranked, next.group) })]
            : []),
        ];
  const { parts: pastParts, more: pastMore, left: pastLeft } = pastWords(turn, past, pastFirst);
  const focus = told[0]?.group.items ?? (next ? next.group.items : []);
  return {
    parts: [
      ...(pastFirst ? [...pastParts, ...soonParts] : [...soonParts, ...pastParts]),
      ...stillMore(pastLeft, soonLeft),
    ],
    more: pastFirst ? [...pastMore, ...soonMore] : [...soonMore, ...pastMore],
    ...whyOf(told.map(({ ranked: one }) => one)),
    memory:
      focus.length > 0
        ? {
            ...about(turn, focus),
            offered: offered.map(({ id }) => id),
            // What is past guidance is for the bin: nobody means it along with the rest.
            // Asked for what is past, it is that which is thrown out, and not what is still good.
            them: (pastFirst && past.length > 0 ? past : soon.length === 0 ? told : soon).flatMap(
              ({ group }) => group.items.map(({ id }) => id),
            ),
            themTold: turn.state.turns,
          }
        : {},
    names: offered.map(({ name }) => name),
    count: told.length,
  };
};
