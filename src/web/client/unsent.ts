/**
 * What was said or pressed while the kitchen could not be reached: kept in this browser, whatever becomes of
 * the page, and sent once. Each has an id of its own, by which the service does it once however often it is
 * sent (`id` of a turn, the Idempotency-Key of a change). Here is what becomes of the list; `sending.ts` sends.
 */
import type { TurnRequest } from '../../../shared/wire/turn.js';

/** A change as it goes to the service. */
export interface Edit {
  readonly method: 'POST' | 'PATCH' | 'DELETE';
  readonly path: string;
  readonly body?: unknown;
}

interface Kept {
  readonly id: string;
  /** When it was said or pressed, ISO 8601. */
  readonly at: string;
  /** The household's calendar day then: "today" in what was said meant that day. */
  readonly day: string;
  /** Why the service would not take it; it then waits for its person. */
  readonly refused: string | null;
  /** A person looked at it and wants it sent all the same. */
  readonly wanted: boolean;
}
export interface UnsentTurn extends Kept {
  readonly kind: 'turn';
  readonly request: TurnRequest;
  /** It answered a question that was open then. */
  readonly isAnswer: boolean;
}
export interface UnsentEdit extends Kept {
  readonly kind: 'edit';
  readonly edit: Edit;
  /** What was done, in words: "hummus: used up." */
  readonly done: string;
  /** The foods it is about, by id. */
  readonly about: readonly string[];
}
export type Unsent = UnsentTurn | UnsentEdit;

export const wordsOf = (one: Unsent): string =>
  one.kind === 'edit' ? one.done : (one.request.hypotheses[0]?.text ?? '');

/** An answer goes with the question it was given to; so long afterwards another may be open. */
const ANSWER_HOLDS_MS = 10 * 60_000;

/** What becomes of one when the kitchen is reached at this instant, on this day of the household's. */
export type Next = 'send' | 'ask' | 'refused';
export const nextOf = (one: Unsent, now: string, today: string): Next => {
  if (one.refused !== null) return 'refused';
  if (one.wanted || one.kind === 'edit') return 'send';
  if (one.day !== today) return 'ask';
  return one.isAnswer && Date.parse(now) - Date.parse(one.at) > ANSWER_HOLDS_MS ? 'ask' : 'send';
};

const prefix = 'tellshelf.unsent.';

/** The list of one device of one household, in this browser. Other tabs of it share the list. */
export interface UnsentList {
  all(): readonly Unsent[];
  add(one: Unsent): void;
  change(id: string, change: Partial<Pick<Kept, 'refused' | 'wanted'>>): void;
  drop(id: string): void;
  /** Calls whenever the list is another, by this tab or by another one. */
  listen(hear: () => void): () => void;
}

export const unsentOf = (deviceId: string): UnsentList => {
  const key = `${prefix}${deviceId}`;
  /** For a browser that keeps nothing: as long as the page is open. */
  let inMemory: readonly Unsent[] = [];
  const listeners = new Set<() => void>();
  const all = (): readonly Unsent[] => {
    try {
      const kept = localStorage.getItem(key);
      return kept === null ? inMemory : (JSON.parse(kept) as readonly Unsent[]);
    } catch {
      return inMemory;
    }
  };
  const write = (list: readonly Unsent[]): void => {
    try {
      if (list.length === 0) localStorage.removeItem(key);
      else localStorage.setItem(key, JSON.stringify(list));
      inMemory = [];
    } catch {
      inMemory = list;
    }
    for (const hear of listeners) hear();
  };
  return {
    all,
    add: (one) => {
      if (!all().some(({ id }) => id === one.id)) write([...all(), one]);
    },
    change: (id, change) => write(all().map((one) => (one.id === id ? { ...one, ...change } : one))),
    drop: (id) => {
      if (all().some((one) => one.id === id)) write(all().filter((one) => one.id !== id));
    },
    listen: (hear) => {
      const look = (event: StorageEvent): void => {
        if (event.key === key || event.key === null) hear();
      };
      listeners.add(hear);
      window.addEventListener('storage', look);
      return () => {
        listeners.delete(hear);
        window.removeEventListener('storage', look);
      };
    },
  };
};

/** Forgets what any device of this browser had not sent yet. */
export const forgetUnsent = (): void => {
  for (const key of Object.keys(localStorage)) if (key.startsWith(prefix)) localStorage.removeItem(key);
};
