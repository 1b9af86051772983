/**
 * Who may speak for a household, changed: in one transaction, decided on the devices as they are with the
 * household's row taken, so that of two changes at once the second sees what the first did. Each raises
 * the household's rights version and leaves a line in the devices' journal.
 */
import type { Kysely } from 'kysely';
import type { Id } from '../kitchen/model.js';
import { deviceOf, deviceRow } from './device-rows.js';
import type { Device, DeviceChange, DeviceDeed, DeviceRefusal } from './port.js';
import { columnText } from './records.js';
import type { Database } from './tables.js';

const owners = (devices: Iterable<Device>): number =>
  [...devices].filter(({ scope, revokedAt }) => scope === 'own' && revokedAt === null).length;

/** A name may be changed by whoever may speak; everything else is for owners. */
const mayDo = (actor: Device | undefined, deeds: readonly DeviceDeed[]): boolean => {
  if (!actor || actor.revokedAt !== null) return false;
  const onlyNames = deeds.every(
    (deed) => deed.kind === 'change' && deed.scope === undefined && deed.personId === undefined,
  );
  return onlyNames || actor.scope === 'own';
};

/** The devices meant, after the deeds; or why one of them cannot be done. */
export const afterDeeds = (
  before: readonly Device[],
  { deeds, by, at }: Pick<DeviceChange, 'deeds' | 'by' | 'at'>,
): readonly Device[] | DeviceRefusal => {
  const devices = new Map(before.map((device) => [device.id, device]));
  if (by !== null && !mayDo(devices.get(by), deeds)) return 'not-an-owner';
  for (const deed of deeds) {
    if (deed.kind === 'let-in') {
      if (devices.has(deed.device.id)) return 'let-in-already';
      devices.set(deed.device.id, deed.device);
      continue;
    }
    const device = devices.get(deed.id);
    if (!device) return 'no-such-device';
    if (deed.kind === 'send-away') {
      // For good: the first time is the one that counts.
      devices.set(deed.id, { ...device, revokedAt: device.revokedAt ?? at });
      continue;
    }
    if (device.revokedAt !== null) return 'sent-away';
    const { name = device.name, scope = device.scope, personId = device.personId } = deed;
    devices.set(deed.id, { ...device, name, scope, personId });
  }
  // A household whose last owner is gone could never let anybody in again. Who runs the machine can.
  if (by !== null && owners(before) > 0 && owners(devices.values()) === 0) return 'last-owner';
  return deeds.map((deed) => devices.get(deed.kind === 'let-in' ? deed.device.id : deed.id)!);
};

const insert = async (db: Kysely<Database>, device: Device): Promise<boolean> => {
  // Its token is known to one household at most: of two that let it in at once, one comes too late.
  const { numInsertedOrUpdatedRows } = await db
    .insertInto('device_token')
    .values({ token_hash: device.tokenHash, household_id: device.householdId, device_id: device.id })
    .onConflict((conflict) => conflict.column('token_hash').doNothing())
    .executeTakeFirst();
  if (numInsertedOrUpdatedRows !== 1n) return false;
  await db.insertInto('device').values(deviceRow(device)).execute();
  return true;
};

export type DeedsDone = { readonly devices: readonly Device[] } | { readonly refused: DeviceRefusal };

/** Does them all, or refuses with nothing written. Call with the household's row taken. */
export const doDeviceDeeds = async (
  db: Kysely<Database>,
  householdId: Id,
  change: DeviceChange,
): Promise<DeedsDone> => {
  const { deeds, by, at, whence = null } = change;
  if (deeds.length === 0) return { devices: [] };
  const rows = await db.selectFrom('device').selectAll().where('household_id', '=', householdId).execute();
  const devices = afterDeeds(rows.map(deviceOf), change);
  if (typeof devices === 'string') return { refused: devices };
  for (const deed of deeds)
    if (deed.kind === 'let-in' && !(await insert(db, deed.device))) return { refused: 'let-in-already' };
  const { rights } = await db
    .updateTable('household')
    .set((set) => ({ rights: set('rights', '+', 1) }))
    .where('household_id', '=', householdId)
    .returning('rights')
    .executeTakeFirstOrThrow();
  for (const [index, deed] of deeds.entries()) {
    const { id, name, scope, personId, revokedAt } = devices[index]!;
    if (deed.kind !== 'let-in')
      await db
        .updateTable('device')
        .set({ name: columnText(name), scope, person_id: personId, revoked_at: revokedAt })
        .where('household_id', '=', householdId)
        .where('id', '=', id)
        .execute();
    await db
      .insertInto('device_journal')
      .values({
        household_id: householdId,
        rights,
        device_id: id,
        at,
        deed: deed.kind,
        name: columnText(name),
        scope,
        by_device_id: by,
        whence,
      })
      // Two deeds on one device in one change are one line, with how it ended.
      .onConflict((conflict) =>
        conflict
          .columns(['household_id', 'rights', 'device_id'])
          .doUpdateSet({ deed: deed.kind, name: columnText(name), scope }),
      )
      .execute();
  }
  return { devices };
};
