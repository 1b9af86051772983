/**
 * Keeps open conversations to what their devices may do now. Before anything is said to a household's
 * sockets its rights version is compared with theirs: where it moved, devices are read again, those sent
 * away are cut off, and the others go on as what they are now.
 */
import type { Id } from '../../kitchen/model.js';
import type { Store } from '../../store/port.js';
import { CLOSE, type Hub, type Open } from './hub.js';

export interface Rights {
  /** Who of the household may be spoken to, at this rights version; null: the household is gone. */
  current(householdId: Id, rights: number | null): Promise<readonly Open[]>;
  /** The same, with the version as the store has it now. */
  check(householdId: Id): Promise<readonly Open[]>;
}

export const createRights = (store: Pick<Store, 'devices' | 'rightsOf'>, hub: Hub): Rights => {
  const current = async (householdId: Id, rights: number | null): Promise<readonly Open[]> => {
    const opens = hub.ofHousehold(householdId);
    if (opens.every(({ device }) => device.rights === rights)) return opens;
    // At least as new as the version: read after it.
    const devices = new Map((await store.devices(householdId)).map((device) => [device.id, device]));
    return hub.ofHousehold(householdId).filter((open) => {
      const device = devices.get(open.device.id);
      if (!device || device.revokedAt !== null || rights === null) {
        open.socket.close(CLOSE.policy, 'this device may no longer speak');
        // What is on its way to be closed hears nothing more.
        hub.remove(open);
        return false;
      }
      open.device = { ...device, rights };
      return true;
    });
  };
  return {
    current,
    check: async (householdId) => current(householdId, await store.rightsOf(householdId)),
  };
};
