/** Food at room temperature: what keeps there, what may not, and how long it is at its best on a shelf. */
import type { FoodKind } from '../../../shared/tables/schema.js';
import { dayNumber, spanEnds } from '../days.js';
import { regionFacts } from '../regions/index.js';
import { rowUsed } from '../storage.js';
import { asChartRow, storageDataFor, type Cell } from '../storage-data.js';
import { draftOf, reason, spanArgs, type Case, type Finding, type Rule, type Subject } from './case.js';
import { byMinutes } from './exposure.js';
import { outLimit } from './out-limit.js';

/** A food that was never cold by rule: dry goods, whole fruit. Or nobody can say. */
export const keepsAtRoom = (kind: FoodKind, subject: Subject): boolean => {
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

/** How long it is at its best on a shelf, by the USDA's storage data; null where that has no row for it. */
const onShelf = ({ subject, clock, region, today, tables }: Case, before: Finding): Finding | null => {
  const cell: Cell = subject.opened ? 'pantry_opened' : 'pantry';
  const found = storageDataFor(subject.name, cell, tables);
  if (found === null) return null;
  const work = draftOf(before);
  const row = asChartRow(found, cell);
  work.row = rowUsed(row, 'shelf', region, tables);
  const since = subject.opened ? (clock.openedOn ?? clock.startedOn) : clock.startedOn;
  if (since === null) {
    work.verdict = subject.ageless ? 'how-long' : 'no-figure';
    work.reasons.push(
      subject.ageless
        ? reason('keeps', spanArgs(work.row), work.row.source)
        : reason('pantry-quality', spanArgs(work.row), work.row.source),
      reason(subject.opened ? 'opened-label-decides' : 'label-decides'),
    );
    return work;
  }
  const ends = spanEnds(dayNumber(since), row.fridge!);
  work.quality = { from: ends.low, to: ends.high };
  work.verdict = today.number > ends.high ? 'past-best-quality' : 'fine';
  work.reasons.push(
    reason('pantry-quality', spanArgs(work.row), work.row.source),
    reason(subject.opened ? 'opened-label-decides' : 'label-decides'),
  );
  return work;
};

export const atRoom: Rule = (of, before) => {
  const { subject, kind, clock, region, today } = of;
  const work = draftOf(before);
  if (keepsAtRoom(kind, subject)) {
    work.verdict = 'no-figure';
    const shelf = regionFacts(region).storageData ? onShelf(of, work) : null;
    if (shelf) return shelf;
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
    return work;
  }
  const preserved = kind.hazard === 'none' && subject.homeMade;
  if (preserved || (kind.id === 'home-canned' && !subject.opened)) {
    work.verdict = 'unknown';
    work.reasons.push(reason('home-canned'));
    return work;
  }
  const limit = outLimit(of, false);
  if (subject.hours !== null && limit !== null) {
    return byMinutes(subject.hours * 60, limit, work);
  }
  // Only what a tin held counts from its opening: anything else has stood there since it came.
  const opened = kind.room === 'tin' && !subject.homeMade ? clock.openedOn : null;
  const from = clock.startedOn === null ? null : dayNumber(opened ?? clock.startedOn);
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
  return work;
};
