/**
 * What the service says without being asked: timers, reminders, the nightly summary. Each goes to
 * every open conversation it concerns, again on reconnect, until one device acknowledges that it
 * was spoken; the acknowledgement is a change like any other, so only one counts.
 */
import type { FastifyBaseLogger } from 'fastify';
import type { ServerMessage } from '../../../shared/wire/socket.js';
import type { Id } from '../../kitchen/model.js';
import { rankUseFirst } from '../../safety/index.js';
import { dueNow, nextDueAt } from '../../schedule/index.js';
import type { Context } from '../context.js';
import { markHeard } from './heard.js';
import { send, type AsOpen, type Hub, type Open } from './hub.js';
import type { Rights } from './rights.js';

type Kind = Extract<ServerMessage, { type: 'unasked' }>['kind'];

const TICK_MS = 250;
/** How often the store is asked for whom something came due: it also knows what no bell told of. */
const ASK_MS = 1_000;

export interface Unasked {
  /** Everything due, to one conversation. */
  tell(open: Open): Promise<void>;
  acknowledged(open: Open, id: Id): Promise<void>;
  /** Something changed here: a timer may have been set. */
  changed(householdId: Id): void;
  stop(): void;
}

export const startUnasked = (
  { households, store, now }: Context,
  hub: Hub,
  rights: Rights,
  as: AsOpen,
  log: FastifyBaseLogger,
  count: (kind: Kind) => void,
): Unasked => {
  /** When something is next due for a household that was looked at; it is looked at again then. */
  const lookAgain = new Map<Id, string | null>();

  const tellAll = async (householdId: Id, listening: readonly Open[]): Promise<void> => {
    const around = await households.look(householdId);
    const { kitchen, clock } = around;
    const may = new Set(await rights.current(householdId, around.rights));
    lookAgain.set(householdId, nextDueAt(kitchen, clock));
    for (const { id, kind, due, answer, forPersonId } of dueNow(kitchen, clock, rankUseFirst)) {
      const waiting = listening.filter(
        (open) =>
          may.has(open) &&
          !open.unacknowledged.has(id) &&
          (forPersonId === null || open.device.personId === null || open.device.personId === forPersonId),
      );
      if (waiting.length === 0) continue;
      const speech = households.say(around, answer);
      for (const open of waiting) {
        open.unacknowledged.add(id);
        send(open, {
          type: 'unasked',
          id,
          kind,
          due,
          speech: { ...speech, sentences: [...speech.sentences] },
        });
      }
    }
  };

  const isTime = (householdId: Id): boolean => {
    const dueAt = lookAgain.get(householdId);
    return dueAt === undefined || (dueAt !== null && dueAt <= now());
  };

  let asked = now();
  let asking = false;
  const askStore = async (): Promise<void> => {
    const until = now();
    // A clock that was set back has nothing new to ask for until it is past where it was.
    if (hub.size > 0 && until > asked)
      for (const householdId of await store.householdsDue(asked, until)) lookAgain.delete(householdId);
    asked = until;
  };
  const asker = setInterval(() => {
    if (asking) return;
    asking = true;
    askStore()
      .catch((error: unknown) => log.error({ err: error }, 'could not ask what is due'))
      .finally(() => (asking = false));
  }, ASK_MS).unref();

  let looking = false;
  const timer = setInterval(() => {
    if (looking) return;
    const listening = new Set(hub.households());
    for (const id of lookAgain.keys()) if (!listening.has(id)) lookAgain.delete(id);
    const ready = [...listening].filter(isTime);
    if (ready.length === 0) return;
    looking = true;
    void Promise.allSettled(ready.map((id) => tellAll(id, hub.ofHousehold(id)))).then((results) => {
      looking = false;
      for (const result of results) {
        if (result.status === 'rejected')
          log.error({ err: result.reason as unknown }, 'could not tell what is due');
      }
    });
  }, TICK_MS).unref();

  return {
    tell: (open) => tellAll(open.device.householdId, [open]),
    async acknowledged(open, id) {
      const kind = await as(open, (speaker) => markHeard({ households }, speaker, id));
      if (kind !== null) count(kind);
    },
    changed: (householdId) => void lookAgain.delete(householdId),
    stop: () => {
      clearInterval(timer);
      clearInterval(asker);
    },
  };
};
