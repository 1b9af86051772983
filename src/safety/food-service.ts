/**
 * Rules of the trade, for clients who cook for others: date marking, cooling, reheating for hot holding.
 * A home cook's leftovers are three to four days: the seven days here are never told to a home cook.
 */
import { plusDays } from '../terms/dates.js';
import type { Instant, PlainDate } from '../terms/dates.js';
import type { Citation, Reason } from './api.js';
import { dayNumber, plainDate } from './days.js';
import { cite, safetyTables } from './tables.js';
import type { SafetyTables } from './tables.js';

/**
 * The last day of ready-to-eat food made in a food establishment: seven days, the day of preparation
 * being day one. Days frozen do not count. Mixed food: give the earliest part's date.
 */
export const dateMark = (
  food: {
    readonly prepared: PlainDate;
    readonly frozen?: PlainDate | null;
    readonly thawed?: PlainDate | null;
  },
  tables = safetyTables(),
): { readonly lastDay: PlainDate; readonly source: Citation } => {
  const rule = tables.timeRules.dateMarking;
  const last = plusDays(food.prepared, rule.days - rule.preparationIsDay);
  if (food.frozen === null || food.frozen === undefined || food.thawed === null || food.thawed === undefined)
    return { lastDay: last, source: cite(tables, rule) };
  // The day it went into the freezer is the day it comes out as: Oct 3 was day three, so is Oct 10.
  const paused = dayNumber(food.thawed) - dayNumber(food.frozen);
  return { lastDay: plainDate(dayNumber(last) + paused), source: cite(tables, rule) };
};

export interface CoolingAnswer {
  readonly passes: boolean;
  readonly minutes: number;
  readonly reason: Reason;
}

const minutesBetween = (from: Instant, to: Instant): number => (Date.parse(to) - Date.parse(from)) / 60_000;

const coolingRule = (id: string, tables: SafetyTables) => {
  const rule = tables.timeRules.cooling.find((row) => row.id === id);
  if (rule === undefined) throw new Error(`time-rules.json has no cooling rule "${id}"`);
  return rule;
};

/** The stages of cooling cooked food, each with the time allowed from the start, in order. */
export const coolingStages = (
  tables = safetyTables(),
): {
  readonly stages: readonly { readonly toF: number; readonly minutes: number }[];
  readonly source: Citation;
} => {
  const rule = coolingRule('cool-cooked', tables);
  return { stages: rule.stages, source: cite(tables, rule) };
};

/** Degrees Fahrenheit from which the first stage counts. */
export const coolingFrom = (tables = safetyTables()): number =>
  coolingRule('cool-cooked', tables).stages[0]?.fromF ?? 0;

/** Hot food at home goes into the fridge as it is, in shallow dishes, within so many minutes. */
export const chillingHot = (
  tables = safetyTables(),
): { readonly minutes: number; readonly source: Citation } => {
  const rule = coolingRule('chill-home', tables);
  return { minutes: rule.stages[0]?.minutes ?? 0, source: cite(tables, rule) };
};

/**
 * Whether cooked food cooled in time: 135 to 70 °F within two hours and to 41 °F within six in all.
 * Food made from room-warm parts, without the middle reading: 41 °F within four hours.
 */
export const checkCooling = (
  readings: {
    readonly start: Instant;
    readonly at70?: Instant | null;
    readonly at41: Instant;
    readonly ambient?: boolean;
  },
  tables = safetyTables(),
): CoolingAnswer => {
  const rule = coolingRule(readings.ambient === true ? 'cool-ambient' : 'cool-cooked', tables);
  const total = minutesBetween(readings.start, readings.at41);
  const passes = rule.stages.every((stage) => {
    if (stage.toF === 41) return total <= stage.minutes;
    return (
      readings.at70 !== null &&
      readings.at70 !== undefined &&
      minutesBetween(readings.start, readings.at70) <= stage.minutes
    );
  });
  return {
    passes,
    minutes: total,
    reason: {
      code: passes ? 'cooled-in-time' : 'cooled-too-slowly',
      args: { total: { kind: 'duration', seconds: total * 60 } },
      source: cite(tables, rule),
    },
  };
};

/** Whether reheating for hot holding was quick enough: 165 °F for fifteen seconds within two hours. */
export const checkHotHoldReheat = (
  readings: { readonly start: Instant; readonly at165: Instant; readonly heldSeconds: number },
  tables = safetyTables(),
): { readonly passes: boolean; readonly minutes: number; readonly source: Citation } => {
  const rule = tables.timeRules.hotHoldReheat;
  const minutes = minutesBetween(readings.start, readings.at165);
  return {
    passes: minutes <= rule.withinMinutes && readings.heldSeconds >= rule.holdSeconds,
    minutes,
    source: cite(tables, rule),
  };
};

/** A mother's own, and no formula, by what it is called. */
export const isHumanMilk = (food: string): boolean => /milk/.test(food) && !/formula/.test(food);

/** A thermometer in food that cools, in degrees Fahrenheit, and when. */
export interface CoolingReading {
  readonly fahrenheit: number;
  readonly at: Instant;
}

/**
 * What readings on the way down prove of cooked food: a stage was missed, or all were kept so far. Counted from the
 * first reading; where that was below the heat the rule begins at, the time began before it, and only a miss is sure.
 */
export const cooledSoFar = (
  readings: readonly CoolingReading[],
  tables = safetyTables(),
): 'too-slow' | 'in-time' | 'unknown' => {
  const { stages } = coolingRule('cool-cooked', tables);
  const [first, ...later] = readings;
  if (!first || later.length === 0) return 'unknown';
  const missed = later.some(({ fahrenheit, at }) =>
    stages.some(({ toF, minutes }) => {
      const passed = minutesBetween(first.at, at);
      // At the very minute it must be there: "within two hours" is met at two. Told to be just there, it was not before.
      return fahrenheit > toF ? passed >= minutes : fahrenheit === toF && passed > minutes;
    }),
  );
  if (missed) return 'too-slow';
  // Below it, and read after its time: since when, nobody knows.
  const untold = stages.some(({ toF, minutes }) => {
    const there = later.find(({ fahrenheit }) => fahrenheit <= toF);
    return there !== undefined && minutesBetween(first.at, there.at) > minutes;
  });
  if (untold) return 'unknown';
  const from = stages[0]?.fromF ?? null;
  return from !== null && first.fahrenheit >= from ? 'in-time' : 'unknown';
};
