/** Talk with the store on this machine: nothing else is needed, and nothing leaves the house. */
import { biasingFor } from '../../biasing/index.js';
import { openEngine } from '../talk/engine.js';
import { unaskedIn } from '../talk/unasked.js';
import type { Talker, TalkerEvents } from './talker.js';

export interface Here {
  readonly data: string;
  readonly household?: string | undefined;
}

export const talkHere = async ({ data, household }: Here, events: TalkerEvents): Promise<Talker> => {
  const engine = await openEngine({
    data,
    databaseUrl: process.env['DATABASE_URL'],
    fresh: false,
    household,
  });
  const { households, householdId, store } = engine;
  const { locale } = (await households.look(householdId)).kitchen.household;
  const stop = unaskedIn(engine, (spoken) => void events.onUnasked(spoken));
  const unhear = households.onCommitted(() => events.onChanged());
  return {
    turn: (request) => households.takeTurn({ householdId, deviceId: 'listen', personId: null }, request),
    lists: async (form) => biasingFor((await households.look(householdId)).kitchen, form),
    locale: () => locale,
    close: async () => {
      stop();
      unhear();
      await store.close();
    },
  };
};
