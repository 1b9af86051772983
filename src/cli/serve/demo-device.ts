/** A token for trying the demo kitchen. A new one each start: only its hash is kept, so the old cannot be shown again. */
import type { Id } from '../../kitchen/model.js';
import { hashOf, newToken } from '../../server/index.js';
import type { Device, Store } from '../../store/port.js';
import type { Instant } from '../../terms/dates.js';

export const demoToken = async (store: Store, householdId: Id, now: Instant): Promise<string> => {
  const token = newToken();
  const id = `demo-device.${householdId}`;
  const known = (await store.devices(householdId)).find((device) => device.id === id);
  const device: Device = {
    id,
    householdId,
    name: 'demo device',
    tokenHash: hashOf(token),
    scope: 'own',
    personId: null,
    pairedAt: known?.pairedAt ?? now,
    lastSeenAt: known?.lastSeenAt ?? null,
    revokedAt: null,
  };
  await (known ? store.updateDevice(device) : store.addDevice(device));
  return token;
};
