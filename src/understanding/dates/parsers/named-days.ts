/** "today", "last night", "the day before yesterday", "the other day". */
import { plusDays } from '../calendar.js';
import { perLexicon } from '../../words/lexicon.js';
import { phraseTable } from '../../words/phrases.js';
import type { DateParser } from './parser.js';

const tables = perLexicon(({ dates }) => phraseTable(Object.entries(dates.days)));

export const namedDays: DateParser = (tokens, from, _lean, { today, lexicon }) =>
  tables(lexicon)
    .allAt(tokens, from)
    .map(({ length, value }) =>
      typeof value === 'number'
        ? { said: { day: plusDays(today, value) }, length }
        : { said: { day: plusDays(today, value[0]), rough: true }, length },
    );
