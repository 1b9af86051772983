/** A token for trying the demo kitchen. A new one each start: only its hash is kept, so the old cannot be shown again. */
import { randomUUID } from 'node:crypto';
import type { Id } from '../../kitchen/model.js';
import { hashOf, newToken } from '../../server/index.js';
import type { Store } from '../../store/port.js';
import type { Instant } from '../../terms/dates.js';

const NAME = 'demo device';

export const demoToken = async (store: Store, householdId: Id, now: Instant): Promise<string> => {
  // A token is for life, so the last start's device goes and a new one comes.
  for (const device of await store.devices(householdId))
    if (device.name === NAME && device.revokedAt === null)
      await store.updateDevice({ ...device, revokedAt: now });
  const token = newToken();
  await store.addDevice({
    id: `demo-${randomUUID()}`,
    householdId,
    name: NAME,
    tokenHash: hashOf(token),
    scope: 'own',
    personId: null,
    pairedAt: now,
    lastSeenAt: null,
    revokedAt: null,
  });
  return token;
};
