/** From a file's rows to one change: all of it, or a list of what is wrong and none of it. */
import { isDeepStrictEqual } from 'node:util';
import { applyChange } from '../apply.js';
import { addMarker } from '../changes/marking.js';
import { putAway, type Draft } from '../changes/putting-away.js';
import { change, isRefused, op, type Doing } from '../doing.js';
import { livingItems } from '../items.js';
import { itemWithMarker } from '../markers.js';
import type { Change, Id, Item, Kitchen, Op, Place } from '../model.js';
import { foodKey } from '../names.js';
import { placesIn } from '../places.js';
import { readCsv } from './csv.js';
import type { Fault, ReadRow } from './fault.js';
import { readJson } from './json.js';
import { kindOfPlace, rowOfItem, type ItemRow } from './row.js';

export type FileForm = 'csv' | 'json';

export interface ImportPlan {
  /** Null when anything is wrong, or when there is nothing to import. */
  readonly change: Change | null;
  readonly faults: readonly Fault[];
  /** What it would make. */
  readonly items: number;
  readonly markers: number;
  readonly places: readonly string[];
  /** Rows that say exactly what the kitchen holds already; they are left out. */
  readonly already: number;
}

/** More rows than this are no kitchen. */
const MOST_ROWS = 10_000;

const placeNamed = (kitchen: Kitchen, parentId: Id | null, name: string): Place | undefined =>
  placesIn(kitchen, parentId).find((place) =>
    [place.name, ...place.aliases].some((known) => foodKey(known) === foodKey(name)),
  );

interface Making {
  readonly doing: Doing;
  readonly makePlaces: boolean;
  readonly ops: Op[];
  readonly placesMade: string[];
  readonly batches: Map<string, Id>;
}

const withOps = (making: Making, made: Pick<Change, 'ops'>): Making => {
  making.ops.push(...made.ops);
  const kitchen = applyChange(making.doing.kitchen, made);
  return { ...making, doing: { ...making.doing, kitchen } };
};

/** Walks a path of names, making what is missing when that was asked for. */
const findPlace = (
  making: Making,
  path: readonly string[],
): { readonly making: Making; readonly placeId: Id | null } | { readonly missing: string } => {
  let now = making;
  let placeId: Id | null = null;
  for (const [depth, name] of path.entries()) {
    const found = placeNamed(now.doing.kitchen, placeId, name);
    if (found) {
      placeId = found.id;
      continue;
    }
    if (!making.makePlaces) return { missing: path.slice(0, depth + 1).join(' > ') };
    const kind = kindOfPlace(name, depth === 0);
    const position: number =
      placesIn(now.doing.kitchen, placeId).filter((one) => one.kind === kind).length + 1;
    const place: Place = {
      id: now.doing.newId(),
      parentId: placeId,
      name,
      kind,
      position: depth === 0 ? null : position,
      aliases: [],
    };
    now = withOps(now, { ops: [op('place', place.id, null, place)] });
    now.placesMade.push(path.slice(0, depth + 1).join(' > '));
    placeId = place.id;
  }
  return { making: now, placeId };
};

/** A spare marker that feels so, else a new one. */
const findMarker = (making: Making, touch: ItemRow['marker']): { making: Making; markerId: Id | null } => {
  if (!touch) return { making, markerId: null };
  const { kitchen } = making.doing;
  const spare = [...kitchen.markers.values()].find(
    (marker) => isDeepStrictEqual(marker.touch, touch) && !itemWithMarker(kitchen, marker.id),
  );
  if (spare) return { making, markerId: spare.id };
  const made = addMarker(making.doing, { touch }, { anyway: true });
  if (isRefused(made)) return { making, markerId: null };
  return { making: withOps(making, made), markerId: made.ops[0]?.id ?? null };
};

const ownerOf = (kitchen: Kitchen, name: string | null): Id | null | undefined =>
  name === null
    ? null
    : [...kitchen.people.values()].find((person) => person.name.toLowerCase() === name.toLowerCase())?.id;

const importRow = (making: Making, { row, item }: ReadRow): Making | Fault => {
  const where = findPlace(making, item.place);
  if ('missing' in where) return { row, column: 'place', problem: `there is no place "${where.missing}"` };
  const ownerId = ownerOf(making.doing.kitchen, item.owner);
  if (ownerId === undefined)
    return { row, column: 'owner', problem: `nobody here is called "${item.owner}"` };
  const { making: now, markerId } = findMarker(where.making, item.marker);
  const { place: _place, owner: _owner, marker: _marker, batch, ...said } = item;
  const draft = { ...said, placeId: where.placeId, ownerId, markerId } as Draft;
  const made = putAway(now.doing, draft);
  if (isRefused(made)) return { row, column: null, problem: made.refused };
  const inBatch = made.ops.map((one) => {
    if (one.kind !== 'item' || !one.after) return one;
    // What was imported keeps its own dates: nothing was frozen today by being read from a file.
    const after: Item = { ...one.after, dates: item.dates as Item['dates'], batchId: batchId(now, batch) };
    return { ...one, after };
  });
  return withOps(now, { ops: inBatch });
};

const batchId = (making: Making, batch: string | null): Id | null => {
  if (batch === null) return null;
  const known = making.batches.get(batch) ?? making.doing.newId();
  making.batches.set(batch, known);
  return known;
};

/**
 * Plans an import, changing nothing: a dry run is a plan that is not committed. Names lead to places and
 * people that are there; `makePlaces` builds missing places. Reading the same file twice adds nothing.
 */
export const planImport = (
  doing: Doing,
  text: string,
  form: FileForm,
  how: { readonly makePlaces?: boolean } = {},
): ImportPlan => {
  const nothing = { change: null, items: 0, markers: 0, places: [], already: 0 };
  const { rows, faults: misread } = form === 'csv' ? readCsv(text) : readJson(text);
  if (rows.length > MOST_ROWS) {
    return {
      ...nothing,
      faults: [{ row: MOST_ROWS, column: null, problem: `more than ${MOST_ROWS} items` }],
    };
  }
  const faults: Fault[] = [...misread];
  const there = new Set(livingItems(doing.kitchen).map((item) => sameness(rowOfItem(doing.kitchen, item))));
  const fresh = rows.filter(({ item }) => !there.has(sameness(item)));
  let making: Making = {
    doing,
    makePlaces: how.makePlaces ?? false,
    ops: [],
    placesMade: [],
    batches: new Map(),
  };
  for (const row of fresh) {
    const next = importRow(making, row);
    if ('problem' in next) faults.push(next);
    else making = next;
  }
  if (faults.length > 0) return { ...nothing, faults: faults.sort((a, b) => a.row - b.row) };
  const made = (kind: Op['kind']): number =>
    making.ops.filter((one) => one.kind === kind && !one.before).length;
  return {
    change:
      making.ops.length === 0
        ? null
        : change('imported', fresh.map(({ item }) => item.name).slice(0, 20), making.ops),
    faults: [],
    items: made('item'),
    markers: made('marker'),
    places: making.placesMade,
    already: rows.length - fresh.length,
  };
};

/** Equal for rows that say the same; a batch's word may differ from file to file, and a table has no preparations. */
const sameness = ({ batch: _batch, preparations: _preparations, ...row }: ItemRow): string =>
  JSON.stringify(sorted(row));

const sorted = (value: unknown): unknown =>
  value !== null && typeof value === 'object' && !Array.isArray(value)
    ? Object.fromEntries(
        Object.entries(value)
          .filter(([, part]) => part !== undefined)
          .sort(([a], [b]) => (a < b ? -1 : 1))
          .map(([key, part]) => [key, sorted(part)]),
      )
    : value;
