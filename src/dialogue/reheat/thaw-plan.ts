/** "I want the turkey for Thursday dinner": when to start, and how. */
import {
  fridgeThawHours,
  isTurkey,
  thawing,
  thawPlan as planThaw,
  waterThawHours,
} from '../../safety/index.js';
import type { ThawOption } from '../../safety/api.js';
import type { Say, Value } from '../../speech/answer.js';
import { convert, storageOf } from '../../kitchen/index.js';
import type { Item } from '../../kitchen/model.js';
import { dayOf, today } from '../../terms/dates.js';
import type { Slots } from '../../understanding/intents.js';
import { sourcesOf } from '../describe/guidance.js';
import { placeAt } from '../describe/place.js';
import { type Handler, type Reply, type Turn, about, clockTime, day, say, seconds } from '../handler.js';
import { needItem } from '../refer/need.js';
import { beginSteps } from '../talk/steps.js';
import { instantAt, mealHour } from '../timers/wall-time.js';
import { thawSteps } from './thaw-steps.js';

/** When nobody says a time: dinner is begun about then. Our own choice. */
const dinner = '17:00';

const poundsOf = (turn: Turn, item: Item, slots: Slots): number | null => {
  const { region } = turn.kitchen.household;
  if (slots.pounds !== undefined) return slots.pounds;
  const said = slots.amount ? convert(slots.amount, 'pound', region) : null;
  return said ?? (item.amount ? convert(item.amount, 'pound', region) : null);
};

const whenWords = (turn: Turn, at: string): Record<string, Value> => {
  const on = dayOf(at, turn.clock.timeZone);
  return { time: clockTime(at), ...(on === today(turn.clock) ? {} : { date: day(on) }) };
};

const optionWords = (turn: Turn, option: ThawOption): Say =>
  say('thaw-option', { method: option.method, ...(option.startBy ? whenWords(turn, option.startBy) : {}) });

const hoursWords = ({ low, high }: { low: number; high: number }): Record<string, Value> => ({
  ...(low === high ? {} : { low: seconds(low * 3600) }),
  high: seconds(high * 3600),
});

/** "How long does it take to thaw": the hours, by what it weighs. */
const thawTakes = (turn: Turn, item: Item, pounds: number): Reply => {
  const turkey = isTurkey(item.name);
  const { region } = turn.kitchen.household;
  const plan = planThaw({ food: item.name, pounds, wantedAt: turn.clock.now, clock: turn.clock, region });
  const water = plan.options.some(({ method }) => method === 'cold-water');
  return {
    parts: [
      say('thaw-takes', { method: 'fridge', name: item.name, ...hoursWords(fridgeThawHours(pounds)) }),
      ...(water
        ? [
            say('thaw-takes', {
              method: 'cold-water',
              name: item.name,
              ...hoursWords(waterThawHours(pounds, turkey)),
            }),
          ]
        : []),
    ],
    details: [say('thaw-never-on-counter')],
    sources: sourcesOf(plan.options),
    memory: about(turn, [item]),
    names: [item.name],
  };
};

/** "Say I take it out on Friday night, when is it thawed": in the fridge, from then on. */
const thawedBy = (turn: Turn, item: Item, pounds: number, { when, time }: Slots): Reply => {
  const from = when && when !== 'unknown' ? when.day : today(turn.clock);
  const start = instantAt(from, time ?? takenOut, turn.clock.timeZone);
  const hours = fridgeThawHours(pounds);
  const ready = fromInstant(start, hours.high);
  return {
    parts: [
      say('thawed-by', { name: item.name, ...whenWords(turn, ready) }),
      say('thaw-takes', { method: 'fridge', name: item.name, ...hoursWords(hours) }),
    ],
    details: [say('thaw-never-on-counter')],
    sources: sourcesOf(waysNow(turn, item, pounds).filter(({ method }) => method === 'fridge')),
    memory: about(turn, [item]),
    names: [item.name],
  };
};
/** When nobody says the hour it is taken out: after dinner. Our own choice. */
const takenOut = '20:00';
const fromInstant = (at: string, hours: number): string =>
  new Date(Date.parse(at) + hours * 3_600_000).toISOString();

/** "Do I need to thaw it first": not what is recorded as heated from frozen, and else it may be cooked so. */
const thawNeeded = (turn: Turn, item: Item): Reply => {
  const recorded = item.preparations.some(({ from, method }) => from === 'freezer' && method !== 'none');
  return {
    parts: [say(recorded ? 'thaw-needed-no' : 'thaw-cook-from-frozen')],
    sources: sourcesOf([thawing().fromFrozen]),
    memory: about(turn, [item]),
    names: [item.name],
  };
};

/** Every way, begun now. */
const waysNow = (turn: Turn, item: Item, pounds: number | null): readonly ThawOption[] =>
  planThaw({
    food: item.name,
    pounds,
    wantedAt: turn.clock.now,
    clock: turn.clock,
    region: turn.kitchen.household.region,
  }).options;

/** "Thaw the salmon in the fridge": that is how, not where it is. */
const fridgeSaid = (turn: Turn, { item }: Slots): boolean => {
  const [place] = item?.at?.candidates ?? [];
  return place !== undefined && storageOf(turn.kitchen, place.id) === 'fridge';
};

/** In water where guidance has it, else as the microwave's book says. */
const quickest = (ways: readonly ThawOption[]): ThawOption | undefined =>
  ways.find(({ method }) => method === 'cold-water') ?? ways.find(({ method }) => method === 'microwave');

export const thawPlan: Handler = (act, turn) => {
  const { slots } = act;
  if (slots.asked === 'counter')
    return {
      parts: [say('thaw-counter-no'), say('thaw-ways')],
      sources: sourcesOf([thawing().never]),
    };
  const there = fridgeSaid(turn, slots);
  const mention = slots.item && there ? { ...slots.item, at: null } : slots.item;
  const found = needItem(turn, mention, { question: say('ask-thaw'), anyOfBatch: true, lastOne: true });
  if ('reply' in found) return found.reply;
  const item = found.got;
  // "When does it come out then?" The day was told with the plan.
  const { thawFor } = turn.memory;
  const planned = thawFor?.itemId === item.id && !slots.when && !slots.time ? thawFor : null;
  const { when } = planned ?? slots;
  const time = planned?.time ?? (slots.time === undefined ? undefined : mealHour(slots.time, turn));
  const memory = {
    ...about(turn, [item]),
    ...(when && when !== 'unknown' ? { thawFor: { itemId: item.id, when, ...(time ? { time } : {}) } } : {}),
  };
  if (slots.asked === 'needed') return thawNeeded(turn, item);
  const long = slots.asked === 'long';
  // What stands in the fridge is not frozen: it is said to be there, and nothing is planned for it.
  if (!long && !there && slots.method === undefined && storageOf(turn.kitchen, item.placeId) === 'fridge')
    return {
      parts: [
        say('thaw-not-frozen', { name: item.name, at: placeAt(turn.kitchen, item.placeId, item.spot) }),
      ],
      details: [say('thaw-ways')],
      memory: about(turn, [item]),
      names: [item.name],
    };
  // The way is chosen: it is begun now.
  const soon = slots.asked === 'now';
  const way = slots.method ?? (there ? 'fridge' : null);
  if (!long && !soon && way === null && !time && (!when || when === 'unknown')) {
    return {
      parts: [],
      ask: { slot: 'when', question: say('ask-thaw-when', { name: item.name }), expecting: 'date' },
      memory,
    };
  }
  const pounds = poundsOf(turn, item, slots);
  if (slots.asked === 'ready' && pounds !== null) return thawedBy(turn, item, pounds, slots);
  if (pounds === null && slots.number === undefined && slots.asked !== 'unknown') {
    return {
      parts: [],
      ask: {
        slot: 'pounds',
        question: say('ask-thaw-weight', { name: item.name }),
        again: say('ask-thaw-weight-again'),
        expecting: 'amount',
      },
      memory,
    };
  }
  if (long) return thawTakes(turn, item, pounds ?? slots.number ?? 1);
  if ((soon || way !== null) && !time && (!when || when === 'unknown')) {
    const ways = waysNow(turn, item, pounds ?? slots.number ?? null);
    const chosen = way === null ? quickest(ways) : ways.find(({ method }) => method === way);
    if (chosen) return { ...beginSteps(thawSteps(item, chosen), []), memory };
  }
  const wantedDay = when && when !== 'unknown' ? when.day : today(turn.clock);
  const wantedAt = instantAt(wantedDay, time ?? dinner, turn.clock.timeZone);
  const plan = planThaw({
    food: item.name,
    pounds: pounds ?? slots.number ?? null,
    wantedAt,
    clock: turn.clock,
    region: turn.kitchen.household.region,
  });
  const { best } = plan;
  if (!best) {
    return {
      parts: [say('thaw-too-late', { name: item.name }), say('thaw-cook-from-frozen')],
      sources: sourcesOf(plan.options),
      memory,
    };
  }
  const others = plan.options.filter((option) => option !== best && !option.tooLate);
  const parts: Say[] = [
    optionWords(turn, best),
    ...best.advice.slice(0, 1).map((code) => say(`thaw-${code}`)),
  ];
  const steps = thawSteps(item, best);
  // Its first step is said with the plan; others under way are not lost to it.
  const told = best.advice[0] !== 'weight-unknown';
  const busy = turn.state.procedure && !turn.state.procedure.paused;
  const details = [
    say('thaw-never-on-counter'),
    ...best.advice.slice(1).map((code) => say(`thaw-${code}`)),
    ...others.map((option) => optionWords(turn, option)),
  ];
  const reminder = best.startBy && best.startBy > turn.clock.now;
  const startDay = best.startBy ? dayOf(best.startBy, turn.clock.timeZone) : null;
  return {
    parts,
    details,
    sources: sourcesOf([best]),
    memory,
    ...(busy ? {} : { procedure: { ...steps, at: told ? 0 : -1, paused: true } }),
    ...(reminder && startDay
      ? {
          offer: {
            question: say('offer-remind'),
            act: {
              intent: 'set-reminder',
              slots: {
                words: `thaw the ${item.name}`,
                when: { day: startDay },
                time: wallOf(best.startBy!, turn),
              },
            },
          },
        }
      : {}),
  };
};

const wallOf = (at: string, turn: Turn): string =>
  new Intl.DateTimeFormat('en-GB', {
    hour: '2-digit',
    minute: '2-digit',
    hour12: false,
    timeZone: turn.clock.timeZone,
  }).format(new Date(at));
