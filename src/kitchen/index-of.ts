export interface Reckoned<Part extends object, T> {
  (part: Part): T;
  /** What was reckoned of one part, if it was, changed into what holds of another: cheaper than anew. */
  carry(from: Part, to: Part, change: (value: T) => T): void;
}

/**
 * Things reckoned once from part of a kitchen and kept as long as that part lives. Kitchens never
 * change in place, so what was reckoned stays true; a change makes new maps, and new reckonings only
 * when somebody asks.
 */
export const reckoned = <Part extends object, T>(reckon: (part: Part) => T): Reckoned<Part, T> => {
  const known = new WeakMap<Part, { readonly value: T }>();
  const ask = (part: Part): T => {
    const found = known.get(part);
    if (found) return found.value;
    const value = reckon(part);
    known.set(part, { value });
    return value;
  };
  return Object.assign(ask, {
    carry: (from: Part, to: Part, change: (value: T) => T): void => {
      const found = known.get(from);
      if (found) known.set(to, { value: change(found.value) });
    },
  });
};

/** Groups by a key, keeping order; what has none is left out. */
export const groupedBy = <K, T>(
  all: Iterable<T>,
  keyOf: (one: T) => K | null,
): ReadonlyMap<K, readonly T[]> => {
  const groups = new Map<K, T[]>();
  for (const one of all) {
    const key = keyOf(one);
    if (key === null) continue;
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return groups;
};
