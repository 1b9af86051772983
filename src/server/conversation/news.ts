/**
 * Tells open conversations what changed in their kitchen, whichever server changed it. A household
 * is followed while somebody listens; each change is told once, in order.
 */
import type { FastifyBaseLogger } from 'fastify';
import type { Id, JournalEntry } from '../../kitchen/model.js';
import { changesMade } from '../../turn/index.js';
import type { Context } from '../context.js';
import { send, type Hub, type Open } from './hub.js';
import type { Rights } from './rights.js';

interface Followed {
  /** The version up to which listeners were told. */
  told: number;
  /** Tells what there is, one telling after the other. */
  last: Promise<void>;
  stop: () => void;
}

export interface News {
  /** Somebody began to listen; the kitchen is at this version. */
  follow(householdId: Id, version: number): Promise<void>;
  /** Somebody stopped; the last one ends the following. */
  left(householdId: Id): void;
  stop(): void;
}

export const startNews = (
  { store, households }: Context,
  hub: Hub,
  rights: Rights,
  log: FastifyBaseLogger,
  onChange: (householdId: Id, opens: readonly Open[], entries: readonly JournalEntry[]) => void,
): News => {
  const followed = new Map<Id, Followed>();

  const tell = async (householdId: Id, here: Followed): Promise<void> => {
    const entries = await store.journalAfter(householdId, here.told);
    const version = entries.at(-1)?.version;
    if (version === undefined) return;
    // After the entries: whoever was sent away before one of them does not hear of it.
    const opens = await rights.check(householdId);
    here.told = version;
    onChange(householdId, opens, entries);
    const changes = changesMade(entries);
    for (const open of opens) send(open, { type: 'changed', version, changes });
  };

  const look = (householdId: Id): void => {
    const here = followed.get(householdId);
    if (!here) return;
    here.last = here.last
      .then(() => tell(householdId, here))
      .catch((error: unknown) => log.error({ err: error }, 'could not tell what changed'));
  };

  const stopHearing = households.onCommitted(({ householdId }) => look(householdId));

  return {
    async follow(householdId, version) {
      if (followed.has(householdId)) return;
      const here: Followed = { told: version, last: Promise.resolve(), stop: () => undefined };
      followed.set(householdId, here);
      const stop = await store.subscribe(householdId, (what) => {
        if (what !== 'devices') return look(householdId);
        rights
          .check(householdId)
          .catch((error: unknown) => log.error({ err: error }, 'could not look who may speak'));
      });
      if (followed.get(householdId) === here) here.stop = stop;
      else stop();
    },
    left(householdId) {
      if (hub.ofHousehold(householdId).length > 0) return;
      followed.get(householdId)?.stop();
      followed.delete(householdId);
    },
    stop() {
      stopHearing();
      for (const { stop } of followed.values()) stop();
      followed.clear();
    },
  };
};
