/**
 * Notices to devices whose page is closed: W3C Push API by the Web Push protocol (RFC 8030), encrypted for the
 * browser that asked (RFC 8291), signed by this service (VAPID, RFC 8292). A push service in between sees when
 * and to whom, never what.
 */
import { LRUCache } from 'lru-cache';
import webPush from 'web-push';
import type { NoticeStore } from '../store/port.js';
import { CarrierError, type Carrier, type Delivery } from './telling.js';
import { retryAfter } from './retry-after.js';

export interface PushOptions {
  readonly store: Pick<NoticeStore, 'noticeAddresses' | 'dropNoticeAddress'>;
  /** VAPID keys, base64url. */
  readonly publicKey: string;
  readonly privateKey: string;
  /** Whom a push service may ask when something is wrong: `mailto:…` or `https:…`. */
  readonly contact: string;
  readonly fetch?: typeof fetch;
}

/** What a service worker gets (`src/web/client/service-worker.ts`). */
export interface Notice {
  readonly id: string;
  readonly kind: Delivery['kind'];
  readonly text: string;
  /** In quiet hours: shown, not sounded. */
  readonly quiet: boolean;
}

/** A notice's body goes in one record of 4,096 bytes; this leaves room for the rest in any script. */
const TEXT_AT_MOST = 900;
/** Seconds a push service keeps it for a device that is away: an hour later a timer is no news. */
const KEPT_FOR = { timer: 3_600, reminder: 24 * 3_600, note: 24 * 3_600, summary: 12 * 3_600 } as const;

/** @throws Error for keys that are none */
export const createPush = (options: PushOptions): Carrier => {
  const { store, publicKey, privateKey, contact } = options;
  const post = options.fetch ?? fetch;
  const vapidDetails = { subject: contact, publicKey, privateKey };
  // A wrong key should show when the service starts, not when a timer is due.
  webPush.setVapidDetails(contact, publicKey, privateKey);
  /** Devices that took a delivery already, so that a second try goes to the others only. */
  const took = new LRUCache<string, Set<string>>({ max: 1_000 });

  const send = async (
    address: { readonly endpoint: string; readonly p256dh: string; readonly auth: string },
    notice: Notice,
    signal: AbortSignal,
  ): Promise<Response> => {
    const { endpoint, p256dh, auth } = address;
    const { method, headers, body } = webPush.generateRequestDetails(
      { endpoint, keys: { p256dh, auth } },
      JSON.stringify(notice),
      { vapidDetails, TTL: KEPT_FOR[notice.kind], urgency: notice.kind === 'summary' ? 'normal' : 'high' },
    );
    const response = await post(endpoint, {
      method,
      redirect: 'error',
      signal,
      headers: Object.fromEntries(
        Object.entries(headers)
          .filter(([name]) => name.toLowerCase() !== 'content-length')
          .map(([name, value]) => [name, String(value)]),
      ),
      body: new Uint8Array(body ?? Buffer.alloc(0)),
    });
    await response.body?.cancel();
    return response;
  };

  return {
    name: 'push',
    serves: () => true,
    carry: async (delivery, signal, { personId, quiet }) => {
      const all = (await store.noticeAddresses(delivery.household)).filter(
        (one) => personId === null || one.personId === null || one.personId === personId,
      );
      const done = took.get(`${delivery.household} ${delivery.id}`) ?? new Set<string>();
      took.set(`${delivery.household} ${delivery.id}`, done);
      const { id, kind, speech } = delivery;
      const notice: Notice = { id, kind, text: speech.text.slice(0, TEXT_AT_MOST), quiet };
      const failures: CarrierError[] = [];
      for (const address of all.filter(({ deviceId }) => !done.has(deviceId))) {
        try {
          const response = await send(address, notice, signal);
          if (response.ok) done.add(address.deviceId);
          // The browser took its address back, or keeps it no more (RFC 8030, 7.3).
          else if (response.status === 404 || response.status === 410)
            await store.dropNoticeAddress(delivery.household, address.deviceId, address.endpoint);
          else
            failures.push(new CarrierError(`push service answered ${response.status}`, retryAfter(response)));
        } catch (error) {
          failures.push(
            new CarrierError(error instanceof Error ? error.message : 'push service not reached'),
          );
        }
      }
      const [first] = failures;
      if (first !== undefined) throw first;
      return done.size > 0 ? 'spoken' : 'unwanted';
    },
    close: () => Promise.resolve(),
  };
};
