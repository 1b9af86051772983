/** A fresh id for a turn: a retry must carry the same one, so it is made once, before sending. */
export const newId = (): string =>
  [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
