/** How long things keep: what is here, and such food in general. */
import { mayBeFrozen } from './may-freeze.js';
import type { Item } from '../../kitchen/model.js';
import type { Assessment } from '../../safety/api.js';
import { assessIn } from '../../safety/index.js';
import type { Say } from '../../speech/answer.js';
import { type PlainDate, plusDays } from '../../terms/dates.js';
import type { SaidDate, Slots } from '../../understanding/intents.js';
import { distinct, mustSay, reasonsOf, verdictWords } from '../describe/guidance.js';
import { countedFrom } from '../describe/counted.js';
import { type Group, toldGroups } from '../describe/item.js';
import { andMore, inGroups } from '../describe/lists.js';
import { placeAt } from '../describe/place.js';
import { askedItems } from '../find/find.js';
import { ofThatFood, whereOfItem } from '../refer/hers.js';
import { noneLeft } from '../refer/none-left.js';
import { type Handler, type Reply, type Turn, about, day, say, todayOf } from '../handler.js';
import { limitOf } from '../outages/left-out.js';
import { inCut } from '../outages/power-cut.js';
import { oldestFirst } from '../refer/tell-apart.js';
import { needItem } from '../refer/need.js';
import { byAge, it } from './by-age.js';
import { inNoTable, whereSaid, genericKeeps } from './generic-keeps.js';
import { useFirst } from './use-first.js';

const sameDay = (items: readonly Item[], when: SaidDate): Item[] =>
  items.filter((item) =>
    Object.values(item.dates).some((at) => at >= when.day && at <= (when.until ?? when.day)),
  );

/** "How long does chicken keep": of such food in general, not of what is in the fridge. */
const asksHowLong = ({ qualifiers }: Turn): boolean =>
  qualifiers.has('how-long-keeps') && !qualifiers.has('hers');

/**
 * "Is the rice still good", "how long does chicken keep": what is here leads with its verdict;
 * how long such food keeps in general is told when that was asked, or when none is here.
 */
export const keeps: Handler = (act, turn) => {
  const { slots } = act;
  const spot = slots.place ?? slots.item?.at;
  if (slots.noFood && !spot) return inNoTable(slots);
  if (slots.asked === 'freeze') return mayBeFrozen(turn, slots);
  // "Is everything in the fridge all right", "all the food on that shelf": what is past first, of all there is.
  const ofAll = slots.item?.pointer === 'all' && turn.memory.items.length === 0;
  if (ofAll || (spot && (slots.noFood || !slots.item)))
    return useFirst(
      { intent: 'use-first', slots: { asked: 'past', ...(spot ? { place: spot } : {}) } },
      turn,
    );
  const { items: found, unknown } = askedItems(act, turn);
  const items = ofThatFood(found, slots.item?.words);
  const when = slots.when ?? Object.values(slots.dates ?? {})[0];
  const dated = when && when !== 'unknown' ? sameDay(items, when) : [];
  const where = whereSaid(turn, slots);
  const here = (dated.length > 0 ? dated : items).filter(
    (item) => where === null || dated.length > 0 || whereOfItem(turn, item) === where,
  );
  const ofOutage = slots.duration === undefined ? inCut(turn, items) : null;
  if (ofOutage) return ofOutage;
  // "Still good for Wednesday?": none is of that day, so it is a day to keep till.
  const until = dated.length === 0 ? dayAhead(turn, slots.when) : null;
  const [one, ...others] = byAge(oldestFirst(here));
  if (until && one && others.length === 0) return keptTill(turn, one.items, until);
  const general = genericKeeps(turn, slots);
  const howLong = asksHowLong(turn);
  // On the counter, guidance counts hours and no days.
  const food = slots.item?.words;
  if (howLong && where === 'counter' && food) return limitOf(turn, food, here[0] ?? null);
  if (here.length > 0 && !(general && (slots.duration !== undefined || howLong)))
    return ownVerdicts(turn, here);
  if (general && here.length > 0) {
    const own = yours(turn, here);
    // Three places and their times are as much as is listened to; what is here follows when asked to go on.
    const told =
      where === null
        ? { details: [...own, ...(general.details ?? [])] }
        : { parts: [...general.parts, ...own] };
    return { ...general, ...told, memory: about(turn, here) };
  }
  if (general) return { ...general, memory: items.length > 0 ? about(turn, items) : {} };
  if (unknown) return noneLeft(turn, unknown);
  if (items.length > 0) return ownVerdicts(turn, items);
  // "Is everything in the fridge all right": what is past and what comes first, of all there is.
  const needed = needItem(turn, slots.item ?? it(turn), { question: say('ask-keeps') });
  if ('reply' in needed) return needed.reply;
  const till = dayAhead(turn, slots.when);
  return till ? keptTill(turn, [needed.got], till) : ownVerdicts(turn, [needed.got]);
};

/** What of it is here, after what guidance says in general. */
export const yours = (turn: Turn, items: readonly Item[]): Say[] => {
  const groups = byAge(oldestFirst(items)).slice(0, 2);
  const [first, ...rest] = groups.map((group) =>
    verdictEntry(turn, group, assessIn(turn.kitchen, group.first, turn.clock), groups),
  );
  return first ? [say('yours', { items: first }), ...rest.map((entry) => say('list-entry', { entry }))] : [];
};

/** Where it is tells things of one name apart; else it was not asked. */
const verdictEntry = (turn: Turn, group: Group, found: Assessment, among: readonly Group[]): Say =>
  say('verdict-entry', {
    name: group.first.name,
    ...(among.filter(({ first }) => first.name === group.first.name).length > 1
      ? { at: placeAt(turn.kitchen, group.first.placeId) }
      : {}),
    verdict: found.verdict,
    ...(found.lastDay ? { last: day(found.lastDay) } : {}),
  });

/** "Will it keep till Sunday": the last day that guidance or the packet gives, held against that day. */
export const keptTill = (turn: Turn, some: readonly Item[], until: PlainDate): Reply => {
  const own = ownVerdicts(turn, some);
  const item = some[0]!;
  // While the power is out no day of the calendar is promised.
  if (inCut(turn, some)) return own;
  const found = assessIn(turn.kitchen, item, turn.clock);
  const printed = item.dates.useBy ?? null;
  // The printed day where that settles it; else what guidance gives. Where they differ, both are said.
  const lastDay = printed !== null && printed < until ? printed : found.lastDay;
  const byLabel = printed !== null && printed >= until && found.lastDay !== null && found.lastDay < until;
  if (lastDay === null || found.verdict === 'throw-out') return own;
  const told = byLabel
    ? say('ask-label-keeps', { name: item.name, printed: day(printed), last: day(lastDay) })
    : say('ask-keeps-till', {
        name: item.name,
        enough: lastDay >= until ? 'yes' : 'no',
        last: day(lastDay),
        until: day(until),
        by: lastDay === printed ? 'label' : 'guidance',
      });
  return { ...own, parts: [told] };
};

/** A day of the week is the one to come: what is asked is whether it keeps till then. Null: a day that is over. */
const dayAhead = (turn: Turn, when: Slots['when']): PlainDate | null => {
  if (!when || when === 'unknown') return null;
  const now = todayOf(turn);
  if (when.day >= now) return when.day;
  const ahead = plusDays(when.day, 7);
  return ahead >= now ? ahead : null;
};

/** What guidance says of things of the household. */
export const ownVerdicts = (turn: Turn, items: readonly Item[]): Reply => {
  const ofOutage = inCut(turn, items);
  if (ofOutage) return ofOutage;
  const groups = byAge(oldestFirst(items));
  const { memory, names } = toldGroups(turn, items, groups);
  if (groups.length === 1) {
    const item = groups[0]!.first;
    const found = assessIn(turn.kitchen, item, turn.clock);
    const { first, rest, sources } = reasonsOf(found);
    return {
      parts: [...mustSay(found), verdictWords(found, item.name), ...first],
      details: [...countedFrom(item, found, turn.clock), ...rest],
      sources,
      memory,
      names,
      count: 1,
    };
  }
  // What must not be eaten is said first.
  const assessed = groups
    .map((group) => ({ group, found: assessIn(turn.kitchen, group.first, turn.clock) }))
    .sort((a, b) => Number(b.found.verdict === 'throw-out') - Number(a.found.verdict === 'throw-out'));
  const entries = assessed.map(({ group, found }) => verdictEntry(turn, group, found, groups));
  const { first, more, left } = inGroups(entries);
  const must = distinct(assessed.flatMap(({ found }) => mustSay(found))).slice(0, 2);
  const sources = assessed.flatMap(({ found }) => reasonsOf(found).sources);
  return {
    parts: [...must, ...first.map((entry) => say('list-entry', { entry })), ...andMore(left)],
    more,
    memory,
    names,
    count: groups.length,
    sources: sources.slice(0, 2),
  };
};
