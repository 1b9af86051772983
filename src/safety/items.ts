/** Assessing what a kitchen holds. Records never change in place, so an answer is kept with its record for the day. */
import type { Item, Kitchen, Person, Region } from '../kitchen/model.js';
import { dayOf, today as dayToday } from '../terms/dates.js';
import type { Clock } from '../terms/dates.js';
import type { AssessContext, Assessment, PowerState, RankedItem, Where } from './api.js';
import { judgeFor } from './gate/index.js';
import type { Subject, Today } from './gate/index.js';
import { dayNumber } from './days.js';
import { exposureOf, worstPowerCut } from './exposure.js';
import { withinDaysOfOpening } from './label-notes.js';
import { powerIn } from './power-now.js';
import { safetyTables } from './tables.js';
import type { SafetyTables } from './tables.js';
import { isHomeMade, whereKept } from './where-kept.js';

export const todayOf = (clock: Clock): Today => {
  const day = dayToday(clock);
  return { day, number: dayNumber(day), now: clock.now };
};

/** What it went through, or lies in now, whichever is worse. */
const worstOf = ({ history }: Item, now: PowerState | null): PowerState | null => {
  const came = worstPowerCut(history)?.came;
  if (came === 'lost' || now?.came === 'lost') return { came: 'lost' };
  if (now?.came === 'doubtful') return now;
  return came === 'doubtful' ? { came, now: false } : now;
};

const subjectOf = (
  item: Item,
  where: Where | null,
  clock: Clock,
  atRisk: boolean,
  power: PowerState | null,
): Subject => {
  const { dates } = item;
  const dated = dates.made ?? dates.bought ?? dates.opened;
  return {
    itemId: item.id,
    name: item.name,
    dates,
    where,
    state: null,
    homeMade: isHomeMade(item),
    opened: dates.opened !== undefined || item.open === true,
    thawed: dates.thawed !== undefined,
    outSince: item.outSince,
    exposure: item.outSince === null && !item.history?.length ? null : exposureOf(item, clock.now),
    power: worstOf(item, power),
    timesReheated: item.timesReheated,
    ...(item.frozenBefore ? { frozenBefore: item.frozenBefore } : {}),
    ...(item.thawedBefore ? { thawedBefore: item.thawedBefore } : {}),
    recordedOn: dated === undefined ? dayOf(item.addedAt, clock.timeZone) : null,
    withinDaysOfOpening:
      dates.opened === undefined || (item.notes.length === 0 && item.cautions.length === 0)
        ? null
        : withinDaysOfOpening(item),
    hours: null,
    ageless: false,
    oldestPart: null,
    atRisk,
  };
};

export interface Kept {
  readonly day: number;
  readonly where: Where | null;
  readonly region: Region | null;
  readonly atRisk: boolean;
  readonly tables: SafetyTables;
  readonly assessment: Assessment;
  /** Where the ranking keeps what it made of it. */
  rank: number;
  ranked: RankedItem | null;
}
const kept = new WeakMap<Item, Kept>();

/** What an assessment rests on besides the item, worked out once for many. */
export interface Ground {
  readonly region: Region | null;
  readonly clock: Clock;
  readonly today: Today;
  readonly atRisk: boolean;
  readonly tables: SafetyTables;
  /** What a power cut that lasts makes of each; absent where none does. */
  readonly power?: (item: Item, where: Where | null) => PowerState | null;
}

/** As `assess`, for many items at once. The same record on the same ground gives the same object. */
export const assessOn = (item: Item, where: Where | null, ground: Ground): Kept => {
  const { region, today, atRisk, tables } = ground;
  const before = kept.get(item);
  const power = ground.power?.(item, where) ?? null;
  if (
    before !== undefined &&
    power === null &&
    before.day === today.number &&
    before.where === where &&
    before.region === region &&
    before.atRisk === atRisk &&
    before.tables === tables
  ) {
    return before;
  }
  const assessment = judgeFor(subjectOf(item, where, ground.clock, atRisk, power), region, today, tables);
  const found = { day: today.number, where, region, atRisk, tables, assessment, rank: -1, ranked: null };
  // What stands out, or lies where the power is out, is reckoned in minutes and cannot be kept for the day.
  if (item.outSince === null && power === null) kept.set(item, found);
  return found;
};

/**
 * What guidance says of an item today.
 *
 * @example assess(item, { where: whereKept(kitchen.places, item), region: kitchen.household.region, clock })
 */
export const assess = (item: Item, context: AssessContext, tables = safetyTables()): Assessment =>
  assessOn(item, context.where, {
    region: context.region,
    clock: context.clock,
    today: todayOf(context.clock),
    atRisk: context.atRisk === true,
    tables,
    ...(context.power ? { power: context.power } : {}),
  }).assessment;

/** `assess` for an item of a kitchen: its place, the household's region and who eats there are looked up. */
export const assessIn = (
  kitchen: Pick<Kitchen, 'household' | 'people' | 'places' | 'powerCuts'>,
  item: Item,
  clock: Clock,
  tables = safetyTables(),
): Assessment => assessFor(kitchen, item, clock, { atRisk: anyoneAtRisk(kitchen.people) }, tables);

/** `assessIn`, with what must be said to one who eats it, and not to everybody who does. */
export const assessFor = (
  kitchen: Pick<Kitchen, 'household' | 'places' | 'powerCuts'>,
  item: Item,
  clock: Clock,
  { atRisk }: Pick<Person, 'atRisk'>,
  tables = safetyTables(),
): Assessment =>
  assess(
    item,
    {
      where: whereKept(kitchen.places, item),
      region: kitchen.household.region,
      clock,
      atRisk,
      ...powerIn(kitchen, clock, tables),
    },
    tables,
  );

/** Somebody who eats here chose to be known as at higher risk. */
export const anyoneAtRisk = (people: Kitchen['people']): boolean => {
  for (const person of people.values()) if (person.eatsHere && person.atRisk) return true;
  return false;
};
