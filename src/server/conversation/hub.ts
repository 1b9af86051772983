/** Open conversations by household and device, and sending to them. */
import type { WebSocket } from 'ws';
import type { ServerMessage } from '../../../shared/wire/socket.js';
import type { Device, PresentDevice } from '../../store/port.js';
import type { TurnSpeaker } from '../../turn/index.js';
import type { Id } from '../../kitchen/model.js';

/** A client that leaves this much unread is cut off: it is gone, or too slow to be spoken to. */
const UNREAD_AT_MOST = 1024 * 1024;
export const CLOSE = { goingAway: 1012, policy: 1008 } as const;

export interface Open {
  readonly socket: WebSocket;
  /** As it was when it was last looked at; see rights.ts. */
  device: PresentDevice;
  /** Cleared by each sign of life; set by each ping. */
  silent: boolean;
  /** Turns being answered. */
  underWay: number;
  /** Unasked messages sent and not acknowledged yet. */
  readonly unacknowledged: Set<Id>;
  /** Conversations held here, the latest last, and what was told unasked in each since its last turn. */
  readonly talks: Map<Id, Set<Id>>;
}

/** Works as an open conversation's device, as it is now; one that may no longer speak is cut off. */
export type AsOpen = <T>(open: Open, work: (speaker: TurnSpeaker) => Promise<T>) => Promise<T>;

/** More conversations than these one device does not hold at once. */
const TALKS_KEPT = 4;

/** A turn is taken in a conversation: what was told in it meanwhile goes along. */
export const takeUp = ({ talks }: Open, conversation: Id): readonly Id[] => {
  const told = talks.get(conversation) ?? new Set();
  talks.delete(conversation);
  talks.set(conversation, new Set());
  for (const oldest of talks.keys()) {
    if (talks.size <= TALKS_KEPT) break;
    talks.delete(oldest);
  }
  return [...told];
};

export const send = (open: Open, message: ServerMessage): void => {
  if (open.socket.readyState !== open.socket.OPEN) return;
  if (open.socket.bufferedAmount > UNREAD_AT_MOST) return open.socket.terminate();
  open.socket.send(JSON.stringify(message));
};

export interface Hub {
  readonly size: number;
  add(open: Open): void;
  remove(open: Open): void;
  ofHousehold(householdId: Id): readonly Open[];
  ofDevice(device: Pick<Device, 'id' | 'householdId'>): readonly Open[];
  households(): readonly Id[];
  all(): Iterable<Open>;
}

export const createHub = (): Hub => {
  const byHousehold = new Map<Id, Set<Open>>();
  const everyone = new Set<Open>();
  return {
    get size() {
      return everyone.size;
    },
    add(open) {
      everyone.add(open);
      const { householdId } = open.device;
      const here = byHousehold.get(householdId) ?? new Set();
      byHousehold.set(householdId, here.add(open));
    },
    remove(open) {
      everyone.delete(open);
      const here = byHousehold.get(open.device.householdId);
      here?.delete(open);
      if (here?.size === 0) byHousehold.delete(open.device.householdId);
    },
    ofHousehold: (householdId) => [...(byHousehold.get(householdId) ?? [])],
    ofDevice: ({ id, householdId }) =>
      [...(byHousehold.get(householdId) ?? [])].filter((open) => open.device.id === id),
    households: () => [...byHousehold.keys()],
    all: () => everyone,
  };
};
