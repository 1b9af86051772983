/** Where devices take notices while no page of theirs is open. One address a device; none of one sent away. */
import type { NoticeStore } from './port.js';
import type { Scope } from './scope.js';

export const createNotices = (scope: Scope): NoticeStore => ({
  noticeAddresses: (householdId) =>
    scope.glance(householdId, async (db) => {
      const rows = await db
        .selectFrom('notice_address')
        .innerJoin('device', (join) =>
          join
            .onRef('device.household_id', '=', 'notice_address.household_id')
            .onRef('device.id', '=', 'notice_address.device_id'),
        )
        .select([
          'notice_address.device_id',
          'notice_address.endpoint',
          'notice_address.p256dh',
          'notice_address.auth',
          'device.person_id',
        ])
        .where('notice_address.household_id', '=', householdId)
        .where('device.revoked_at', 'is', null)
        .orderBy('notice_address.device_id')
        .execute();
      return rows.map(({ device_id: deviceId, person_id: personId, endpoint, p256dh, auth }) => ({
        deviceId,
        personId,
        endpoint,
        p256dh,
        auth,
      }));
    }),

  keepNoticeAddress: async (householdId, { deviceId, endpoint, p256dh, auth }) => {
    await scope.write(householdId, (db) =>
      db
        .insertInto('notice_address')
        .values({ household_id: householdId, device_id: deviceId, endpoint, p256dh, auth })
        .onConflict((conflict) =>
          conflict.columns(['household_id', 'device_id']).doUpdateSet({ endpoint, p256dh, auth }),
        )
        .execute(),
    );
  },

  dropNoticeAddress: async (householdId, deviceId, endpoint) => {
    await scope.write(householdId, (db) => {
      const all = db
        .deleteFrom('notice_address')
        .where('household_id', '=', householdId)
        .where('device_id', '=', deviceId);
      return (endpoint === undefined ? all : all.where('endpoint', '=', endpoint)).execute();
    });
  },
});
