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

/** Devices that may wait at once, over all servers. */
const WAITING_AT_MOST = 10_000;

export interface Waiting {
  readonly name: string;
  readonly tokenHash: string;
}

export interface PairingDesk {
  start(
    name: string,
  ): Promise<{ readonly code: string; readonly token: string; readonly expiresAt: Instant } | 'full'>;
  /** The device that waits with this code; it can be taken once. */
  take(
    code: string,
    by: { readonly householdId: string; readonly id: string },
  ): Promise<Waiting | 'wrong' | 'too-many'>;
}

export const createPairingDesk = (store: PairingStore, now: () => Instant): PairingDesk => {
  return {
    async start(name) {
      const token = newToken();
      for (;;) {
        const code = newPairingCode();
        const expiresAt = inTenMinutes(now());
        const added = await store.addPairing(
          { codeHash: hashOf(code), name, tokenHash: hashOf(token), expiresAt },
          { now: now(), atMost: WAITING_AT_MOST },
        );
        if (added === 'full') return added;
        // At most one code in ten thousand is in use: a second try is rare, a third unheard of.
        if (added === 'waiting') return { code, token, expiresAt };
      }
    },
    async take(code, by) {
      const waiting = await knockedOn(store, code, by, now());
      if (typeof waiting === 'string') return waiting;
      const found = await store.takePairing(hashOf(code), now());
      if (!found) return 'wrong';
      await store.forgetGuesses(by.householdId, by.id);
      return found;
    },
  };
};
