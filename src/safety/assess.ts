/**
 * What guidance says of one food: the deciding date, the row it rests on, and why.
 *
 * Conventions (ours, not an agency's): the day it was put away is day nought and days are the
 * household's calendar days. Below the low end of a range: fine; from there on: use it up; on the
 * high end: last day; after it: throw out. A single limit warns the day before. Freezer times are
 * quality only. What is not known is said to be unknown.
 */
import type { FoodKind } from '../../shared/tables/schema.js';
import type { Item, Region } from '../kitchen/model.js';
import type { Instant, PlainDate } from '../terms/dates.js';
import type {
  Assessment,
  Caution,
  Citation,
  ClockState,
  CookState,
  Reason,
  RowUsed,
  Span,
  Verdict,
  Where,
} from './api.js';
import { caution, kindCautions } from './cautions.js';
import { clockOf, countsFrom, daysUsed } from './clock.js';
import type { ReasonCode } from './codes.js';
import { dayNumber, plainDate, spanEnds, useSoonFrom } from './days.js';
import type { Exposure } from './exposure.js';
import { leftOutLimit } from './left-out-limit.js';
import { kindOf, matchFood } from './match.js';
import { eggsByDate, regionFacts } from './regions/index.js';
import { anchorOf, chooseRow, rowUsed } from './storage.js';
import type { Chosen } from './storage.js';
import { asChartRow, spanDays, storageDataFor, type Cell } from './storage-data.js';
import { cite } from './tables.js';
import type { SafetyTables } from './tables.js';

/** One food, as far as it is known. `Item`s and plain questions are both brought to this. */
export interface Subject {
  readonly itemId: string | null;
  readonly name: string;
  readonly dates: Item['dates'];
  readonly where: Where | null;
  readonly state: CookState;
  readonly homeMade: boolean;
  /** It was opened, dated or not. */
  readonly opened: boolean;
  /** It was thawed, dated or not. */
  readonly thawed: boolean;
  readonly outSince: Instant | null;
  /** How long it stood out of the cold in all; null when it never did, as far as is known. */
  readonly exposure: Exposure | null;
  /** What the worst power cut it went through came to. */
  readonly power: 'lost' | 'doubtful' | null;
  readonly timesReheated: number;
  /** The day it was first recorded: it is at least that old. */
  readonly recordedOn: PlainDate | null;
  readonly withinDaysOfOpening: number | null;
  /** Hours it has been there, when known that closely. */
  readonly hours: number | null;
  /** No age was given: tell how long it keeps. */
  readonly ageless: boolean;
  readonly oldestPart: PlainDate | null;
  readonly atRisk: boolean;
}

/** The household's day, as both forms, and the moment. */
export interface Today {
  readonly day: PlainDate;
  readonly number: number;
  readonly now: Instant;
}

/** A day something must be used by. */
interface Limit {
  readonly low: number;
  readonly high: number;
  readonly chosen: Chosen | null;
  readonly reason: Reason | null;
}

const reason = (code: ReasonCode, args: Reason['args'] = {}, source: Reason['source'] = null): Reason => ({
  code,
  args,
  source,
});
const onDay = (number: number): { readonly kind: 'date'; readonly day: PlainDate } => ({
  kind: 'date',
  day: plainDate(number),
});
const days = (count: number): { readonly kind: 'days'; readonly days: number } => ({
  kind: 'days',
  days: count,
});

const verdictAt = (today: number, limit: Limit): Verdict => {
  if (today > limit.high) return 'throw-out';
  if (today === limit.high) return 'last-day';
  return today >= useSoonFrom(limit) ? 'use-soon' : 'fine';
};

/** How bad a verdict is; used to rank and to take the stricter of two regions. */
export const SEVERITY: Readonly<Record<Verdict, number>> = {
  'throw-out': 9,
  'refrigerate-now': 8,
  'last-day': 7,
  'cook-thoroughly': 6,
  'use-soon': 5,
  unknown: 4,
  'past-best-quality': 3,
  fine: 2,
  'how-long': 1,
  'no-figure': 0,
};

class Working {
  readonly reasons: Reason[] = [];
  verdict: Verdict = 'no-figure';
  row: RowUsed | null = null;
  useSoon: number | null = null;
  last: number | null = null;
  quality: { from: number; to: number } | null = null;
  atLeast = false;
  used: number | null = null;
}

const spanArgs = (row: RowUsed): Reason['args'] =>
  row.limit === null
    ? { food: row.food, type: row.type }
    : { food: row.food, type: row.type, low: row.limit.low, high: row.limit.high, unit: row.limit.unit };

const standingReasons = (row: RowUsed | null): Reason[] => {
  const reasons: Reason[] = [];
  if (row === null) return reasons;
  if (row.standing === 'older') reasons.push(reason('older-guidance'));
  if (row.standing === 'guide') reasons.push(reason('guide-only'));
  if (row.source.basis === 'from-memory') reasons.push(reason('memory-only'));
  if (row.note !== null && /shorter is given/.test(row.note)) reasons.push(reason('shorter-of-two'));
  return reasons;
};

/** A food that was never cold by rule: dry goods, whole fruit. Or nobody can say. */
const keepsAtRoom = (kind: FoodKind, subject: Subject): boolean => {
  if (kind.room === 'stable') return true;
  // Jam, vinegar and the like keep, open or not.
  if (kind.hazard === 'none' && !subject.homeMade) return true;
  if (kind.room === 'unknown') return !subject.homeMade && subject.state !== 'cooked';
  // A tin or carton in the pantry, unopened and not cooked at home.
  return (
    kind.room === 'tin' &&
    kind.id !== 'home-canned' &&
    subject.where !== 'counter' &&
    !subject.opened &&
    !subject.homeMade &&
    subject.state !== 'cooked'
  );
};

/** Minutes at room temperature against the limit: over it, throw out; within it and still out, back to the fridge now. */
const judgeMinutes = (
  minutes: number,
  limit: { readonly minutes: number; readonly source: Citation },
  work: Working,
  { out, atLeast }: { readonly out: boolean; readonly atLeast: boolean } = { out: true, atLeast: false },
): void => {
  const over = minutes > limit.minutes;
  if (!over && !out) return;
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
};

/** How long it is at its best on a shelf, by the USDA's storage data; false where that has no row for it. */
const judgePantry = (
  subject: Subject,
  clock: ClockState,
  today: Today,
  work: Working,
  tables: SafetyTables,
): boolean => {
  const cell: Cell = subject.opened ? 'pantry_opened' : 'pantry';
  const found = storageDataFor(subject.name, cell, tables);
  if (found === null) return false;
  const row = asChartRow(found, cell);
  work.row = rowUsed(row, 'shelf', 'us', tables);
  const since = subject.opened ? (clock.openedOn ?? clock.startedOn) : clock.startedOn;
  if (since === null) {
    work.verdict = subject.ageless ? 'how-long' : 'no-figure';
    work.reasons.push(
      subject.ageless
        ? reason('keeps', spanArgs(work.row), work.row.source)
        : reason('pantry-quality', spanArgs(work.row), work.row.source),
      reason(subject.opened ? 'opened-label-decides' : 'label-decides'),
    );
    return true;
  }
  const ends = spanEnds(dayNumber(since), row.fridge!);
  work.quality = { from: ends.low, to: ends.high };
  work.verdict = today.number > ends.high ? 'past-best-quality' : 'fine';
  work.reasons.push(
    reason('pantry-quality', spanArgs(work.row), work.row.source),
    reason(subject.opened ? 'opened-label-decides' : 'label-decides'),
  );
  return true;
};

const judgeRoom = (
  subject: Subject,
  kind: FoodKind,
  clock: ClockState,
  region: Region,
  today: Today,
  work: Working,
  tables: SafetyTables,
): void => {
  if (keepsAtRoom(kind, subject)) {
    work.verdict = 'no-figure';
    if (regionFacts(region).storageData && judgePantry(subject, clock, today, work, tables)) return;
    // Soup or milk in the pantry is a tin or carton, or it is spoiled. A record was put there by its cook;
    // a mere question leaves it open.
    const mustBeSealed =
      kind.room === 'tin' && !/^(tin|ham-canned|formula)/.test(kind.id) && /high|medium/.test(kind.hazard);
    if (mustBeSealed) work.reasons.push(reason('sealed-only'));
    if (mustBeSealed && subject.itemId === null) work.verdict = 'unknown';
    // That it keeps at room temperature is not known of a thing no table has.
    if (kind.id !== 'general')
      work.reasons.push(
        /^(whole-|mushrooms)/.test(kind.id) ? reason('produce-no-figure') : reason('shelf-stable'),
      );
    work.reasons.push(reason(subject.opened ? 'opened-label-decides' : 'label-decides'));
    return;
  }
  const preserved = kind.hazard === 'none' && subject.homeMade;
  if (preserved || (kind.id === 'home-canned' && !subject.opened)) {
    work.verdict = 'unknown';
    work.reasons.push(reason('home-canned'));
    return;
  }
  const limit = leftOutLimit(kind, region, false, tables);
  if (subject.hours !== null && limit !== null) {
    judgeMinutes(subject.hours * 60, limit, work);
    return;
  }
  const from = clock.startedOn === null ? null : dayNumber(clock.openedOn ?? clock.startedOn);
  if (from !== null && today.number > from) {
    work.verdict = 'throw-out';
    work.reasons.push(reason('room-temperature'));
  } else if (subject.ageless || from !== null || subject.hours !== null) {
    work.verdict = subject.ageless ? 'how-long' : 'unknown';
    work.reasons.push(reason('room-temperature'));
    if (limit !== null) {
      work.reasons.push(
        reason(
          'left-out-unknown',
          { limit: { kind: 'duration', seconds: limit.minutes * 60 } },
          limit.source,
        ),
      );
    }
  } else {
    work.verdict = 'unknown';
    work.reasons.push(reason('room-temperature'), reason('date-unknown'));
  }
};

/** Used up before it was frozen: freezing does not give days back. */
const overBeforeFreezing = (chosen: Chosen | null, clock: ClockState): number | null => {
  const first = chosen === null ? null : anchorOf(chosen, clock);
  const span = chosen?.row.fridge ?? null;
  if (span === null || first === null || clock.frozenOn === null) return null;
  // Frozen a second time: only the days since it thawed are known to be fridge days.
  const again = clock.thawedOn !== null && clock.thawedOn < clock.frozenOn;
  const anchor = again && clock.thawedOn !== null && clock.thawedOn > first ? clock.thawedOn : first;
  const over = dayNumber(clock.frozenOn) - spanEnds(dayNumber(anchor), span).high;
  return over > 0 ? over : null;
};

const frozenAfterUseBy = (subject: Subject): boolean =>
  subject.dates.useBy !== undefined &&
  subject.dates.frozen !== undefined &&
  subject.dates.frozen > subject.dates.useBy;

const judgeFrozen = (
  subject: Subject,
  chosen: Chosen | null,
  clock: ClockState,
  region: Region,
  today: Today,
  work: Working,
  tables: SafetyTables,
): void => {
  const row = chosen?.row ?? null;
  work.row = row === null ? null : rowUsed(row, 'quality', region, tables);
  if (regionFacts(region).useByIsSafety && frozenAfterUseBy(subject)) {
    work.verdict = 'throw-out';
    work.reasons.push(
      reason(
        'use-by-passed',
        { day: onDay(dayNumber(subject.dates.useBy ?? '')) },
        cite(tables, tables.timeRules.ukUseByFreeze),
      ),
    );
    return;
  }
  const over = overBeforeFreezing(chosen, clock);
  if (over !== null && row !== null) {
    work.verdict = 'throw-out';
    work.row = rowUsed(row, 'keeping', region, tables);
    work.reasons.push(reason('over-before-freezing', { over: days(over) }, work.row.source));
    return;
  }
  if (row?.freezer === null || row?.freezer === undefined) {
    const forbidden =
      row?.freezer_note !== null &&
      row?.freezer_note !== undefined &&
      /not freeze|not recommended|never|keep frozen/.test(row.freezer_note);
    work.verdict = 'no-figure';
    work.reasons.push(
      forbidden
        ? reason(
            'not-for-freezing',
            { food: row?.food ?? '', type: row?.type ?? '' },
            work.row?.source ?? null,
          )
        : reason('frozen-keeps'),
    );
    if (!forbidden) work.reasons.push(reason(regionFacts(region).noFigure));
    return;
  }
  const since = clock.frozenOn ?? clock.startedOn;
  if (since === null) {
    work.verdict = subject.ageless ? 'how-long' : 'unknown';
    work.reasons.push(
      ...(subject.ageless && work.row !== null
        ? [reason('keeps', spanArgs(work.row), work.row.source)]
        : [reason('frozen-unknown-date')]),
      reason('frozen-keeps'),
    );
    return;
  }
  const ends = spanEnds(dayNumber(since), row.freezer);
  work.quality = { from: ends.low, to: ends.high };
  const past = today.number > ends.high;
  work.verdict = past ? 'past-best-quality' : 'fine';
  work.reasons.push(
    reason(
      past ? 'past-quality' : 'frozen-quality',
      { from: onDay(ends.low), to: onDay(ends.high) },
      work.row?.source ?? null,
    ),
    reason('frozen-keeps'),
  );
};

/** The limits that thawed food has; the earliest holds. */
const thawedLimits = (
  subject: Subject,
  kind: FoodKind,
  chosen: Chosen | null,
  clock: ClockState,
  region: Region,
  tables: SafetyTables,
): Limit[] => {
  if (clock.thawedOn === null) return [];
  const thawed = dayNumber(clock.thawedOn);
  const after = (id: string): Limit[] => {
    const row = tables.storage[region].get(id);
    if (row?.fridge === null || row?.fridge === undefined) return [];
    const source = cite(tables, row);
    return [
      {
        ...spanEnds(thawed, row.fridge),
        chosen: { row, fromOpening: false, general: false },
        reason: reason(
          'after-thaw',
          { low: row.fridge.low, high: row.fridge.high, unit: row.fridge.unit, thawed: onDay(thawed) },
          source,
        ),
      },
    ];
  };
  const { thawedRow } = regionFacts(region);
  if (thawedRow !== null) return after(thawedRow);
  const limits: Limit[] = [];
  const anchor = chosen === null ? null : anchorOf(chosen, clock);
  const from = countsFrom(clock, anchor);
  if (
    chosen?.row.fridge !== null &&
    chosen?.row.fridge !== undefined &&
    from !== null &&
    chosen.row.counts_from !== 'thawed'
  ) {
    limits.push({
      ...spanEnds(from, chosen.row.fridge),
      chosen,
      reason: reason(
        'days-used-before-freezing',
        { days: days(thawed - from) },
        cite(tables, tables.timeRules.fridgeAfterFreezing),
      ),
    });
  }
  if (chosen?.row.counts_from === 'thawed' && chosen.row.fridge !== null) {
    const { row } = chosen;
    const { low, high, unit } = row.fridge!;
    limits.push({
      ...spanEnds(thawed, row.fridge!),
      chosen,
      reason: reason('after-thaw', { low, high, unit, thawed: onDay(thawed) }, cite(tables, row)),
    });
  }
  if (kind.after_thaw !== null && kind.after_thaw !== 'eggs-frozen-in-shell')
    limits.push(...after(kind.after_thaw));
  if (kind.after_thaw === 'eggs-frozen-in-shell' && clock.frozenOn !== null)
    limits.push(...after(kind.after_thaw));
  if (limits.length === 0 && kind.room !== 'stable') {
    limits.push(
      ...after('after-thaw-undated').map((limit) => ({
        ...limit,
        reason: reason('thawed-undated', { thawed: onDay(thawed) }, limit.reason?.source ?? null),
      })),
    );
  }
  return limits;
};

const judgeCold = (
  subject: Subject,
  kind: FoodKind,
  chosen: Chosen | null,
  clock: ClockState,
  region: Region,
  today: Today,
  work: Working,
  tables: SafetyTables,
): void => {
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
      return;
    }
    const over = overBeforeFreezing(chosen, clock);
    if (over !== null) {
      work.verdict = 'throw-out';
      work.reasons.push(reason('over-before-freezing', { over: days(over) }, work.row?.source ?? null));
      return;
    }
    limits.push(...thawedLimits(subject, kind, chosen, clock, region, tables));
    if (limits.length === 0 && (clock.since === null || clock.thawedOn === null)) {
      work.verdict = 'unknown';
      work.reasons.push(reason('thawed-undated'), reason('date-unknown'));
      return;
    }
  } else if (chosen?.row.fridge !== null && chosen?.row.fridge !== undefined) {
    const from = countsFrom(clock, anchorOf(chosen, clock));
    if (from !== null) limits.push({ ...spanEnds(from, chosen.row.fridge), chosen, reason: null });
  }
  if (subject.withinDaysOfOpening !== null && clock.openedOn !== null) {
    const high = dayNumber(clock.openedOn) + subject.withinDaysOfOpening;
    limits.push({
      low: high,
      high,
      chosen: null,
      reason: reason('within-days-of-opening', { days: days(subject.withinDaysOfOpening), day: onDay(high) }),
    });
  }
  const frozenInTime = clock.frozenOn !== null && dates.useBy !== undefined && clock.frozenOn <= dates.useBy;
  if (dates.useBy !== undefined && !frozenInTime) {
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
    judgeUkEggs(dates.bestBefore, today, work, tables);
    return;
  }

  const soonest = limits.reduce<Limit | null>((a, b) => (a === null || b.high < a.high ? b : a), null);
  if (soonest === null) {
    judgeWithoutLimit(subject, kind, chosen, clock, region, today, work);
    return;
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
  if (
    !regionFacts(region).useByIsSafety &&
    dates.useBy !== undefined &&
    !frozenInTime &&
    !kind.id.startsWith('formula')
  ) {
    const meaning = tables.packageDates.find((row) => row.id === 'us-use-by');
    work.reasons.push(
      reason(
        'use-by-quality',
        { day: onDay(dayNumber(dates.useBy)) },
        meaning === undefined ? null : cite(tables, meaning),
      ),
    );
  }
  judgeHours(subject, work);
};

/** Limits in hours, and the UK's two days (forty-eight hours): where hours are known, they decide. */
const judgeHours = (subject: Subject, work: Working): void => {
  const row = work.row;
  const limit = row?.limit ?? null;
  if (subject.hours === null || row === null || limit === null) return;
  const days = limit.unit === 'days' && regionFacts(row.region).daysToTheHour ? limit.high * 24 : null;
  const hours = limit.unit === 'hours' ? limit.high : days;
  if (hours === null) return;
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
};

const judgeUkEggs = (bestBefore: PlainDate, today: Today, work: Working, tables: SafetyTables): void => {
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
};

const judgeWithoutLimit = (
  subject: Subject,
  kind: FoodKind,
  chosen: Chosen | null,
  clock: ClockState,
  region: Region,
  today: Today,
  work: Working,
): void => {
  const span = chosen?.row.fridge ?? null;
  if (span === null) {
    work.verdict = 'no-figure';
    if (kind.id === 'home-canned') {
      work.verdict = 'unknown';
      work.reasons.push(reason('home-canned'));
    } else if (regionFacts(region).noFigure !== 'label-decides')
      work.reasons.push(reason(regionFacts(region).noFigure, {}, work.row?.source ?? null));
    else if (/^(whole-|mushrooms)/.test(kind.id)) work.reasons.push(reason('produce-no-figure'));
    else if (kind.id.startsWith('formula'))
      work.reasons.push(reason('infant-food', {}, work.row?.source ?? null));
    work.reasons.push(
      reason(clock.openedOn !== null || subject.opened ? 'opened-label-decides' : 'label-decides'),
    );
    return;
  }
  if (subject.ageless && work.row !== null) {
    work.verdict = 'how-long';
    work.reasons.push(reason('keeps', spanArgs(work.row), work.row.source));
    return;
  }
  // Nobody gave a date. It is at least as old as its record.
  if (subject.recordedOn !== null && work.row !== null) {
    const recorded = dayNumber(subject.recordedOn);
    work.used = today.number - recorded;
    work.atLeast = true;
    const ends = spanEnds(recorded, span);
    if (today.number > ends.high) {
      work.verdict = 'throw-out';
      work.reasons.push(
        reason('at-least-days', { days: days(work.used) }),
        reason(
          'over-limit',
          {
            ...spanArgs(work.row),
            age: days(work.used),
            left: days(0),
            over: days(today.number - ends.high),
          },
          work.row.source,
        ),
      );
      return;
    }
  }
  work.verdict = 'unknown';
  work.reasons.push(reason('date-unknown'));
  if (work.row !== null) work.reasons.push(reason('keeps', spanArgs(work.row), work.row.source));
};

const judgeBestBefore = (
  subject: Subject,
  kind: FoodKind,
  region: Region,
  today: Today,
  work: Working,
  tables: SafetyTables,
): void => {
  const { bestBefore } = subject.dates;
  if (bestBefore === undefined || eggsByDate(kind, region)) return;
  const best = dayNumber(bestBefore);
  work.quality ??= { from: best, to: best };
  if (today.number <= best) {
    // Open, the label's days after opening count, which nobody noted.
    if (work.verdict === 'no-figure' && (!subject.opened || kind.room === 'stable')) work.verdict = 'fine';
    return;
  }
  const meaning = tables.packageDates.find((row) => row.id === `${region}-best-before`);
  work.reasons.push(
    reason('best-before-passed', { day: onDay(best) }, meaning === undefined ? null : cite(tables, meaning)),
  );
  if (SEVERITY[work.verdict] < SEVERITY['past-best-quality']) work.verdict = 'past-best-quality';
};

const judgeExposure = (
  subject: Subject,
  kind: FoodKind,
  region: Region,
  work: Working,
  tables: SafetyTables,
): void => {
  const { exposure, power } = subject;
  const limit = leftOutLimit(kind, region, exposure?.hot === true, tables);
  // Past stays past: no cold, no freezing and no heating gives back the hours it stood out.
  if (exposure !== null && limit !== null)
    judgeMinutes(exposure.minutes, limit, work, { out: exposure.now, atLeast: exposure.atLeast });
  if (power === 'lost') {
    work.verdict = 'throw-out';
    work.reasons.unshift(reason('power-lost', {}, cite(tables, tables.powerRules.discardAbove)));
  } else if (power === 'doubtful' && work.verdict !== 'throw-out') {
    work.verdict = 'unknown';
    work.reasons.unshift(reason('power-doubtful', {}, cite(tables, tables.powerRules.discardAbove)));
  }
};

const MOULDS = /^(whole-|mushrooms|bread|hard-cheese|fruit-pie)/;

const cautionsOf = (
  subject: Subject,
  kind: FoodKind,
  region: Region,
  verdict: Verdict,
  tables: SafetyTables,
): readonly Caution[] => {
  const { always, atRisk } = kindCautions(kind, tables);
  const bad = verdict === 'throw-out' || verdict === 'unknown';
  const botulism = bad && (kind.hazard_row === 'garlic-oil' || kind.hazard_row === 'home-canned');
  const rice = regionFacts(region).riceByItself && /rice/.test(kind.id);
  const noChances = subject.atRisk && verdict === 'last-day' && kind.hazard === 'high';
  // A bulging tin is a tin's trouble: not said of a pot of home-made soup.
  const here =
    kind.hazard_row === 'damaged-can' && (subject.where !== 'pantry' || subject.homeMade) ? [] : always;
  // What no table dates is judged by its state: common practice, and only for what goes mouldy first.
  const mould =
    kind.room === 'stable' &&
    subject.where !== 'freezer' &&
    /^(no-figure|past-best-quality|fine)$/.test(verdict)
      ? MOULDS.test(kind.id)
      : false;
  const formula = kind.id.startsWith('formula') && subject.dates.useBy !== undefined;
  if (
    !bad &&
    !rice &&
    !noChances &&
    !mould &&
    !formula &&
    here.length === 0 &&
    !(subject.atRisk && atRisk.length > 0)
  )
    return [];
  return [
    ...(botulism ? [caution('do-not-taste')] : []),
    ...here,
    ...(subject.atRisk ? atRisk : []),
    ...(noChances ? [caution('at-risk-general')] : []),
    ...(formula ? [caution('infant-use-by')] : []),
    ...(mould ? [caution('mould')] : []),
    ...(rice
      ? [caution('rice', {}, cite(tables, tables.storage.uk.get('uk-rice') ?? tables.timeRules.ukReheatOnce))]
      : []),
    ...(bad ? [caution('look-and-smell')] : []),
  ];
};

/** Tinned food that needs the fridge is open, whether or not anybody said so. */
const tinInFridge = (subject: Subject, kind: FoodKind): boolean =>
  subject.where === 'fridge' && kind.room === 'tin' && kind.us === null && /high|medium/.test(kind.hazard);

/** What decides, and what another table says of the same food, where it says otherwise. */
interface Figures {
  readonly chosen: Chosen | null;
  readonly other: { readonly span: Span; readonly table: 'chart' | 'data' } | null;
}

const sameSpan = (one: Span, other: Span): boolean =>
  one.unit === other.unit
    ? one.low === other.low && one.high === other.high
    : spanDays(one) === spanDays(other);

/**
 * The USDA's storage data beside the chart, asked by the food's name: where the chart has no figure of its own,
 * it decides; where both have one, the shorter time holds, and what the other says is told. A freezer's times
 * are of taste only: there the chart's stands, unless the chart's row is a guess or a general one.
 */
const withData = (
  subject: Subject,
  kind: FoodKind,
  chart: Chosen | null,
  opened: boolean,
  clock: ClockState,
  guessed: boolean,
  tables: SafetyTables,
): Figures => {
  const alone: Figures = { chosen: chart, other: null };
  if (subject.homeMade || subject.state === 'cooked') return alone;
  // Of whole fruit and the like its times are of taste: told when asked, and nothing is thrown out by them.
  if (kind.hazard === 'none' && !subject.ageless) return alone;
  const frozen = clock.phase === 'frozen';
  const thawed = subject.thawed && storageDataFor(subject.name, 'fridge_thawed', tables) !== null;
  const cell: Cell = frozen ? 'freezer' : thawed ? 'fridge_thawed' : opened ? 'fridge_opened' : 'fridge';
  const figure = (frozen ? chart?.row.freezer : chart?.row.fridge) ?? null;
  // Against a current chart's own row, only a row of the data that was named wholly.
  const held = figure !== null && !chart!.general && chart!.row.standing === 'current' && !guessed;
  const row = storageDataFor(subject.name, cell, tables, held);
  const own = row === null ? null : asChartRow(row, cell);
  const ours = (frozen ? own?.freezer : own?.fridge) ?? null;
  if (own === null || ours === null) return alone;
  const data: Chosen = { row: own, fromOpening: cell === 'fridge_opened', general: false };
  // That a chart says not to freeze it is a figure too.
  if (frozen && figure === null && chart !== null && chart.row.freezer_note !== null) return alone;
  if (figure === null || chart === null || chart.general) return { chosen: data, other: null };
  if (sameSpan(ours, figure)) return alone;
  const better = frozen ? guessed : spanDays(ours) < spanDays(figure);
  return better
    ? { chosen: data, other: { span: figure, table: 'chart' } }
    : { chosen: chart, other: { span: ours, table: 'data' } };
};

/** What one region's guidance says. */
export const judge = (subject: Subject, region: Region, today: Today, tables: SafetyTables): Assessment => {
  const match = matchFood(
    subject.name,
    { ...subject, bought: subject.dates.bought !== undefined && subject.dates.made === undefined },
    tables,
  );
  const kind = kindOf(match, tables);
  const part = subject.oldestPart;
  const dates = part === null ? subject.dates : { ...subject.dates, made: part };
  const clock = clockOf(dates, whereFor(subject, kind), subject);
  const opened = subject.opened || clock.openedOn !== null || tinInFridge(subject, kind);
  const chart = chooseRow(kind, region, { opened, homeMade: subject.homeMade }, tables);
  const guessed = match.sure !== 'exact' || match.notes.includes('several-fit');
  const { chosen, other } = regionFacts(region).storageData
    ? withData(subject, kind, chart, opened, clock, guessed, tables)
    : { chosen: chart, other: null };
  const work = new Working();
  work.used = daysUsed(clock, today.number);

  const future =
    clock.startedOn !== null && dayNumber(clock.startedOn) > today.number ? clock.startedOn : null;
  if (future !== null) {
    work.verdict = 'unknown';
    work.used = null;
    work.reasons.push(reason('future-date', { day: { kind: 'date', day: future } }));
  } else if (clock.phase === 'room' && !eggsByDate(kind, region))
    judgeRoom(subject, kind, clock, region, today, work, tables);
  else if (clock.phase === 'frozen') judgeFrozen(subject, chosen, clock, region, today, work, tables);
  else
    judgeCold(
      part === null ? subject : { ...subject, dates },
      kind,
      chosen,
      clock,
      region,
      today,
      work,
      tables,
    );
  judgeBestBefore(subject, kind, region, today, work, tables);
  judgeExposure(subject, kind, region, work, tables);

  if (other !== null) work.reasons.push(reason('other-table', { ...other.span, table: other.table }));
  if (part !== null)
    work.reasons.push(
      reason(
        'earliest-part',
        { day: { kind: 'date', day: part } },
        cite(tables, tables.timeRules.dateMarking),
      ),
    );
  if (match.sure === 'unknown' && clock.phase !== 'room') {
    const general = reason('general-answer', { name: subject.name });
    // What lets it be eaten rests on a guess at what it is, so that is told first.
    if (work.verdict === 'throw-out') work.reasons.push(general);
    else work.reasons.unshift(general);
  }
  if (
    clock.phase === 'thawed' &&
    clock.frozenOn !== null &&
    clock.thawedOn !== null &&
    regionFacts(region).clockStopped
  ) {
    work.reasons.push(
      reason(
        'clock-stopped',
        { frozen: { kind: 'date', day: clock.frozenOn }, thawed: { kind: 'date', day: clock.thawedOn } },
        cite(tables, tables.timeRules.fridgeAfterFreezing),
      ),
    );
  }
  if (match.notes.includes('raw-assumed')) work.reasons.push(reason('raw-assumed'));
  if (work.row !== null && work.row.limit !== null) work.reasons.push(...standingReasons(work.row));
  if (subject.timesReheated > 0) {
    work.reasons.push(reason('reheated-times', { times: subject.timesReheated }));
  }
  if (regionFacts(region).reheatOnce && subject.timesReheated > 0)
    work.reasons.push(reason('reheat-once', {}, cite(tables, tables.timeRules.ukReheatOnce)));
  if (clock.thawedOn !== null && clock.frozenOn !== null && clock.frozenOn > clock.thawedOn)
    work.reasons.push(reason('refrozen'));

  return {
    itemId: subject.itemId,
    name: subject.name,
    verdict: work.verdict,
    match,
    row: work.row,
    where: subject.where,
    region,
    clock,
    daysUsed: work.used,
    atLeast: work.atLeast,
    useSoonFrom: work.useSoon === null ? null : plainDate(work.useSoon),
    lastDay: work.last === null ? null : plainDate(work.last),
    daysLeft: work.last === null ? null : work.last - today.number,
    qualityUntil:
      work.quality === null ? null : { from: plainDate(work.quality.from), to: plainDate(work.quality.to) },
    hazard: kind.hazard,
    reasons: work.reasons,
    cautions: cautionsOf(subject, kind, region, work.verdict, tables),
  };
};

/** A place nobody named: what keeps on a shelf is taken to be on one, the rest in the fridge unless frozen. */
const whereFor = (subject: Subject, kind: FoodKind): Where | null => {
  if (subject.where !== null) return subject.where;
  return keepsAtRoom(kind, subject) && subject.dates.frozen === undefined ? 'pantry' : null;
};

/**
 * What guidance says, for a region or, when none was chosen, the stricter of both, and said so.
 * The two are judged apart and never mixed.
 */
export const judgeFor = (
  subject: Subject,
  region: Region | null,
  today: Today,
  tables: SafetyTables,
): Assessment => {
  if (region !== null) return judge(subject, region, today, tables);
  const [us, uk] = [judge(subject, 'us', today, tables), judge(subject, 'uk', today, tables)];
  const stricter =
    SEVERITY[us.verdict] !== SEVERITY[uk.verdict]
      ? SEVERITY[us.verdict] > SEVERITY[uk.verdict]
        ? us
        : uk
      : keepsDays(uk) < keepsDays(us)
        ? uk
        : us;
  return { ...stricter, reasons: [...stricter.reasons, reason('stricter-region')] };
};

/** For comparing: days left, or the length of the limit when no age was asked. */
const keepsDays = (found: Assessment): number => {
  if (found.daysLeft !== null) return found.daysLeft;
  return found.row?.limit === null || found.row?.limit === undefined
    ? Number.POSITIVE_INFINITY
    : spanEnds(0, found.row.limit).high;
};
