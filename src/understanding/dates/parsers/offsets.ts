/** "the week before easter", "two days after christmas", "the sunday before last", "the day after the ninth". */
import { perLexicon } from '../../words/lexicon.js';
import { phraseTable } from '../../words/phrases.js';
import { weekdayOf, plusDays } from '../calendar.js';
import { distanceAt, shifted, unitTables } from './distances.js';
import { holidays } from './holidays.js';
import { monthDays } from './month-days.js';
import { namedDays } from './named-days.js';
import type { DateParser, DateReading } from './parser.js';
import { weekdays } from './weekdays.js';

const tables = perLexicon(({ dates }) => ({
  offsets: phraseTable(Object.entries(dates.offsetWords)),
  weekdays: new Map(Object.entries(dates.weekdays)),
  the: new Set(dates.the),
  last: new Set(dates.lastWords),
}));

/** What a distance can be counted from. */
const anchors: readonly DateParser[] = [holidays, namedDays, weekdays, monthDays];

export const offsets: DateParser = (tokens, from, lean, context) => {
  const { offsets: words, weekdays: days, the, last } = tables(context.lexicon);
  const article = the.has(tokens[from] ?? '') ? 1 : 0;
  const at = from + article;
  const weekday = days.get(tokens[at] ?? '');
  const single = unitTables(context.lexicon).days.has(tokens[at] ?? '') && article === 1;
  const distance = weekday === undefined && !single ? distanceAt(tokens, from, context) : null;
  const wordAt = distance ? from + distance.length : at + 1;
  if (weekday === undefined && !single && !distance) return [];
  const offset = words.longestAt(tokens, wordAt);
  if (!offset) return [];
  const sign = offset.value < 0 ? -1 : 1;
  const anchorAt = wordAt + offset.length;
  if (weekday !== undefined && sign < 0 && last.has(tokens[anchorAt] ?? '')) {
    const before = ((weekdayOf(context.today) - weekday + 6) % 7) + 1;
    return [{ said: { day: plusDays(context.today, -before - 7) }, length: anchorAt + 1 - from }];
  }
  return anchors.flatMap((anchor) =>
    anchor(tokens, anchorAt, lean, context).map((read): DateReading => {
      const base = sign > 0 ? (read.said.until ?? read.said.day) : read.said.day;
      const length = anchorAt + read.length - from;
      if (weekday !== undefined) {
        const gap =
          sign < 0 ? ((weekdayOf(base) - weekday + 6) % 7) + 1 : ((weekday - weekdayOf(base) + 6) % 7) + 1;
        return { said: { day: plusDays(base, sign * gap) }, length };
      }
      if (distance) return { said: shifted(base, distance, sign, context), length };
      const size = unitTables(context.lexicon).days.get(tokens[at]!)!;
      const far = plusDays(base, sign * size);
      if (size === 1) return { said: { day: far }, length };
      // "The week before" is those seven days.
      const near = plusDays(base, sign);
      return {
        said: sign < 0 ? { day: far, until: near, rough: true } : { day: near, until: far, rough: true },
        length,
      };
    }),
  );
};
