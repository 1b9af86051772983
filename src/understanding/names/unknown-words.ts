/** Names never heard before: "harissa", "cream of mushroom soup". */
import type { DynamicMatch } from '../../grammar/api.js';
import { perLexicon, type Lexicon } from '../words/lexicon.js';
import { joiningWords } from './stems.js';

/** "milk on monday", "stew in the fridge": after a joining word these belong to the sentence. */
const elsewhere = perLexicon(({ dates, places, numbers }) => {
  const words = [dates.weekdays, dates.months, dates.days, dates.holidays, numbers.ordinals].flatMap(
    (table) => Object.keys(table),
  );
  return new Set([...words, ...Object.values(places.kinds).flat()].map((phrase) => phrase.split(' ')[0]!));
});

/** No longer name is taken on trust. */
const longest = 6;
/** Far below a name the household knows, falling with each word: an unknown name is a last resort. */
const firstWeight = 0.2;
const eachMore = 0.6;
/** "rice and beans" is more often two things than one. */
const joined = 0.4;

/** Runs of one to six words from `from` that hold no word of the sentence's frame, shortest first. */
export const unknownWordsAt = (tokens: readonly string[], from: number, lexicon: Lexicon): DynamicMatch[] => {
  const { stops, inside, articles } = joiningWords(lexicon);
  const matches: DynamicMatch[] = [];
  let weight = firstWeight;
  for (let at = from; at < tokens.length && at - from < longest; at += 1) {
    const token = tokens[at]!;
    const next = tokens[at + 1] ?? '';
    const joins = inside.has(token) && at > from && !articles.has(next) && !elsewhere(lexicon).has(next);
    if (joins) {
      weight *= joined;
      continue;
    }
    if (stops.has(token) || articles.has(token) || inside.has(token)) break;
    if (at > from) weight *= eachMore;
    matches.push({ length: at + 1 - from, value: tokens.slice(from, at + 1).join(' '), weight });
  }
  return matches;
};
