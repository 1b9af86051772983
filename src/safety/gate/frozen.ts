/** Frozen food: its times are of quality, and freezing gives no days back. */
import type { ClockState } from '../api.js';
import { frozenEarlier } from '../clock.js';
import { dayNumber, spanEnds } from '../days.js';
import { regionFacts } from '../regions/index.js';
import { anchorOf, chooseRow, rowUsed, type Chosen } from '../storage.js';
import { cite } from '../tables.js';
import { days, draftOf, onDay, reason, spanArgs, type Case, type Rule, type Subject } from './case.js';

/** Opening gives no days back: what would be past unopened is past, by this row. */
export const asSealed = ({ chosen, kind, region, subject, tables }: Case): Chosen | null =>
  chosen?.fromOpening ? chooseRow(kind, region, { ...subject, opened: false }, tables) : null;

/** Used up before it was frozen: freezing does not give days back. */
export const overBeforeFreezing = (of: Case): number | null => {
  const over = [of.chosen, asSealed(of)].flatMap((row) => overBy(row, of.clock) ?? []);
  return over.length === 0 ? null : Math.max(...over);
};

const overBy = (chosen: Chosen | null, clock: ClockState): number | null => {
  const first = chosen === null ? null : anchorOf(chosen, clock);
  const span = chosen?.row.fridge ?? null;
  if (span === null || first === null || clock.frozenOn === null) return null;
  const start = dayNumber(first);
  const earlier = frozenEarlier(clock, start);
  // Frozen a second time, and when it thawed is not known: only the days since its last thaw are known to be fridge days.
  const since =
    earlier === null && clock.thawedOn !== null && clock.thawedOn < clock.frozenOn
      ? Math.max(start, dayNumber(clock.thawedOn))
      : start + (earlier ?? 0);
  const over = dayNumber(clock.frozenOn) - spanEnds(since, span).high;
  return over > 0 ? over : null;
};

export const frozenAfterUseBy = (subject: Subject): boolean =>
  subject.dates.useBy !== undefined &&
  subject.dates.frozen !== undefined &&
  subject.dates.frozen > subject.dates.useBy;

export const frozen: Rule = (of, before) => {
  const { subject, chosen, clock, region, today, tables } = of;
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
  const over = overBeforeFreezing(of);
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
