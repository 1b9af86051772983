/** The date rules that a grammar may refer to. See the table in `../names/api.ts`. */
import { LRUCache } from 'lru-cache';
import type { DynamicMatch, DynamicRules } from '../../grammar/api.js';
import { today, type Clock } from '../../terms/dates.js';
import { perLexicon, type Lexicon } from '../words/lexicon.js';
import { noMatches, rememberingRule } from '../words/rule.js';
import { daysOfMonth } from './parsers/days-of-month.js';
import { distances } from './parsers/distances.js';
import { holidays } from './parsers/holidays.js';
import { monthDays } from './parsers/month-days.js';
import { namedDays } from './parsers/named-days.js';
import { offsets } from './parsers/offsets.js';
import type { DateContext, DateParser, DateReading, Lean } from './parsers/parser.js';
import { spans } from './parsers/spans.js';
import { weekdays } from './parsers/weekdays.js';
import { windowsOver } from './parsers/windows.js';
import { mayStart } from './starts.js';

/** In order of preference: of readings of one length the first stands. */
const dayParsers: readonly DateParser[] = [
  namedDays,
  weekdays,
  monthDays,
  holidays,
  offsets,
  distances,
  spans,
  daysOfMonth,
];

const all =
  (parsers: readonly DateParser[]): DateParser =>
  (tokens, from, lean, context) => {
    const byLength = new Map<number, DateReading>();
    for (const parser of parsers) {
      for (const reading of parser(tokens, from, lean, context)) {
        if (!byLength.has(reading.length)) byLength.set(reading.length, reading);
      }
    }
    return [...byLength.values()];
  };

const day = all(dayParsers);
const dayOrWindow = all([day, windowsOver(day)]);

/** "on monday", "on the ninth of june": one day may take its preposition along. */
const withOn =
  (read: DateParser): DateParser =>
  (tokens, from, lean, context) => {
    const readings = read(tokens, from, lean, context);
    if (!context.lexicon.dates.on.includes(tokens[from] ?? '')) return readings;
    const days = day(tokens, from + 1, lean, context).filter(({ said }) => said.until === undefined);
    return [...readings, ...days.map((reading) => ({ ...reading, length: reading.length + 1 }))];
  };
const readers = { day: withOn(day), window: withOn(dayOrWindow) };

/** Words without which a sentence holds no date: most sentences are done at one look. */
const triggers = perLexicon(({ dates, numbers }) => {
  const words = new Set<string>();
  const last = (phrases: Iterable<string>): void => {
    for (const phrase of phrases) words.add(phrase.split(' ').at(-1)!);
  };
  for (const table of [dates.days, dates.weekdays, dates.months, dates.shortMonths, dates.dayUnits])
    last(Object.keys(table));
  for (const table of [dates.monthUnits, dates.hourUnits, dates.lately, dates.soon, dates.holidays])
    last(Object.keys(table));
  last(Object.keys(numbers.ordinals));
  return words;
});

const hasTrigger = perLexicon((lexicon) => {
  const words = triggers(lexicon);
  const seen = new WeakMap<readonly string[], boolean>();
  return (tokens: readonly string[]): boolean => {
    const known = seen.get(tokens);
    if (known !== undefined) return known;
    const found = tokens.some(
      (token) => words.has(token) || /^\d+[-/.]\d/.test(token) || /^\d{1,2}(st|nd|rd|th)$/.test(token),
    );
    seen.set(tokens, found);
    return found;
  };
});

/** True where the locale writes the day before the month. */
const dayFirstIn = (locale: string): boolean => {
  const parts = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'numeric' }).formatToParts(0);
  return parts.find(({ type }) => type === 'day' || type === 'month')?.type === 'day';
};
const orders = new Map<string, boolean>();

const matchOf = ({ said, length, weight }: DateReading): DynamicMatch =>
  weight === undefined ? { length, value: { ...said } } : { length, value: { ...said }, weight };

/** No date is said in more words. */
const longest = 16;

/**
 * Readings by the day they were read on and the words from their place on: the guesses of a
 * recogniser, and the sentences of a day, mostly share their ends.
 */
const remembered = perLexicon(() => new LRUCache<string, readonly DynamicMatch[]>({ max: 5000 }));

/**
 * Date rules as of `clock.now`, in the household's zone. `locale` (BCP 47) decides what 3/4 means.
 * Cheap: made anew for each turn.
 */
export const dateRules = (lexicon: Lexicon, clock: Clock, locale: string): DynamicRules => {
  let dayFirst = orders.get(locale);
  if (dayFirst === undefined) orders.set(locale, (dayFirst = dayFirstIn(locale)));
  const context: DateContext = { ...clock, today: today(clock), dayFirst, lexicon };
  const triggered = hasTrigger(lexicon);
  const startable = mayStart(lexicon);
  const memory = remembered(lexicon);
  const rule = (lean: Lean) =>
    rememberingRule((tokens, from) => {
      if (!startable(tokens, from) || !triggered(tokens)) return noMatches;
      const words = tokens.slice(from, from + longest);
      const read = (): readonly DynamicMatch[] =>
        (lean === 'window' ? readers.window : readers.day)(words, 0, lean, context).map(matchOf);
      // "Three hours ago" depends on the hour.
      if (words.some((word) => Object.hasOwn(lexicon.dates.hourUnits, word))) return read();
      const key = `${lean} ${context.today} ${dayFirst ? 'd' : 'm'} ${words.join(' ')}`;
      let found = memory.get(key);
      if (found === undefined) memory.set(key, (found = read()));
      return found;
    });
  return new Map([
    ['builtin:grammar/date', rule('near')],
    ['builtin:grammar/date?lean=past', rule('past')],
    ['builtin:grammar/date?lean=future', rule('future')],
    ['builtin:grammar/date?lean=printed', rule('printed')],
    ['builtin:grammar/date?lean=window', rule('window')],
  ]);
};
