/** One question about a food, without a record: "how long does cooked chicken keep in the fridge". */
import type { Item } from '../kitchen/model.js';
import { today } from '../terms/dates.js';
import type { Assessment, GuidanceQuestion } from './api.js';
import { judgeFor } from './gate/index.js';
import { dayNumber, plainDate } from './days.js';
import { todayOf } from './items.js';
import { matchFood } from './match.js';
import { safetyTables } from './tables.js';

/** Days ago as the date of what happened last. */
const datesFrom = (question: GuidanceQuestion, cooked: boolean): Item['dates'] => {
  const days =
    question.days ??
    (question.hours === null || question.hours === undefined ? null : Math.floor(question.hours / 24));
  const given = question.dates ?? {};
  if (days === null) return given;
  const day = plainDate(dayNumber(today(question.clock)) - days);
  const start = cooked ? { made: given.made ?? day } : { bought: given.bought ?? day };
  if (question.where === 'freezer') return { ...given, frozen: given.frozen ?? day };
  if (question.thawed === true) return { ...given, thawed: given.thawed ?? day };
  if (question.opened === true) return { ...given, opened: given.opened ?? day };
  return { ...start, ...given };
};

/**
 * What guidance says of a food kept somewhere for some days. Without days or dates it tells how long
 * the food keeps (verdict `how-long`).
 *
 * @example guidanceFor({ food: 'cooked rice', where: 'fridge', days: 5, region: 'us', clock }).verdict // 'throw-out'
 */
export const guidanceFor = (question: GuidanceQuestion, tables = safetyTables()): Assessment => {
  const homeMade = question.state === 'cooked' || question.dates?.made !== undefined;
  const match = matchFood(
    question.food,
    { where: question.where, state: question.state ?? null, homeMade },
    tables,
  );
  const dates = datesFrom(question, match.state === 'cooked' || homeMade);
  return judgeFor(
    {
      itemId: null,
      name: question.food,
      dates,
      where: question.where,
      state: question.state ?? null,
      homeMade,
      opened: question.opened === true || dates.opened !== undefined,
      thawed: question.thawed === true || dates.thawed !== undefined,
      outSince: null,
      exposure: null,
      power: null,
      timesReheated: question.timesReheated ?? 0,
      recordedOn: null,
      withinDaysOfOpening: question.withinDaysOfOpening ?? null,
      hours: question.hours ?? null,
      ageless:
        Object.keys(dates).every((kind) => kind === 'useBy' || kind === 'bestBefore') &&
        (question.oldestPart === null || question.oldestPart === undefined),
      oldestPart: question.oldestPart ?? null,
      atRisk: question.atRisk === true,
    },
    question.region,
    todayOf(question.clock),
    tables,
  );
};
