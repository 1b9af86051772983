/** What a turn does about devices, in the turn's own transaction, so that a turn sent again does it once. */
import type { Kysely } from 'kysely';
import type { Id } from '../kitchen/model.js';
import { deviceOf, deviceRow } from './device-rows.js';
import type { Device, DeviceDeed, TurnRecord } from './port.js';
import { columnText } from './records.js';
import type { Database } from './tables.js';

const ownersIn = (devices: Iterable<Device>): number =>
  [...devices].filter(({ scope, revokedAt }) => scope === 'own' && revokedAt === null).length;

/** The devices after the deeds; null when one of them cannot be done (any more). */
const after = (
  before: readonly Device[],
  deeds: readonly DeviceDeed[],
  turn: TurnRecord,
): Device[] | null => {
  const devices = new Map(before.map((device) => [device.id, device]));
  for (const deed of deeds) {
    if (deed.kind === 'let-in') {
      devices.set(deed.device.id, deed.device);
      continue;
    }
    const device = devices.get(deed.id);
    if (!device || device.revokedAt !== null) return null;
    devices.set(
      deed.id,
      deed.kind === 'rename' ? { ...device, name: deed.name } : { ...device, revokedAt: turn.at },
    );
  }
  // A household whose last owner is gone could never let anybody in again.
  if (ownersIn(before) > 0 && ownersIn(devices.values()) === 0) return null;
  return deeds.map((deed) => devices.get(deed.kind === 'let-in' ? deed.device.id : deed.id)!);
};

/**
 * Does them all, or answers `no-longer` with nothing written: a device meant is gone, one let in was
 * let in elsewhere, or no owner would be left. Call with the household's row taken.
 */
export const doDeviceDeeds = async (
  db: Kysely<Database>,
  householdId: Id,
  turn: TurnRecord,
): Promise<readonly Device[] | 'no-longer'> => {
  const deeds = turn.devices ?? [];
  if (deeds.length === 0) return [];
  const rows = await db.selectFrom('device').selectAll().where('household_id', '=', householdId).execute();
  const devices = after(rows.map(deviceOf), deeds, turn);
  if (!devices) return 'no-longer';
  for (const deed of deeds) {
    if (deed.kind !== 'let-in') continue;
    const { device } = deed;
    // Its token is known to one household at most: of two that let it in at once, one comes too late.
    const { numInsertedOrUpdatedRows } = await db
      .insertInto('device_token')
      .values({ token_hash: device.tokenHash, household_id: householdId, device_id: device.id })
      .onConflict((conflict) => conflict.column('token_hash').doNothing())
      .executeTakeFirst();
    if (numInsertedOrUpdatedRows !== 1n) return 'no-longer';
    await db.insertInto('device').values(deviceRow(device)).execute();
    if (turn.deviceId !== null)
      await db
        .deleteFrom('pairing_guess')
        .where('household_id', '=', householdId)
        .where('device_id', '=', turn.deviceId)
        .execute();
  }
  for (const [at, deed] of deeds.entries()) {
    if (deed.kind === 'let-in') continue;
    const { name, revokedAt } = devices[at]!;
    await db
      .updateTable('device')
      .set({ name: columnText(name), revoked_at: revokedAt })
      .where('household_id', '=', householdId)
      .where('id', '=', deed.id)
      .execute();
  }
  return devices;
};
