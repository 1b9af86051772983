/** Which words can begin a date: most places of a sentence are done at one look. */
import { perLexicon } from '../words/lexicon.js';

const firstWords = (phrases: Iterable<string>): string[] =>
  [...phrases].map((phrase) => phrase.split(' ')[0]!);

const tables = perLexicon(({ dates, numbers }) => {
  const lists = [
    dates.lastWords,
    dates.thisWords,
    dates.nextWords,
    dates.in,
    dates.on,
    dates.agoBefore,
    dates.during,
    dates.since,
    dates.until,
  ];
  const edges = [
    dates.before,
    dates.after,
    dates.between,
    dates.beginning,
    dates.middle,
    dates.end,
    numbers.rough,
  ];
  const named = [
    dates.days,
    dates.weekdays,
    dates.months,
    dates.shortMonths,
    dates.holidays,
    dates.lately,
    dates.soon,
  ];
  const counted = [
    numbers.words,
    numbers.ordinals,
    numbers.ordinalTens,
    numbers.ordinalPhrases,
    numbers.fractions,
  ];
  const starts = new Set<string>(numbers.point);
  for (const list of [...lists, ...edges]) for (const word of firstWords(list)) starts.add(word);
  for (const table of [...named, ...counted, numbers.groups, numbers.vague]) {
    for (const word of firstWords(Object.keys(table))) starts.add(word);
  }
  const articles = new Set([...dates.the, ...numbers.one]);
  const units = [dates.dayUnits, dates.monthUnits, dates.hourUnits, dates.spans, numbers.scales];
  const afterArticle = new Set([...starts, ...units.flatMap((table) => Object.keys(table))]);
  for (const article of articles) starts.delete(article);
  // "the day before yesterday" starts with an article of its own.
  for (const phrase of [...lists.flat(), ...edges.flat(), ...named.flatMap((table) => Object.keys(table))]) {
    const [first, second] = phrase.split(' ');
    if (articles.has(first!) && second !== undefined) afterArticle.add(second);
  }
  return { starts, articles, afterArticle };
});

const written = /^\d/;

/** False when no date can start at `from`. */
export const mayStart = perLexicon((lexicon) => {
  const { starts, articles, afterArticle } = tables(lexicon);
  return (tokens: readonly string[], from: number): boolean => {
    const token = tokens[from] ?? '';
    if (starts.has(token) || written.test(token)) return true;
    const next = tokens[from + 1] ?? '';
    return articles.has(token) && (afterArticle.has(next) || written.test(next));
  };
});
