/** A token for trying the demo kitchen. A new one each start: only its hash is kept, so the old cannot be shown again. */
import { randomUUID } from 'node:crypto';
import type { Id } from '../../kitchen/model.js';
import { hashOf, newToken } from '../../server/index.js';
import type { Store } from '../../store/port.js';
import type { Instant } from '../../terms/dates.js';

const NAME = 'demo device';

export const demoToken = async (store: Store, householdId: Id, now: Instant): Promise<string> => {
  const token = newToken();
  const device = {
    id: `demo-${randomUUID()}`,
    householdId,
    name: NAME,
    tokenHash: hashOf(token),
    scope: 'own',
    personId: null,
    pairedAt: now,
    lastSeenAt: null,
    revokedAt: null,
  } as const;
  // A token is for life, so the last start's device goes and a new one comes.
  const earlier = (await store.devices(householdId)).filter(
    ({ name, revokedAt }) => name === NAME && revokedAt === null,
  );
  await store.changeDevices(householdId, {
    deeds: [{ kind: 'let-in', device }, ...earlier.map(({ id }) => ({ kind: 'send-away', id }) as const)],
    by: null,
    at: now,
  });
  return token;
};
