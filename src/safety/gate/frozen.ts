/** Frozen food: its times are of quality, and freezing gives no days back. */
import type { ClockState } from '../api.js';
import { dayNumber, spanEnds } from '../days.js';
import { regionFacts } from '../regions/index.js';
import { anchorOf, rowUsed, type Chosen } from '../storage.js';
import { cite } from '../tables.js';
import { days, draftOf, onDay, reason, spanArgs, type Rule, type Subject } from './case.js';

/** Used up before it was frozen: freezing does not give days back. */
export const overBeforeFreezing = (chosen: Chosen | null, clock: ClockState): number | null => {
  const first = chosen === null ? null : anchorOf(chosen, clock);
  const span = chosen?.row.fridge ?? null;
  if (span === null || first === null || clock.frozenOn === null) return null;
  // Frozen a second time: only the days since it thawed are known to be fridge days.
  const again = clock.thawedOn !== null && clock.thawedOn < clock.frozenOn;
  const anchor = again && clock.thawedOn !== null && clock.thawedOn > first ? clock.thawedOn : first;
  const over = dayNumber(clock.frozenOn) - spanEnds(dayNumber(anchor), span).high;
  return over > 0 ? over : null;
};

export const frozenAfterUseBy = (subject: Subject): boolean =>
  subject.dates.useBy !== undefined &&
  subject.dates.frozen !== undefined &&
  subject.dates.frozen > subject.dates.useBy;

export const frozen: Rule = ({ subject, chosen, clock, region, today, tables }, before) => {
  const work = draftOf(before);
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
    return work;
  }
  const over = overBeforeFreezing(chosen, clock);
  if (over !== null && row !== null) {
    work.verdict = 'throw-out';
    work.row = rowUsed(row, 'keeping', region, tables);
    work.reasons.push(reason('over-before-freezing', { over: days(over) }, work.row.source));
    return work;
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
    return work;
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
    return work;
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
  return work;
};
