/** One question about a food, without a record: "how long does cooked chicken keep in the fridge". */
import type { Item } from '../kitchen/model.js';
import { today } from '../terms/dates.js';
import type {
  Assessment,
  GuidanceQuestion,
  PowerCutQuestion,
  PowerItem,
  PowerState,
  RefreezeAnswer,
} from './api.js';
import { judgeFor, outLimitFor as limitOf, refreezingFor, type Subject } from './gate/index.js';
import { dayNumber, plainDate } from './days.js';
import { todayOf } from './items.js';
import { matchFood } from './match.js';
import { cameOf, judgedInCut } from './power-cut.js';
import { safetyTables, type SafetyTables } from './tables.js';

export { feedLimit, formulaUntil, isHot } from './gate/index.js';

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
export const guidanceFor = (question: GuidanceQuestion, tables = safetyTables()): Assessment =>
  judgeFor(subjectOf(question, tables), question.region, todayOf(question.clock), tables);

/** What was told, as the gate takes it. */
const subjectOf = (question: GuidanceQuestion, tables: SafetyTables): Subject => {
  const homeMade = question.state === 'cooked' || question.dates?.made !== undefined;
  const match = matchFood(
    question.food,
    { where: question.where, state: question.state ?? null, homeMade },
    tables,
  );
  const dates = datesFrom(question, match.state === 'cooked' || homeMade);
  return {
    itemId: null,
    name: question.food,
    dates,
    where: question.where,
    state: question.state ?? null,
    homeMade,
    opened: question.opened === true || dates.opened !== undefined,
    thawed: question.thawed === true || dates.thawed !== undefined,
    outSince: null,
    exposure: question.out ?? null,
    power: question.cut ? powerOf(question, question.cut, tables) : null,
    timesReheated: question.timesReheated ?? 0,
    recordedOn: null,
    withinDaysOfOpening: question.withinDaysOfOpening ?? null,
    hours: question.hours ?? null,
    ageless:
      Object.keys(dates).every((kind) => kind === 'useBy' || kind === 'bestBefore') &&
      (question.oldestPart === null || question.oldestPart === undefined),
    oldestPart: question.oldestPart ?? null,
    atRisk: question.atRisk === true,
  };
};

const inCut = (question: GuidanceQuestion, cut: PowerCutQuestion, tables: SafetyTables): PowerItem =>
  judgedInCut(
    {
      itemId: null,
      name: question.food,
      where: question.where,
      homeMade: question.state === 'cooked',
    },
    cut,
    question.clock,
    tables,
  );

const powerOf = (
  question: GuidanceQuestion,
  cut: PowerCutQuestion,
  tables: SafetyTables,
): PowerState | null => {
  if (question.where !== 'fridge' && question.where !== 'freezer') return null;
  const came = cameOf(inCut(question, cut, tables));
  return came === 'kept' ? null : came === 'lost' ? { came } : { came, now: cut.backAt === null };
};

/**
 * One food in a power cut, not on record: what the table says of it there, and where the gate throws it out for
 * anything else that was told of it, that. `assessment`: the gate's own words for it.
 */
export const powerCutFor = (
  food: Omit<GuidanceQuestion, 'food' | 'where' | 'cut' | 'clock' | 'region'> & {
    readonly name: string;
    readonly where: 'fridge' | 'freezer';
    readonly region?: GuidanceQuestion['region'];
  },
  cut: PowerCutQuestion,
  clock: GuidanceQuestion['clock'],
  tables = safetyTables(),
): PowerItem & { readonly past: Assessment | null } => {
  const { name, where, region = 'us', ...told } = food;
  const question: GuidanceQuestion = { ...told, food: name, where, region, clock };
  const past = guidanceFor(question, tables);
  return { ...inCut(question, cut, tables), past: past.verdict === 'throw-out' ? past : null };
};

/** How long such food may stand out of the cold; null where it needs none. @param hot in air above ninety degrees. */
export const outLimitFor = (question: GuidanceQuestion, hot: boolean, tables = safetyTables()) =>
  limitOf(subjectOf(question, tables), question.region, hot, todayOf(question.clock), tables);

/** "Can it go back in the freezer?" by how it was thawed, and by all else that was told of it. */
export const mayRefreeze = (
  question: Omit<GuidanceQuestion, 'where'> & { readonly where?: GuidanceQuestion['where'] },
  tables = safetyTables(),
): RefreezeAnswer =>
  refreezingFor(
    subjectOf({ ...question, where: question.where ?? 'fridge', thawed: true }, tables),
    question.thawedIn ?? null,
    question.region,
    todayOf(question.clock),
    tables,
  );
