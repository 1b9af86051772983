/** Hours out of the cold, all outings together, and power cuts: past stays past, whatever came after. */
import type { Citation, Exposure } from '../api.js';
import { cite } from '../tables.js';
import { isAbove } from '../temperature.js';
import { draftOf, reason, SEVERITY, type Finding, type Rule } from './case.js';
import { outLimit } from './out-limit.js';

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

const isWarmer = (air: Exposure['air'], upToF: number | null | undefined): boolean =>
  air !== null && air !== undefined && upToF !== null && upToF !== undefined && isAbove(air, upToF);

export const exposed: Rule = (of, before) => {
  let work = draftOf(before);
  const { exposure, power } = of.subject;
  const { tables } = of;
  const limit = outLimit(of, exposure?.hot === true);
  // Its hours are published up to so warm; beyond that nobody says.
  const tooWarm = isWarmer(exposure?.air, limit?.upToF);
  // Past stays past: no cold, no freezing and no heating gives back the hours it stood out.
  if (tooWarm && exposure !== null && limit !== null && exposure.minutes <= limit.minutes) {
    if (SEVERITY[work.verdict] < SEVERITY.unknown) work.verdict = 'unknown';
    const allowed = { kind: 'duration', seconds: limit.minutes * 60 } as const;
    work.reasons.unshift(reason('left-out-unknown', { limit: allowed }, limit.source));
  } else if (exposure !== null && limit !== null)
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
