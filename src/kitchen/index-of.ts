/**
 * Things reckoned once from part of a kitchen and kept as long as that part lives. Kitchens never
 * change in place, so what was reckoned stays true; a change makes new maps, and new reckonings only
 * when somebody asks.
 */
export const reckoned = <Part extends object, T>(reckon: (part: Part) => T): ((part: Part) => T) => {
  const known = new WeakMap<Part, { readonly value: T }>();
  return (part) => {
    const found = known.get(part);
    if (found) return found.value;
    const value = reckon(part);
    known.set(part, { value });
    return value;
  };
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
