/** An address as the bytes of an NFC record, for whoever puts it on a chip by other means. */

/** Beginnings that a URI record has one byte for (NFC Forum, URI Record Type Definition 1.0, table 3). */
const beginnings: readonly (readonly [string, number])[] = [
  ['https://', 4],
  ['http://', 3],
];

/** One short URI record as bytes: header, lengths, the letter U, the beginning's number, the rest in UTF-8. */
export const uriRecord = (address: string): Uint8Array => {
  const [beginning, number] = beginnings.find(([start]) => address.startsWith(start)) ?? ['', 0];
  const rest = new TextEncoder().encode(address.slice(beginning.length));
  if (rest.length + 1 > 255) throw new RangeError('The address is too long for a short record.');
  return Uint8Array.from([0xd1, 1, rest.length + 1, 0x55, number, ...rest]);
};
