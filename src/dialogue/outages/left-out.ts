/** "The soup has been out since noon." */
import { emptyMention } from '../../understanding/intents.js';
import type { Item } from '../../kitchen/model.js';
import { storageOf, takeOut, isRefused } from '../../kitchen/index.js';
import { exposureOf, isHot, leftOut as leftOutGuidance } from '../../safety/index.js';
import type { Reason } from '../../safety/api.js';
import type { Say } from '../../speech/answer.js';
import { type Instant, today } from '../../terms/dates.js';
import type { Act, Slots } from '../../understanding/intents.js';
import { reasonWords, sourcesOf } from '../describe/guidance.js';
import { type Handler, type Reply, type Turn, about, clockTime, say, seconds } from '../handler.js';
import { inScale } from '../guidance/asked.js';
import { findItems } from '../refer/items.js';
import { bothHalves, fromNow, instantAt, lastOf } from '../timers/wall-time.js';

/** Seconds; our own figure, well beyond the hours guidance allows. */
const longTime = 8 * 3600;

/** The moment it was set out, from what was said; null when nobody knows. */
export const sinceSaid = (turn: Turn, { duration, time, when }: Slots): Instant | null => {
  if (duration !== undefined) return fromNow(turn.clock, -duration);
  // "Today" is no hour: noon may be still to come, or long before it was.
  if (when && when !== 'unknown' && !time && when.day === today(turn.clock)) return null;
  if (when && when !== 'unknown') return instantAt(when.day, time ?? '12:00', turn.clock.timeZone);
  return time ? lastOf(bothHalves(time, turn), turn.clock) : null;
};

export const leftOut: Handler = (act, turn) => {
  const { slots } = act;
  const found = findItems(turn, slots.item);
  const item = found.items.length === 1 ? found.items[0]! : null;
  const food = item?.name ?? slots.item?.words ?? slots.words;
  if (!food) return { parts: [], ask: { slot: 'item', question: say('ask-left-out'), expecting: 'item' } };
  // Supposed, wished or denied: no hour is asked for and none noted; the limit is what helps.
  const air = slots.degrees ? inScale(turn, slots.degrees) : null;
  // "It is roasting in here": no figure, and the shorter time holds all the same.
  const hot = slots.setting === 'hot' || (air !== null && isHot(air));
  if (slots.asked === 'limit') return limitOf(turn, food, item, hot);
  if (slots.negated)
    return supposedOut(turn, {
      food,
      item,
      since: sinceSaid(turn, slots),
      long: slots.overnight === true,
      hot,
    });
  const said = sinceSaid(turn, slots) ?? item?.outSince ?? null;
  // "Since breakfast": the hour is our own guess, on the early side, and is neither told nor recorded.
  const byMeal =
    (turn.qualifiers.has('meal') && slots.time !== undefined) ||
    (sinceSaid(turn, slots) === null && item?.outAtLeast === true);
  // "Overnight" and "all day" are no hour to record, but longer than any time allowed.
  const since = said ?? (slots.overnight ? fromNow(turn.clock, -longTime) : null);
  const known = since !== null || slots.when === 'unknown';
  if (!known)
    return {
      parts: [],
      ask: {
        slot: 'time',
        question: say('ask-out-since', { name: food }),
        again: say('ask-out-since-again'),
        expecting: 'time',
      },
      ...(item ? { memory: about(turn, [item]) } : {}),
    };
  // What somebody else says is answered, and noted only when she says so.
  const told = slots.asked !== 'reported';
  const before = item ? exposureOf({ ...item, outSince: null }, turn.clock.now) : null;
  const answer = leftOutGuidance({
    food,
    since,
    clock: turn.clock,
    region: turn.kitchen.household.region,
    ...(air ? { air } : {}),
    ...(hot ? { hot } : {}),
    ...(before ? { minutesBefore: before.minutes, hot: hot || before.hot || item!.outHot === true } : {}),
  });
  const first = slots.setting === 'hot' ? answer.reasons.toReversed() : answer.reasons;
  const parts: Say[] = [
    say(`left-out-${answer.verdict}`, {
      name: food,
      cold: item && storageOf(turn.kitchen, item.placeId) === 'freezer' ? 'freezer' : 'fridge',
      ...(answer.backBy ? { by: clockTime(answer.backBy) } : {}),
    }),
    // Of "overnight" no hours are told: nobody said how many.
    // Where the heat was told without a figure, it is the reason; else how long it was.
    ...(said && !byMeal ? first.slice(0, 1) : []).map(reasonWords),
  ];
  const details = first.slice(1).map(reasonWords);
  // Of "overnight" the hour is not known, and that it was out too long is.
  const atLeast = said === null || byMeal;
  const out =
    item && since && told ? takeOut(turn, item.id, since, { ...(hot ? { hot } : {}), atLeast }) : null;
  return {
    parts,
    details,
    sources: sourcesOf(answer.reasons),
    ...(item ? { memory: about(turn, [item]) } : {}),
    ...(out && !isRefused(out) && item!.outSince !== since
      ? { changes: [out], doubt: say('confirm-out', { name: food }) }
      : {}),
    ...(item && told && answer.verdict === 'throw-out'
      ? {
          offer: {
            question: say('offer-throw-out', { name: food }),
            act: { intent: 'finish', slots: { item: idMention(item.id), how: 'thrown out' } },
          },
        }
      : {}),
    ...(item && !told && since
      ? { offer: { question: say('offer-note-out', { name: food }), act: asTold(act, item) } }
      : {}),
  };
};

/** "How long can milk stay out?" */
export const limitOf = (turn: Turn, food: string, item: Item | null, inHeat = false): Reply => {
  const { region } = turn.kitchen.household;
  const { verdict, limitMinutes, reasons } = leftOutGuidance({
    food,
    since: null,
    clock: turn.clock,
    region,
    hot: inHeat,
  });
  const hot = leftOutGuidance({ food, since: null, clock: turn.clock, region, hot: true });
  const limit = seconds(limitMinutes * 60);
  const warm = hot.limitMinutes < limitMinutes ? { hot: seconds(hot.limitMinutes * 60) } : {};
  return {
    parts: [
      verdict === 'no-figure'
        ? say('left-out-no-figure', { name: food })
        : say('left-out-limit', { name: food, limit, ...warm }),
      // Nobody told the degrees: why it is the shorter time is said.
      ...heatOf(reasons),
    ],
    details: reasons.slice(1).map(reasonWords),
    sources: sourcesOf([...reasons, ...hot.reasons]),
    names: [food],
    ...(item ? { memory: about(turn, [item]) } : {}),
  };
};

const heatOf = (reasons: readonly Reason[]): readonly Say[] =>
  reasons.filter(({ code }) => code === 'left-out-hot').map(reasonWords);

interface Supposed {
  readonly food: string;
  readonly item: Item | null;
  readonly since: Instant | null;
  /** "Overnight", "all day": longer than any limit, and no hour. */
  readonly long: boolean;
  readonly hot?: boolean;
}

/** "What happens if I leave the cod out for an hour": by the limit, with nothing said to be so. */
export const supposedOut = (turn: Turn, { food, item, since, long, hot = false }: Supposed): Reply => {
  const limit = limitOf(turn, food, item, hot);
  if (since === null && !long) return limit;
  const from = since ?? fromNow(turn.clock, -longTime);
  const { region } = turn.kitchen.household;
  const { verdict } = leftOutGuidance({ food, since: from, clock: turn.clock, region, hot });
  if (verdict === 'no-figure') return limit;
  const span = seconds(Math.round((Date.parse(turn.clock.now) - Date.parse(from)) / 1000));
  return {
    ...limit,
    parts: [
      say('left-out-supposed', {
        name: food,
        over: verdict === 'throw-out' ? 'yes' : 'no',
        ...(since === null ? {} : { span }),
      }),
      ...(limit.parts.length > 1
        ? limit.parts.slice(1)
        : [say('left-out-allows', limit.parts[0]?.args ?? {})]),
    ],
  };
};

/** What somebody else said, now her own. */
const asTold = ({ intent, slots: { asked: _, ...slots } }: Act, item: Item): Act => ({
  intent,
  slots: { ...slots, item: idMention(item.id) },
});

const idMention = (id: string) => ({ ...emptyMention, candidates: [{ id, fit: 1 }] });
