/** Food in the fridge, opened, or thawed: the earliest of its limits decides. */
import type { PlainDate } from '../../terms/dates.js';
import type { Verdict } from '../api.js';
import { countsFrom } from '../clock.js';
import type { ReasonCode } from '../codes.js';
import { dayNumber, spanEnds, useSoonFrom } from '../days.js';
import { eggsByDate, regionFacts } from '../regions/index.js';
import { anchorOf, rowUsed } from '../storage.js';
import { cite } from '../tables.js';
import {
  days,
  draftOf,
  onDay,
  reason,
  SEVERITY,
  spanArgs,
  type Case,
  type Finding,
  type Limit,
  type Rule,
} from './case.js';
import { asSealed, frozenAfterUseBy, overBeforeFreezing } from './frozen.js';
import { thawedLimits } from './thawed.js';
import { undated } from './undated.js';

const verdictAt = (today: number, limit: Limit): Verdict => {
  if (today > limit.high) return 'throw-out';
  if (today === limit.high) return 'last-day';
  return today >= useSoonFrom(limit) ? 'use-soon' : 'fine';
};

/** Limits in hours, and days that are meant to the hour: where hours are known, they decide. */
const byHours = ({ subject }: Case, before: Finding): Finding => {
  const work = draftOf(before);
  const row = work.row;
  const limit = row?.limit ?? null;
  if (subject.hours === null || row === null || limit === null) return work;
  const days = limit.unit === 'days' && regionFacts(row.region).daysToTheHour ? limit.high * 24 : null;
  const hours = limit.unit === 'hours' ? limit.high : days;
  if (hours === null) return work;
  if (subject.hours > hours) {
    work.verdict = 'throw-out';
    const byDays = work.reasons.findIndex((each) => /^(within-guidance|use-up|last-day)$/.test(each.code));
    if (byDays !== -1) work.reasons.splice(byDays, 1);
    work.reasons.unshift(
      reason(
        'over-limit-hours',
        { ...spanArgs(row), hours: subject.hours, limit: { kind: 'duration', seconds: hours * 3600 } },
        row.source,
      ),
    );
  } else if (work.verdict === 'throw-out') {
    work.verdict = 'last-day';
  }
  return work;
};

/** Eggs that are kept uncooled go by their best-before, and two days more cooked through. */
const eggsPastDate = (bestBefore: PlainDate, { today, tables }: Case, before: Finding): Finding => {
  const work = draftOf(before);
  const rule = tables.timeRules.ukEggs;
  const best = dayNumber(bestBefore);
  const last = best + rule.daysAfterBestBefore;
  work.useSoon = best - 1;
  work.last = last;
  work.quality = { from: best, to: best };
  work.verdict =
    today.number > last
      ? 'throw-out'
      : today.number > best
        ? 'cook-thoroughly'
        : today.number >= best - 1
          ? 'use-soon'
          : 'fine';
  work.reasons.push(
    reason(
      'best-before-eggs',
      { day: onDay(best), days: days(rule.daysAfterBestBefore) },
      cite(tables, rule),
    ),
  );
  return work;
};

/**
 * A use-by that tells of quality and not of safety: the United States' on what was bought, but for infant formula
 * (21 CFR 107.20, FSIS). On what somebody cooked it is the cook's own word, and holds.
 */
const isQualityDate = ({ kind, region, subject }: Case): boolean =>
  !regionFacts(region).useByIsSafety && !kind.id.startsWith('formula') && !subject.homeMade;

export const cold: Rule = (of, before) => {
  const { subject, kind, chosen, clock, region, today, tables } = of;
  const work = draftOf(before);
  const { dates } = subject;
  const limits: Limit[] = [];
  if (chosen !== null) work.row = rowUsed(chosen.row, 'keeping', region, tables);

  if (clock.phase === 'thawed') {
    if (regionFacts(region).useByIsSafety && frozenAfterUseBy(subject)) {
      work.verdict = 'throw-out';
      work.reasons.push(
        reason(
          'use-by-passed',
          { day: onDay(dayNumber(dates.useBy ?? '')) },
          cite(tables, tables.timeRules.ukUseByFreeze),
        ),
      );
      return work;
    }
    const over = overBeforeFreezing(of);
    if (over !== null) {
      work.verdict = 'throw-out';
      work.reasons.push(reason('over-before-freezing', { over: days(over) }, work.row?.source ?? null));
      return work;
    }
    limits.push(...thawedLimits(of));
    if (limits.length === 0 && (clock.since === null || clock.thawedOn === null)) {
      work.verdict = 'unknown';
      work.reasons.push(reason('thawed-undated'), reason('date-unknown'));
      return work;
    }
  } else if (chosen?.row.fridge !== null && chosen?.row.fridge !== undefined) {
    const from = countsFrom(clock, anchorOf(chosen, clock));
    if (from !== null) limits.push({ ...spanEnds(from, chosen.row.fridge), chosen, reason: null });
  }
  const sealed = asSealed(of);
  const began = sealed === null ? null : countsFrom(clock, clock.startedOn);
  if (sealed !== null && sealed.row.fridge !== null && began !== null)
    limits.push({ ...spanEnds(began, sealed.row.fridge), chosen: sealed, reason: null });
  if (subject.withinDaysOfOpening !== null && clock.openedOn !== null) {
    const high = dayNumber(clock.openedOn) + subject.withinDaysOfOpening;
    limits.push({
      low: high,
      high,
      chosen: null,
      reason: reason('within-days-of-opening', { days: days(subject.withinDaysOfOpening), day: onDay(high) }),
    });
  }
  // Frozen and thawed on one day it was hardly frozen: its use-by is put off by days in the freezer only.
  const frozenInTime =
    clock.frozenOn !== null &&
    clock.frozenOn !== clock.thawedOn &&
    dates.useBy !== undefined &&
    clock.frozenOn <= dates.useBy;
  // Where the maker's date is about quality, the days guidance counts decide; with none counted, nothing else tells
  // how old it is, and in doubt it is thrown out.
  const quality = isQualityDate(of);
  if (dates.useBy !== undefined && !frozenInTime && !(quality && limits.length > 0)) {
    const high = dayNumber(dates.useBy);
    const meaning = tables.packageDates.find((row) => row.id === `${region}-use-by`);
    const code =
      today.number > high ? 'use-by-passed' : today.number === high ? 'use-by-today' : 'use-by-sooner';
    limits.push({
      low: high,
      high,
      chosen: null,
      reason: reason(code, { day: onDay(high) }, meaning === undefined ? null : cite(tables, meaning)),
    });
  }
  if (eggsByDate(kind, region) && dates.bestBefore !== undefined) {
    return eggsPastDate(dates.bestBefore, of, work);
  }

  const soonest = limits.reduce<Limit | null>((a, b) => (a === null || b.high < a.high ? b : a), null);
  if (soonest === null) {
    return undated(of, work);
  }
  work.verdict = verdictAt(today.number, soonest);
  work.useSoon = useSoonFrom(soonest);
  work.last = soonest.high;
  if (soonest.chosen !== null) work.row = rowUsed(soonest.chosen.row, 'keeping', region, tables);
  const printed = soonest.chosen === null;
  if (printed && soonest.reason !== null) work.reasons.push(soonest.reason);
  if (soonest.chosen !== null && work.row !== null) {
    const from = countsFrom(clock, anchorOf(soonest.chosen, clock));
    // After thawing the thawing row counts from the day it thawed; else all fridge days count.
    const since = soonest.reason !== null && /thaw/.test(soonest.reason.code) ? clock.thawedOn : null;
    const age =
      since === null
        ? from === null
          ? (work.used ?? 0)
          : today.number - from
        : today.number - dayNumber(since);
    const code: ReasonCode =
      work.verdict === 'throw-out'
        ? 'over-limit'
        : work.verdict === 'last-day'
          ? 'last-day'
          : work.verdict === 'use-soon'
            ? 'use-up'
            : 'within-guidance';
    if (clock.phase !== 'thawed') work.used = age;
    work.reasons.push(
      reason(
        code,
        {
          ...spanArgs(work.row),
          age: days(age),
          left: days(Math.max(0, soonest.high - today.number)),
          over: days(Math.max(0, today.number - soonest.high)),
        },
        work.row.source,
      ),
    );
    if (soonest.reason !== null) work.reasons.push(soonest.reason);
  }
  if (quality && dates.useBy !== undefined && !frozenInTime) {
    const high = dayNumber(dates.useBy);
    if (!printed) {
      // Until then it is the day to use it by; past it, the days of the chart go on, and it is to be used soon.
      if (today.number >= high - 1 && SEVERITY[work.verdict] < SEVERITY['use-soon'])
        work.verdict = 'use-soon';
      if (high >= today.number && soonest.high > high) {
        work.last = high;
        work.useSoon = Math.min(useSoonFrom(soonest), high - 1);
      }
      work.quality ??= { from: high, to: high };
    }
    const meaning = tables.packageDates.find((row) => row.id === `${region}-use-by`);
    const said = reason(
      'use-by-quality',
      { day: onDay(high) },
      meaning === undefined ? null : cite(tables, meaning),
    );
    // What it is past is told first; of a day to come the days of the chart are.
    if (today.number === high && !printed)
      work.reasons.unshift(reason('use-by-today', { day: onDay(high) }), said);
    else if (today.number > high && !printed && work.verdict !== 'throw-out') work.reasons.unshift(said);
    else work.reasons.push(said);
  }
  return byHours(of, work);
};
