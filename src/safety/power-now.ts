/** Power cuts on record: what one makes of a food while it lasts, and what it came to when it was over. */
import { isInCut } from '../kitchen/index.js';
import type { Item, Kitchen, PowerCut } from '../kitchen/model.js';
import type { Clock } from '../terms/dates.js';
import type { PowerCutQuestion, PowerState, Where } from './api.js';
import { cameOf, powerCut } from './power-cut.js';
import { safetyTables, type SafetyTables } from './tables.js';
import { whereKept } from './where-kept.js';

/** What the report is asked, from the record. */
export const questionOf = ({
  since,
  backAt,
  doors,
  freezerDoors,
  fullness,
  fridgeReads,
}: PowerCut): PowerCutQuestion => ({
  since,
  backAt,
  doors,
  fullness,
  ...(freezerDoors ? { freezerDoors } : {}),
  ...(fridgeReads ? { fridgeReads } : {}),
});

/**
 * Nobody told how the doors were: the food is judged as if they had been opened, at the moment it was back. Within
 * its hours that is not known, and past them it is past.
 */
export const judgedUntold = (cut: PowerCut): PowerCut =>
  cut.doors === null ? { ...cut, doors: 'open', backAt: null } : cut;

const stateIn = (
  kitchen: Pick<Kitchen, 'places'>,
  cut: PowerCut,
  item: Item,
  clock: Clock,
  tables: SafetyTables,
): PowerState | null => {
  const question = questionOf(judgedUntold(cut));
  const { fridge, freezer, items } = powerCut(
    { places: kitchen.places, items: [item] },
    question,
    clock,
    tables,
  );
  const [found] = items;
  if (!found) return null;
  const came = cameOf(found);
  if (came !== 'kept') return came === 'lost' ? { came } : { came, now: true };
  const { until } = found.where === 'freezer' ? freezer : fridge;
  return found.reason === 'door-shut-within-hours' && until ? { came: 'holds', until } : null;
};

const order = { lost: 0, doubtful: 1, holds: 2 } as const;

/** For `Ground` and `AssessContext`: nothing where no power cut lasts. */
export const powerIn = (
  kitchen: Pick<Kitchen, 'places' | 'powerCuts'>,
  clock: Clock,
  tables: SafetyTables,
): { power?: (item: Item, where: Where | null) => PowerState | null } => {
  const lasting = [...kitchen.powerCuts.values()].filter(
    ({ since, backAt }) => backAt === null && since <= clock.now,
  );
  if (lasting.length === 0) return {};
  return {
    power: (item, where) =>
      where !== 'fridge' && where !== 'freezer'
        ? null
        : lasting
            .filter((cut) => isInCut(kitchen, cut, item.placeId))
            .flatMap((cut) => stateIn(kitchen, cut, item, clock, tables) ?? [])
            .reduce<PowerState | null>(
              (worst, one) => (worst === null || order[one.came] < order[worst.came] ? one : worst),
              null,
            ),
  };
};

/** What a power cut that lasts makes of one food of a kitchen; null where none reaches it. */
export const powerNow = (
  kitchen: Pick<Kitchen, 'places' | 'powerCuts'>,
  item: Item,
  clock: Clock,
  tables = safetyTables(),
): PowerState | null =>
  powerIn(kitchen, clock, tables).power?.(item, whereKept(kitchen.places, item)) ?? null;
