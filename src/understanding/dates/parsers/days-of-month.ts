/** "the twelfth": the month is left to the lean. */
import type { PlainDate } from '../../../terms/dates.js';
import { ordinalAt } from '../../numbers/ordinals.js';
import { byLean, monthOf, monthStart, plainDate, yearOf, plusMonths } from '../calendar.js';
import type { DateParser } from './parser.js';

export const daysOfMonth: DateParser = (tokens, from, lean, { today, lexicon }) => {
  const article = lexicon.dates.the.includes(tokens[from] ?? '');
  const ordinal = ordinalAt(tokens, from + (article ? 1 : 0), lexicon);
  if (!ordinal || ordinal.value < 1 || ordinal.value > 31) return [];
  // "The first thing I ought to eat" is no day.
  const next = tokens[from + ordinal.length + (article ? 1 : 0)] ?? '';
  if (lexicon.dates.things.includes(next)) return [];
  const candidates: PlainDate[] = [];
  for (let months = -2; months <= 2; months += 1) {
    const month = plusMonths(monthStart(today), months);
    const day = plainDate(yearOf(month), monthOf(month), ordinal.value);
    if (day) candidates.push(day);
  }
  // A label whose day alone is read out is fresh, as a rule.
  const day = byLean(candidates, today, lean === 'printed' ? 'future' : lean);
  // Alone, an ordinal is seldom a date ("the second shelf").
  return day
    ? [{ said: { day }, length: ordinal.length + (article ? 1 : 0), weight: article ? 0.6 : 0.3 }]
    : [];
};
