/** Marta Okafor's demo kitchen as understanding sees it: the names in an index. */
import { demoKitchen } from '../../src/kitchen/index.js';
import type { HearingContext, Expectation } from '../../src/understanding/index.js';
import { createHouseholdNames, type HouseholdNames } from '../../src/understanding/names/index.js';

/** A Thursday evening in Chicago. */
export const clock = { now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' } as const;

export const martasNames = (): HouseholdNames => {
  const kitchen = demoKitchen(clock);
  const names = createHouseholdNames('en-US');
  for (const item of kitchen.items.values()) names.set('item', item);
  for (const place of kitchen.places.values()) names.set('place', place);
  for (const person of kitchen.people.values()) names.set('person', person);
  for (const marker of kitchen.markers.values()) names.set('marker', marker);
  return names;
};

export const hearing = (expecting: Expectation = 'anything'): HearingContext => ({
  ...clock,
  locale: 'en-US',
  expecting,
});

const kitchenItems = demoKitchen(clock).items;
/** Name of an item of the demo kitchen. */
export const itemNames = (id: string): string | undefined => kitchenItems.get(id)?.name;
