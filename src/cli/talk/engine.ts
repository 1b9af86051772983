/** Everything a terminal conversation needs, opened as fast as it can be. */
import { createHouseholds, createTongues, type Households } from '../../turn/index.js';
import type { Id, Kitchen } from '../../kitchen/model.js';
import type { Store } from '../../store/port.js';
import type { Instant } from '../../terms/dates.js';
import { openStore, type WhichStore } from '../open-store.js';
import { instantOf } from '../wall-time.js';
import { chooseHousehold, freshDemo } from '../which-household.js';

/** The demo kitchen's zone, before there is a household to ask. */
const DEMO_ZONE = 'America/Chicago';

export interface TalkOptions extends WhichStore {
  readonly at?: string | undefined;
  readonly fresh: boolean;
  readonly household?: string | undefined;
}

/** The clock of a conversation: real, or held where it was set. */
export interface TalkClock {
  now(): Instant;
  /** Holds it at a household wall time. */
  hold(wall: string): void;
  readonly held: boolean;
}

export interface Engine {
  readonly store: Store;
  readonly households: Households;
  readonly kitchen: Kitchen;
  readonly householdId: Id;
  readonly clock: TalkClock;
}

const createTalkClock = (at: string | undefined, zone: () => string): TalkClock => {
  let held = at === undefined ? null : instantOf(at, zone());
  return {
    now: () => held ?? new Date().toISOString(),
    hold(wall) {
      held = instantOf(wall, zone());
    },
    get held() {
      return held !== null;
    },
  };
};

/** @throws Error in plain words, when there is no such household or time. */
export const openEngine = async (options: TalkOptions): Promise<Engine> => {
  const store = await openStore(options);
  const existing = options.fresh ? null : await firstKitchen(store, options.household);
  let timeZone = existing?.household.timeZone ?? DEMO_ZONE;
  const clock = createTalkClock(options.at, () => timeZone);
  const kitchen = existing ?? (await freshDemo(store, { now: clock.now(), timeZone }));
  timeZone = kitchen.household.timeZone;
  const households = createHouseholds({
    store,
    tongues: createTongues((error) => console.error(`(${error.message})`)),
    now: clock.now,
  });
  return { store, households, kitchen, householdId: kitchen.household.id, clock };
};

const firstKitchen = async (store: Store, named: string | undefined): Promise<Kitchen | null> => {
  const ids = await store.householdIds();
  if (ids.length === 0 && named === undefined) return null;
  return store.loadKitchen(await chooseHousehold(store, named));
};
