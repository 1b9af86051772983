/** "I want the turkey for Thursday dinner": when to begin, by each way of thawing, and what to be reminded of. */
import { TZDate } from '@date-fns/tz';
import type { Region } from '../kitchen/model.js';
import type { Clock, Instant, PlainDate } from '../terms/dates.js';
import type { ThawOption, ThawPlan, ThawReminder } from './api.js';
import type { ThawAdviceCode } from './codes.js';
import { matchFood } from './match.js';
import { regionFacts } from './regions/index.js';
import { cite, safetyTables } from './tables.js';
import type { SafetyTables } from './tables.js';

const MS_PER_HOUR = 3_600_000;

export interface ThawQuestion {
  readonly food: string;
  /** Null when nobody knows the weight. */
  readonly pounds: number | null;
  /** When it should be thawed, ready to cook. */
  readonly wantedAt: Instant;
  readonly clock: Clock;
  readonly region: Region | null;
}

/** A household's wall time on a day, as a moment. */
export const wallTime = (day: PlainDate, time: string, timeZone: string): Instant => {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const [hour = 0, minute = 0] = time.split(':').map(Number);
  return new Date(new TZDate(year, month - 1, date, hour, minute, timeZone).getTime()).toISOString();
};

/** Hours in the fridge: a day for each four to five pounds, begun days counted whole. */
export const fridgeThawHours = (
  pounds: number,
  tables = safetyTables(),
): { readonly low: number; readonly high: number } => {
  const rule = tables.thawing.fridge;
  return {
    low: Math.ceil(pounds / rule.poundsHigh) * rule.hoursPer,
    high: Math.ceil(pounds / rule.poundsLow) * rule.hoursPer,
  };
};

/** A bird with a chart of its own, by the food of the tables that a name is. */
export const isTurkey = (food: string, tables = safetyTables()): boolean =>
  /turkey/.test(matchFood(food, {}, tables).food ?? '');

/** Hours in cold water: half an hour a pound; small packs and whole turkeys as their charts say. */
export const waterThawHours = (
  pounds: number,
  turkey: boolean,
  tables = safetyTables(),
): { readonly low: number; readonly high: number } => {
  const rule = tables.thawing.coldWater;
  const byRule = (pounds * rule.minutesPerPound) / 60;
  const small = rule.small.find((row) => pounds <= row.uptoPounds);
  if (small !== undefined && !turkey) {
    // Between the printed packs (one pound; three to four) the rule is the low end.
    return { low: Math.min(small.hoursLow, byRule), high: small.hoursHigh };
  }
  const chart = tables.thawing.turkey.find((row) => pounds >= row.poundsFrom && pounds <= row.poundsTo);
  return {
    low: byRule,
    high: turkey && chart !== undefined ? Math.max(byRule, chart.coldWaterHours[1]) : byRule,
  };
};

const before = (at: Instant, hours: number): Instant =>
  new Date(Date.parse(at) - hours * MS_PER_HOUR).toISOString();

const changes = (start: Instant, end: Instant, everyMinutes: number): readonly ThawReminder[] => {
  const reminders: ThawReminder[] = [];
  for (
    let at = Date.parse(start) + everyMinutes * 60_000;
    at < Date.parse(end);
    at += everyMinutes * 60_000
  ) {
    reminders.push({ at: new Date(at).toISOString(), code: 'change-water' });
  }
  return reminders;
};

const timed = (
  question: ThawQuestion,
  hours: ThawOption['hours'],
): Pick<ThawOption, 'hours' | 'startBy' | 'tooLate'> => {
  const startBy = hours === null ? null : before(question.wantedAt, hours.high);
  return { hours, startBy, tooLate: startBy !== null && startBy < question.clock.now };
};

/** No weight was given: a pack of one pound, or the largest bird of the chart's first row; the plan says so. */
const weightOf = (question: ThawQuestion, turkey: boolean, tables: SafetyTables): number =>
  question.pounds ?? (turkey ? (tables.thawing.turkey[0]?.poundsTo ?? 1) : 1);

const fridgeOption = (question: ThawQuestion, turkey: boolean, tables: SafetyTables): ThawOption => {
  const time = timed(question, fridgeThawHours(weightOf(question, turkey, tables), tables));
  const advice: ThawAdviceCode[] = ['low-shelf-on-tray', ...regionFacts(question.region).fridgeThawAdvice];
  if (question.pounds === null) advice.unshift('weight-unknown');
  return {
    method: 'fridge',
    ...time,
    reminders:
      time.startBy === null
        ? []
        : [
            { at: time.startBy, code: 'start-fridge' },
            { at: before(question.wantedAt, 12), code: 'check-thawed' },
          ],
    advice,
    source: cite(tables, tables.thawing.fridge),
  };
};

const waterOption = (question: ThawQuestion, turkey: boolean, tables: SafetyTables): ThawOption => {
  const time = timed(question, waterThawHours(weightOf(question, turkey, tables), turkey, tables));
  return {
    method: 'cold-water',
    ...time,
    reminders:
      time.startBy === null
        ? []
        : [
            { at: time.startBy, code: 'start-cold-water' },
            ...changes(time.startBy, question.wantedAt, tables.thawing.coldWater.changeWaterMinutes),
            { at: question.wantedAt, code: 'cook-at-once' },
          ],
    advice: [
      ...(question.pounds === null ? (['weight-unknown'] as const) : []),
      'leak-proof-bag',
      'change-water',
      'cook-at-once',
      'cook-before-refreezing',
    ],
    source: cite(tables, tables.thawing.coldWater),
  };
};

const microwaveOption = (question: ThawQuestion, tables: SafetyTables): ThawOption => ({
  method: 'microwave',
  hours: null,
  startBy: null,
  tooLate: question.wantedAt < question.clock.now,
  reminders: [],
  advice: ['microwave-book', 'cook-at-once', 'cook-before-refreezing'],
  source: cite(tables, tables.thawing.microwave),
});

/** What holds of every thawing, each with its source; how often cold water is changed, in minutes. */
export const thawing = (tables = safetyTables()) => ({
  changeWaterMinutes: tables.thawing.coldWater.changeWaterMinutes,
  fromFrozen: { source: cite(tables, tables.thawing.fromFrozen) },
  never: { source: cite(tables, tables.thawing.never) },
});

/**
 * Ways to have it thawed in time, planned backward from when it is wanted. Hours are elapsed hours, so
 * a clock change on the way makes no difference. The UK's agency names the fridge and the microwave only.
 */
export const thawPlan = (question: ThawQuestion, tables = safetyTables()): ThawPlan => {
  const turkey = isTurkey(question.food, tables);
  const big = (question.pounds ?? 0) > 4;
  const options = [
    fridgeOption(question, turkey, tables),
    ...(regionFacts(question.region).waterThaw ? [waterOption(question, turkey, tables)] : []),
    // A microwave takes small pieces; whole birds and joints do not fit its advice.
    ...(big || turkey ? [] : [microwaveOption(question, tables)]),
  ];
  return {
    pounds: question.pounds,
    wantedAt: question.wantedAt,
    options,
    best:
      options.find(
        (option) => !option.tooLate && (option.startBy !== null || option.method === 'microwave'),
      ) ?? null,
  };
};
