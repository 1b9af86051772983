/**
 * Places of a household by kind, by position among their like, and by what they are in:
 * "second shelf from the bottom of the fridge" needs no name.
 */
import type { NamedRecords } from './api.js';

type Place = NamedRecords['place'];

export type Position =
  | { readonly from: 'top' | 'left'; readonly nth: number }
  | { readonly from: 'bottom' | 'right'; readonly nth: number }
  | { readonly from: 'middle' };

export interface PlaceTree {
  set(place: Place): void;
  remove(id: string): void;
  get(id: string): Place | undefined;
  readonly size: number;
  /** Places of a kind at a position among their like (any position when null), at most `limit`. */
  at(kind: string, position: Position | null, limit: number): string[];
  /** True when `id` is somewhere in `ancestor`. */
  isIn(id: string, ancestor: string): boolean;
  /** Places of a kind directly or further down in `ancestor`, at a position among their like. */
  under(ancestor: string, kind: string, position: Position | null, limit: number): string[];
}

/** Deep enough for any kitchen, and an end for a tree that was set wrongly in a circle. */
const deepest = 8;

const add = (table: Map<string, Set<string>>, key: string, id: string): void => {
  const there = table.get(key);
  if (there) there.add(id);
  else table.set(key, new Set([id]));
};
const drop = (table: Map<string, Set<string>>, key: string, id: string): void => {
  const there = table.get(key);
  there?.delete(id);
  if (there?.size === 0) table.delete(key);
};

export const createPlaceTree = (): PlaceTree => {
  const places = new Map<string, Place>();
  const byKind = new Map<string, Set<string>>();
  const byPlace = new Map<string, Set<string>>();
  const byKindAndPosition = new Map<string, Set<string>>();
  const children = new Map<string, Set<string>>();

  /** Children of one parent of one kind, by position. */
  const like = (place: Place): Place[] =>
    [...(byPlace.get(`${place.parentId ?? ''} ${place.kind}`) ?? [])]
      .map((id) => places.get(id)!)
      .filter(({ position }) => position !== null)
      .sort((a, b) => a.position! - b.position!);

  const fits = (place: Place, position: Position | null): boolean => {
    if (position === null) return true;
    if (place.position === null) return false;
    if (position.from === 'top' || position.from === 'left') return place.position === position.nth;
    const among = like(place);
    const at = among.findIndex(({ id }) => id === place.id);
    if (position.from === 'middle')
      return at > 0 && at < among.length - 1 && Math.abs(at - (among.length - 1) / 2) <= 0.5;
    return at === among.length - position.nth;
  };

  const remove = (id: string): void => {
    const place = places.get(id);
    if (!place) return;
    drop(byKind, place.kind, id);
    drop(byPlace, `${place.parentId ?? ''} ${place.kind}`, id);
    drop(byKindAndPosition, `${place.kind} ${place.position}`, id);
    if (place.parentId !== null) drop(children, place.parentId, id);
    places.delete(id);
  };

  return {
    set(place) {
      remove(place.id);
      places.set(place.id, place);
      add(byKind, place.kind, place.id);
      add(byPlace, `${place.parentId ?? ''} ${place.kind}`, place.id);
      add(byKindAndPosition, `${place.kind} ${place.position}`, place.id);
      if (place.parentId !== null) add(children, place.parentId, place.id);
    },
    remove,
    get: (id) => places.get(id),
    get size() {
      return places.size;
    },
    at(kind, position, limit) {
      const counted = position?.from === 'top' || position?.from === 'left';
      const ids = counted ? byKindAndPosition.get(`${kind} ${position.nth}`) : byKind.get(kind);
      const found: string[] = [];
      let looked = 0;
      for (const id of ids ?? []) {
        if (found.length >= limit || (looked += 1) > 8 * limit) break;
        if (fits(places.get(id)!, position)) found.push(id);
      }
      return found;
    },
    isIn(id, ancestor) {
      let at = places.get(id)?.parentId ?? null;
      for (let depth = 0; at !== null && depth < deepest; depth += 1) {
        if (at === ancestor) return true;
        at = places.get(at)?.parentId ?? null;
      }
      return false;
    },
    under(ancestor, kind, position, limit) {
      const found: string[] = [];
      let level = [ancestor];
      for (let depth = 0; depth < deepest && level.length > 0 && found.length < limit; depth += 1) {
        const next: string[] = [];
        for (const parent of level) {
          for (const id of children.get(parent) ?? []) {
            if (next.length >= 200) break;
            next.push(id);
            const place = places.get(id)!;
            if (place.kind === kind && fits(place, position) && found.length < limit) found.push(id);
          }
        }
        // A shelf of the freezer, not a shelf of a cupboard in it: the nearest level that has one.
        if (found.length > 0) break;
        level = next;
      }
      return found;
    },
  };
};
