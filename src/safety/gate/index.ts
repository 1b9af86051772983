/**
 * The gate: what guidance says of one food, by which rule, until when, and what must be said with it.
 *
 * The case is put together once; then rules go over it in order, each from one finding to the next: the one for
 * where it is (future date, room, frozen, cold), what may only make that stricter (a printed date, hours out of
 * the cold, power cuts), and notes. No rule gives back what an earlier one took.
 *
 * Conventions (ours, not an agency's): the day it was put away is day nought and days are the household's
 * calendar days. Below the low end of a range: fine; from there on: use it up; on the high end: last day; after
 * it: throw out. A single limit warns the day before. Freezer times are quality only. What is not known is said
 * to be unknown.
 */
import type { FoodKind } from '../../../shared/tables/schema.js';
import type { Region } from '../../kitchen/model.js';
import type { Assessment, RefreezeAnswer, ThawedIn, Where } from '../api.js';
import { clockOf, daysUsed } from '../clock.js';
import { dayNumber, plainDate, spanEnds } from '../days.js';
import { kindOf, matchFood } from '../match.js';
import { eggsByDate, regionFacts, regionsFor } from '../regions/index.js';
import { chooseRow } from '../storage.js';
import type { SafetyTables } from '../tables.js';
import {
  draftOf,
  nothingYet,
  reason,
  SEVERITY,
  type Case,
  type Finding,
  type Rule,
  type Subject,
  type Today,
} from './case.js';
import { cautionsOf } from './cautions-due.js';
import { cold } from './cold.js';
import { exposed } from './exposure.js';
import { withData } from './figures.js';
import { frozen } from './frozen.js';
import { history, whatItIs } from './notes.js';
import { outLimit, type OutLimit } from './out-limit.js';
import { bestBefore } from './printed.js';
import { refreezing } from './refreezing.js';
import { atRoom, keepsAtRoom } from './room.js';

export { feedLimit, formulaUntil } from './bottle.js';
export { SEVERITY, type Subject, type Today } from './case.js';
export { isHot } from './out-limit.js';

/** Tinned food that needs the fridge is open, whether or not anybody said so. */
const tinInFridge = (subject: Subject, kind: FoodKind): boolean =>
  subject.where === 'fridge' && kind.room === 'tin' && kind.us === null && /high|medium/.test(kind.hazard);

/** A place nobody named: what keeps on a shelf is taken to be on one, the rest in the fridge unless frozen. */
const whereFor = (subject: Subject, kind: FoodKind): Where | null => {
  if (subject.where !== null) return subject.where;
  return keepsAtRoom(kind, subject) && subject.dates.frozen === undefined ? 'pantry' : null;
};

const caseOf = (subject: Subject, region: Region, today: Today, tables: SafetyTables): Case => {
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
  const figures = regionFacts(region).storageData
    ? withData(subject, kind, chart, opened, clock, guessed, tables)
    : { chosen: chart, other: null };
  return {
    subject: part === null ? subject : { ...subject, dates },
    kind,
    match,
    clock,
    ...figures,
    region,
    today,
    tables,
  };
};

/** A day that is still to come: nothing is reckoned from it. */
const future: Rule = ({ clock }, before) => {
  const work = draftOf(before);
  work.verdict = 'unknown';
  work.used = null;
  work.reasons.push(reason('future-date', { day: { kind: 'date', day: clock.startedOn! } }));
  return work;
};

/** The one rule for where it is and what it went through. */
const standing = ({ clock, kind, region, today }: Case): Rule =>
  clock.startedOn !== null && dayNumber(clock.startedOn) > today.number
    ? future
    : clock.phase === 'room' && !eggsByDate(kind, region)
      ? atRoom
      : clock.phase === 'frozen'
        ? frozen
        : cold;

const rulesFor = (of: Case): readonly Rule[] => [standing(of), bestBefore, exposed, whatItIs, history];

/** What one region's guidance says. */
const judge = (subject: Subject, region: Region, today: Today, tables: SafetyTables): Assessment => {
  const of = caseOf(subject, region, today, tables);
  const begun: Finding = { ...nothingYet, used: daysUsed(of.clock, today.number) };
  const found = rulesFor(of).reduce((before, rule) => rule(of, before), begun);
  return {
    itemId: subject.itemId,
    name: subject.name,
    verdict: found.verdict,
    match: of.match,
    row: found.row,
    where: subject.where,
    region,
    clock: of.clock,
    daysUsed: found.used,
    atLeast: found.atLeast,
    useSoonFrom: found.useSoon === null ? null : plainDate(found.useSoon),
    lastDay: found.last === null ? null : plainDate(found.last),
    daysLeft: found.last === null ? null : found.last - today.number,
    qualityUntil:
      found.quality === null
        ? null
        : { from: plainDate(found.quality.from), to: plainDate(found.quality.to) },
    hazard: of.kind.hazard,
    reasons: found.reasons,
    cautions: cautionsOf(of, found.verdict),
  };
};

/** How long it may stand out of the cold, by the strictest of the regions asked; null where it needs no cold. */
export const outLimitFor = (
  subject: Subject,
  region: Region | null,
  hot: boolean,
  today: Today,
  tables: SafetyTables,
): OutLimit | null =>
  regionsFor(region)
    .flatMap((one) => outLimit(caseOf(subject, one, today, tables), hot) ?? [])
    .reduce<OutLimit | null>((least, one) => (least && least.minutes <= one.minutes ? least : one), null);

/** Whether it may be frozen again, by how it thawed: what is past is not, however it thawed. */
export const refreezingFor = (
  subject: Subject,
  thawedIn: ThawedIn | null,
  region: Region | null,
  today: Today,
  tables: SafetyTables,
): RefreezeAnswer => {
  const found = judgeFor(subject, region, today, tables);
  return found.verdict === 'throw-out'
    ? { may: 'no', source: found.reasons[0]?.source ?? null }
    : refreezing(found.match.family, thawedIn, region, tables);
};

/** For comparing: days left, or the length of the limit when no age was asked. */
const keepsDays = (found: Assessment): number => {
  if (found.daysLeft !== null) return found.daysLeft;
  return found.row?.limit === null || found.row?.limit === undefined
    ? Number.POSITIVE_INFINITY
    : spanEnds(0, found.row.limit).high;
};

const stricterOf = (one: Assessment, other: Assessment): Assessment => {
  const [a, b] = [SEVERITY[one.verdict], SEVERITY[other.verdict]];
  if (a !== b) return a > b ? one : other;
  return keepsDays(other) < keepsDays(one) ? other : one;
};

/**
 * What guidance says, for a region or, when none was chosen, the strictest of all, and said so.
 * Regions are judged apart and never mixed.
 */
export const judgeFor = (
  subject: Subject,
  region: Region | null,
  today: Today,
  tables: SafetyTables,
): Assessment => {
  const strictest = regionsFor(region)
    .map((one) => judge(subject, one, today, tables))
    .reduce(stricterOf);
  return region === null
    ? { ...strictest, reasons: [...strictest.reasons, reason('stricter-region')] }
    : strictest;
};
