/**
 * Keys for what cannot send a device's own key: a calendar has nothing but an address, another speech front
 * signs. Each is made from the device's token hash, for one purpose: it opens nothing else, nothing is stored
 * for it, and it ends when the device is sent away.
 */
import { createHmac, timingSafeEqual } from 'node:crypto';
import type { Device, Store } from '../../store/port.js';

export type Purpose = 'feeds' | 'turns';

const made = (device: Pick<Device, 'tokenHash'>, purpose: Purpose): Buffer =>
  createHmac('sha256', device.tokenHash).update(`tellshelf side door: ${purpose}`).digest();

/** 256 bits, fit for an address. */
export const feedKey = (device: Pick<Device, 'tokenHash'>): string =>
  made(device, 'feeds').toString('base64url');

/** A Standard Webhooks secret. */
export const hookSecret = (device: Pick<Device, 'tokenHash'>): string =>
  `whsec_${made(device, 'turns').toString('base64')}`;

/** Compared in the same time whatever part was right. */
export const same = (one: string, other: string): boolean => {
  const [a, b] = [Buffer.from(one), Buffer.from(other)];
  return a.length === b.length && timingSafeEqual(a, b);
};

/** Ids as they stand in the path. */
export interface Behind {
  readonly household: string;
  readonly device: string;
}

/** The device that a side door belongs to, unless it was sent away. */
export const deviceBehind = async (store: Store, { household, device }: Behind): Promise<Device | null> =>
  (await store.devices(household)).find(({ id, revokedAt }) => id === device && revokedAt === null) ?? null;

/** The paths of a device's side doors, each with what opens it. */
export const pathsOf = (device: Device) => {
  const behind = [device.householdId, device.id].map(encodeURIComponent).join('/');
  const feeds = `/v1/feeds/${behind}/${feedKey(device)}`;
  return {
    calendar: `${feeds}/calendar.ics`,
    listText: `${feeds}/list.txt`,
    listJson: `${feeds}/list.json`,
    wall: `${feeds}/wall`,
    turns: { url: `/v1/hooks/${behind}/turns`, secret: hookSecret(device) },
  };
};
