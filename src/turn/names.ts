/** Keeps the index of a household's names in step with its records. */
import { createHouseholdNames } from '../understanding/index.js';
import type { HouseholdNames } from '../understanding/index.js';
import type { Kitchen, Op } from '../kitchen/model.js';

/** The index of a whole kitchen. */
export const namesOf = (kitchen: Kitchen): HouseholdNames => {
  const names = createHouseholdNames(kitchen.household.locale);
  for (const place of kitchen.places.values()) names.set('place', place);
  for (const marker of kitchen.markers.values()) names.set('marker', marker);
  for (const person of kitchen.people.values()) names.set('person', person);
  for (const item of kitchen.items.values()) names.set('item', item);
  return names;
};

/** One record's change carried over to the index. */
export const follow = (names: HouseholdNames, op: Op): void => {
  switch (op.kind) {
    case 'item':
      return op.after ? names.set('item', op.after) : names.remove('item', op.id);
    case 'place':
      return op.after ? names.set('place', op.after) : names.remove('place', op.id);
    case 'marker':
      return op.after ? names.set('marker', op.after) : names.remove('marker', op.id);
    case 'person':
      return op.after ? names.set('person', op.after) : names.remove('person', op.id);
    default:
      // Purchases, notes, reminders and the household itself are not spoken of by name.
      return undefined;
  }
};

/** The index as it is once `ops` are done, for as long as `work` takes; then as it was. */
export const withChanged = <T>(names: HouseholdNames, ops: readonly Op[], work: () => T): T => {
  for (const op of ops) follow(names, op);
  try {
    return work();
  } finally {
    for (const op of ops.toReversed()) follow(names, undoing(op));
  }
};

const undoing = (op: Op): Op => ({ ...op, before: op.after, after: op.before }) as Op;
