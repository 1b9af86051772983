/**
 * Devices that wait to be let in. A new device gets a short code to say or show and a secret to
 * keep; when an owner confirms the code, the secret becomes that device's token. The shape follows
 * RFC 8628 (device authorization grant), with the code turned round: the device shows, the owner enters.
 *
 * How long codes last and how often one may guess is in `src/turn/waiting-devices.ts`.
 * Kept in the store, so a device may ask one server and its owner another. Codes are stored as
 * SHA-256: who reads the store can try all of them, but letting a device in still takes an owner's token.
 */
import type { PairingStore } from '../../store/port.js';
import type { Instant } from '../../terms/dates.js';
import { inTenMinutes, knockedOn } from '../../turn/index.js';
import { hashOf, newPairingCode, newToken } from '../tokens.js';

/** Devices that may wait at once, over all servers, and of them those asked for from one address. */
const WAITING_AT_MOST = 10_000;
const WAITING_FROM_ONE = 20;

export interface Waiting {
  readonly name: string;
  readonly tokenHash: string;
}

export interface PairingDesk {
  start(
    name: string,
    address: string,
  ): Promise<
    { readonly code: string; readonly token: string; readonly expiresAt: Instant } | 'full' | 'share-full'
  >;
  /** The device that waits with this code; it can be taken once. */
  take(code: string, householdId: string): Promise<Waiting | 'wrong' | 'too-many'>;
}

/** Whoever has one IPv6 address has the network it is in. */
const shareOf = (address: string): string =>
  address.includes(':') && !address.startsWith('::ffff:')
    ? `${address.split(':').slice(0, 4).join(':')}::/64`
    : address;

export const createPairingDesk = (store: PairingStore, now: () => Instant): PairingDesk => {
  return {
    async start(name, address) {
      const token = newToken();
      for (;;) {
        const code = newPairingCode();
        const expiresAt = inTenMinutes(now());
        const added = await store.addPairing(
          { codeHash: hashOf(code), name, tokenHash: hashOf(token), expiresAt },
          {
            now: now(),
            atMost: WAITING_AT_MOST,
            from: { address: shareOf(address), atMost: WAITING_FROM_ONE },
          },
        );
        if (added === 'full' || added === 'share-full') return added;
        // At most one code in ten thousand is in use: a second try is rare, a third unheard of.
        if (added === 'waiting') return { code, token, expiresAt };
      }
    },
    async take(code, householdId) {
      const waiting = await knockedOn(store, code, householdId, now());
      if (typeof waiting === 'string') return waiting;
      return (await store.takePairing(hashOf(code), now())) ?? 'wrong';
    },
  };
};
