/**
 * Records of one kind, in layers: all of them as they once were, and over them the few that changed
 * since. A change copies only the upper layer, so that it costs alike in a kitchen of fifty things
 * and of two thousand. Read-only, like every part of a kitchen.
 */
import type { Id } from './model.js';

const removed = Symbol('removed');
type Over<V> = ReadonlyMap<Id, V | typeof removed>;

/** Fewer than this are simply copied. */
const SMALL = 64;
/** An upper layer larger than this is laid down into the lower one: now and then, not each time. */
const OVER_AT_MOST = 64;

class Layered<V> implements ReadonlyMap<Id, V> {
  constructor(
    readonly base: ReadonlyMap<Id, V>,
    readonly over: Over<V>,
    readonly size: number,
  ) {}

  get(id: Id): V | undefined {
    const upper = this.over.get(id);
    if (upper === undefined) return this.base.get(id);
    return upper === removed ? undefined : upper;
  }

  has(id: Id): boolean {
    const upper = this.over.get(id);
    return upper === undefined ? this.base.has(id) : upper !== removed;
  }

  *entries(): MapIterator<[Id, V]> {
    for (const [id, value] of this.base) {
      const upper = this.over.get(id);
      if (upper === undefined) yield [id, value];
      else if (upper !== removed) yield [id, upper];
    }
    for (const [id, upper] of this.over) if (upper !== removed && !this.base.has(id)) yield [id, upper];
  }

  *keys(): MapIterator<Id> {
    for (const [id] of this.entries()) yield id;
  }

  *values(): MapIterator<V> {
    for (const [, value] of this.entries()) yield value;
  }

  forEach(each: (value: V, id: Id, all: ReadonlyMap<Id, V>) => void): void {
    for (const [id, value] of this.entries()) each(value, id, this);
  }

  [Symbol.iterator](): MapIterator<[Id, V]> {
    return this.entries();
  }
}

/** One record put in place, or taken out with null. */
export type Edit<V> = readonly [id: Id, after: V | null];

const copied = <V>(map: ReadonlyMap<Id, V>, edits: readonly Edit<V>[]): ReadonlyMap<Id, V> => {
  const next = new Map(map);
  for (const [id, after] of edits) {
    if (after === null) next.delete(id);
    else next.set(id, after);
  }
  return next;
};

/** The records after the edits, in order; the ones given stay as they are. */
export const withEdits = <V>(map: ReadonlyMap<Id, V>, edits: readonly Edit<V>[]): ReadonlyMap<Id, V> => {
  const layered = map instanceof Layered ? (map as Layered<V>) : null;
  if (map.size < SMALL || edits.length > OVER_AT_MOST) return copied(map, edits);
  if (layered && layered.over.size + edits.length > OVER_AT_MOST) return copied(map, edits);
  const over = new Map(layered?.over);
  const base = layered?.base ?? map;
  let { size } = map;
  for (const [id, after] of edits) {
    const upper = over.get(id);
    const had = upper === undefined ? base.has(id) : upper !== removed;
    size += (after === null ? 0 : 1) - (had ? 1 : 0);
    over.set(id, after ?? removed);
  }
  return new Layered(base, over, size);
};
