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
  /** Made when somebody speaks; changes in place, with the kitchen. */
  readonly names: HouseholdNames;
  /** As the store names it: a household brought back from an archive is another. */
  readonly generation: string;
  /** Newest first. */
  readonly journal: readonly JournalEntry[];
}

/** The index of one household's names, shared by its copies as they follow one another. */
interface Index {
  /** The newest copy's. */
  kitchen: Kitchen;
  built: HouseholdNames | null;
  /** Called when it was built: it is most of what a household takes up. */
  readonly onBuilt: () => void;
}

interface Live extends LiveKitchen {
  readonly index: Index;
}

const liveOf = (
  kitchen: Kitchen,
  journal: readonly JournalEntry[],
  generation: string,
  index: Index,
): Live => ({
  kitchen,
  journal,
  generation,
  index,
  get names() {
    if (!index.built) {
      index.built = namesOf(index.kitchen);
      index.onBuilt();
    }
    return index.built;
  },
});

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

const advance = (live: Live, entries: readonly JournalEntry[]): Live => {
  const { index } = live;
  if (index.built) for (const entry of entries) for (const op of entry.ops) follow(index.built, op);
  const kitchen = entries.reduce<Kitchen>(
    (before, entry) => ({ ...applyChange(before, entry), version: entry.version }),
    live.kitchen,
  );
  index.kitchen = kitchen;
  const journal = [...[...entries].reverse(), ...live.journal].slice(0, JOURNAL_KEPT);
  return liveOf(kitchen, journal, live.generation, index);
};

/** About what a record, an index of names, and a name in it take up; measured on the demo kitchen and 500 items more. */
const BYTES = { record: 1_400, entry: 1_500, index: 620_000, name: 4_500 } as const;

const bytesOf = ({ kitchen, journal, index }: Live): number => {
  const names = kitchen.items.size + kitchen.places.size + kitchen.markers.size + kitchen.people.size;
  const others = kitchen.purchases.size + kitchen.notes.size + kitchen.reminders.size;
  return (
    BYTES.record * (1 + names + others) +
    BYTES.entry * journal.length +
    (index.built ? BYTES.index + BYTES.name * names : 0)
  );
};

/** @param bytes about how much may be held in memory over all households. */
export const createLiveKitchens = (
  store: Store,
  bytes: number,
  onFault: (error: unknown, householdId: Id) => void = () => undefined,
): LiveKitchens => {
  const cache = new LRUCache<Id, Live>({ maxSize: bytes, sizeCalculation: bytesOf });

  const load = async (householdId: Id, generation: string): Promise<Live> => {
    const kitchen = await store.loadKitchen(householdId);
    if (!kitchen) throw new TurnProblem('no-such-household', 'this household is not in the store');
    const latest = await store.journalLatest(householdId, JOURNAL_KEPT);
    const journal = latest.filter((entry) => entry.version <= kitchen.version);
    const index: Index = {
      kitchen,
      built: null,
      onBuilt: () => {
        // Weighed anew, if it is still kept: the same value would be taken to weigh the same.
        const kept = cache.peek(householdId);
        if (kept?.index === index)
          cache.set(householdId, liveOf(kept.kitchen, kept.journal, generation, index));
      },
    };
    return liveOf(kitchen, journal, generation, index);
  };

  const reload = async (householdId: Id, generation: string): Promise<Live> => {
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
