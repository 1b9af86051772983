/**
 * Days with their month: "the ninth of june", "june ninth twenty twenty six", "may twenty twenty
 * seven", "03/15", "2027-05-14". The words are put into figures; chrono-node reads those, in the
 * order of the locale; the year, when unsaid, is left to the lean.
 */
import { Chrono, en } from 'chrono-node';
import { LRUCache } from 'lru-cache';
import type { PlainDate } from '../../../terms/dates.js';
import { cardinalAt, type Reading } from '../../numbers/cardinals.js';
import { ordinalAt } from '../../numbers/ordinals.js';
import { perLexicon, type Lexicon } from '../../words/lexicon.js';
import { byLean, monthEnd, plainDate, yearOf } from '../calendar.js';
import type { DateContext, DateParser, DateReading, Lean } from './parser.js';

interface Calendar {
  readonly year: number | null;
  readonly month: number;
  readonly day: number | null;
}

const readers = {
  dayFirst: new Chrono(en.configuration.createConfiguration(true, true)),
  monthFirst: new Chrono(en.configuration.createConfiguration(true, false)),
};
// Only certain parts are used, so any reference day does: it is never seen in a result.
const reference = new Date(2024, 0, 1, 12);
const monthNames = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];
const seen = new LRUCache<string, { calendar: Calendar | null }>({ max: 2000 });

/** The figures of a date read whole, or null when they are no date. */
const readFigures = (text: string, dayFirst: boolean): Calendar | null => {
  const key = `${dayFirst ? 'd' : 'm'} ${text}`;
  const known = seen.get(key);
  if (known) return known.calendar;
  const [result] = (dayFirst ? readers.dayFirst : readers.monthFirst).parse(text, reference);
  let calendar: Calendar | null = null;
  if (
    result?.index === 0 &&
    result.text.length === text.length &&
    result.start.isCertain('month') &&
    !result.end
  ) {
    const part = (name: 'year' | 'day'): number | null =>
      result.start.isCertain(name) ? result.start.get(name) : null;
    calendar = { year: part('year'), month: result.start.get('month')!, day: part('day') };
  }
  seen.set(key, { calendar });
  return calendar;
};

const tables = perLexicon(({ dates }) => ({
  months: new Map([...Object.entries(dates.months), ...Object.entries(dates.shortMonths)]),
  of: new Set(dates.of),
  the: new Set(dates.the),
}));

/** "twenty twenty seven", "two thousand twenty seven", "nineteen ninety nine". */
export const yearAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Reading | null => {
  const head = cardinalAt(tokens, from, lexicon);
  if (!head || !Number.isInteger(head.value)) return null;
  if (head.value >= 1990 && head.value < 2100) return head;
  if (head.value !== 19 && head.value !== 20) return null;
  const tail = cardinalAt(tokens, from + head.length, lexicon);
  if (!tail || !Number.isInteger(tail.value) || tail.value < 10 || tail.value > 99) return null;
  return { value: head.value * 100 + tail.value, length: head.length + tail.length };
};

/** "june ninth, twenty six": two figures of a year, after a day. */
const shortYearAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Reading | null => {
  const read = cardinalAt(tokens, from, lexicon);
  return read && read.length === 2 && read.value > 20 && read.value < 50
    ? { value: 2000 + read.value, length: 2 }
    : null;
};

const dayAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Reading | null => {
  const read = ordinalAt(tokens, from, lexicon) ?? cardinalAt(tokens, from, lexicon);
  return read && Number.isInteger(read.value) && read.value >= 1 && read.value <= 31 ? read : null;
};

interface Figures {
  readonly text: string;
  readonly length: number;
  /** A month without a day needs no reading. */
  readonly month?: Calendar;
}

const withYear = (tokens: readonly string[], from: number, figures: Figures, lexicon: Lexicon): Figures[] => {
  const next = from + figures.length;
  const year = yearAt(tokens, next, lexicon) ?? shortYearAt(tokens, next, lexicon);
  return year
    ? [{ text: `${figures.text} ${year.value}`, length: figures.length + year.length }, figures]
    : [figures];
};

/** What is said from `from` on, in figures, longest first. */
const figuresAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Figures[] => {
  const { months, of, the } = tables(lexicon);
  const token = tokens[from] ?? '';
  if (/^\d{1,4}[-/.]\d/.test(token)) return [{ text: token.replaceAll('.', '/'), length: 1 }];
  const month = months.get(token);
  if (month !== undefined) {
    const name = monthNames[month - 1]!;
    const year = yearAt(tokens, from + 1, lexicon);
    const alone = (of: number | null): Calendar => ({ year: of, month, day: null });
    const whole = year
      ? [{ text: `${name} ${year.value}`, length: 1 + year.length, month: alone(year.value) }]
      : [];
    const dayFrom = from + (the.has(tokens[from + 1] ?? '') ? 2 : 1);
    const day = dayAt(tokens, dayFrom, lexicon);
    const dated = day
      ? withYear(tokens, from, { text: `${name} ${day.value}`, length: dayFrom + day.length - from }, lexicon)
      : [];
    return [...whole, ...dated, { text: name, length: 1, month: alone(null) }];
  }
  let at = the.has(token) ? from + 1 : from;
  const day = dayAt(tokens, at, lexicon);
  if (!day) return [];
  at += day.length;
  if (of.has(tokens[at] ?? '')) at += 1;
  const after = months.get(tokens[at] ?? '');
  if (after === undefined) return [];
  return withYear(
    tokens,
    from,
    { text: `${day.value} ${monthNames[after - 1]!}`, length: at + 1 - from },
    lexicon,
  );
};

/** The day in the year that the lean asks for; a 29 February waits for its leap year. */
const yearByLean = ({ month, day }: Calendar, lean: Lean, today: PlainDate): PlainDate | null => {
  // Only a 29 February has to look further than the years beside this one.
  const around = month === 2 && day === 29 ? 8 : 1;
  const years = Array.from({ length: 2 * around + 1 }, (_, at) => yearOf(today) - around + at);
  const days = years.map((year) => plainDate(year, month, day ?? 1)).filter((found) => found !== null);
  if (day !== null) return byLean(days, today, lean);
  // A month is past once it has begun, and to come until it has ended.
  const current = days.find((found) => found <= today && today <= monthEnd(found));
  return current ?? byLean(days, today, lean);
};

/** "05/2027"; and "05/27", which cannot be a day where days come first, is May 2027 on a label. */
const monthAndYear = (text: string, { dayFirst }: DateContext): Calendar | null => {
  const whole = /^(\d{1,2})[-/](20\d{2})$/.exec(text);
  if (whole && Number(whole[1]) >= 1 && Number(whole[1]) <= 12) {
    return { month: Number(whole[1]), year: Number(whole[2]), day: null };
  }
  const parts = /^(\d{1,2})[-/](\d{2})$/.exec(text);
  if (!parts) return null;
  const [month, year] = [Number(parts[1]), Number(parts[2])];
  const notADay = dayFirst ? year > 12 : year > 31;
  return notADay && month >= 1 && month <= 12 ? { month, year: 2000 + year, day: null } : null;
};

export const monthDays: DateParser = (tokens, from, lean, context) => {
  const readings: DateReading[] = [];
  for (const { text, length, month } of figuresAt(tokens, from, context.lexicon)) {
    const calendar =
      month ??
      (lean === 'printed' ? monthAndYear(text, context) : null) ??
      readFigures(text, context.dayFirst);
    if (!calendar) continue;
    const day =
      calendar.year === null
        ? yearByLean(calendar, lean, context.today)
        : plainDate(calendar.year, calendar.month, calendar.day ?? 1);
    if (!day) continue;
    readings.push({
      said: calendar.day === null ? { day, until: monthEnd(day), monthOnly: true } : { day },
      length,
      // "may" and "march" are words too.
      weight: text.length < 6 && month ? 0.5 : 1,
    });
  }
  return readings;
};
