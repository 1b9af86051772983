/** What is told beside the deciding reason: other tables, what was taken for granted, how sure the figure is. */
import type { Reason, RowUsed } from '../api.js';
import { regionFacts } from '../regions/index.js';
import { cite } from '../tables.js';
import { draftOf, reason, type Rule } from './case.js';

const standingReasons = (row: RowUsed | null): Reason[] => {
  const reasons: Reason[] = [];
  if (row === null) return reasons;
  if (row.standing === 'older') reasons.push(reason('older-guidance'));
  if (row.standing === 'guide') reasons.push(reason('guide-only'));
  if (row.source.basis === 'from-memory') reasons.push(reason('memory-only'));
  if (row.note !== null && /shorter is given/.test(row.note)) reasons.push(reason('shorter-of-two'));
  return reasons;
};

/** The food, or what it was taken for; its parts and other tables. */
export const whatItIs: Rule = ({ subject, match, clock, other, tables }, before) => {
  const work = draftOf(before);
  if (other !== null) work.reasons.push(reason('other-table', { ...other.span, table: other.table }));
  if (subject.oldestPart !== null)
    work.reasons.push(
      reason(
        'earliest-part',
        { day: { kind: 'date', day: subject.oldestPart } },
        cite(tables, tables.timeRules.dateMarking),
      ),
    );
  if (match.sure === 'unknown' && clock.phase !== 'room') {
    const general = reason('general-answer', { name: subject.name });
    // What lets it be eaten rests on a guess at what it is, so that is told first.
    if (work.verdict === 'throw-out') work.reasons.push(general);
    else work.reasons.unshift(general);
  }
  return work;
};

/** What it went through that bears on the figure, and how sure that is. */
export const history: Rule = ({ subject, match, clock, region, tables }, before) => {
  const work = draftOf(before);
  const { clockStopped, reheatOnce } = regionFacts(region);
  const { frozenOn, thawedOn } = clock;
  if (clock.phase === 'thawed' && frozenOn !== null && thawedOn !== null && clockStopped)
    work.reasons.push(
      reason(
        'clock-stopped',
        { frozen: { kind: 'date', day: frozenOn }, thawed: { kind: 'date', day: thawedOn } },
        cite(tables, tables.timeRules.fridgeAfterFreezing),
      ),
    );
  if (match.notes.includes('raw-assumed')) work.reasons.push(reason('raw-assumed'));
  if (work.row !== null && work.row.limit !== null) work.reasons.push(...standingReasons(work.row));
  if (subject.timesReheated > 0)
    work.reasons.push(reason('reheated-times', { times: subject.timesReheated }));
  if (reheatOnce && subject.timesReheated > 0)
    work.reasons.push(reason('reheat-once', {}, cite(tables, tables.timeRules.ukReheatOnce)));
  if (thawedOn !== null && frozenOn !== null && frozenOn > thawedOn) work.reasons.push(reason('refrozen'));
  return work;
};
