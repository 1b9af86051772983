/** The USDA's storage-time data, by the row: what the charts have no figure for, they often have. */
import type { StorageDataRow, StorageRow } from '../../shared/tables/schema.js';
import type { SafetyTables } from './tables.js';
import { foodWords } from './words.js';

export type Cell = 'pantry' | 'pantry_opened' | 'fridge' | 'fridge_opened' | 'fridge_thawed' | 'freezer';

/** Words that tell no row from another. */
const SAYS_NOTHING = new Set(
  foodWords(
    `a an the of my our and or with in such as for to all type other fresh raw whole opened unopened sealed
     thawed frozen leftover e g etc commercial purchased store bought jar can tin package packet`,
  ),
);

const wordsOf = (name: string): readonly string[] =>
  foodWords(name).filter((word) => !SAYS_NOTHING.has(word));

/** Made at home, where a shop's is sold under the same name: only where that was said. */
const ONLY_WHERE_SAID = new Set(foodWords('squeezed homemade'));

/** "Chicken nuggets, patties" are two foods of one kind: chicken nuggets and chicken patties. */
const namesOf = (food: string): readonly string[] => {
  const [one = food, other, ...more] = food.split(', ');
  const words = one.split(' ');
  return other === undefined || more.length > 0 || words.length < 2 || other.includes(' ')
    ? [food]
    : [food, one, [...words.slice(0, -1), other].join(' ')];
};

interface Indexed {
  readonly row: StorageDataRow;
  readonly food: readonly string[];
  readonly type: ReadonlySet<string>;
}

const indexes = new WeakMap<SafetyTables, ReadonlyMap<string, readonly Indexed[]>>();
const indexOf = (tables: SafetyTables): ReadonlyMap<string, readonly Indexed[]> => {
  const known = indexes.get(tables);
  if (known) return known;
  const index = new Map<string, Indexed[]>();
  for (const row of tables.storageData.values()) {
    for (const name of namesOf(row.food)) {
      const food = wordsOf(name);
      const [first] = food;
      if (!first) continue;
      index.set(first, [...(index.get(first) ?? []), { row, food, type: new Set(wordsOf(row.type)) }]);
    }
  }
  indexes.set(tables, index);
  return index;
};

const DAYS: Readonly<Record<string, number>> = { hours: 1 / 24, days: 1, weeks: 7, months: 30, years: 365 };
const daysOf = (span: NonNullable<StorageDataRow[Cell]>): number => span.high * (DAYS[span.unit] ?? 1);

/**
 * The row for a food named so, for one cell: every word of the row's food is said, and every word said is of
 * the row. Of several that fit alike, the shortest time. `wholly`: all of its type was said too.
 */
export const storageDataFor = (
  name: string,
  cell: Cell,
  tables: SafetyTables,
  wholly = false,
): StorageDataRow | null => {
  const said = wordsOf(name);
  const all = new Set(said);
  const index = indexOf(tables);
  let best: { readonly row: StorageDataRow; readonly matched: number; readonly days: number } | null = null;
  for (const word of all)
    for (const { row, food, type } of index.get(word) ?? []) {
      const span = row[cell];
      if (span === null || !food.every((one) => all.has(one))) continue;
      if ([...type].some((one) => ONLY_WHERE_SAID.has(one) && !all.has(one))) continue;
      const beside = said.filter((one) => !food.includes(one));
      if (!beside.every((one) => type.has(one))) continue;
      if (
        wholly
          ? [...type].some((one) => !all.has(one))
          : beside.length === 0 && type.size > 0 && food.length < 2
      )
        continue;
      const matched = food.length + beside.length - (beside.length === 0 && type.size > 0 ? 0.5 : 0);
      const days = daysOf(span);
      if (!best || matched > best.matched || (matched === best.matched && days < best.days))
        best = { row, matched, days };
    }
  return best?.row ?? null;
};

const rows = new WeakMap<StorageDataRow, Map<Cell, StorageRow>>();

/** A row of the data as a row of the chart, with the cell asked for as its figure. */
export const asChartRow = (row: StorageDataRow, cell: Cell): StorageRow => {
  const known = rows.get(row) ?? new Map<Cell, StorageRow>();
  rows.set(row, known);
  const before = known.get(cell);
  if (before) return before;
  const counts =
    cell === 'fridge_opened' || cell === 'pantry_opened'
      ? 'opened'
      : cell === 'fridge_thawed'
        ? 'thawed'
        : 'earliest';
  const made: StorageRow = {
    id: row.id,
    food: row.food,
    type: row.type || row.food,
    fridge: cell === 'freezer' ? row.fridge : row[cell],
    freezer: row.freezer,
    freezer_note: null,
    counts_from: counts,
    standing: 'current',
    basis: 'copy',
    source: 'usda-storage',
    section: row.id,
    note: row.note,
  };
  known.set(cell, made);
  return made;
};

/** Days of a span, for telling the shorter of two. */
export const spanDays = daysOf;
