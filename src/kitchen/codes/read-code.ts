/** What a machine-readable code on a marker or a packet says. */
import { today, type Clock, type PlainDate } from '../../terms/dates.js';
import type { DateKind } from '../model.js';
import { gtin14, isInStore, looksLikeGtin } from './gtin.js';
import { datesAmong, type Gs1Date, type Gs1DateKind } from './gs1-dates.js';
import { readDigitalLink, readElementString, type Elements } from './gs1.js';
import { bytesOf, readNdef } from './ndef.js';

/** Why a code that looks like one of a standard could not be read as that. */
export type CodeFault = 'check-digit' | 'no-such-day' | 'broken-record' | 'nothing-on-it';

export type Code =
  /** A household's own words: what is written on a marker, a QR text. */
  | { readonly kind: 'words'; readonly text: string }
  /** A URI that names no product. */
  | { readonly kind: 'link'; readonly uri: string }
  | Product
  | { readonly kind: 'faulty'; readonly fault: CodeFault; readonly text: string };

export interface Product {
  readonly kind: 'product';
  /** Fourteen digits. */
  readonly gtin: string;
  /** Numbered by one shop for itself: names no product elsewhere. */
  readonly inStore: boolean;
  readonly dates: Readonly<Partial<Record<Gs1DateKind, Gs1Date>>>;
  readonly lot: string | null;
  readonly serial: string | null;
}

/** Longer than any code a reader gives. */
const LONGEST = 10_000;

const productOf = (elements: Elements, clock: Clock, text: string): Code => {
  const gtin = gtin14(elements.get('01') ?? elements.get('02') ?? '');
  if (gtin === null) return { kind: 'faulty', fault: 'check-digit', text };
  const thisYear = Number(today(clock).slice(0, 4));
  const dates: Partial<Record<Gs1DateKind, Gs1Date>> = {};
  for (const { kind, ...date } of datesAmong(elements, thisYear)) {
    if ('problem' in date) return { kind: 'faulty', fault: 'no-such-day', text };
    dates[kind] = date;
  }
  return {
    kind: 'product',
    gtin,
    inStore: isInStore(gtin),
    dates,
    lot: elements.get('10') ?? null,
    serial: elements.get('21') ?? null,
  };
};

const uriIn = (text: string): URL | null =>
  /^[a-z][a-z\d+.-]*:\S+$/i.test(text) && URL.canParse(text) ? new URL(text) : null;

const readPlain = (text: string, clock: Clock): Code => {
  const elements = readElementString(text);
  if (elements && (elements.has('01') || elements.has('02'))) return productOf(elements, clock, text);
  const digits = text.replace(/[\s-]/g, '');
  if (looksLikeGtin(digits)) return productOf(new Map([['01', digits]]), clock, text);
  const uri = uriIn(text);
  const linked = uri && readDigitalLink(uri);
  if (linked) return productOf(linked, clock, text);
  return uri ? { kind: 'link', uri: uri.href } : { kind: 'words', text };
};

/**
 * Reads a code: the household's own words, a link, GTIN digits, a GS1 element string or Digital Link,
 * or the bytes of an NFC chip after `ndef:` (hexadecimal or base64), of which the first text or URI
 * record is taken. Whatever fits no standard is words; nothing throws.
 */
export const readCode = (given: string, clock: Clock): Code => {
  const text = given.trim().slice(0, LONGEST);
  const chip = /^ndef:(.*)$/is.exec(text)?.[1];
  if (chip === undefined) return readPlain(text, clock);
  const bytes = bytesOf(chip);
  const contents = bytes && readNdef(bytes);
  if (!contents) return { kind: 'faulty', fault: 'broken-record', text };
  const [first] = contents;
  if (!first) return { kind: 'faulty', fault: 'nothing-on-it', text };
  return readPlain(first.kind === 'text' ? first.text.trim() : first.uri, clock);
};

/** Dates of a product's code as an item keeps them. A sell-by date is the shop's business and is left out. */
export const itemDatesOf = (product: Product): Readonly<Partial<Record<DateKind, PlainDate>>> => {
  const { production, bestBefore, expiry } = product.dates;
  return {
    ...(production ? { made: production.day } : {}),
    ...(bestBefore ? { bestBefore: bestBefore.day } : {}),
    ...(expiry ? { useBy: expiry.day } : {}),
  };
};

/** The form in which two readings of the same code are equal: `gtin:` and fourteen digits, or the words. */
export const codeKey = (code: Code): string => {
  if (code.kind === 'product') return `gtin:${code.gtin}`;
  if (code.kind === 'link') return `link:${code.uri}`;
  return `words:${code.text.normalize('NFKC').toLowerCase().replace(/\s+/g, ' ').trim()}`;
};
