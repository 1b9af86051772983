/** Which kitchen a command is about. */
import type { Id, Kitchen } from '../kitchen/model.js';
import type { Store } from '../store/port.js';
import type { Clock } from '../terms/dates.js';

/** The household named, else the only one there is. @throws Error in plain words. */
export const chooseHousehold = async (store: Store, named?: string): Promise<Id> => {
  const ids = await store.householdIds();
  if (named !== undefined) {
    if (ids.includes(named)) return named;
    throw new Error(
      `There is no household "${named}" here. There ${ids.length === 1 ? 'is' : 'are'}: ${ids.join(', ') || 'none'}.`,
    );
  }
  const [only, ...others] = ids;
  if (only === undefined)
    throw new Error(
      'There is no household here yet. "tellshelf kitchens begin NAME" begins your own, "tellshelf talk" makes the demo kitchen.',
    );
  if (others.length > 0) throw new Error(`Which household? Say --household with one of: ${ids.join(', ')}.`);
  return only;
};

/** Puts a kitchen there, fresh: what a household of its id held before is gone. */
export const putFresh = async (store: Store, kitchen: Kitchen, clock: Clock): Promise<void> => {
  const { id } = kitchen.household;
  if ((await store.householdIds()).includes(id)) await store.deleteHousehold(id);
  await store.createHousehold(kitchen, clock.now);
};
