/**
 * Devices that wait to be let in. A new device gets a short code to say or show and a secret to
 * keep; when an owner confirms the code, the secret becomes that device's token. The shape follows
 * RFC 8628 (device authorization grant), with the code turned round: the device shows, the owner enters.
 *
 * Codes: eight random digits (26.5 bits), ten minutes, used once. A wrong guess only ever lets a
 * stranger's device into the guesser's own household, and guesses are limited all the same.
 * Kept in the memory of one server: behind a balancer, pairing needs sticky routing or a retry.
 */
import { LRUCache } from 'lru-cache';
import { hashOf, newPairingCode, newToken } from '../tokens.js';

export const CODE_LIVES_MS = 10 * 60 * 1000;
/** Wrong codes one owner may enter before waiting out `CODE_LIVES_MS`. */
export const WRONG_CODES = 5;

export interface Waiting {
  readonly name: string;
  readonly tokenHash: string;
}

export interface PairingDesk {
  start(name: string): { readonly code: string; readonly token: string };
  /** The device that waits with this code; it can be taken once. */
  take(code: string, byDevice: string): Waiting | 'wrong' | 'too-many';
}

export const createPairingDesk = (): PairingDesk => {
  const waiting = new LRUCache<string, Waiting>({ max: 10_000, ttl: CODE_LIVES_MS });
  const wrong = new LRUCache<string, number>({ max: 10_000, ttl: CODE_LIVES_MS });

  const freshCode = (): string => {
    const code = newPairingCode();
    return waiting.has(hashOf(code)) ? freshCode() : code;
  };

  return {
    start(name) {
      const code = freshCode();
      const token = newToken();
      waiting.set(hashOf(code), { name, tokenHash: hashOf(token) });
      return { code, token };
    },
    take(code, byDevice) {
      const tries = wrong.get(byDevice) ?? 0;
      if (tries >= WRONG_CODES) return 'too-many';
      const found = waiting.get(hashOf(code));
      if (!found) {
        wrong.set(byDevice, tries + 1);
        return 'wrong';
      }
      waiting.delete(hashOf(code));
      wrong.delete(byDevice);
      return found;
    },
  };
};
