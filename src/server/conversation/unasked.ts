/**
 * What the service says without being asked: timers, reminders, the nightly summary. Each goes to
 * every open conversation of its household, again on reconnect, until one device acknowledges
 * that it was spoken; the acknowledgement is a change like any other, so only one counts.
 */
import type { FastifyBaseLogger } from 'fastify';
import type { ServerMessage } from '../../../shared/wire/socket.js';
import type { Change, Id } from '../../kitchen/model.js';
import type { Answer } from '../../speech/index.js';
import type { Instant } from '../../terms/dates.js';
import type { Surroundings } from '../../turn/index.js';
import type { Context } from '../context.js';
import { speakerOf } from '../identify.js';
import { send, type Hub, type Open } from './hub.js';

/** Something to say now, or that should have been said before. */
export interface Due {
  /** Stays the same until it was heard. */
  readonly id: Id;
  readonly kind: Extract<ServerMessage, { type: 'unasked' }>['kind'];
  readonly due: Instant;
  readonly answer: Answer;
}

export interface UnaskedSource {
  /** All that is due in this kitchen and not heard yet, oldest first. */
  due(around: Surroundings): readonly Due[];
  /** The change that records it as heard; null when it was already. */
  heard(around: Surroundings, id: Id): Change | null;
}

const LOOK_EVERY_MS = 500;

export interface Unasked {
  /** Everything due, to one conversation. */
  tell(open: Open): Promise<void>;
  acknowledged(open: Open, id: Id): Promise<void>;
  stop(): void;
}

export const startUnasked = (
  { households, unasked: source }: Context,
  hub: Hub,
  log: FastifyBaseLogger,
  count: (kind: Due['kind']) => void,
): Unasked => {
  const tellAll = async (householdId: Id, listening: readonly Open[]): Promise<void> => {
    const around = await households.look(householdId);
    for (const { id, kind, due, answer } of source.due(around)) {
      const waiting = listening.filter((open) => !open.unacknowledged.has(id));
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

  let looking = false;
  const timer = setInterval(() => {
    if (looking) return;
    looking = true;
    const all = hub.households().map((id) => tellAll(id, hub.ofHousehold(id)));
    void Promise.allSettled(all).then((results) => {
      looking = false;
      for (const result of results) {
        if (result.status === 'rejected')
          log.error({ err: result.reason as unknown }, 'could not tell what is due');
      }
    });
  }, LOOK_EVERY_MS).unref();

  return {
    tell: (open) => tellAll(open.device.householdId, [open]),
    async acknowledged(open, id) {
      const around = await households.look(open.device.householdId);
      const due = source.due(around).find((one) => one.id === id);
      if (!due) return;
      const result = await households.change(
        speakerOf(open.device),
        { id: `heard:${id}`, said: id },
        (now) => {
          const change = source.heard(now, id);
          return change ? { changes: [change] } : { refused: 'heard before' };
        },
      );
      if (result.outcome === 'done') count(due.kind);
    },
    stop: () => clearInterval(timer),
  };
};
