/** Settings of the household, by voice. */
import { setHousehold as setHouseholdChange } from '../../kitchen/index.js';
import type { Household } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import type { Slots } from '../../understanding/intents.js';
import { listDevices } from '../devices/list.js';
import { withChange } from '../describe/refusals.js';
import { type Handler, type Turn, clockTime, say, todayOf } from '../handler.js';
import { lengthSetting, sounds, usualVoice } from '../talk/controls.js';
import { everything } from './everything.js';
import { instantAt } from '../timers/wall-time.js';

type Wanted =
  | { readonly settings: Partial<Household>; readonly said: Say }
  | { readonly ask: 'number' | 'time'; readonly question: Say }
  | null;

const wall = (turn: Turn, time: string) => clockTime(instantAt(todayOf(turn), time, turn.clock.timeZone));

const DAY = 24 * 60;
const minutesOf = (time: string): number => {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours * 60 + minutes;
};
const halves = (time: string): string[] => {
  const [hour = '00', minute = '00'] = time.split(':');
  return [time, `${String((Number(hour) + 12) % 24).padStart(2, '0')}:${minute}`];
};
/** Surely quiet, wherever people sleep at night. */
const deepNight = 3 * 60;

/** "From ten to seven" is the night between, whichever halves of the day were heard; by day only when said. */
const overNight = (from: string, to: string, byDay: boolean): { from: string; to: string } => {
  if (byDay) return { from, to };
  const pairs = halves(from).flatMap((start) => halves(to).map((end) => ({ from: start, to: end })));
  const long = (pair: { from: string; to: string }): number =>
    (minutesOf(pair.to) - minutesOf(pair.from) + DAY) % DAY;
  const nights = pairs.filter((pair) => (deepNight - minutesOf(pair.from) + DAY) % DAY < long(pair));
  return nights.sort((a, b) => long(a) - long(b))[0] ?? { from, to };
};

const wanted = (turn: Turn, slots: Slots): Wanted => {
  const { setting, number, time, negated, region, metric = false } = slots;
  switch (setting) {
    case 'watts':
      return number === undefined
        ? { ask: 'number', question: say('ask-watts') }
        : { settings: { microwaveWatts: number }, said: say('watts-are', { watts: number }) };
    case 'region':
      return region ? { settings: { region }, said: say('guidance-is', { region }) } : null;
    case 'measures': {
      return {
        settings: { measures: metric ? 'metric' : 'us' },
        said: say('measures-are', { measures: metric ? 'metric' : 'us' }),
      };
    }
    case 'summary':
      if (negated) return { settings: { summaryAt: null }, said: say('no-summary') };
      return time
        ? { settings: { summaryAt: time }, said: say('summary-at', { time: wall(turn, time) }) }
        : { ask: 'time', question: say('ask-summary-at') };
    case 'quiet': {
      if (negated) return { settings: { quietHours: null }, said: say('no-quiet') };
      const one = slots.asked === 'from' || slots.asked === 'until' ? oneEnd(turn, slots) : null;
      if (one)
        return {
          settings: { quietHours: one },
          said: say('quiet-from', { from: wall(turn, one.from), to: wall(turn, one.to) }),
        };
      if (!time || !slots.words || !/^\d\d:\d\d$/.test(slots.words)) return null;
      const { from, to } = overNight(time, slots.words, turn.qualifiers.has('by-day'));
      return {
        settings: { quietHours: { from, to } },
        said: say('quiet-from', { from: wall(turn, from), to: wall(turn, to) }),
      };
    }
    default:
      if (number !== undefined)
        return { settings: { microwaveWatts: number }, said: say('watts-are', { watts: number }) };
      if (region) return { settings: { region }, said: say('guidance-is', { region }) };
      return null;
  }
};

/** "Make it start at ten", and the morning as it is: of the two halves of the day, the one nearer to what it was. */
const oneEnd = (turn: Turn, { asked, time }: Slots): { from: string; to: string } | null => {
  const { quietHours } = turn.kitchen.household;
  if (!quietHours || !time) return null;
  const was = asked === 'from' ? quietHours.from : quietHours.to;
  const apart = (one: string): number => {
    const between = Math.abs(minutesOf(one) - minutesOf(was));
    return Math.min(between, 24 * 60 - between);
  };
  const [near = time] = halves(time).sort((a, b) => apart(a) - apart(b));
  return asked === 'from' ? { ...quietHours, from: near } : { ...quietHours, to: near };
};

export const setHousehold: Handler = (act, turn) => {
  // How this listener is spoken to is no setting of the household.
  if (act.slots.setting === 'sounds') return sounds(act, turn);
  if (act.slots.setting === 'length') return lengthSetting(act, turn);
  if (act.slots.setting === 'rate' || act.slots.setting === 'volume') return usualVoice(act, turn);
  const want = wanted(turn, act.slots);
  if (!want) return { parts: [say('settings-help')] };
  if ('ask' in want)
    return {
      parts: [],
      ask: { slot: want.ask, question: want.question, expecting: want.ask === 'number' ? 'amount' : 'time' },
    };
  return withChange(turn, setHouseholdChange(turn, want.settings), (change) => ({
    parts: [want.said],
    changes: [change],
    doubt: say('confirm-setting', { setting: want.said }),
  }));
};

export const household: Handler = (act, turn) => {
  const { region, microwaveWatts, summaryAt, quietHours } = turn.kitchen.household;
  const watts = microwaveWatts === null ? say('watts-unknown') : say('watts-are', { watts: microwaveWatts });
  const summary = summaryAt === null ? say('no-summary') : say('summary-at', { time: wall(turn, summaryAt) });
  const quiet = quietHours
    ? say('quiet-from', { from: wall(turn, quietHours.from), to: wall(turn, quietHours.to) })
    : say('no-quiet');
  switch (act.slots.setting) {
    case 'devices':
      return listDevices(turn);
    case 'everything':
      return everything(turn);
    case 'region':
      return { parts: [say('guidance-is', { region })] };
    case 'watts':
      return { parts: [watts] };
    case 'summary':
      return { parts: [summary] };
    case 'quiet':
      return { parts: [quiet] };
    default:
      return { parts: [say('guidance-is', { region }), watts, summary] };
  }
};
