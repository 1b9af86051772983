/** Devices to rows and back. */
import type { Kysely, Selectable } from 'kysely';
import { columnText } from './records.js';
import type { Device } from './port.js';
import type { Database, DeviceTable } from './tables.js';

export const deviceRow = (device: Device): Selectable<DeviceTable> => ({
  household_id: device.householdId,
  id: device.id,
  name: columnText(device.name),
  token_hash: device.tokenHash,
  scope: device.scope,
  person_id: device.personId,
  paired_at: device.pairedAt,
  last_seen_at: device.lastSeenAt,
  revoked_at: device.revokedAt,
});

export const deviceOf = (row: Selectable<DeviceTable>): Device => ({
  id: row.id,
  householdId: row.household_id,
  name: row.name,
  tokenHash: row.token_hash,
  scope: row.scope as Device['scope'],
  personId: row.person_id,
  pairedAt: row.paired_at,
  lastSeenAt: row.last_seen_at,
  revokedAt: row.revoked_at,
});

export const insertDevice = async (db: Kysely<Database>, device: Device): Promise<void> => {
  await db
    .insertInto('device_token')
    .values({ token_hash: device.tokenHash, household_id: device.householdId, device_id: device.id })
    .execute();
  await db.insertInto('device').values(deviceRow(device)).execute();
};
