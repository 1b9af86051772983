/** Cold food whose age nobody told, or for which no table has a figure. */
import { dayNumber, spanEnds } from '../days.js';
import { regionFacts } from '../regions/index.js';
import { days, draftOf, reason, spanArgs, type Rule } from './case.js';

export const undated: Rule = ({ subject, kind, chosen, clock, region, today }, before) => {
  const work = draftOf(before);
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
    return work;
  }
  if (subject.ageless && work.row !== null) {
    work.verdict = 'how-long';
    work.reasons.push(reason('keeps', spanArgs(work.row), work.row.source));
    return work;
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
      return work;
    }
  }
  work.verdict = 'unknown';
  work.reasons.push(reason('date-unknown'));
  if (work.row !== null) work.reasons.push(reason('keeps', spanArgs(work.row), work.row.source));
  return work;
};
