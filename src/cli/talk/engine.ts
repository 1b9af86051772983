/** Everything a terminal conversation needs, opened as fast as it can be. */
import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import { demoKitchen, kitchenFromFile } from '../../kitchen/index.js';
import { createHouseholds, createTongues, type Households } from '../../turn/index.js';
import type { Id, Kitchen } from '../../kitchen/model.js';
import type { Store } from '../../store/port.js';
import type { Clock, Instant } from '../../terms/dates.js';
import { openStore, type WhichStore } from '../open-store.js';
import { instantOf } from '../wall-time.js';
import { chooseHousehold, putFresh } from '../which-household.js';

/** A kitchen as it would be on the clock's day. */
type Starting = (clock: Clock) => Kitchen;

export interface TalkOptions extends WhichStore {
  readonly at?: string | undefined;
  readonly fresh: boolean;
  readonly household?: string | undefined;
  /** A kitchen file (the form of `shared/demo`) to begin from in place of the demo's. */
  readonly kitchen?: string | undefined;
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

const createTalkClock = (at: string | undefined, zone: string): TalkClock => {
  let held = at === undefined ? null : instantOf(at, zone);
  return {
    now: () => held ?? new Date().toISOString(),
    hold(wall) {
      held = instantOf(wall, zone);
    },
    get held() {
      return held !== null;
    },
  };
};

/** @throws Error in plain words, when there is no such household, time or kitchen file. */
export const openEngine = async (options: TalkOptions): Promise<Engine> => {
  if (options.kitchen !== undefined && options.household !== undefined)
    throw new Error('Say --kitchen or --household: a kitchen file is a household of its own.');
  const starting = options.kitchen === undefined ? demoKitchen : await kitchenIn(options.kitchen);
  // Its household, whatever the day: days in it are filled in once the clock is set.
  const { household } = starting({ now: new Date().toISOString(), timeZone: 'UTC' });
  const store = await openStore(options);
  const existing = options.fresh
    ? null
    : await firstKitchen(store, options.kitchen === undefined ? options.household : household.id, options);
  const { timeZone } = existing?.household ?? household;
  const clock = createTalkClock(options.at, timeZone);
  const kitchen = existing ?? starting({ now: clock.now(), timeZone });
  if (existing === null) await putFresh(store, kitchen, { now: clock.now(), timeZone });
  const households = createHouseholds({
    store,
    tongues: createTongues((error) => console.error(`(${error.message})`)),
    now: clock.now,
    onFault: ({ id, error }) => console.error(`(${id})`, error),
  });
  return { store, households, kitchen, householdId: kitchen.household.id, clock };
};

const kitchenIn = async (file: string): Promise<Starting> => {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch (error) {
    throw new Error(`The kitchen file cannot be read: ${(error as Error).message}`, { cause: error });
  }
  const starting: Starting = (clock) => kitchenFromFile(text, clock);
  try {
    starting({ now: new Date().toISOString(), timeZone: 'UTC' });
  } catch (error) {
    const why = error instanceof z.ZodError ? `\n${z.prettifyError(error)}` : ` ${(error as Error).message}`;
    throw new Error(`${file} is no kitchen file:${why}`, { cause: error });
  }
  return starting;
};

/** The household to go on with; null where there is none yet and the file is to begin it. */
const firstKitchen = async (
  store: Store,
  named: string | undefined,
  { kitchen: file }: TalkOptions,
): Promise<Kitchen | null> => {
  const ids = await store.householdIds();
  const begins = file === undefined ? ids.length === 0 && named === undefined : !ids.includes(named ?? '');
  return begins ? null : store.loadKitchen(await chooseHousehold(store, named));
};
