/**
 * Device tokens: 256 random bits. They are stored as SHA-256, without salt or stretching: those
 * defend guessable secrets, and nobody guesses 256 bits. Looking a token up by its hash also takes
 * the same time whatever part of a guess was right.
 */
import { randomBytes, randomInt } from 'node:crypto';

export { hashOf } from '../store/secrets.js';

const PREFIX = 'tsf_';

export const newToken = (): string => PREFIX + randomBytes(32).toString('base64url');

/** Whether it could be one of ours at all. Saves a look-up. */
export const looksLikeToken = (text: string): boolean => /^tsf_[\w-]{43}$/.test(text);

/** Eight random digits: 26.5 bits. Said aloud in two groups of four. */
export const newPairingCode = (): string => String(randomInt(100_000_000)).padStart(8, '0');
