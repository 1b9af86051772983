/** Assessing what a kitchen holds. Records never change in place, so an answer is kept with its record for the day. */
import type { Item, Kitchen, Place, Region } from '../kitchen/model.js';
import { dayOf, today as dayToday } from '../terms/dates.js';
import type { Clock } from '../terms/dates.js';
import type { AssessContext, Assessment, RankedItem, Where } from './api.js';
import { judgeFor } from './gate/index.js';
import type { Subject, Today } from './gate/index.js';
import { dayNumber } from './days.js';
import { exposureOf, worstPowerCut } from './exposure.js';
import { withinDaysOfOpening } from './label-notes.js';
import { safetyTables } from './tables.js';
import type { SafetyTables } from './tables.js';

export const todayOf = (clock: Clock): Today => {
  const day = dayToday(clock);
  return { day, number: dayNumber(day), now: clock.now };
};

const WHERE: Readonly<Partial<Record<Place['kind'], Where>>> = {
  fridge: 'fridge',
  freezer: 'freezer',
  pantry: 'pantry',
  cupboard: 'pantry',
  counter: 'counter',
};

const findWhere = (places: Kitchen['places'], placeId: string): Where | null => {
  let place = places.get(placeId);
  if (place === undefined) return null;
  for (let steps = 0; steps < 20 && place !== undefined; steps++) {
    const where = WHERE[place.kind];
    // A freezer box inside a fridge freezes: the nearest one counts. A door or shelf says nothing by itself.
    if (where !== undefined) return where;
    place = place.parentId === null ? undefined : places.get(place.parentId);
  }
  return 'pantry';
};

const keptAt = new WeakMap<ReadonlyMap<string, Place>, Map<string, Where | null>>();

/**
 * What an item's place amounts to for its keeping: the nearest fridge, freezer, pantry or counter it is
 * in. A shelf that stands in none of them is a pantry shelf. Null when the item has no place.
 */
export const whereKept = (places: Kitchen['places'], item: Pick<Item, 'placeId'>): Where | null =>
  whereKeptIn(places)(item);

/** `whereKept` for many items of one kitchen. */
export const whereKeptIn = (places: Kitchen['places']): ((item: Pick<Item, 'placeId'>) => Where | null) => {
  const known = keptAt.get(places) ?? new Map<string, Where | null>();
  keptAt.set(places, known);
  return ({ placeId }) => {
    if (placeId === null) return null;
    const before = known.get(placeId);
    if (before !== undefined) return before;
    const where = findWhere(places, placeId);
    known.set(placeId, where);
    return where;
  };
};

/**
 * Signs that a dish was cooked and not bought raw. Heating instructions are none: raw sausages have
 * them too; nor is a batch, for a pack of mince can be split.
 */
export const isHomeMade = (item: Item): boolean =>
  item.dates.made !== undefined ||
  item.timesReheated > 0 ||
  (item.dates.bought === undefined && item.maker !== null);

const worstOf = ({ history }: Item): Subject['power'] => {
  const came = worstPowerCut(history)?.came;
  return came === 'lost' || came === 'doubtful' ? came : null;
};

const subjectOf = (item: Item, where: Where | null, clock: Clock, atRisk: boolean): Subject => {
  const { dates } = item;
  const dated = dates.made ?? dates.bought ?? dates.opened;
  return {
    itemId: item.id,
    name: item.name,
    dates,
    where,
    state: null,
    homeMade: isHomeMade(item),
    opened: dates.opened !== undefined,
    thawed: dates.thawed !== undefined,
    outSince: item.outSince,
    exposure: item.outSince === null && !item.history?.length ? null : exposureOf(item, clock.now),
    power: worstOf(item),
    timesReheated: item.timesReheated,
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
}

/** As `assess`, for many items at once. The same record on the same ground gives the same object. */
export const assessOn = (item: Item, where: Where | null, ground: Ground): Kept => {
  const { region, today, atRisk, tables } = ground;
  const before = kept.get(item);
  if (
    before !== undefined &&
    before.day === today.number &&
    before.where === where &&
    before.region === region &&
    before.atRisk === atRisk &&
    before.tables === tables
  ) {
    return before;
  }
  const assessment = judgeFor(subjectOf(item, where, ground.clock, atRisk), region, today, tables);
  const found = { day: today.number, where, region, atRisk, tables, assessment, rank: -1, ranked: null };
  // What stands out is reckoned in minutes and cannot be kept for the day.
  if (item.outSince === null) kept.set(item, found);
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
  }).assessment;

/** `assess` for an item of a kitchen: its place, the household's region and who eats there are looked up. */
export const assessIn = (
  kitchen: Pick<Kitchen, 'household' | 'people' | 'places'>,
  item: Item,
  clock: Clock,
  tables = safetyTables(),
): Assessment =>
  assess(
    item,
    {
      where: whereKept(kitchen.places, item),
      region: kitchen.household.region,
      clock,
      atRisk: anyoneAtRisk(kitchen.people),
    },
    tables,
  );

/** Somebody who eats here chose to be known as at higher risk. */
export const anyoneAtRisk = (people: Kitchen['people']): boolean => {
  for (const person of people.values()) if (person.eatsHere && person.atRisk) return true;
  return false;
};
