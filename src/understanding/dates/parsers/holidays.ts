/** "easter", "last christmas", "thanksgiving". Easter by the Gregorian reckoning (library date-easter). */
import { gregorianEaster } from 'date-easter';
import type { PlainDate } from '../../../terms/dates.js';
import { perLexicon, type Holiday } from '../../words/lexicon.js';
import { phraseTable } from '../../words/phrases.js';
import { byLean, monthEnd, plainDate, weekdayOf, yearOf, plusDays } from '../calendar.js';
import type { DateParser, Lean } from './parser.js';

const tables = perLexicon(({ dates }) => ({
  names: phraseTable(Object.entries(dates.holidays)),
  which: phraseTable<Lean>([
    ...dates.lastWords.map((word) => [word, 'past'] as const),
    ...dates.thisWords.map((word) => [word, 'near'] as const),
    ...dates.nextWords.map((word) => [word, 'future'] as const),
  ]),
}));

export const holidayIn = (year: number, holiday: Holiday): PlainDate | null => {
  if ('day' in holiday) return plainDate(year, Number(holiday.day.slice(0, 2)), Number(holiday.day.slice(3)));
  if ('easter' in holiday) {
    const { month, day } = gregorianEaster(year);
    const sunday = plainDate(year, month, day);
    return sunday && plusDays(sunday, holiday.easter);
  }
  const first = plainDate(year, holiday.month, 1)!;
  if (holiday.nth > 0)
    return plusDays(first, ((holiday.weekday - weekdayOf(first) + 7) % 7) + 7 * (holiday.nth - 1));
  const last = monthEnd(first);
  return plusDays(last, -((weekdayOf(last) - holiday.weekday + 7) % 7));
};

export const holidays: DateParser = (tokens, from, lean, { today, lexicon }) => {
  const { names, which } = tables(lexicon);
  const plain = names.longestAt(tokens, from);
  const qualifier = plain ? null : which.longestAt(tokens, from);
  const name = plain ?? (qualifier && names.longestAt(tokens, from + qualifier.length));
  if (!name) return [];
  const days = [-1, 0, 1]
    .map((years) => holidayIn(yearOf(today) + years, name.value))
    .filter((day) => day !== null);
  // "Last christmas" is not today's, even on the day itself.
  const others =
    qualifier?.value === 'past' || qualifier?.value === 'future' ? days.filter((day) => day !== today) : days;
  const day = byLean(others, today, qualifier?.value ?? lean);
  return day ? [{ said: { day }, length: name.length + (qualifier?.length ?? 0) }] : [];
};
