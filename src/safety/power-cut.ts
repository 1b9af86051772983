/** After the power failed: what held, what to check, and item by item what the published table says. */
import type { PowerFreezerRow, PowerFridgeRow } from '../../shared/tables/schema.js';
import type { Item, Kitchen } from '../kitchen/model.js';
import type { Clock, Instant } from '../terms/dates.js';
import type {
  FoodMatch,
  HoldingTime,
  PowerCutQuestion,
  PowerCutReport,
  PowerItem,
  PowerVerdict,
  Step,
  Where,
  Citation,
} from './api.js';
import type { PowerReasonCode, StepCode } from './codes.js';
import { isHomeMade, whereKept } from './where-kept.js';
import { kindOf, matchFood } from './match.js';
import { cite, safetyTables } from './tables.js';
import type { SafetyTables } from './tables.js';
import { isAbove } from './temperature.js';

const MS_PER_HOUR = 3_600_000;

const holding = (
  question: PowerCutQuestion,
  now: Instant,
  doors: PowerCutQuestion['doors'],
  rule: SafetyTables['powerRules']['fridgeShutHours'],
  stillCold: boolean | null,
  tables: SafetyTables,
): HoldingTime => {
  const source = cite(tables, rule);
  const end = question.backAt ?? now;
  const until = new Date(Date.parse(question.since) + rule.hours * MS_PER_HOUR).toISOString();
  if (stillCold !== null) {
    return { hours: rule.hours, until, state: stillCold ? 'holding' : 'past', source };
  }
  // The hours are for a door kept shut: opened, or nobody knows, they are the most it can be, and past them it is past.
  if (doors !== 'shut' && end > until) return { hours: rule.hours, until, state: 'past', source };
  if (doors === 'open' && question.backAt === null)
    return { hours: rule.hours, until, state: 'at-most', source };
  if (doors !== 'shut') return { hours: null, until: null, state: 'unknown', source };
  return { hours: rule.hours, until, state: end <= until ? 'holding' : 'past', source };
};

const coldBy = (reads: PowerCutQuestion['fridgeReads'], tables: SafetyTables): boolean | null =>
  reads === null || reads === undefined ? null : !isAbove(reads, tables.powerRules.discardAbove.fahrenheit);

/** What to say of one food in the fridge. */
const fridgeVerdict = (
  question: PowerCutQuestion,
  row: PowerFridgeRow | null,
  stable: boolean,
  held: HoldingTime,
  tables: SafetyTables,
): { readonly verdict: PowerVerdict; readonly reason: PowerReasonCode } => {
  const hours = question.hoursAbove40 ?? null;
  const cold = coldBy(question.fridgeReads, tables);
  if (hours === null && cold === true) return { verdict: 'keep', reason: 'still-cold' };
  if (hours === null && cold === null && held.state === 'holding')
    return { verdict: 'keep', reason: 'door-shut-within-hours' };
  if (row === null) {
    return stable
      ? { verdict: 'keep', reason: 'not-affected' }
      : { verdict: 'discard-in-doubt', reason: 'not-in-table' };
  }
  if (row.verdict === 'keep') return { verdict: 'keep', reason: 'table-keep' };
  if (row.above_f > tables.powerRules.discardAbove.fahrenheit) {
    // Mayonnaise and the like: more than eight hours above fifty degrees.
    if (
      question.fridgeReads !== null &&
      question.fridgeReads !== undefined &&
      !isAbove(question.fridgeReads, row.above_f)
    )
      return { verdict: 'keep', reason: 'hours-not-over' };
    if (hours !== null && hours <= row.hours) return { verdict: 'keep', reason: 'hours-not-over' };
    return hours !== null && question.fridgeReads !== null && question.fridgeReads !== undefined
      ? { verdict: 'discard', reason: 'hours-over' }
      : { verdict: 'discard-in-doubt', reason: 'unknown-temperature' };
  }
  if (hours !== null) {
    // The table says more than two hours, the text two hours or more: at two hours, discard.
    return hours >= row.hours
      ? { verdict: 'discard', reason: 'table-discard' }
      : { verdict: 'use-now', reason: 'hours-not-over' };
  }
  // Opened within its hours: a thermometer tells, and nothing else does.
  if (held.state === 'at-most' && cold === null) return { verdict: 'check', reason: 'opened-within-hours' };
  // Past the shut-door hours, or warm by the thermometer: perishables count as warm too long.
  return held.state === 'unknown' && cold === null
    ? { verdict: 'discard-in-doubt', reason: 'unknown-temperature' }
    : { verdict: 'discard', reason: 'table-discard' };
};

const freezerVerdict = (
  question: PowerCutQuestion,
  row: PowerFreezerRow | null,
  stable: boolean,
  held: HoldingTime,
  tables: SafetyTables,
): { readonly verdict: PowerVerdict; readonly reason: PowerReasonCode } => {
  const hours = question.hoursAbove40 ?? null;
  const reads = question.freezerReads ?? null;
  const icy =
    question.iceCrystals ??
    (reads === null ? null : !isAbove(reads, tables.powerRules.refreezeAtOrBelow.fahrenheit));
  if (icy === true) {
    if (row === null) return { verdict: 'refreeze', reason: 'not-in-table' };
    if (row.ice_crystals === 'discard') return { verdict: 'discard', reason: 'table-discard' };
    return {
      verdict: row.ice_crystals,
      reason: row.ice_crystals === 'refreeze' ? 'table-refreeze' : 'table-refreeze-loss',
    };
  }
  if (icy === false || hours !== null) {
    if (row === null) {
      return stable
        ? { verdict: 'keep', reason: 'not-affected' }
        : { verdict: 'discard-in-doubt', reason: 'not-in-table' };
    }
    if (row.thawed !== 'discard') {
      return {
        verdict: row.thawed,
        reason: row.check_signs
          ? 'check-signs'
          : row.thawed === 'refreeze'
            ? 'table-refreeze'
            : 'table-refreeze-loss',
      };
    }
    if (row.ice_crystals === 'discard') return { verdict: 'discard', reason: 'table-discard' };
    if (hours === null) return { verdict: 'discard-in-doubt', reason: 'unknown-temperature' };
    return hours >= (row.thawed_hours ?? 0)
      ? { verdict: 'discard', reason: 'hours-over' }
      : { verdict: 'use-now', reason: 'hours-not-over' };
  }
  if (held.state === 'holding') return { verdict: 'keep', reason: 'door-shut-within-hours' };
  return { verdict: 'check', reason: held.state === 'past' ? 'past-hours-check' : 'unknown-temperature' };
};

const ORDER: Readonly<Record<PowerVerdict, number>> = {
  discard: 0,
  'discard-in-doubt': 1,
  'use-now': 2,
  check: 3,
  'refreeze-with-loss': 4,
  refreeze: 5,
  keep: 6,
};

const steps = (tables: SafetyTables, isBack: boolean): readonly Step[] => {
  const rules = tables.powerRules;
  const step = (code: StepCode, rule: Parameters<typeof cite>[1] | null, args: Step['args'] = {}): Step => ({
    code,
    args,
    caution: null,
    seconds: null,
    temperature: null,
    source: rule === null ? null : cite(tables, rule),
    words: null,
  });
  if (!isBack) {
    return [
      step('note-time', null),
      step('keep-doors-shut', rules.fridgeShutHours, {
        fridge: rules.fridgeShutHours.hours,
        full: rules.freezerFullHours.hours,
        half: rules.freezerHalfHours.hours,
      }),
      step('move-perishables', rules.fridgeShutHours),
      step('dry-ice', rules.dryIce, {
        pounds: rules.dryIce.pounds,
        feet: rules.dryIce.cubicFeet,
        days: rules.dryIce.days,
      }),
      step('no-snow', rules.noSnow),
      step('when-in-doubt', rules.discardAbove),
    ];
  }
  return [
    {
      ...step('read-thermometer', rules.refreezeAtOrBelow),
      temperature: { degrees: rules.discardAbove.fahrenheit, scale: 'fahrenheit' },
    },
    step('feel-ice-crystals', rules.refreezeAtOrBelow),
    step('go-item-by-item', rules.discardAbove),
    step('never-taste', rules.neverTaste),
    step('raw-juice-discard', rules.rawJuice),
    step('when-in-doubt', rules.discardAbove),
    step('clean-up', null),
  ];
};

export interface PowerFood {
  readonly itemId: string | null;
  readonly name: string;
  readonly where: Where;
  readonly homeMade: boolean;
}

const judgeFood = (
  food: PowerFood,
  question: PowerCutQuestion,
  held: { readonly fridge: HoldingTime; readonly freezer: HoldingTime },
  tables: SafetyTables,
): PowerItem => {
  const match: FoodMatch = matchFood(food.name, { where: food.where, homeMade: food.homeMade }, tables);
  const kind = kindOf(match, tables);
  const stable = kind.room === 'stable';
  if (food.where === 'freezer') {
    const row = kind.power_freezer === null ? null : (tables.powerFreezer.get(kind.power_freezer) ?? null);
    const found = freezerVerdict(question, row, stable, held.freezer, tables);
    return {
      itemId: food.itemId,
      name: food.name,
      where: food.where,
      match,
      row: row === null ? null : { id: row.id, item: row.item },
      source: row === null ? held.freezer.source : cite(tables, row),
      ...found,
    };
  }
  const row = kind.power_fridge === null ? null : (tables.powerFridge.get(kind.power_fridge) ?? null);
  const found = fridgeVerdict(question, row, stable, held.fridge, tables);
  return {
    itemId: food.itemId,
    name: food.name,
    where: food.where,
    match,
    row: row === null ? null : { id: row.id, item: row.item },
    source: row === null ? held.fridge.source : cite(tables, row),
    ...found,
  };
};

const report = (
  foods: readonly PowerFood[],
  question: PowerCutQuestion,
  clock: Clock,
  tables: SafetyTables,
): PowerCutReport => {
  const rules = tables.powerRules;
  const freezerRule = question.fullness === 'full' ? rules.freezerFullHours : rules.freezerHalfHours;
  const icy = question.iceCrystals ?? null;
  const freezerDoors = question.freezerDoors ?? question.doors;
  const held = {
    fridge: holding(
      question,
      clock.now,
      question.doors,
      rules.fridgeShutHours,
      coldBy(question.fridgeReads, tables),
      tables,
    ),
    // Nobody said how full: the shorter time.
    freezer: holding(
      question,
      clock.now,
      freezerDoors,
      freezerRule,
      icy ?? coldBy(question.freezerReads, tables),
      tables,
    ),
  };
  const items = foods
    .filter((food) => food.where === 'fridge' || food.where === 'freezer')
    .map((food) => judgeFood(food, question, held, tables))
    .sort((a, b) => ORDER[a.verdict] - ORDER[b.verdict]);
  return { ...held, items, steps: steps(tables, question.backAt !== null) };
};

/** The report for everything in a kitchen's fridges and freezers, discards first. */
export const powerCut = (
  kitchen: { readonly places: Kitchen['places']; readonly items: { values(): Iterable<Item> } },
  question: PowerCutQuestion,
  clock: Clock,
  tables = safetyTables(),
): PowerCutReport => {
  const foods: PowerFood[] = [];
  for (const item of kitchen.items.values()) {
    const where = item.gone === null ? whereKept(kitchen.places, item) : null;
    if (where !== null) foods.push({ itemId: item.id, name: item.name, where, homeMade: isHomeMade(item) });
  }
  return report(foods, question, clock, tables);
};

/** What the table says of one food. */
export const judgedInCut = (
  food: PowerFood,
  question: PowerCutQuestion,
  clock: Clock,
  tables: SafetyTables,
): PowerItem => {
  const [found] = report([food], question, clock, tables).items;
  if (found === undefined) throw new Error('the power-cut report lost its only food');
  return found;
};

/** What stays on the record of a food, by what the table says of it. */
export const cameOf = ({ verdict }: Pick<PowerItem, 'verdict'>): 'lost' | 'doubtful' | 'kept' =>
  verdict === 'discard' || verdict === 'discard-in-doubt'
    ? 'lost'
    : verdict === 'check'
      ? 'doubtful'
      : 'kept';

/** Hours a fridge holds shut, and a freezer full and half full. */
export const holdingHours = (
  tables = safetyTables(),
): { readonly fridge: number; readonly full: number; readonly half: number; readonly source: Citation } => {
  const { fridgeShutHours, freezerFullHours, freezerHalfHours } = tables.powerRules;
  return {
    fridge: fridgeShutHours.hours,
    full: freezerFullHours.hours,
    half: freezerHalfHours.hours,
    source: cite(tables, fridgeShutHours),
  };
};

/** Hours above forty degrees Fahrenheit after which what spoils is thrown out. */
export const warmHours = (tables = safetyTables()): number => tables.powerRules.discardAbove.hours;
