/** "The soup has been out since noon." */
import type { LeftOutAnswer, LeftOutQuestion, Reason, Temperature } from './api.js';
import { leftOutLimit } from './left-out-limit.js';
import { kindOf, matchFood } from './match.js';
import { regionsFor } from './regions/index.js';
import { safetyTables } from './tables.js';
import { isAbove } from './temperature.js';

const MS_PER_MINUTE = 60_000;
const duration = (minutes: number): { readonly kind: 'duration'; readonly seconds: number } => ({
  kind: 'duration',
  seconds: minutes * 60,
});

/** Hotter than the limit above which guidance allows one hour only. */
export const isHot = (air: Temperature, tables = safetyTables()): boolean =>
  tables.timeRules.leftOut.some(
    ({ strictlyAboveF }) => strictlyAboveF !== null && isAbove(air, strictlyAboveF),
  );

/**
 * Whether food left out may still go back. More than two hours (US: more than one above ninety
 * degrees Fahrenheit): throw out. UK: two hours, cooked rice one.
 * Unknown beginnings are unknown, never guessed.
 */
export const leftOut = (question: LeftOutQuestion, tables = safetyTables()): LeftOutAnswer => {
  const matchOf = (food: string) =>
    matchFood(food, { where: 'counter', state: question.state ?? null }, tables);
  const match = matchOf(question.food);
  // "Cake with cream" keeps no longer than the cream.
  const kinds = [question.food, ...question.food.split(/ with /).slice(1)].map((food) =>
    kindOf(matchOf(food), tables),
  );
  const hot =
    question.hot === true ||
    (question.air !== null && question.air !== undefined && isHot(question.air, tables));
  const limits = regionsFor(question.region)
    .flatMap((region) => kinds.map((kind) => leftOutLimit(kind, region, hot, tables)))
    .filter((limit) => limit !== null)
    .sort((a, b) => a.minutes - b.minutes);
  const [limit] = limits;
  const base = { match, limitMinutes: limit?.minutes ?? 0 };
  if (limit === undefined) {
    return {
      ...base,
      verdict: 'no-figure',
      minutesOut: null,
      backBy: null,
      reasons: [{ code: 'shelf-stable', args: {}, source: null }],
    };
  }
  // The four hours for human milk hold up to seventy-seven degrees; above that guidance held says nothing.
  const tooWarm = match.family === 'human-milk' && question.air && isAbove(question.air, 77);
  const reasons: Reason[] = [];
  if (hot && limit.minutes === 60) reasons.push({ code: 'left-out-hot', args: {}, source: limit.source });
  if (question.region === null) reasons.push({ code: 'stricter-region', args: {}, source: null });
  if (match.sure === 'unknown')
    reasons.push({ code: 'general-answer', args: { name: match.name }, source: null });
  if (question.since === null || tooWarm) {
    return {
      ...base,
      verdict: 'unknown',
      minutesOut: null,
      backBy: null,
      reasons: [
        { code: 'left-out-unknown', args: { limit: duration(limit.minutes) }, source: limit.source },
        ...reasons,
      ],
    };
  }
  const since = Date.parse(question.since);
  const before = question.minutesBefore ?? 0;
  const minutes = before + (Date.parse(question.clock.now) - since) / MS_PER_MINUTE;
  const over = minutes > limit.minutes;
  return {
    ...base,
    verdict: over ? 'throw-out' : 'refrigerate-now',
    minutesOut: Math.floor(minutes),
    backBy: new Date(since + Math.max(0, limit.minutes - before) * MS_PER_MINUTE).toISOString(),
    reasons: [
      {
        code: over ? 'left-out-over' : 'left-out-within',
        args: { minutes: duration(Math.floor(minutes)), limit: duration(limit.minutes) },
        source: limit.source,
      },
      ...reasons,
    ],
  };
};
