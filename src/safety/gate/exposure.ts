/** Hours out of the cold, all outings together, and power cuts: past stays past, whatever came after. */
import type { Citation } from '../api.js';
import { leftOutLimit } from '../left-out-limit.js';
import { cite } from '../tables.js';
import { draftOf, reason, SEVERITY, type Finding, type Rule } from './case.js';

/** Minutes at room temperature against the limit: over it, throw out; within it and still out, back to the fridge now. */
export const byMinutes = (
  minutes: number,
  limit: { readonly minutes: number; readonly source: Citation },
  before: Finding,
  { out, atLeast }: { readonly out: boolean; readonly atLeast: boolean } = { out: true, atLeast: false },
): Finding => {
  const work = draftOf(before);
  const over = minutes > limit.minutes;
  if (!over && !out) return before;
  work.reasons.unshift(
    reason(
      over ? (atLeast ? 'left-out-long' : 'left-out-over') : 'left-out-within',
      {
        minutes: { kind: 'duration', seconds: Math.floor(minutes) * 60 },
        limit: { kind: 'duration', seconds: limit.minutes * 60 },
      },
      limit.source,
    ),
  );
  if (over) work.verdict = 'throw-out';
  else if (SEVERITY[work.verdict] < SEVERITY['refrigerate-now']) work.verdict = 'refrigerate-now';
  return work;
};

export const exposed: Rule = ({ subject, kind, region, tables }, before) => {
  let work = draftOf(before);
  const { exposure, power } = subject;
  const limit = leftOutLimit(kind, region, exposure?.hot === true, tables);
  // Past stays past: no cold, no freezing and no heating gives back the hours it stood out.
  if (exposure !== null && limit !== null)
    work = draftOf(
      byMinutes(exposure.minutes, limit, work, { out: exposure.now, atLeast: exposure.atLeast }),
    );
  const source = cite(tables, tables.powerRules.discardAbove);
  if (power?.came === 'lost') {
    work.verdict = 'throw-out';
    work.reasons.unshift(reason('power-lost', {}, source));
  } else if (power?.came === 'doubtful' && work.verdict !== 'throw-out') {
    work.verdict = 'unknown';
    work.reasons.unshift(reason(power.now ? 'power-out' : 'power-doubtful', {}, source));
  } else if (power?.came === 'holds' && work.verdict !== 'throw-out') {
    work.reasons.push(reason('power-holds', { until: { kind: 'time', at: power.until } }, source));
  }
  return work;
};
