/** "The soup has been out since noon." */
import type { LeftOutAnswer, LeftOutQuestion, Reason } from './api.js';
import { guidanceFor, isHot, outLimitFor } from './guidance.js';
import { safetyTables } from './tables.js';

const MS_PER_MINUTE = 60_000;

/**
 * Whether food left out may still go back: what the gate says of it as it stands there. More than two hours (US: more
 * than one above ninety degrees Fahrenheit): throw out. UK: two hours, cooked rice one. Unknown beginnings are unknown,
 * never guessed.
 */
export const leftOut = (question: LeftOutQuestion, tables = safetyTables()): LeftOutAnswer => {
  const { food, region, clock, since, air = null } = question;
  const state = question.state ?? null;
  const hot = question.hot === true || (air !== null && isHot(air, tables));
  const before = question.minutesBefore ?? 0;
  const minutes =
    since === null ? null : before + (Date.parse(clock.now) - Date.parse(since)) / MS_PER_MINUTE;
  const asked = { food, where: 'counter', state, region, clock } as const;
  const limit = outLimitFor(asked, hot, tables);
  const found = guidanceFor(
    minutes === null ? asked : { ...asked, out: { minutes, hot, now: true, atLeast: false, air } },
    tables,
  );
  const { match } = found;
  if (limit === null)
    return {
      match,
      limitMinutes: 0,
      verdict: 'no-figure',
      minutesOut: null,
      backBy: null,
      reasons: [{ code: 'shelf-stable', args: {}, source: null }],
    };
  const deciding = found.reasons.find(({ code }) => code === 'left-out-over' || code === 'left-out-within');
  const unknown: Reason = {
    code: 'left-out-unknown',
    args: { limit: { kind: 'duration', seconds: limit.minutes * 60 } },
    source: limit.source,
  };
  const more: Reason[] = [
    ...(hot && limit.minutes === 60
      ? [{ code: 'left-out-hot', args: {}, source: limit.source } as const]
      : []),
    ...(region === null ? [{ code: 'stricter-region', args: {}, source: null } as const] : []),
    ...(match.sure === 'unknown'
      ? [{ code: 'general-answer', args: { name: match.name }, source: null } as const]
      : []),
  ];
  const base = { match, limitMinutes: limit.minutes, reasons: [deciding ?? unknown, ...more] };
  if (minutes === null || since === null || deciding === undefined)
    return { ...base, verdict: 'unknown', minutesOut: null, backBy: null };
  return {
    ...base,
    verdict: deciding.code === 'left-out-over' ? 'throw-out' : 'refrigerate-now',
    minutesOut: Math.floor(minutes),
    backBy: new Date(Date.parse(since) + Math.max(0, limit.minutes - before) * MS_PER_MINUTE).toISOString(),
  };
};
