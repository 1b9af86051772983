/** Which row of the storage tables holds for a food, and where its days are counted from. */
import type { FoodKind, StorageRow } from '../../shared/tables/schema.js';
import type { Region } from '../kitchen/model.js';
import type { ClockState, RowUsed, Span } from './api.js';
import { regionFacts } from './regions/index.js';
import { cite } from './tables.js';
import type { SafetyTables } from './tables.js';

export interface Chosen {
  readonly row: StorageRow;
  /** The opened row was taken, so days count from opening. */
  readonly fromOpening: boolean;
  /** No row of its own: the general row for cooked food. */
  readonly general: boolean;
}

const stored = (tables: SafetyTables, region: Region, id: string | null): StorageRow | null =>
  id === null ? null : (tables.storage[region].get(id) ?? null);

/** Home-made, it is as any leftover; but jam, chutney and bread are not. */
const spoils = (kind: FoodKind): boolean => kind.room !== 'stable' && kind.hazard !== 'none';

/** The row for this kind in a region's tables; null when the guidance held has none. */
export const chooseRow = (
  kind: FoodKind,
  region: Region,
  how: { readonly opened: boolean; readonly homeMade: boolean },
  tables: SafetyTables,
): Chosen | null => {
  const general = kind.id === 'general';
  const rows = regionFacts(region).storageRows;
  const openedRow = how.opened ? stored(tables, region, rows.opened(kind)) : null;
  if (openedRow !== null) return { row: openedRow, fromOpening: true, general };
  const own = stored(tables, region, rows.own(kind));
  const givesWay = own === null || (rows.undatedGivesWay && own.fridge === null);
  const leftovers = stored(tables, region, rows.leftovers);
  if (givesWay && how.homeMade && spoils(kind) && leftovers !== null)
    return { row: leftovers, fromOpening: false, general: true };
  return own === null ? null : { row: own, fromOpening: own.counts_from === 'opened', general };
};

/** The day a row's days count from. */
export const anchorOf = (chosen: Chosen, clock: ClockState): string | null => {
  if (chosen.fromOpening) return clock.openedOn ?? clock.startedOn;
  if (chosen.row.counts_from === 'thawed') return clock.thawedOn ?? clock.startedOn;
  return clock.startedOn;
};

const rowsUsed = new WeakMap<
  StorageRow,
  { readonly keeping: RowUsed; readonly quality: RowUsed; readonly shelf: RowUsed }
>();

/** A row as an answer shows it; `shelf`: its figure for room temperature, which is of quality. */
export const rowUsed = (
  row: StorageRow,
  kind: RowUsed['kind'] | 'shelf',
  region: Region,
  tables: SafetyTables,
): RowUsed => {
  const known = rowsUsed.get(row);
  if (known !== undefined) return known[kind];
  const shown = (limit: Span | null, as: RowUsed['kind']): RowUsed => ({
    id: row.id,
    food: row.food,
    type: row.type,
    region,
    limit,
    kind: as,
    standing: row.standing,
    source: cite(tables, row),
    note: row.note,
  });
  const made = {
    keeping: shown(row.fridge, 'keeping'),
    quality: shown(row.freezer, 'quality'),
    shelf: shown(row.fridge, 'quality'),
  };
  rowsUsed.set(row, made);
  return made[kind];
};
