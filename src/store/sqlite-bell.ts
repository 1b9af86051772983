/**
 * Hearing that another process changed the file: a command beside the service, say. SQLite counts what
 * others commit (`PRAGMA data_version`); when it moved, those households whose versions did are rung.
 */
import type { Id } from '../kitchen/model.js';
import type { Rung } from './port.js';

export interface Versions {
  readonly version: number;
  readonly rights: number;
}

export interface FileBell {
  subscribe(householdId: Id, hear: (what: Rung) => void): Promise<() => void>;
  close(): void;
}

const LOOK_EVERY = 200;

/**
 * @param moved whether others have committed since it was last asked
 * @param read the versions of all households that are followed
 */
export const createFileBell = (
  moved: () => boolean,
  read: (ids: readonly Id[]) => Promise<ReadonlyMap<Id, Versions>>,
): FileBell => {
  const hearers = new Map<Id, Set<(what: Rung) => void>>();
  const known = new Map<Id, Versions>();
  let timer: NodeJS.Timeout | null = null;
  let looking = false;

  const look = async (): Promise<void> => {
    const now = await read([...hearers.keys()]);
    for (const [householdId, hearing] of hearers) {
      const [before, after] = [known.get(householdId), now.get(householdId)];
      if (after) known.set(householdId, after);
      else known.delete(householdId);
      if (!before) continue;
      for (const hear of hearing) {
        if (before.version !== after?.version) hear('kitchen');
        if (before.rights !== after?.rights) hear('devices');
      }
    }
  };

  const lookNow = (): void => {
    if (looking || !moved()) return;
    looking = true;
    void look()
      .catch(() => undefined)
      .finally(() => (looking = false));
  };

  return {
    async subscribe(householdId, hear) {
      const here = hearers.get(householdId) ?? new Set();
      hearers.set(householdId, here.add(hear));
      if (!known.has(householdId)) {
        const now = (await read([householdId])).get(householdId);
        if (now) known.set(householdId, now);
      }
      timer ??= setInterval(lookNow, LOOK_EVERY).unref();
      return () => {
        here.delete(hear);
        if (here.size > 0 || hearers.get(householdId) !== here) return;
        hearers.delete(householdId);
        known.delete(householdId);
        if (hearers.size > 0 || timer === null) return;
        clearInterval(timer);
        timer = null;
      };
    },
    close() {
      if (timer !== null) clearInterval(timer);
      timer = null;
    },
  };
};
