/** "since monday", "before may", "by friday", "after the ninth", "between monday and thursday". */
import type { SaidDate } from '../../intents.js';
import { perLexicon } from '../../words/lexicon.js';
import { phraseSet } from '../../words/phrases.js';
import { beginning, endless, plusDays } from '../calendar.js';
import type { DateContext, DateParser, DateReading, Lean } from './parser.js';

const tables = perLexicon(({ dates }) => ({
  since: phraseSet(dates.since),
  until: phraseSet(dates.until),
  before: phraseSet(dates.before),
  after: phraseSet(dates.after),
  between: phraseSet(dates.between),
  and: new Set(dates.and),
}));

/** Windows with an edge, over the day parsers given. An open side runs to `beginning` or `endless`. */
export const windowsOver = (days: DateParser): DateParser => {
  const edge = (
    tokens: readonly string[],
    from: number,
    context: DateContext,
    lean: Lean,
    words: ReturnType<typeof phraseSet>,
    window: (said: SaidDate) => SaidDate,
  ): DateReading[] => {
    const word = words.longestAt(tokens, from);
    if (!word) return [];
    return days(tokens, from + word.length, lean, context).map(({ said, length, weight }) => {
      const made = window(said);
      const reading = { said: said.rough ? { ...made, rough: true } : made, length: length + word.length };
      return weight === undefined ? reading : { ...reading, weight };
    });
  };
  return (tokens, from, lean, context) => {
    if (lean !== 'window') return [];
    const { since, until, before, after, between, and } = tables(context.lexicon);
    const readings = [
      ...edge(tokens, from, context, 'past', since, ({ day }) => ({
        day,
        until: day > context.today ? day : context.today,
      })),
      ...edge(tokens, from, context, 'future', until, (said) => ({
        day: beginning,
        until: said.until ?? said.day,
      })),
      ...edge(tokens, from, context, 'near', before, ({ day }) => ({
        day: beginning,
        until: plusDays(day, -1),
      })),
      ...edge(tokens, from, context, 'near', after, (said) => ({
        day: plusDays(said.until ?? said.day, 1),
        until: endless,
      })),
    ];
    const opener = between.longestAt(tokens, from) ?? since.longestAt(tokens, from);
    if (!opener) return readings;
    for (const first of days(tokens, from + opener.length, 'near', context)) {
      const joint = from + opener.length + first.length;
      if (!and.has(tokens[joint] ?? '')) continue;
      for (const second of days(tokens, joint + 1, 'near', context)) {
        const last = second.said.until ?? second.said.day;
        // "Between Saturday and Monday" may straddle today: the second follows the first.
        const end = last < first.said.day ? plusDays(last, 7) : last;
        if (end < first.said.day) continue;
        readings.push({
          said: { day: first.said.day, until: end },
          length: joint + 1 + second.length - from,
        });
      }
    }
    return readings;
  };
};
