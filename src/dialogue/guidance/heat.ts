/** A thermometer in food, fridge or freezer; how long over the heat, and how fast cold after it. */
import {
  checkProbe,
  chillingHot,
  cookTemperature as cookGuidance,
  cooledSoFar,
  coolingFrom,
  coolingStages,
  inScale as inOtherScale,
  roastingTime,
  warmHours,
  thermometerReading,
} from '../../safety/index.js';
import type { Instant } from '../../terms/dates.js';
import { emptyMention } from '../../understanding/intents.js';
import { reasonWords, sourcesOf, spanWords } from '../describe/guidance.js';
import { type Reply, type Turn, say, seconds } from '../handler.js';
import { cookTemperature } from '../reheat/cook.js';
import { bothHalves, fromNow, lastOf } from '../timers/wall-time.js';
import { inScale, type Asked } from './asked.js';

export const probe = ({ facts, food, turn }: Asked): Reply => {
  const { region } = turn.kitchen.household;
  const wanted = cookGuidance({
    food,
    region,
    state: facts.states.includes('raw') ? 'raw' : null,
    reheating: facts.reheating,
  });
  const answer = checkProbe(wanted, {
    reads: inScale(turn, facts.probe!),
    seconds: facts.held,
    boiling: facts.boiling,
  });
  return {
    parts: [
      say(answer.reached ? 'guidance-probe-yes' : 'guidance-probe-no'),
      // That it is hot enough is the answer and its reason.
      ...(answer.reached ? [] : answer.reasons.slice(0, 1)).map(reasonWords),
    ],
    sources: sourcesOf(answer.reasons),
    names: [food],
  };
};

const at = (turn: Turn, time: string | null): Instant =>
  time === null ? turn.clock.now : lastOf(bothHalves(time, turn), turn.clock);

/** Hours it has read so, where that was told. */
const hoursSo = ({ facts, turn }: Omit<Asked, 'food'>): number | null =>
  facts.seconds !== null
    ? facts.seconds / 3600
    : facts.overnight
      ? 8
      : facts.since === null
        ? null
        : (Date.parse(turn.clock.now) - Date.parse(at(turn, facts.since))) / 3_600_000;

export const reading = (which: 'fridge' | 'freezer', asked: Omit<Asked, 'food'>): Reply => {
  const { facts, turn } = asked;
  const found = thermometerReading(which, inScale(turn, facts.probe!), turn.kitchen.household.region);
  const { wanted } = found.args;
  const warm = found.code === 'fridge-too-warm';
  return {
    parts: [
      say(`guidance-${which}-${found.code === 'fridge-too-warm' ? 'warm' : 'cold'}`, {
        ...(wanted && typeof wanted === 'object' ? { wanted } : {}),
      }),
      ...(which === 'fridge' && warm && (hoursSo(asked) ?? 0) >= warmHours()
        ? [say('guidance-fridge-lost')]
        : []),
    ],
    sources: sourcesOf([found]),
  };
};

/** A time to begin looking at, and the temperature that ends it; where no table has the time, the temperature. */
export const roasting = (asked: Asked): Reply => {
  const { facts, food, turn, slots } = asked;
  const { region } = turn.kitchen.household;
  const time = roastingTime({ food, method: facts.over, pounds: facts.pounds, region });
  if (!time)
    return cookTemperature(
      { intent: 'cook-temperature', slots: { item: { ...(slots.item ?? emptyMention), words: food } } },
      turn,
    );
  const { ovenF, minutes, whole, forPounds, beyond, method } = time;
  const done = cookGuidance({ food, region, state: 'raw' });
  // Under two hours both ends are of one unit, and it is said once.
  const short = minutes.high < 120;
  const span = short
    ? spanWords({ ...minutes, unit: 'minutes' })
    : say('guidance-roast-span', {
        low: seconds(Math.round(minutes.low) * 60),
        ...(minutes.low === minutes.high ? {} : { high: seconds(Math.round(minutes.high) * 60) }),
      });
  return {
    parts: [
      say('guidance-roast', {
        method,
        ...(ovenF ? { oven: { kind: 'temperature', degrees: ovenF.low, scale: 'fahrenheit' } } : {}),
        time: span,
        per: whole ? 'all' : 'pound',
      }),
      say('guidance-roast-done', { temperature: { kind: 'temperature', ...done.temperature } }),
    ],
    // What it is published for, where the weight told lies beyond it: by the pound it is told all the same.
    details:
      beyond && forPounds ? [say('guidance-roast-weights', { from: forPounds.low, to: forPounds.high })] : [],
    sources: sourcesOf([time, done]),
    names: [food],
  };
};

/** "Can the hot soup go straight in?" */
export const chillHot = (): Reply => {
  const { minutes, source } = chillingHot();
  return {
    parts: [say('guidance-chill-hot', { time: seconds(minutes * 60) })],
    sources: sourcesOf([{ source }]),
  };
};

const halfDay = 12 * 3_600_000;
/** "At noon", "at five past six": each after the one before, in whichever half of the day that is. */
const inOrder = <T extends { readonly at: Instant }>(readings: readonly T[]): readonly T[] =>
  readings.reduce<readonly T[]>((told, one) => {
    const before = told.at(-1)?.at ?? one.at;
    const later = new Date(Date.parse(one.at) + halfDay).toISOString();
    return [...told, one.at < before ? { ...one, at: later } : one];
  }, []);

/** "Seventy degrees after two hours of cooling": begun where the rule begins. */
const afterSoLong = (turn: Turn, { probe, seconds: passed }: Asked['facts']) =>
  probe === null || passed === null
    ? []
    : [
        { fahrenheit: coolingFrom(), at: fromNow(turn.clock, -passed) },
        { fahrenheit: inOtherScale(inScale(turn, probe), 'fahrenheit'), at: turn.clock.now },
      ];

/** How fast cooked food must get cold; and whether it did, where readings or the whole time were told. */
export const cooling = ({ facts, turn }: Pick<Asked, 'facts' | 'turn'>): Reply => {
  const { stages, source } = coolingStages();
  const whole = stages.at(-1)?.minutes ?? 0;
  const told = stages.map(({ minutes, toF }) =>
    say('guidance-cool-stage', {
      time: seconds(minutes * 60),
      to: { kind: 'temperature', degrees: toF, scale: 'fahrenheit' },
    }),
  );
  const came = cooledSoFar(
    facts.readings.length > 0
      ? inOrder(
          facts.readings.map((one) => ({
            fahrenheit: inOtherScale(inScale(turn, one), 'fahrenheit'),
            at: at(turn, one.time),
          })),
        )
      : afterSoLong(turn, facts),
  );
  const slow = came === 'too-slow' || (facts.seconds !== null && facts.seconds > whole * 60);
  const all = say('guidance-cool', { stages: { kind: 'list', of: told, or: false } });
  const judged = slow ? say('guidance-cool-late') : came === 'in-time' ? say('guidance-cool-so-far') : null;
  return {
    parts: [judged ?? all],
    details: judged ? [all] : [],
    sources: sourcesOf([{ source }]),
  };
};
