/**
 * What an NFC chip holds: NDEF messages with text and URI records.
 * Sources: NFC Forum, NFC Data Exchange Format (NDEF) 1.0; Text Record Type Definition 1.0;
 * URI Record Type Definition 1.0, table 3 (abbreviations); Smart Poster Record Type Definition 1.1.
 */

export type NdefContent =
  | { readonly kind: 'text'; readonly text: string; readonly language: string }
  | { readonly kind: 'uri'; readonly uri: string };

const URI_BEGINNINGS = [
  '',
  'http://www.',
  'https://www.',
  'http://',
  'https://',
  'tel:',
  'mailto:',
  'ftp://anonymous:anonymous@',
  'ftp://ftp.',
  'ftps://',
  'sftp://',
  'smb://',
  'nfs://',
  'ftp://',
  'dav://',
  'news:',
  'telnet://',
  'imap:',
  'rtsp://',
  'urn:',
  'pop:',
  'sip:',
  'sips:',
  'tftp:',
  'btspp://',
  'btl2cap://',
  'btgoep://',
  'tcpobex://',
  'irdaobex://',
  'file://',
  'urn:epc:id:',
  'urn:epc:tag:',
  'urn:epc:pat:',
  'urn:epc:raw:',
  'urn:epc:',
  'urn:nfc:',
] as const;

interface NdefRecord {
  readonly format: number;
  readonly type: string;
  readonly payload: Uint8Array;
}

/** A chip of a few kilobytes holds no more; a longer message is not one. */
const MOST_BYTES = 32_768;
/** Smart posters within smart posters are refused. */
const DEEPEST = 2;

const utf8 = new TextDecoder('utf-8', { fatal: true });

/** The records of a message, chunks put together; null when the bytes are not one whole message. */
const records = (bytes: Uint8Array): readonly NdefRecord[] | null => {
  const found: NdefRecord[] = [];
  let chunks: { format: number; type: string; parts: Uint8Array[] } | null = null;
  let at = 0;
  for (let first = true; ; first = false) {
    const header = bytes[at];
    const typeLength = bytes[at + 1];
    if (header === undefined || typeLength === undefined) return null;
    const has = (bit: number): boolean => (header & bit) !== 0;
    const [begins, ends, chunked, short, withId] = [0x80, 0x40, 0x20, 0x10, 0x08].map(has) as [
      boolean,
      boolean,
      boolean,
      boolean,
      boolean,
    ];
    if (begins !== first) return null;
    const format = header & 0x07;
    at += 2;
    const lengthBytes = bytes.slice(at, at + (short ? 1 : 4));
    if (lengthBytes.length !== (short ? 1 : 4)) return null;
    const payloadLength = lengthBytes.reduce((length, byte) => length * 256 + byte, 0);
    at += lengthBytes.length;
    const idLength = withId ? (bytes[at++] ?? 0) : 0;
    const end = at + typeLength + idLength + payloadLength;
    if (end > bytes.length) return null;
    const type = String.fromCharCode(...bytes.slice(at, at + typeLength));
    const payload = bytes.slice(end - payloadLength, end);
    at = end;
    if (chunks) {
      if (format !== 6 || typeLength !== 0) return null;
      chunks.parts.push(payload);
    } else if (chunked) {
      chunks = { format, type, parts: [payload] };
    } else {
      found.push({ format, type, payload });
    }
    if (chunks && !chunked) {
      found.push({ format: chunks.format, type: chunks.type, payload: Buffer.concat(chunks.parts) });
      chunks = null;
    }
    if (ends) return chunks === null && at === bytes.length ? found : null;
  }
};

const textOf = (payload: Uint8Array): NdefContent | null => {
  const status = payload[0];
  if (status === undefined) return null;
  const languageLength = status & 0x3f;
  const language = String.fromCharCode(...payload.slice(1, 1 + languageLength));
  const rest = payload.slice(1 + languageLength);
  if ((status & 0x80) === 0) return { kind: 'text', text: utf8.decode(rest), language };
  // UTF-16: big-endian unless a byte order mark says otherwise.
  const little = rest[0] === 0xff && rest[1] === 0xfe;
  return { kind: 'text', text: new TextDecoder(little ? 'utf-16le' : 'utf-16be').decode(rest), language };
};

const uriOf = (payload: Uint8Array): NdefContent | null => {
  const beginning = URI_BEGINNINGS[payload[0] ?? -1];
  return beginning === undefined ? null : { kind: 'uri', uri: beginning + utf8.decode(payload.slice(1)) };
};

const WELL_KNOWN = 1;
const ABSOLUTE_URI = 3;

const contentOf = (record: NdefRecord, depth: number): readonly NdefContent[] => {
  const one = (content: NdefContent | null): readonly NdefContent[] => (content ? [content] : []);
  if (record.format === ABSOLUTE_URI) return [{ kind: 'uri', uri: record.type }];
  if (record.format !== WELL_KNOWN) return [];
  if (record.type === 'T') return one(textOf(record.payload));
  if (record.type === 'U') return one(uriOf(record.payload));
  return record.type === 'Sp' && depth < DEEPEST ? (read(record.payload, depth + 1) ?? []) : [];
};

const read = (bytes: Uint8Array, depth: number): readonly NdefContent[] | null => {
  const all = records(bytes);
  return all && all.flatMap((record) => contentOf(record, depth));
};

/** A chip's memory may still have the message wrapped as type 3 between a length and an end mark (Type 2, TLV). */
const unwrapped = (bytes: Uint8Array): Uint8Array => {
  if (bytes[0] !== 0x03) return bytes;
  const long = bytes[1] === 0xff;
  const length = long ? (bytes[2] ?? 0) * 256 + (bytes[3] ?? 0) : (bytes[1] ?? 0);
  const start = long ? 4 : 2;
  return bytes.slice(start, start + length);
};

/** The text and URI records of an NDEF message, in order; null when the bytes are no whole message. */
export const readNdef = (bytes: Uint8Array): readonly NdefContent[] | null => {
  if (bytes.length === 0 || bytes.length > MOST_BYTES) return null;
  try {
    return read(unwrapped(bytes), 1);
  } catch {
    // Text that is not the UTF-8 it says it is.
    return null;
  }
};

/** Bytes written as hexadecimal (spaces and colons allowed) or base64 (also the URL kind); null for neither. */
export const bytesOf = (text: string): Uint8Array | null => {
  const tight = text.replace(/[\s:]/g, '');
  if (/^(?:[\da-f]{2})+$/i.test(tight)) return Buffer.from(tight, 'hex');
  if (/^[\w+/-]+={0,2}$/.test(tight))
    return Buffer.from(tight.replace(/-/g, '+').replace(/_/g, '/'), 'base64');
  return null;
};
