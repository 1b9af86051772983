/** "sunday", "last sunday", "this friday evening", "next monday", "a week on friday". */
import type { PlainDate } from '../../../terms/dates.js';
import type { SaidDate } from '../../intents.js';
import { perLexicon } from '../../words/lexicon.js';
import { phraseTable } from '../../words/phrases.js';
import { weekStart, weekdayOf, plusDays } from '../calendar.js';
import type { DateParser, Lean } from './parser.js';

type Which = 'last' | 'this' | 'next';

const tables = perLexicon(({ dates }) => ({
  weekdays: new Map(Object.entries(dates.weekdays)),
  which: phraseTable<Which>([
    ...dates.lastWords.map((word) => [word, 'last'] as const),
    ...dates.thisWords.map((word) => [word, 'this'] as const),
    ...dates.nextWords.map((word) => [word, 'next'] as const),
  ]),
  parts: new Set(dates.partsOfDay),
}));

const before = (today: PlainDate, weekday: number): PlainDate =>
  plusDays(today, -(((weekdayOf(today) - weekday + 6) % 7) + 1));
const after = (today: PlainDate, weekday: number): PlainDate =>
  plusDays(today, ((weekday - weekdayOf(today) + 6) % 7) + 1);

/**
 * Said on a Sunday, "sunday" is not today (that is said "today"): it is a week ago for what was
 * made, a week on for what is wanted.
 */
const plain = (today: PlainDate, weekday: number, lean: Lean): PlainDate => {
  const [gone, coming] = [before(today, weekday), after(today, weekday)];
  if (lean === 'past') return gone;
  if (lean === 'future' || lean === 'printed') return coming;
  return (weekdayOf(today) - weekday + 7) % 7 <= 3 ? gone : coming;
};

const pick = (which: Which | null, today: PlainDate, weekday: number, lean: Lean): SaidDate => {
  if (which === 'last') return { day: before(today, weekday) };
  if (which === 'this') {
    const inWeek = plusDays(weekStart(today), (weekday + 6) % 7);
    return {
      day:
        lean === 'past' && inWeek <= today
          ? inWeek
          : plusDays(after(today, weekday), weekday === weekdayOf(today) ? -7 : 0),
    };
  }
  if (which === 'next') {
    const nextWeek = plusDays(weekStart(today), 7 + ((weekday + 6) % 7));
    // "Next Friday" said on a Wednesday: some mean in two days. Say it back.
    return after(today, weekday) < nextWeek ? { day: nextWeek, rough: true } : { day: nextWeek };
  }
  return { day: plain(today, weekday, lean) };
};

export const weekdays: DateParser = (tokens, from, lean, { today, lexicon }) => {
  const { weekdays: days, which, parts } = tables(lexicon);
  const qualifier = days.has(tokens[from] ?? '') ? null : which.longestAt(tokens, from);
  const at = from + (qualifier?.length ?? 0);
  const weekday = days.get(tokens[at] ?? '');
  if (weekday === undefined) return [];
  const said = pick(qualifier?.value ?? null, today, weekday, lean);
  const length = at + 1 - from;
  const withPart = parts.has(tokens[at + 1] ?? '') ? [{ said, length: length + 1 }] : [];
  return [...withPart, { said, length }];
};
