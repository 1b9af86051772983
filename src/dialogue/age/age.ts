/** How old things are, their dates, how long they keep, what to use first. */
import { livingItems, storageOf } from '../../kitchen/index.js';
import type { DateKind, Item } from '../../kitchen/model.js';
import type { Assessment, GuidanceQuestion, RankedItem, Where } from '../../safety/api.js';
import { guidanceFor } from '../../safety/guidance.js';
import { assessIn } from '../../safety/items.js';
import { rankUseFirst, withoutDate } from '../../safety/use-first.js';
import type { Say, Value } from '../../speech/answer.js';
import { type PlainDate, dayOf, daysBetween, plusDays, today } from '../../terms/dates.js';
import type { SaidDate, Slots } from '../../understanding/intents.js';
import { ageFrom, ageWords } from './age-parts.js';
import { mayBeFrozen } from './may-freeze.js';
import { reasonsOf, verdictWords } from '../describe/guidance.js';
import { type Group, groupName, grouped } from '../describe/item.js';
import { andMore, inGroups } from '../describe/lists.js';
import { placeAt } from '../describe/place.js';
import { askedItems, nameOfGone, noneLeft } from '../find/find.js';
import { frozenBefore } from '../find/frozen-before.js';
import { type Handler, type Reply, type Turn, about, day, list, say, todayOf } from '../handler.js';
import { findPlace, insidePlace } from '../refer/places.js';
import { oldestFirst } from '../refer/tell-apart.js';
import { needItem } from '../refer/need.js';

const aboutGroup = (turn: Turn, group: Group): Reply => {
  const item = oldestFirst(group.items)[0]!;
  const found = assessIn(turn.kitchen, item, turn.clock);
  const told = found.reasons.filter(({ code }) => code !== 'at-least-days');
  const { first, rest, sources } = reasonsOf({ ...found, reasons: told });
  return {
    parts: [
      ...(found.verdict === 'unknown'
        ? [verdictWords(found, item.name)]
        : [ageWords(turn, item, item.name), verdictWords(found, null)]),
      ...(found.verdict === 'throw-out' ? first : []),
    ],
    details: [...(found.verdict === 'throw-out' ? [] : first), ...rest],
    sources,
    memory: about(turn, group.items),
    names: [item.name],
    count: group.items.length,
  };
};

/** Things of one question that are of one age are told together. */
const byAge = (items: readonly Item[]): Group[] => {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const key = `${item.name}|${JSON.stringify(item.dates)}`;
    groups.set(key, [...(groups.get(key) ?? []), item]);
  }
  return [...groups.values()].map((of) => ({ items: of, first: of[0]! }));
};

export const howOld: Handler = (act, turn) => {
  const { items, unknown } = askedItems(act, turn);
  const gone = nameOfGone(turn, act.slots.item?.candidates.map(({ id }) => id) ?? []);
  if (items.length === 0 && (unknown ?? gone)) return noneLeft(turn, (unknown ?? gone)!);
  if (items.length === 0) {
    const found = needItem(turn, act.slots.item, { question: say('ask-how-old') });
    return 'reply' in found ? found.reply : aboutGroup(turn, { items: [found.got], first: found.got });
  }
  const groups = byAge(oldestFirst(items));
  if (groups.length === 1) return aboutGroup(turn, groups[0]!);
  const entries = groups.map(({ first }) => {
    const from = ageFrom(first);
    const at = placeAt(turn.kitchen, first.placeId);
    return from
      ? say('age-entry', { name: first.name, at, what: from.kind, date: day(from.at) })
      : say('age-entry-unknown', { name: first.name, at });
  });
  const { first, more, left } = inGroups(entries);
  const offered = groups.map((group) => group.first);
  return {
    parts: [say('ages', { count: groups.length, entries: list(first) }), ...andMore(left)],
    more,
    memory: about(turn, items, offered),
    names: offered.map(({ name }) => name),
    count: groups.length,
  };
};

const askedKind: Readonly<Record<string, DateKind>> = {
  made: 'made',
  bought: 'bought',
  opened: 'opened',
  frozen: 'frozen',
  thawed: 'thawed',
  useBy: 'useBy',
  bestBefore: 'bestBefore',
};

/** "When does the yogurt expire", "when did I freeze it": the date first, then what guidance makes of it. */
export const itemDate: Handler = (act, turn) => {
  const gone = nameOfGone(turn, act.slots.item?.candidates.map(({ id }) => id) ?? []);
  const found = needItem(turn, act.slots.item ?? it(turn), {
    question: say('ask-date-of'),
    anyOfBatch: true,
  });
  if ('reply' in found) {
    if (found.reply.ask) return found.reply;
    return gone ? noneLeft(turn, gone) : (genericKeeps(turn, act.slots) ?? found.reply);
  }
  const item = found.got;
  const { asked } = act.slots;
  const kind = asked ? askedKind[asked] : undefined;
  const memory = about(turn, [item]);
  const more = { memory, names: [item.name], count: 1 };
  const verdict = assessIn(turn.kitchen, item, turn.clock);
  const { first, rest, sources } = reasonsOf(verdict);
  if (asked === 'added') {
    return {
      parts: [say('added-on', { name: item.name, date: day(dayOf(item.addedAt, turn.clock.timeZone)) })],
      ...more,
    };
  }
  const expiry = kind === 'useBy' || kind === 'bestBefore';
  const printed = item.dates.useBy ? 'useBy' : item.dates.bestBefore ? 'bestBefore' : null;
  if (expiry || !kind) {
    const dates = printed ? ([printed] as const) : [];
    const parts = dates.map((of) =>
      say('item-date', { name: item.name, what: of, date: day(item.dates[of]!) }),
    );
    if (parts.length > 0)
      return {
        parts: [...parts, verdictWords(verdict, null)],
        details: [...first, ...rest],
        sources,
        ...more,
      };
    if (asked !== 'any') {
      return {
        parts: [verdictWords(verdict, item.name), say('no-printed-date')],
        details: [...first, ...rest],
        sources,
        ...more,
      };
    }
    return {
      parts: [ageWords(turn, item, item.name), verdictWords(verdict, null)],
      details: [...first, ...rest],
      sources,
      ...more,
    };
  }
  const at = item.dates[kind];
  if (at)
    return {
      parts: [
        say('item-date', { name: item.name, what: kind, date: day(at) }),
        ...(kind === 'frozen' ? frozenBefore(item) : []),
      ],
      details: [...first, ...rest],
      sources,
      ...more,
    };
  return {
    parts: [say('date-not-recorded', { name: item.name, what: kind }), ageWords(turn, item, item.name)],
    ...more,
  };
};

const it = (turn: Turn) =>
  turn.memory.items.length > 0
    ? {
        words: null,
        candidates: [],
        pointer: 'it' as const,
        touch: null,
        ordinal: null,
        maker: null,
        diet: null,
        at: null,
      }
    : undefined;

const whereSaid = (turn: Turn, slots: Slots): Where | null => {
  if (slots.from_state) return slots.from_state === 'room' ? 'counter' : slots.from_state;
  const place = findPlace(turn, slots.place);
  if (place.found === 'one') {
    const kind = storageOf(turn.kitchen, place.place.id);
    return kind === 'cupboard' ? 'pantry' : kind;
  }
  const words = slots.place?.words ?? '';
  if (/freez/.test(words)) return 'freezer';
  if (/fridge|refrigerator/.test(words)) return 'fridge';
  if (/pantry|cupboard|larder/.test(words)) return 'pantry';
  return /counter|table/.test(words) ? 'counter' : null;
};

const ageSaid = (turn: Turn, slots: Slots): Pick<GuidanceQuestion, 'days' | 'hours'> => {
  const when = slots.when ?? Object.values(slots.dates ?? {})[0];
  if (when && when !== 'unknown') return { days: Math.max(0, daysBetween(when.day, today(turn.clock))) };
  if (slots.duration === undefined) return {};
  const hours = slots.duration / 3600;
  return hours < 24 ? { hours } : { days: Math.round(hours / 24) };
};

const question = (turn: Turn, slots: Slots, food: string): GuidanceQuestion => ({
  food,
  where: whereSaid(turn, slots) ?? 'fridge',
  region: turn.kitchen.household.region,
  opened: slots.dates?.opened !== undefined || slots.asked === 'opened',
  thawed: slots.dates?.thawed !== undefined,
  atRisk: [...turn.kitchen.people.values()].some(({ eatsHere, atRisk }) => eatsHere && atRisk),
  ...ageSaid(turn, slots),
  clock: turn.clock,
});

const limitWords = (found: Assessment, food: string, where: Where): Say | null => {
  const keeps = found.reasons.find(({ code }) => code === 'keeps');
  const limit = found.row?.limit;
  if (!keeps || !limit) return null;
  const { low, high, unit } = limit;
  return say('keeps-generic', {
    food,
    where,
    kind: found.row?.kind ?? 'keeping',
    span: low === high ? say('span-single', { high, unit }) : say('span-range', { low, high, unit }),
  });
};

/** Raw and cooked keep so differently that the guess is told with the answer. */
const assumedRaw = (found: Assessment): Say[] =>
  found.match.notes.includes('raw-assumed') ? [say('taken-as-raw')] : [];

/** What guidance says of a food in general. */
const genericKeeps = (turn: Turn, slots: Slots): Reply | null => {
  const food = slots.item?.words ?? slots.words;
  if (!food) return null;
  const asked = question(turn, slots, food);
  const found = guidanceFor(asked);
  const { first, rest, sources } = reasonsOf(found);
  const span = limitWords(found, food, asked.where);
  const lead = span ?? verdictWords(found, food);
  return {
    parts: [lead, ...(span ? assumedRaw(found) : first.slice(0, 1))],
    details: [
      ...(span
        ? found.reasons
            .filter(({ code }) => code !== 'keeps')
            .map((one) => reasonsOf({ ...found, reasons: [one], cautions: [] }).first)
            .flat()
        : []),
      ...rest,
    ],
    sources,
    names: [food],
  };
};

const sameDay = (items: readonly Item[], when: SaidDate): Item[] =>
  items.filter((item) =>
    Object.values(item.dates).some((at) => at >= when.day && at <= (when.until ?? when.day)),
  );

/** "How long does chicken keep": of such food in general, not of what is in the fridge. */
const asksHowLong = (turn: Turn): boolean =>
  /\b(how (long|many (hours|days|weeks|months))|shelf life|last (for|in))\b/.test(turn.heard ?? '') &&
  !/\b(the|my|our|this|that|those|these|it)\b (?!fridge|freezer|refrigerator|pantry|cupboard|counter)/.test(
    `${turn.heard ?? ''} `,
  );

/**
 * "Is the rice still good", "how long does chicken keep": what is here leads with its verdict;
 * how long such food keeps in general is told when that was asked, or when none is here.
 */
export const keeps: Handler = (act, turn) => {
  const { slots } = act;
  if (slots.asked === 'freeze') return mayBeFrozen(turn, slots);
  const { items, unknown } = askedItems(act, turn);
  const when = slots.when ?? Object.values(slots.dates ?? {})[0];
  const dated = when && when !== 'unknown' ? sameDay(items, when) : [];
  const where = whereSaid(turn, slots);
  const here = (dated.length > 0 ? dated : items).filter(
    (item) => where === null || dated.length > 0 || whereOf(turn, item) === where,
  );
  const general = genericKeeps(turn, slots);
  const howLong = asksHowLong(turn);
  if (here.length > 0 && !(general && (slots.duration !== undefined || howLong)))
    return ownVerdicts(turn, here);
  if (general && here.length > 0)
    return { ...general, parts: [...general.parts, ...yours(turn, here)], memory: about(turn, here) };
  if (general) return { ...general, memory: items.length > 0 ? about(turn, items) : {} };
  if (unknown) return noneLeft(turn, unknown);
  if (items.length > 0) return ownVerdicts(turn, items);
  const found = needItem(turn, slots.item ?? it(turn), { question: say('ask-keeps') });
  return 'reply' in found ? found.reply : ownVerdicts(turn, [found.got]);
};

const whereOf = (turn: Turn, item: Item): Where | null => {
  const kind = storageOf(turn.kitchen, item.placeId);
  return kind === 'cupboard' ? 'pantry' : kind;
};

/** What of it is here, after what guidance says in general. */
const yours = (turn: Turn, items: readonly Item[]): Say[] => {
  const groups = byAge(oldestFirst(items)).slice(0, 2);
  const [first, ...rest] = groups.map((group) =>
    verdictEntry(turn, group, assessIn(turn.kitchen, group.first, turn.clock)),
  );
  return first ? [say('yours', { items: first }), ...rest.map((entry) => say('list-entry', { entry }))] : [];
};

const verdictEntry = (turn: Turn, group: Group, found: Assessment): Say =>
  say('verdict-entry', {
    name: group.first.name,
    at: placeAt(turn.kitchen, group.first.placeId),
    verdict: found.verdict,
    ...(found.lastDay ? { last: day(found.lastDay) } : {}),
  });

const ownVerdicts = (turn: Turn, items: readonly Item[]): Reply => {
  const groups = byAge(oldestFirst(items));
  const memory = about(
    turn,
    items,
    groups.map(({ first }) => first),
  );
  const names = groups.map(({ first }) => first.name);
  if (groups.length === 1) {
    const item = groups[0]!.first;
    const found = assessIn(turn.kitchen, item, turn.clock);
    const { first, rest, sources } = reasonsOf(found);
    return {
      parts: [verdictWords(found, item.name), ...first],
      details: rest,
      sources,
      memory,
      names,
      count: 1,
    };
  }
  const assessed = groups.map((group) => ({ group, found: assessIn(turn.kitchen, group.first, turn.clock) }));
  const entries = assessed.map(({ group, found }) => verdictEntry(turn, group, found));
  const { first, more, left } = inGroups(entries);
  const sources = assessed.flatMap(({ found }) => reasonsOf(found).sources);
  return {
    parts: [...first.map((entry) => say('list-entry', { entry })), ...andMore(left)],
    more,
    memory,
    names,
    count: groups.length,
    sources: sources.slice(0, 2),
  };
};

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
  const cooking = /\b(should|shall|could|can|use|using|eat|cook)\b/.test(turn.heard ?? '');
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

/** Ranked items, like with like. */
const rankedGroups = (ranked: readonly RankedItem[]): { ranked: RankedItem; group: Group }[] =>
  byAge(ranked.map(({ item }) => item)).flatMap((group) => {
    const first = ranked.find(({ item }) => item.id === group.first.id);
    return first ? [{ ranked: first, group: { items: group.items, first: group.first } }] : [];
  });

/** "What is old" asks for what is past; "what should I use first" for what still can be. */
const asksForPast = (turn: Turn): boolean =>
  /\b(old|oldest|off|bad|expired|throw|past|overdue)\b/.test(turn.heard ?? '');

const isPast = ({ assessment }: RankedItem): boolean => assessment.verdict === 'throw-out';

/** Everything past guidance in one breath: they all come to the same. */
const pastWords = (turn: Turn, past: readonly { ranked: RankedItem; group: Group }[]): Say[] => {
  if (past.length === 0) return [];
  const entries = past.map(({ group }) =>
    say('item-where', { item: groupName(group), where: placeAt(turn.kitchen, group.first.placeId) }),
  );
  const { first, left } = inGroups(entries);
  return [say('use-past', { count: past.length, items: list(first), left })];
};

/** "What should I use this week", "what is old", "what did I freeze before May". */
export const useFirst: Handler = (act, turn) => {
  const { slots } = act;
  const place = findPlace(turn, slots.place);
  const inside = livingItems(turn.kitchen).filter(insidePlace(turn, place));
  if (slots.deed) return doneWithin(turn, slots.deed, slots, inside);
  if (slots.asked === 'older' && slots.duration !== undefined)
    return olderThan(turn, plusDays(todayOf(turn), -Math.round(slots.duration / 86_400)), inside);
  const within = windowAsked(turn, slots);
  if (within !== null && within < 0 && slots.when && slots.when !== 'unknown')
    return olderThan(turn, slots.when.day, inside);
  if (within === null && /\boldest\b/.test(turn.heard ?? '')) {
    const oldest = tellOldest(turn, inside);
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
  const pastFirst = within === null && asksForPast(turn);
  const told = pastFirst ? [...past, ...soon] : [...soon, ...past];
  const offered = told.map(({ group }) => group.first);
  const { first, more, left } = inGroups(soon.map(({ ranked: one, group }) => useWords(turn, one, group)));
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
  const pastParts = pastWords(turn, past);
  const why = told
    .slice(0, 4)
    .map(({ ranked: one }) => ({ name: one.item.name, found: reasonsOf(one.assessment) }));
  const sources = why.flatMap(({ found }) => found.sources);
  const focus = told[0]?.group.items ?? (next ? next.group.items : []);
  return {
    parts: [...(pastFirst ? [...pastParts, ...soonParts] : [...soonParts, ...pastParts]), ...andMore(left)],
    more,
    details: why.flatMap(({ name, found }) =>
      found.first.map((reason) => say('because-of', { name, reason })),
    ),
    sources: [...new Map(sources.map((source) => [JSON.stringify(source), source])).values()],
    memory:
      focus.length > 0
        ? {
            ...about(turn, focus),
            offered: offered.map(({ id }) => id),
            // What is past guidance is for the bin: nobody means it along with the rest.
            them: (pastFirst || soon.length === 0 ? told : soon).flatMap(({ group }) =>
              group.items.map(({ id }) => id),
            ),
            themTold: turn.state.turns,
          }
        : {},
    names: offered.map(({ name }) => name),
    count: told.length,
  };
};

const olderThan = (turn: Turn, before: PlainDate, among: readonly Item[]): Reply => {
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
    ? say('age-entry', { name: item.name, at, what: from.kind, date: day(from.at) })
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
const tellOldest = (turn: Turn, among: readonly Item[]): Reply | null => {
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
const doneWithin = (turn: Turn, deed: string, slots: Slots, among: readonly Item[]): Reply => {
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

export const noDate: Handler = (act, turn) => {
  const place = findPlace(turn, act.slots.place);
  const all = withoutDate(livingItems(turn.kitchen)).filter(insidePlace(turn, place));
  if (all.length === 0) return { parts: [say('all-dated')], count: 0, names: [] };
  const groups = grouped(all);
  const entries = groups.map((group) =>
    say('item-where', { item: groupName(group), where: placeAt(turn.kitchen, group.first.placeId) }),
  );
  const { first, more, left } = inGroups(entries);
  return {
    parts: [say('undated', { count: groups.length, items: list(first) }), ...andMore(left)],
    more,
    memory: about(
      turn,
      all,
      groups.map((group) => group.first),
    ),
    names: groups.map((group) => group.first.name),
    count: groups.length,
  };
};
