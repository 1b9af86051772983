/** "two weeks ago", "a month ago", "in three days", "two days from now", "three hours ago". */
import { dayOf, type PlainDate } from '../../../terms/dates.js';
import { quantityAt, type Quantity } from '../../numbers/quantities.js';
import { plusDays, plusMonths } from '../calendar.js';
import { perLexicon } from '../../words/lexicon.js';
import { phraseSet } from '../../words/phrases.js';
import type { DateContext, DateParser } from './parser.js';

export const unitTables = perLexicon(({ dates }) => ({
  days: new Map(Object.entries(dates.dayUnits)),
  months: new Map(Object.entries(dates.monthUnits)),
  minutes: new Map(Object.entries(dates.hourUnits)),
  ago: new Set(dates.ago),
  agoBefore: new Set(dates.agoBefore),
  fromNow: phraseSet(dates.fromNow),
  in: new Set(dates.in),
}));

export interface Distance {
  readonly quantity: Quantity;
  readonly unit: string;
  readonly length: number;
}

/** "two weeks", "a month", "couple of days". */
export const distanceAt = (
  tokens: readonly string[],
  from: number,
  context: DateContext,
): Distance | null => {
  const { days, months, minutes } = unitTables(context.lexicon);
  const quantity = quantityAt(tokens, from, context.lexicon);
  const unit = quantity && tokens[from + quantity.length];
  if (!unit || !(days.has(unit) || months.has(unit) || minutes.has(unit))) return null;
  return { quantity, unit, length: quantity.length + 1 };
};

/** `sign` -1 goes back. Months and years, and vague counts, make a day rough. */
export const shifted = (
  day: PlainDate,
  { quantity, unit }: Distance,
  sign: 1 | -1,
  context: DateContext,
): { day: PlainDate; rough?: boolean } => {
  const { days, months, minutes } = unitTables(context.lexicon);
  const size = days.get(unit);
  if (size !== undefined) {
    const moved = plusDays(day, sign * Math.round(quantity.value * size));
    return quantity.rough || !Number.isInteger(quantity.value * size)
      ? { day: moved, rough: true }
      : { day: moved };
  }
  const inMonths = months.get(unit);
  if (inMonths !== undefined) {
    const whole = quantity.value * inMonths;
    const rest = Math.round((whole - Math.trunc(whole)) * 30);
    return { day: plusDays(plusMonths(day, sign * Math.trunc(whole)), sign * rest), rough: true };
  }
  const milliseconds = quantity.value * minutes.get(unit)! * 60_000;
  const then = new Date(new Date(context.now).getTime() + sign * milliseconds).toISOString();
  const there = dayOf(then, context.timeZone);
  return quantity.rough ? { day: there, rough: true } : { day: there };
};

/** A hundred years of days: more is a mishearing. */
const reasonable = ({ quantity, unit }: Distance, context: DateContext): boolean =>
  quantity.value * (unitTables(context.lexicon).months.has(unit) ? 30 : 1) < 36_500;

export const distances: DateParser = (tokens, from, lean, context) => {
  const { ago, agoBefore, fromNow, in: inWords } = unitTables(context.lexicon);
  if (agoBefore.has(tokens[from] ?? '')) {
    const gone = distanceAt(tokens, from + 1, context);
    if (!gone || !reasonable(gone, context)) return [];
    return [{ said: shifted(context.today, gone, -1, context), length: gone.length + 1 }];
  }
  const ahead = inWords.has(tokens[from] ?? '');
  const distance = distanceAt(tokens, from + (ahead ? 1 : 0), context);
  if (!distance || !reasonable(distance, context)) return [];
  if (ahead) {
    const said = shifted(context.today, distance, 1, context);
    return lean === 'past' ? [] : [{ said, length: distance.length + 1 }];
  }
  const end = from + distance.length;
  if (ago.has(tokens[end] ?? '')) {
    return [{ said: shifted(context.today, distance, -1, context), length: distance.length + 1 }];
  }
  const on = fromNow.longestAt(tokens, end);
  return on
    ? [{ said: shifted(context.today, distance, 1, context), length: distance.length + on.length }]
    : [];
};
