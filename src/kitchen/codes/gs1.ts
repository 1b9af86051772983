/**
 * GS1 element strings, as a reader gives them (FNC1 as the GS character) or as printed under the
 * symbol (in parentheses), and GS1 Digital Link URIs, taken apart into application identifiers.
 * Sources: GS1 General Specifications, section 7.8.4 (element strings of predefined length) and
 * section 3 (application identifiers); GS1 Digital Link Standard: URI Syntax, 1.2 and later.
 */

export type Elements = ReadonlyMap<string, string>;

const GS = '\u001d';

/** Data lengths of those that need no FNC1 behind them, by their first two digits. */
const PREDEFINED: Readonly<Record<string, number>> = {
  '00': 18,
  '01': 14,
  '02': 14,
  '03': 14,
  '04': 16,
  ...Object.fromEntries(['11', '12', '13', '14', '15', '16', '17', '18', '19'].map((ai) => [ai, 6])),
  '20': 2,
  ...Object.fromEntries(['31', '32', '33', '34', '35', '36'].map((ai) => [ai, 6])),
  '41': 13,
};

/** How many digits an identifier has, told by its first two. */
const identifierLength = (start: string): number | null => {
  if (/^(?:0[0-4]|1\d|2[0-2]|30|37|9\d)$/.test(start)) return 2;
  if (/^(?:23|24|25|40|41|42)$/.test(start)) return 3;
  if (/^(?:3[1-69]|43|7[0-2]|8[0-2])$/.test(start)) return 4;
  return null;
};

/** Data of a variable-length element is at most this long. */
const LONGEST = 90;

/** Symbology identifiers that say "GS1 data follows" (ISO/IEC 15424): GS1-128, Data Matrix, QR, DataBar. */
const SYMBOLOGY = /^\](?:C1|d2|Q3|e0)/;

const elementsIn = (text: string): Elements | null => {
  const elements = new Map<string, string>();
  let at = text.startsWith(GS) ? 1 : 0;
  while (at < text.length) {
    const start = text.slice(at, at + 2);
    const length = identifierLength(start);
    if (length === null) return null;
    const ai = text.slice(at, at + length);
    if (!/^\d+$/.test(ai) || ai.length !== length) return null;
    at += length;
    const fixed = PREDEFINED[start];
    const stop = text.indexOf(GS, at);
    const until = fixed === undefined ? (stop < 0 ? text.length : stop) : at + fixed;
    const value = text.slice(at, until);
    if (value === '' || value.length > LONGEST || (fixed !== undefined && value.length !== fixed))
      return null;
    elements.set(ai, value);
    at = until + (text[until] === GS ? 1 : 0);
  }
  return elements.size > 0 ? elements : null;
};

const printed = (text: string): Elements | null => {
  const elements = new Map<string, string>();
  for (const [, ai = '', value = ''] of text.matchAll(/\((\d{2,4})\)([^(]+)/g)) {
    const fixed = PREDEFINED[ai.slice(0, 2)];
    if (identifierLength(ai.slice(0, 2)) !== ai.length) return null;
    const data = value.trim();
    if (fixed !== undefined && data.length !== fixed) return null;
    elements.set(ai, data);
  }
  return elements.size > 0 ? elements : null;
};

/**
 * An element string, or null when it is none. Without a symbology identifier or an FNC1 in front it is
 * only taken for one when it begins with a GTIN (01 and fourteen digits) and is longer than that alone.
 */
export const readElementString = (text: string): Elements | null => {
  if (/^\(\d{2,4}\)/.test(text)) return printed(text);
  const marked = SYMBOLOGY.test(text) || text.startsWith(GS);
  const plain = text.replace(SYMBOLOGY, '');
  return marked || /^01\d{14}./.test(plain) ? elementsIn(plain) : null;
};

/** The one key of ours a link may name: a GTIN, by number or, in links from before 2022, by word. */
const PRIMARY = new Map([
  ['01', '01'],
  ['gtin', '01'],
]);
/** Its qualifiers, in the path behind it; the words are those of older links (from memory). */
const QUALIFIERS = new Map([
  ['22', '22'],
  ['10', '10'],
  ['21', '21'],
  ['cpv', '22'],
  ['lot', '10'],
  ['ser', '21'],
]);

/** The elements of a Digital Link URI of a product, or null when it is no such link. Any host may be in it. */
export const readDigitalLink = (uri: URL): Elements | null => {
  if (uri.protocol !== 'https:' && uri.protocol !== 'http:') return null;
  const path = uri.pathname.split('/').filter((part) => part !== '');
  const key = path.findLastIndex(
    (part, index) => PRIMARY.has(part) && /^\d{8,14}$/.test(path[index + 1] ?? ''),
  );
  if (key < 0) return null;
  const elements = new Map<string, string>([['01', (path[key + 1] ?? '').padStart(14, '0')]]);
  const rest = path.slice(key + 2);
  for (let at = 0; at < rest.length; at += 2) {
    const ai = QUALIFIERS.get(rest[at] ?? '');
    const value = rest[at + 1];
    if (ai === undefined || value === undefined) return null;
    elements.set(ai, decodePart(value));
  }
  for (const [name, value] of uri.searchParams) {
    const ai = name === 'exp' ? '17' : name;
    if (/^\d{2,4}$/.test(ai) && identifierLength(ai.slice(0, 2)) === ai.length) elements.set(ai, value);
  }
  return elements;
};

const decodePart = (part: string): string => {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
};
