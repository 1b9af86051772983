/**
 * Sends out what is due by every carrier, once, however many processes run one of these on the
 * same store. Each telling has a row for each carrier; a process leases the rows that are due.
 * A process that dies between sending and settling leaves a lease that runs out: the telling goes
 * out again with the same id, by which a receiver knows it.
 */
import type { Id, Kitchen } from '../kitchen/model.js';
import type { Rank } from '../dialogue/summary/heard.js';
import { rankUseFirst } from '../safety/index.js';
import type { Answer, Spoken } from '../speech/index.js';
import type { PlannedTelling, Telling, TellingStore } from '../store/port.js';
import type { Clock, Instant } from '../terms/dates.js';
import { plannedTellings, tellingNow } from './due.js';
import { CarrierError, type Carrier, type Delivery } from './telling.js';

/** What the scheduler needs of a household at a moment. */
export interface Look {
  readonly kitchen: Kitchen;
  readonly clock: Clock;
}

/** The service's households, as far as the scheduler goes. */
export interface HouseholdsPort<Around extends Look> {
  /** @throws when there is no such household (any more). */
  look(householdId: Id): Promise<Around>;
  say(around: Around, answer: Answer): Spoken;
}

export interface SchedulerOptions<Around extends Look> {
  readonly store: TellingStore;
  readonly households: HouseholdsPort<Around>;
  readonly carriers: readonly Carrier[];
  /** Default: the safety room's. */
  readonly rank?: Rank;
  /** Unique to this run of this process. */
  readonly owner: string;
  readonly now: () => Instant;
  /** Seconds a lease lasts; twice what a carrier may take. Default 30. */
  readonly leaseSeconds?: number;
  /** Told of what went wrong; nothing is lost by it. */
  readonly onProblem?: (error: unknown, about: { readonly household: Id; readonly telling?: Id }) => void;
}

export interface Scheduler {
  /**
   * Plans what was planned for other carriers, or for none: once after a start, beside everything else.
   * After that a household is planned when something changed in it that is told of.
   */
  planAll(): Promise<void>;
  /** Plans what changed, then sends what is due. Returns how many were sent. Never throws. */
  tick(): Promise<number>;
  /** Waits for what is under way and closes the carriers. */
  close(): Promise<void>;
}

const AT_ONCE = 20;
const FIRST_RETRY = 15;
const LONGEST_RETRY = 1800;
/** Then it is given up: a day later it is no news. */
const GIVE_UP_AFTER = 24 * 3600;

const plus = (at: Instant, seconds: number): Instant =>
  new Date(Date.parse(at) + seconds * 1000).toISOString();

/** Seconds until the next try: doubling from fifteen, to half an hour at most. */
export const retryDelay = (attempts: number): number =>
  Math.min(LONGEST_RETRY, FIRST_RETRY * 2 ** Math.max(0, attempts - 1));

export const createScheduler = <Around extends Look>(options: SchedulerOptions<Around>): Scheduler => {
  const { store, households, carriers, owner, now, onProblem } = options;
  const rank = options.rank ?? rankUseFirst;
  const leaseSeconds = options.leaseSeconds ?? 30;
  const signature = carriers
    .map(({ name }) => name)
    .sort()
    .join(' ');
  let underWay: Promise<number> | null = null;
  let closed = false;

  const rowsFor = (householdId: Id, kitchen: Kitchen, clock: Clock): PlannedTelling[] =>
    carriers
      .filter((carrier) => carrier.serves(householdId))
      .flatMap((carrier) =>
        plannedTellings(kitchen, clock).map((one) => ({ ...one, id: `${carrier.name}:${one.id}` })),
      );

  const plan = async (householdId: Id): Promise<void> => {
    const { kitchen, clock } = await households.look(householdId);
    await store.planTellings(householdId, rowsFor(householdId, kitchen, clock), {
      carriers: signature,
      version: kitchen.version,
    });
  };

  const planThese = async (ids: readonly Id[]): Promise<void> => {
    for (const householdId of ids)
      await plan(householdId).catch((error: unknown) => onProblem?.(error, { household: householdId }));
  };

  /** Sent or given up: never again. */
  const settle = async (row: Telling, outcome: 'sent' | 'given up' | 'not wanted'): Promise<void> => {
    const at = now();
    await store.makeTelling(row.householdId, row.id, owner, { outcome }, at);
    await store.settleTelling(row.householdId, row.id, owner, at);
    // The next one is not planned yet, e.g. tomorrow's summary.
    await plan(row.householdId);
  };

  const again = async (row: Telling, atLeast: number | null): Promise<void> => {
    const delay = Math.max(retryDelay(row.attempts), atLeast ?? 0);
    await store.releaseTelling(row.householdId, row.id, owner, plus(now(), delay));
  };

  const send = async (row: Telling): Promise<boolean> => {
    const split = row.id.indexOf(':');
    const carrier = carriers.find((one) => one.name === row.id.slice(0, split));
    const id = row.id.slice(split + 1);
    // Made by a process that died before settling it: it was sent.
    if (row.body !== null) {
      await store.settleTelling(row.householdId, row.id, owner, now());
      return false;
    }
    // Another process may have that carrier.
    if (carrier === undefined) {
      await again(row, null);
      return false;
    }
    const around = await households.look(row.householdId);
    const told = tellingNow(around.kitchen, around.clock, rank, id);
    if (told === null || (Date.parse(now()) - Date.parse(row.due)) / 1000 > GIVE_UP_AFTER) {
      await settle(row, told === null ? 'not wanted' : 'given up');
      return false;
    }
    if ('wait' in told) {
      await store.releaseTelling(row.householdId, row.id, owner, told.wait);
      return false;
    }
    const delivery: Delivery = {
      id,
      household: row.householdId,
      kind: told.kind,
      due: told.due,
      sentAt: now(),
      speech: households.say(around, told.answer),
    };
    try {
      const carried = await carrier.carry(delivery, AbortSignal.timeout(leaseSeconds * 500), {
        personId: told.forPersonId,
        quiet: told.answer.whisper === true,
      });
      if (carried !== 'spoken') {
        await (carried === 'nobody' ? again(row, null) : settle(row, 'not wanted'));
        return false;
      }
    } catch (error) {
      onProblem?.(error, { household: row.householdId, telling: row.id });
      const final = error instanceof CarrierError && error.final;
      await (final
        ? settle(row, 'given up')
        : again(row, error instanceof CarrierError ? error.retryAfter : null));
      return false;
    }
    // Handed over is not heard: a machine that answers yes may stand in an empty house. Whoever hears it
    // says so, and until then a device that connects is told as well.
    await settle(row, 'sent');
    return true;
  };

  const sendAllDue = async (): Promise<number> => {
    let sent = 0;
    for (;;) {
      const at = now();
      const rows = await store.claimDue({ now: at, owner, until: plus(at, leaseSeconds), limit: AT_ONCE });
      const outcomes = await Promise.all(
        rows.map((row) =>
          send(row).catch((error: unknown) => {
            // The lease runs out by itself, and then it is tried again.
            onProblem?.(error, { household: row.householdId, telling: row.id });
            return false;
          }),
        ),
      );
      sent += outcomes.filter(Boolean).length;
      if (rows.length < AT_ONCE) return sent;
    }
  };

  return {
    planAll: async () => {
      for (let after = ''; !closed;) {
        const ids = await store.toPlan(AT_ONCE, { carriers: signature, after });
        const last = ids.at(-1);
        if (last === undefined) return;
        await planThese(ids);
        after = last;
      }
    },
    tick: () => {
      underWay ??= store
        .toPlan(AT_ONCE)
        .then(planThese)
        .then(sendAllDue)
        .catch((error: unknown) => {
          onProblem?.(error, { household: '' });
          return 0;
        })
        .finally(() => {
          underWay = null;
        });
      return underWay;
    },
    close: async () => {
      closed = true;
      await underWay;
      await Promise.all(carriers.map((carrier) => carrier.close()));
    },
  };
};
