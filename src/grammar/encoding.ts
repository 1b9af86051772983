/**
 * From bytes to text (SRGS 1.0 section 4.4): byte-order mark, then the header's encoding name, then UTF-8,
 * then Latin 1.
 */

export class EncodingError extends Error {}

const startsWith = (bytes: Uint8Array, ...values: number[]): boolean =>
  values.every((value, i) => bytes[i] === value);

/** What the first bytes say, as XML 1.0 appendix F does it: a mark, or the shape of "#" or "<". */
const sniff = (bytes: Uint8Array): { encoding: string; skip: number } | null => {
  if (startsWith(bytes, 0xef, 0xbb, 0xbf)) return { encoding: 'utf-8', skip: 3 };
  if (startsWith(bytes, 0xfe, 0xff)) return { encoding: 'utf-16be', skip: 2 };
  if (startsWith(bytes, 0xff, 0xfe)) return { encoding: 'utf-16le', skip: 2 };
  if (bytes[0] === 0 && (bytes[1] === 0x23 || bytes[1] === 0x3c)) return { encoding: 'utf-16be', skip: 0 };
  if (bytes[1] === 0 && (bytes[0] === 0x23 || bytes[0] === 0x3c)) return { encoding: 'utf-16le', skip: 0 };
  return null;
};

const utf16 = /^(utf-?16(be|le)?|iso-10646-ucs-2|ucs-?2)$/iu;

/** The encoding's name in an ABNF header or an XML declaration, read as ASCII. */
const declared = (bytes: Uint8Array): string | null => {
  const head = Buffer.from(bytes.subarray(0, 200)).toString('latin1');
  const abnf = /^#ABNF [0-9.]+ ([A-Za-z][A-Za-z0-9._-]*);/u.exec(head);
  if (abnf !== null) return abnf[1]!;
  const xml = /^<\?xml\s[^>]*?encoding\s*=\s*["']([A-Za-z][A-Za-z0-9._-]*)["']/u.exec(head);
  return xml === null ? null : xml[1]!;
};

/** Throws `EncodingError` when the encoding is unknown or the bytes are not written in it. */
export const decode = (bytes: Uint8Array): { text: string; encoding: string } => {
  const sniffed = sniff(bytes);
  const body = sniffed === null ? bytes : bytes.subarray(sniffed.skip);
  const named = declared(body);
  let encoding = sniffed?.encoding ?? named ?? 'utf-8';
  if (sniffed === null && named !== null && utf16.test(named)) {
    throw new EncodingError(`The header says ${named}, but the file is not written in it.`);
  }
  if (/^us-ascii$/iu.test(encoding)) encoding = 'utf-8';
  let decoder: InstanceType<typeof TextDecoder>;
  try {
    decoder = new TextDecoder(encoding, { fatal: true, ignoreBOM: true });
  } catch {
    throw new EncodingError(`The encoding ${encoding} is not known.`);
  }
  try {
    return { text: decoder.decode(body), encoding };
  } catch {
    // Without a name the standard leaves it to the processor; old files without one are Latin 1.
    if (sniffed === null && named === null) {
      return { text: new TextDecoder('iso-8859-1').decode(body), encoding: 'iso-8859-1' };
    }
    throw new EncodingError(`The file is not written in ${encoding}, or some bytes of it are broken.`);
  }
};
