/** Dates as said, turned into what a record holds. */
import type { DateKind } from '../../kitchen/model.js';
import type { PlainDate } from '../../terms/dates.js';
import type { SaidDate, Slots } from '../../understanding/intents.js';

export type Dates = Partial<Record<DateKind, PlainDate | null>>;

/** A span or a month that was printed ends it: best before May is good through May. */
const dayIn = (kind: string, said: SaidDate): PlainDate =>
  (kind === 'bestBefore' || kind === 'useBy') && said.until ? said.until : said.day;

/** Null for a date said to be unknown. */
export const saidDates = (dates: Slots['dates']): Dates =>
  Object.fromEntries(
    Object.entries(dates ?? {}).map(([kind, said]) => [
      kind,
      said === 'unknown' || !said ? null : dayIn(kind, said),
    ]),
  );
