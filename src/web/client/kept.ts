/** What this browser keeps for when there is no network: the last record, and whose it is. Forgotten on leaving. */
import type { Me } from '../../../shared/client/http.js';
import type { Board } from '../../../shared/wire/board.js';
import { forgetUnsent } from './unsent.js';

const keys = { me: 'tellshelf.me', board: 'tellshelf.board' } as const;

const read = <T>(key: string): T | null => {
  try {
    return JSON.parse(localStorage.getItem(key) ?? 'null') as T | null;
  } catch {
    return null;
  }
};
const write = (key: string, value: unknown): void => {
  try {
    localStorage.setItem(key, JSON.stringify(value));
  } catch {
    // A browser that keeps nothing, or no room: there is no record without a network then.
  }
};

export const keptMe = (): Me | null => read<Me>(keys.me);
/** Whose page this is from now on. Of another household nothing stays to be seen. */
export const keepMe = (me: Me): void => {
  const before = keptMe();
  if (before !== null && before.household.id !== me.household.id) forgetSeen();
  write(keys.me, me);
};
export const keptBoard = (): Board | null => read<Board>(keys.board);
export const keepBoard = (board: Board): void => write(keys.board, board);

const talkKey = 'tellshelf.talk';

/** What was said last in this tab: a page loaded again in the middle of a question still shows it. */
export const keptTalk = <T>(): T | null => {
  try {
    return JSON.parse(sessionStorage.getItem(talkKey) ?? 'null') as T | null;
  } catch {
    return null;
  }
};
export const keepTalk = (talk: unknown): void => {
  try {
    sessionStorage.setItem(talkKey, JSON.stringify(talk));
  } catch {
    // A browser that keeps nothing.
  }
};

const rungKey = 'tellshelf.rung';

/** Timers that rang here without the kitchen and were stopped: they do not ring anew when the page is loaded again. */
export const keptRung = (): readonly string[] => read<readonly string[]>(rungKey) ?? [];
export const keepRung = (ids: readonly string[]): void => write(rungKey, ids);

/** Forgets what was shown and said; what is not sent yet stays with the device that it is of. */
const forgetSeen = (): void => {
  try {
    for (const key of [...Object.values(keys), rungKey]) localStorage.removeItem(key);
    sessionStorage.removeItem(talkKey);
  } catch {
    // Nothing was kept.
  }
};

export const forget = (): void => {
  forgetSeen();
  try {
    forgetUnsent();
  } catch {
    // Nothing was kept.
  }
};

/** Calls when another tab of this browser goes to another household. */
export const onOtherHousehold = (mine: Me, hear: () => void): (() => void) => {
  const look = (event: StorageEvent): void => {
    if (event.key !== keys.me || event.newValue === null) return;
    const other = keptMe();
    if (other !== null && other.household.id !== mine.household.id) hear();
  };
  window.addEventListener('storage', look);
  return () => window.removeEventListener('storage', look);
};
