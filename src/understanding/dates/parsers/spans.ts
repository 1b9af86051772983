/** "this week", "last month", "over the weekend", "the last two days", "early june", "lately". */
import type { PlainDate } from '../../../terms/dates.js';
import type { SaidDate } from '../../intents.js';
import { perLexicon } from '../../words/lexicon.js';
import { phraseSet, phraseTable } from '../../words/phrases.js';
import {
  monthEnd,
  monthOf,
  monthStart,
  plainDate,
  weekStart,
  weekdayOf,
  yearOf,
  plusDays,
  plusMonths,
} from '../calendar.js';
import { distanceAt, shifted, unitTables } from './distances.js';
import { monthDays } from './month-days.js';
import type { DateContext, DateParser, DateReading, Lean } from './parser.js';

type Which = -1 | 0 | 1;
type Span = 'week' | 'month' | 'year' | 'weekend';

const tables = perLexicon(({ dates }) => ({
  which: phraseTable<Which>([
    ...dates.lastWords.map((word) => [word, -1] as const),
    ...dates.thisWords.map((word) => [word, 0] as const),
    ...dates.nextWords.map((word) => [word, 1] as const),
  ]),
  spans: new Map<string, Span>(Object.entries(dates.spans)),
  during: new Set(dates.during),
  the: new Set(dates.the),
  vague: phraseTable([
    ...Object.entries(dates.lately).map(([word, days]) => [word, -days] as const),
    ...Object.entries(dates.soon).map(([word, days]) => [word, days] as const),
  ]),
  parts: [
    { words: phraseSet(dates.beginning), from: 0, to: 10 },
    { words: phraseSet(dates.middle), from: 10, to: 20 },
    { words: phraseSet(dates.end), from: 20, to: 31 },
  ],
}));

const weekendNear = (today: PlainDate, lean: Lean): PlainDate => {
  const saturday = plusDays(weekStart(today), 5);
  if (lean === 'past') return saturday <= today ? saturday : plusDays(saturday, -7);
  if (lean === 'future' || lean === 'printed') return saturday;
  // Early in the week "the weekend" is the one just gone.
  return (weekdayOf(today) + 6) % 7 <= 1 ? plusDays(saturday, -7) : saturday;
};

const spanOf = (span: Span, which: Which, today: PlainDate): { day: PlainDate; until: PlainDate } => {
  if (span === 'week') {
    const day = plusDays(weekStart(today), 7 * which);
    return { day, until: plusDays(day, 6) };
  }
  if (span === 'weekend') {
    const saturday = plusDays(weekStart(today), 5);
    // On a Saturday or Sunday "last weekend" is the one before.
    const day = plusDays(saturday, 7 * which);
    return { day, until: plusDays(day, 1) };
  }
  if (span === 'month') {
    const day = plusMonths(monthStart(today), which);
    return { day, until: monthEnd(day) };
  }
  const year = yearOf(today) + which;
  return { day: plainDate(year, 1, 1)!, until: plainDate(year, 12, 31)! };
};

/** "the last two days", "next three weeks", "the past week". */
const runAt = (tokens: readonly string[], from: number, context: DateContext): DateReading[] => {
  const { which, the } = tables(context.lexicon);
  const qualifier = which.longestAt(tokens, from);
  if (!qualifier || qualifier.value === 0) return [];
  const at = from + qualifier.length;
  const sign = qualifier.value;
  const distance = distanceAt(tokens, at, context);
  // "the last week" is seven days; "last week" is the calendar's.
  const unit = tokens[at] ?? '';
  const { days, months } = unitTables(context.lexicon);
  const single =
    the.has(tokens[from] ?? '') && (days.has(unit) || months.has(unit))
      ? { quantity: { value: 1, length: 0, rough: false }, unit, length: 1 }
      : null;
  const found = distance ?? single;
  if (!found || found.quantity.value > 1000) return [];
  const end = shifted(context.today, found, sign, context);
  const said: SaidDate =
    sign < 0 ? { day: end.day, until: context.today } : { day: context.today, until: end.day };
  return [
    { said: found.quantity.rough ? { ...said, rough: true } : said, length: qualifier.length + found.length },
  ];
};

const calendarSpanAt = (
  tokens: readonly string[],
  from: number,
  lean: Lean,
  context: DateContext,
): DateReading[] => {
  const { which, spans, the } = tables(context.lexicon);
  const qualifier = which.longestAt(tokens, from);
  if (qualifier) {
    const span = spans.get(tokens[from + qualifier.length] ?? '');
    if (!span) return [];
    return [{ said: spanOf(span, qualifier.value, context.today), length: qualifier.length + 1 }];
  }
  if (the.has(tokens[from] ?? '') && spans.get(tokens[from + 1] ?? '') === 'weekend') {
    const day = weekendNear(context.today, lean);
    return [{ said: { day, until: plusDays(day, 1) }, length: 2 }];
  }
  return [];
};

/** "early june", "the end of may". */
const partOfMonthAt = (
  tokens: readonly string[],
  from: number,
  lean: Lean,
  context: DateContext,
): DateReading[] => {
  for (const { words, from: first, to } of tables(context.lexicon).parts) {
    const hit = words.longestAt(tokens, from);
    if (!hit) continue;
    const month = monthDays(tokens, from + hit.length, lean, context).find(({ said }) => said.monthOnly);
    if (!month) continue;
    const day = month.said.day;
    const until = plainDate(yearOf(day), monthOf(day), to) ?? monthEnd(day);
    return [{ said: { day: plusDays(day, first), until, rough: true }, length: hit.length + month.length }];
  }
  return [];
};

const vagueAt = (tokens: readonly string[], from: number, { today, lexicon }: DateContext): DateReading[] => {
  const hit = tables(lexicon).vague.longestAt(tokens, from);
  if (!hit) return [];
  const other = plusDays(today, hit.value);
  const said =
    hit.value < 0 ? { day: other, until: today, rough: true } : { day: today, until: other, rough: true };
  return [{ said, length: hit.length }];
};

/** Spans, with or without "in", "over", "during" before them. */
export const spans: DateParser = (tokens, from, lean, context) => {
  const at = tables(context.lexicon).during.has(tokens[from] ?? '') ? from + 1 : from;
  const read = [
    ...runAt(tokens, at, context),
    ...calendarSpanAt(tokens, at, lean, context),
    ...partOfMonthAt(tokens, at, lean, context),
    ...(at > from ? monthDays(tokens, at, lean, context).filter(({ said }) => said.monthOnly) : []),
    ...(at > from ? [] : vagueAt(tokens, at, context)),
  ];
  return at > from ? read.map((reading) => ({ ...reading, length: reading.length + 1, weight: 1 })) : read;
};
