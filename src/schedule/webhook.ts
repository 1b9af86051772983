/**
 * Posts tellings to a URL, signed as the Standard Webhooks specification has it: headers
 * `webhook-id`, `webhook-timestamp`, `webhook-signature` (HMAC-SHA256 over id, time and body).
 */
import { Webhook } from 'standardwebhooks';
import type { Id } from '../kitchen/model.js';
import { retryAfter } from './retry-after.js';
import { CarrierError, type Carrier } from './telling.js';

export interface WebhookOptions {
  readonly url: string;
  /** Base64 of 24 to 64 random bytes, with or without the prefix `whsec_`. */
  readonly secret: string;
  /** Households it is for; left out: all. */
  readonly households?: readonly Id[];
  readonly fetch?: typeof fetch;
}

/** @throws TypeError for a URL that is not http or https, Error for a secret that is not base64 */
export const createWebhook = (options: WebhookOptions): Carrier => {
  const url = new URL(options.url);
  if (!/^https?:$/.test(url.protocol)) throw new TypeError(`not a web address: ${options.url}`);
  const signer = new Webhook(options.secret);
  const post = options.fetch ?? fetch;
  return {
    name: 'webhook',
    serves: (householdId) => options.households?.includes(householdId) ?? true,
    carry: async (delivery, signal) => {
      const body = JSON.stringify(delivery);
      const at = new Date(delivery.sentAt);
      const id = `${delivery.household}.${delivery.id}`;
      const response = await post(url, {
        method: 'POST',
        // A redirect could carry a household's words to somewhere nobody chose.
        redirect: 'error',
        signal,
        headers: {
          'content-type': 'application/json',
          'webhook-id': id,
          'webhook-timestamp': String(Math.floor(at.getTime() / 1000)),
          'webhook-signature': signer.sign(id, at, body),
        },
        body,
      });
      await response.body?.cancel();
      if (response.ok) return 'spoken';
      // 410 Gone: the receiver asks not to be told again.
      throw new CarrierError(
        `webhook answered ${response.status}`,
        retryAfter(response),
        response.status === 410,
      );
    },
    close: () => Promise.resolve(),
  };
};
