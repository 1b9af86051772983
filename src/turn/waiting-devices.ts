/**
 * Who waits to be let in with a code. Asked by voice and by page alike, and counted alike.
 *
 * Codes: eight random digits (26.5 bits), ten minutes, used once. A wrong guess only ever lets a
 * stranger's device into the guesser's own household, and guesses are limited all the same.
 */
import { hashOf } from '../store/secrets.js';
import type { Pairing, PairingStore } from '../store/port.js';
import type { Id } from '../kitchen/model.js';
import type { Instant } from '../terms/dates.js';

export const CODE_LIVES_MS = 10 * 60 * 1000;
/** Codes one household's owners may get wrong before waiting out `CODE_LIVES_MS` from the first. */
export const WRONG_CODES = 5;

export const inTenMinutes = (now: Instant): Instant =>
  new Date(Date.parse(now) + CODE_LIVES_MS).toISOString();

/** The device that waits with this code; it goes on waiting. */
export const knockedOn = async (
  store: PairingStore,
  code: string,
  householdId: Id,
  now: Instant,
): Promise<Pairing | 'wrong' | 'too-many'> => {
  // Counted before it is looked at, so that many at once cannot outrun the count.
  const guesses = await store.countGuess(householdId, { now, forgottenAt: inTenMinutes(now) });
  if (guesses > WRONG_CODES) return 'too-many';
  const found = await store.waitingPairing(hashOf(code), now);
  if (!found) return 'wrong';
  await store.uncountGuess(householdId);
  return found;
};
