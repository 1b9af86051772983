/** What to use first, and why: what guidance ends soonest, then hazard, what is open, and how much there is. */
import type { Item, Kitchen } from '../kitchen/model.js';
import type { Clock } from '../terms/dates.js';
import type { Assessment, Hazard, RankedItem, Reason, Verdict } from './api.js';
import { anyoneAtRisk, assessOn, todayOf } from './items.js';
import type { Kept } from './items.js';
import { powerIn } from './power-now.js';
import { whereKeptIn } from './where-kept.js';
import { safetyTables } from './tables.js';

/** Lower comes first. */
const GROUP: Readonly<Record<Verdict, number>> = {
  'throw-out': 0,
  'refrigerate-now': 1,
  'last-day': 2,
  'cook-thoroughly': 3,
  'use-soon': 4,
  unknown: 5,
  fine: 6,
  'past-best-quality': 7,
  'no-figure': 8,
  'how-long': 9,
};
const HAZARD: Readonly<Record<Hazard, number>> = { high: 0, medium: 1, low: 2, none: 3 };

/** From this many on, "there is a lot of it" is worth saying. */
const LOTS = 4;
const COUNTED = /^(gram|kilogram|ounce|pound|millilitre|milliliter|litre|liter)$/;
const pieces = (item: Item): number =>
  item.amount === null || COUNTED.test(item.amount.unit) ? 1 : item.amount.value;

/** One number that sorts: group, days left, hazard, opened, amount, each weighing less than the one before. */
const rankOf = (item: Item, found: Assessment): number => {
  const days = Math.min(9_999, Math.max(0, found.daysLeft ?? 9_999));
  const open = found.clock.openedOn === null ? 1 : 0;
  return (
    GROUP[found.verdict] * 1e9 +
    days * 1e5 +
    HAZARD[found.hazard] * 1e4 +
    open * 1e3 +
    Math.max(0, 999 - Math.round(pieces(item)))
  );
};

const becauseOf = (item: Item, found: Assessment): readonly Reason[] => {
  const because: Reason[] = found.reasons.slice(0, 1);
  if (found.daysLeft !== null && found.daysLeft >= 0) {
    because.push({
      code: 'days-left',
      args: { days: { kind: 'days', days: found.daysLeft } },
      source: found.row?.source ?? null,
    });
  }
  if (found.hazard === 'high') because.push({ code: 'hazard-high', args: {}, source: null });
  if (found.clock.openedOn !== null) because.push({ code: 'opened-already', args: {}, source: null });
  if (item.amount !== null && pieces(item) >= LOTS) {
    because.push({
      code: 'lots-of-it',
      args: { amount: { kind: 'amount', amount: item.amount } },
      source: null,
    });
  }
  return because;
};

export interface UseFirstOptions {
  /** Only what must be used within so many days (0 is today), what is past, and what stands out. */
  readonly withinDays?: number;
  /** At most so many. */
  readonly limit?: number;
  /** Ends on quality and label too; left out by default when `withinDays` is given. */
  readonly tables?: ReturnType<typeof safetyTables>;
}

/**
 * The living items of a kitchen, what to use first foremost.
 *
 * @example rankUseFirst(kitchen, clock, { withinDays: 7, limit: 5 })
 */
export const rankUseFirst = (
  kitchen: Pick<Kitchen, 'household' | 'people' | 'places' | 'powerCuts'> & {
    readonly items: { values(): Iterable<Item> };
  },
  clock: Clock,
  options: UseFirstOptions = {},
): readonly RankedItem[] => {
  const tables = options.tables ?? safetyTables();
  const ground = {
    region: kitchen.household.region,
    clock,
    today: todayOf(clock),
    atRisk: anyoneAtRisk(kitchen.people),
    tables,
    ...powerIn(kitchen, clock, tables),
  };
  const whereIs = whereKeptIn(kitchen.places);
  const items: Item[] = [];
  const found: Kept[] = [];
  for (const item of kitchen.items.values()) {
    if (item.gone !== null) continue;
    const entry = assessOn(item, whereIs(item), ground);
    if (options.withinDays !== undefined && !dueWithin(entry.assessment, options.withinDays)) continue;
    if (entry.rank < 0) entry.rank = rankOf(item, entry.assessment);
    items.push(item);
    found.push(entry);
  }
  // Ranks are whole numbers below 1e11, so rank and position fit one exact double: sorting plain
  // numbers is several times faster than sorting records. Equal ranks keep their order.
  const count = found.length;
  const sorted = new Float64Array(count);
  for (let at = 0; at < count; at++) sorted[at] = (found[at]?.rank ?? 0) * count + at;
  sorted.sort();
  const ranked: RankedItem[] = [];
  for (let at = 0; at < Math.min(options.limit ?? count, count); at++) {
    const place = (sorted[at] ?? 0) % count;
    const [item, entry] = [items[place], found[place]];
    if (item === undefined || entry === undefined) continue;
    entry.ranked ??= { item, assessment: entry.assessment, because: becauseOf(item, entry.assessment) };
    ranked.push(entry.ranked);
  }
  return ranked;
};

const dueWithin = (found: Assessment, days: number): boolean =>
  found.verdict === 'throw-out' ||
  found.verdict === 'refrigerate-now' ||
  found.verdict === 'cook-thoroughly' ||
  (found.daysLeft !== null && found.daysLeft <= days);

/** Why an item has no date to go by, if it has none: "what has no date". */
export const withoutDate = (items: Iterable<Item>): readonly Item[] => {
  const undated: Item[] = [];
  for (const item of items) {
    if (item.gone === null && Object.keys(item.dates).length === 0) undated.push(item);
  }
  return undated;
};
