/** A kitchen and a change make the next kitchen. Pure: the old one stays as it was. */
import { isDeepStrictEqual } from 'node:util';
import { carryLiving } from './items.js';
import { withEdits } from './layered.js';
import type { Change, Household, Id, Kitchen, Op, RecordKind, Records } from './model.js';

/** A household with nothing in it, at version 0. */
export const emptyKitchen = (household: Household): Kitchen => ({
  household,
  people: new Map(),
  places: new Map(),
  markers: new Map(),
  items: new Map(),
  purchases: new Map(),
  notes: new Map(),
  reminders: new Map(),
  stockTakes: new Map(),
  powerCuts: new Map(),
  version: 0,
});

/** Where a kitchen keeps each kind of record; the household itself is not in a map. */
export const SHELF = {
  person: 'people',
  place: 'places',
  marker: 'markers',
  item: 'items',
  purchase: 'purchases',
  note: 'notes',
  reminder: 'reminders',
  stockTake: 'stockTakes',
  powerCut: 'powerCuts',
} as const satisfies Record<Exclude<RecordKind, 'household'>, keyof Kitchen>;

/** The record of that kind and id, or null. */
export const recordOf = <K extends RecordKind>(kitchen: Kitchen, kind: K, id: Id): Records[K] | null => {
  if (kind === 'household') {
    return (kitchen.household.id === id ? kitchen.household : null) as Records[K] | null;
  }
  const map: ReadonlyMap<Id, unknown> = kitchen[SHELF[kind as Exclude<K, 'household'>]];
  return (map.get(id) ?? null) as Records[K] | null;
};

/**
 * The kitchen after all of a change's ops, in order, one version up.
 * `before` is not checked here: builders made it from this kitchen, and the store
 * refuses a change decided on another version.
 */
export const applyChange = (kitchen: Kitchen, change: Pick<Change, 'ops'>): Kitchen => {
  const edits = new Map<(typeof SHELF)[keyof typeof SHELF], [Id, unknown][]>();
  let household = kitchen.household;
  for (const op of change.ops) {
    if (op.kind === 'household') {
      if (op.after) household = op.after;
      continue;
    }
    const shelf = SHELF[op.kind];
    const known = edits.get(shelf);
    if (known) known.push([op.id, op.after]);
    else edits.set(shelf, [[op.id, op.after]]);
  }
  const next: Record<string, ReadonlyMap<Id, unknown>> = {};
  // Only the kinds that change are made anew; the rest is shared with the old kitchen.
  for (const [shelf, of] of edits) next[shelf] = withEdits<unknown>(kitchen[shelf], of);
  const after = { ...kitchen, ...next, household, version: kitchen.version + 1 };
  const changedItems = new Set(edits.get('items')?.map(([id]) => id));
  if (changedItems.size > 0) carryLiving(kitchen.items, after.items, changedItems);
  return after;
};

const swapped = (op: Op): Op => ({ ...op, before: op.after, after: op.before }) as Op;

/** The ops that take a change back: each swapped, last first. */
export const invertChange = (change: Pick<Change, 'ops'>): readonly Op[] =>
  [...change.ops].reverse().map(swapped);

/** As JSON keeps it: a part set to undefined is the same as one left out. */
const asStored = (record: unknown): unknown => JSON.parse(JSON.stringify(record));

/** Record ids that are no longer as the change left them; empty when it can be taken back. */
export const changedSince = (kitchen: Kitchen, change: Pick<Change, 'ops'>): readonly Op[] => {
  // Only the last op on a record says how the change left it.
  const last = new Map<string, Op>();
  for (const op of change.ops) last.set(`${op.kind} ${op.id}`, op);
  return [...last.values()].filter(
    (op) => !isDeepStrictEqual(asStored(recordOf(kitchen, op.kind, op.id)), asStored(op.after)),
  );
};

/**
 * Several changes made one after the other as one: undone together.
 * Ops on the same record are folded into one, so `before` is how the first found it.
 */
export const joinChanges = (first: Change, ...rest: readonly Change[]): Change => {
  const folded = new Map<string, Op>();
  for (const op of [first, ...rest].flatMap((change) => change.ops)) {
    const key = `${op.kind} ${op.id}`;
    const earlier = folded.get(key);
    folded.set(key, earlier ? ({ ...op, before: earlier.before } as Op) : op);
  }
  const doers = new Set([first, ...rest].map(({ doerId }) => doerId));
  return {
    verb: first.verb,
    ...(doers.size === 1 && first.doerId ? { doerId: first.doerId } : {}),
    about: [...new Set([first, ...rest].flatMap((change) => change.about))],
    ops: [...folded.values()].filter((op) => op.before !== null || op.after !== null),
  };
};
