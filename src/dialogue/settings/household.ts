/** Settings of the household, by voice. */
import { setHousehold as setHouseholdChange } from '../../kitchen/index.js';
import type { Household } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import type { Slots } from '../../understanding/intents.js';
import { withChange } from '../describe/refusals.js';
import { type Handler, type Turn, clockTime, say, todayOf } from '../handler.js';
import { lengthSetting, sounds } from '../talk/controls.js';
import { instantAt } from '../timers/wall-time.js';

type Wanted =
  | { readonly settings: Partial<Household>; readonly said: Say }
  | { readonly ask: 'number' | 'time'; readonly question: Say }
  | null;

const wall = (turn: Turn, time: string) => clockTime(instantAt(todayOf(turn), time, turn.clock.timeZone));

const regionIn = (words: string | undefined): 'us' | 'uk' | null =>
  !words
    ? null
    : /\b(uk|british|britain|united kingdom|english|fsa)\b/i.test(words)
      ? 'uk'
      : /\b(us|usa|american|america|united states|usda)\b/i.test(words)
        ? 'us'
        : null;

const wanted = (turn: Turn, slots: Slots): Wanted => {
  const { setting, number, time, words, negated } = slots;
  const region = regionIn(words ?? slots.asked);
  switch (setting) {
    case 'watts':
      return number === undefined
        ? { ask: 'number', question: say('ask-watts') }
        : { settings: { microwaveWatts: number }, said: say('watts-are', { watts: number }) };
    case 'region':
      return region ? { settings: { region }, said: say('guidance-is', { region }) } : null;
    case 'measures': {
      const metric = /metric|gram|kilo|celsius/i.test(words ?? '');
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
      const [from, to] = [time, slots.words];
      return from && to && /^\d\d:\d\d$/.test(to)
        ? {
            settings: { quietHours: { from, to } },
            said: say('quiet-from', { from: wall(turn, from), to: wall(turn, to) }),
          }
        : null;
    }
    default:
      if (number !== undefined)
        return { settings: { microwaveWatts: number }, said: say('watts-are', { watts: number }) };
      if (region) return { settings: { region }, said: say('guidance-is', { region }) };
      return null;
  }
};

export const setHousehold: Handler = (act, turn) => {
  // How this listener is spoken to is no setting of the household.
  if (act.slots.setting === 'sounds') return sounds(act, turn);
  if (act.slots.setting === 'length') return lengthSetting(act, turn);
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
  const { region, microwaveWatts, summaryAt } = turn.kitchen.household;
  const watts = microwaveWatts === null ? say('watts-unknown') : say('watts-are', { watts: microwaveWatts });
  const summary = summaryAt === null ? say('no-summary') : say('summary-at', { time: wall(turn, summaryAt) });
  switch (act.slots.setting) {
    case 'region':
      return { parts: [say('guidance-is', { region })] };
    case 'watts':
      return { parts: [watts] };
    case 'summary':
      return { parts: [summary] };
    default:
      return { parts: [say('guidance-is', { region }), watts, summary] };
  }
};
