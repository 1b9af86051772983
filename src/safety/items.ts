/** Assessing what a kitchen holds. Records never change in place, so an answer is kept with its record for the day. */
import type { Item, Kitchen, Place, Region } from '../kitchen/model.js';
import { dayOf, today as dayToday } from '../terms/dates.js';
import type { Clock } from '../terms/dates.js';
import type { AssessContext, Assessment, Where } from './api.js';
import { judgeFor } from './assess.js';
import type { Subject, Today } from './assess.js';
import { dayNumber } from './days.js';
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

const keptAt = new WeakMap<ReadonlyMap<string, Place>, Map<string, Where>>();

/**
 * What an item's place amounts to for its keeping: the nearest fridge, freezer, pantry or counter it is
 * in. A shelf that stands in none of them is a pantry shelf. Null when the item has no place.
 */
export const whereKept = (places: Kitchen['places'], item: Pick<Item, 'placeId'>): Where | null => {
  if (item.placeId === null) return null;
  let known = keptAt.get(places);
  if (known === undefined) keptAt.set(places, (known = new Map()));
  const before = known.get(item.placeId);
  if (before !== undefined) return before;
  let place = places.get(item.placeId);
  if (place === undefined) return null;
  for (let steps = 0; steps < 20 && place !== undefined; steps++) {
    const where = WHERE[place.kind];
    // A freezer box inside a fridge freezes: the nearest one counts. A door or shelf says nothing by itself.
    if (where !== undefined) {
      known.set(item.placeId, where);
      return where;
    }
    place = place.parentId === null ? undefined : places.get(place.parentId);
  }
  known.set(item.placeId, 'pantry');
  return 'pantry';
};

/** Signs that a dish was cooked and not bought raw. */
export const isHomeMade = (item: Item): boolean =>
  item.dates.made !== undefined ||
  item.timesReheated > 0 ||
  item.preparations.length > 0 ||
  (item.dates.bought === undefined && (item.batchId !== null || item.maker !== null));

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
    outSince: item.outSince,
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

interface Kept {
  readonly day: number;
  readonly where: Where | null;
  readonly region: Region | null;
  readonly atRisk: boolean;
  readonly tables: SafetyTables;
  readonly assessment: Assessment;
}
const kept = new WeakMap<Item, Kept>();

/** As `assess`, with the day already worked out: for many items at once. */
export const assessOn = (
  item: Item,
  context: AssessContext,
  today: Today,
  tables: SafetyTables,
): Assessment => {
  const { where, region, clock } = context;
  const atRisk = context.atRisk === true;
  const before = kept.get(item);
  if (
    before !== undefined &&
    before.day === today.number &&
    before.where === where &&
    before.region === region &&
    before.atRisk === atRisk &&
    before.tables === tables
  ) {
    return before.assessment;
  }
  const assessment = judgeFor(subjectOf(item, where, clock, atRisk), region, today, tables);
  // What stands out is reckoned in minutes and cannot be kept for the day.
  if (item.outSince === null)
    kept.set(item, { day: today.number, where, region, atRisk, tables, assessment });
  return assessment;
};

/**
 * What guidance says of an item today.
 *
 * @example assess(item, { where: whereKept(kitchen.places, item), region: kitchen.household.region, clock })
 */
export const assess = (item: Item, context: AssessContext, tables = safetyTables()): Assessment =>
  assessOn(item, context, todayOf(context.clock), tables);

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
