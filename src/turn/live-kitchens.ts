/**
 * Kitchens kept in memory between turns, each with its names index and newest journal
 * entries. The store's version decides: a copy that is behind catches up by the journal.
 */
import { LRUCache } from 'lru-cache';
import { applyChange } from '../kitchen/index.js';
import type { Id, JournalEntry, Kitchen } from '../kitchen/model.js';
import type { Store, TurnStart } from '../store/port.js';
import type { HouseholdNames } from '../understanding/index.js';
import { follow, namesOf } from './names.js';
import { TurnProblem } from './problems.js';

export interface LiveKitchen {
  readonly kitchen: Kitchen;
  /** Changes in place, with the kitchen. */
  readonly names: HouseholdNames;
  /** As the store names it: a household brought back from an archive is another. */
  readonly generation: string;
  /** Newest first. */
  readonly journal: readonly JournalEntry[];
}

/** Entries kept for "what changed" and undo. */
const JOURNAL_KEPT = 200;
/** Further behind than this, reading the kitchen whole is cheaper than catching up. */
const CATCH_UP_AT_MOST = 500;

export interface LiveKitchens {
  /** The kitchen at this version or later, of this generation or a later one. */
  at(householdId: Id, start: Pick<TurnStart, 'version' | 'generation'>): Promise<LiveKitchen>;
  /** Carries committed entries over to the copy in memory. */
  follow(householdId: Id, entries: readonly JournalEntry[]): void;
  /** What is in memory, however old. */
  peek(householdId: Id): LiveKitchen | undefined;
  forget(householdId: Id): void;
}

const advance = (live: LiveKitchen, entries: readonly JournalEntry[]): LiveKitchen => {
  for (const entry of entries) for (const op of entry.ops) follow(live.names, op);
  return {
    kitchen: entries.reduce<Kitchen>(
      (kitchen, entry) => ({ ...applyChange(kitchen, entry), version: entry.version }),
      live.kitchen,
    ),
    names: live.names,
    generation: live.generation,
    journal: [...[...entries].reverse(), ...live.journal].slice(0, JOURNAL_KEPT),
  };
};

/** @param most records (items, places, markers …) held in memory over all households. */
export const createLiveKitchens = (
  store: Store,
  most: number,
  onFault: (error: unknown, householdId: Id) => void = () => undefined,
): LiveKitchens => {
  const cache = new LRUCache<Id, LiveKitchen>({
    maxSize: most,
    sizeCalculation: ({ kitchen, journal }) =>
      10 + kitchen.items.size + kitchen.places.size + kitchen.markers.size + journal.length,
  });

  const load = async (householdId: Id, generation: string): Promise<LiveKitchen> => {
    const kitchen = await store.loadKitchen(householdId);
    if (!kitchen) throw new TurnProblem('no-such-household', 'this household is not in the store');
    const latest = await store.journalLatest(householdId, JOURNAL_KEPT);
    return {
      kitchen,
      names: namesOf(kitchen),
      generation,
      journal: latest.filter((entry) => entry.version <= kitchen.version),
    };
  };

  const reload = async (householdId: Id, generation: string): Promise<LiveKitchen> => {
    const live = await load(householdId, generation);
    cache.set(householdId, live);
    return live;
  };

  return {
    async at(householdId, { version, generation }) {
      const live = cache.get(householdId);
      // Ahead of the store means the store was restored from a copy: believe the store.
      if (!live || live.generation !== generation || live.kitchen.version > version)
        return reload(householdId, generation);
      const behind = version - live.kitchen.version;
      if (behind === 0) return live;
      if (behind > CATCH_UP_AT_MOST) return reload(householdId, generation);
      const entries = await store.journalAfter(householdId, live.kitchen.version);
      const unbroken = entries.every((entry, n) => entry.version === live.kitchen.version + n + 1);
      if (!unbroken || entries.length < behind) return reload(householdId, generation);
      const caughtUp = advance(live, entries);
      cache.set(householdId, caughtUp);
      return caughtUp;
    },
    follow(householdId, entries) {
      const live = cache.peek(householdId);
      if (!live || entries.length === 0) return;
      // Out of step, it is read again. So it is when it cannot be carried on: the change is committed.
      cache.delete(householdId);
      if (entries[0]?.version !== live.kitchen.version + 1) return;
      try {
        cache.set(householdId, advance(live, entries));
      } catch (error) {
        onFault(error, householdId);
      }
    },
    peek: (householdId) => cache.peek(householdId),
    forget: (householdId) => void cache.delete(householdId),
  };
};
