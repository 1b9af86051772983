/**
 * Somebody nobody has on record, who made or brought something: "Janet made me a fish pie", "from our Sheila",
 * "my neighbour's been round with a trifle". A word is somebody only where such a frame says so, and it names
 * nothing to eat; of people on record the index of names knows.
 */
import type { DynamicRules } from '../../grammar/api.js';
import { neverNames } from '../gate/names.js';
import type { Offer } from './api.js';
import { firstDayWords, type FirstDayWords } from './first-day/words.js';
import type { MovesLexicon } from './lexicon.js';

const cost = 0.3;
/** A food as it is written, and not by its sound. */
const asWritten = 0.65;
/** Heard nearly so often as part of a name of hers, it is that. */
const nearlyHers = 0.75;

interface Words {
  readonly tokens: readonly string[];
  readonly rules: DynamicRules;
  readonly lexicon: MovesLexicon;
  readonly people: FirstDayWords;
}

const classesAt = ({ lexicon, tokens }: Words, at: number): ReadonlySet<string> | undefined =>
  lexicon.phrases.longestAt(tokens, at)?.value;

/** Any phrase of one of these that ends right before this word. */
const endsIn = ({ lexicon, tokens }: Words, to: number, ...names: readonly string[]): boolean => {
  for (let from = Math.max(0, to - 4); from < to; from += 1) {
    const hit = lexicon.phrases.longestAt(tokens, from);
    if (hit && from + hit.length === to && names.some((name) => hit.value.has(name))) return true;
  }
  return false;
};

const fitOf = (value: unknown): number =>
  (value as { candidates?: readonly { fit: number }[] } | null)?.candidates?.[0]?.fit ?? 0;

/** No word of talk, of food, of places, days or figures, and no everyday one. */
const mayName = (words: Words, at: number, word = words.tokens[at]): boolean => {
  const { rules, lexicon, people } = words;
  if (word === undefined || word.length < 2 || !/^\p{L}[\p{L}'-]*$/u.test(word)) return false;
  if (lexicon.isOrdinary(word) || lexicon.isOrdinary(word.replace(/s$/, ''))) return false;
  if (neverNames(word, lexicon.language) || people.chatter.has(word)) return false;
  const one = [word];
  if (lexicon.phrases.longestAt(one, 0)) return false;
  const matches = (uri: string) => rules.get(uri)?.matchesAt(one, 0) ?? [];
  return (
    matches('kitchen:food').every(({ weight = 1 }) => weight < asWritten) &&
    matches('kitchen:item').every(({ value }) => fitOf(value) < nearlyHers) &&
    ['kitchen:goods', 'kitchen:place', 'builtin:grammar/number', 'builtin:grammar/amount'].every(
      (uri) => matches(uri).length === 0,
    ) &&
    matches('builtin:grammar/date?lean=past').length === 0
  );
};

const brings = ['deed:made', 'deed:given-in', 'deed:bought'] as const;

/** Where a deed of somebody's ends that begins there or after "has", "is"; -1 where there is none. */
const deedEnds = (words: Words, from: number, within = false): number => {
  const { lexicon, tokens } = words;
  for (const { length, value } of lexicon.phrases.allAt(tokens, from)) {
    if (brings.some((name) => value.has(name))) return from + length;
    const leads =
      ['is', 'has', 'fill', 'who'].some((name) => value.has(name)) || (within && value.has('and'));
    const to = leads ? deedEnds(words, from + length, true) : -1;
    if (to >= 0) return to;
  }
  return -1;
};

/** "A pie", "us some ribs", "it": what it was done to; "made on Sunday" has none. */
const hasObject = (words: Words, from: number): boolean => {
  const { tokens, rules } = words;
  let at = from;
  while (classesAt(words, at)?.has('fill')) at += words.lexicon.phrases.longestAt(tokens, at)!.length;
  const does = classesAt(words, at);
  const names = does && [...does].some((name) => name === 'a' || name.startsWith('pointer:'));
  const fits = (uri: string): boolean => (rules.get(uri)?.matchesAt(tokens, at).length ?? 0) > 0;
  return Boolean(names) || fits('builtin:grammar/amount') || fits('kitchen:food');
};

const inCapitals = (name: string): string =>
  name.replace(/(^|[ -])(\p{Ll})/gu, (_, before: string, letter: string) => before + letter.toUpperCase());

/** "Mam's", where its ending stayed a part of the word. */
const withoutMark = (word: string, { clitics }: MovesLexicon): string => {
  const ending = clitics.find(([one]) => word.length > one.length + 1 && word.endsWith(one));
  return ending ? word.slice(0, -ending[0].length) : word;
};

/** "Janets", written without its mark: the name, where an ending that is a word of its own hangs on it. */
const withoutClitic = (word: string, { clitics }: MovesLexicon): string | null => {
  for (const [ending] of clitics) {
    const bare = ending.replace("'", '');
    if (
      word.length > bare.length + 2 &&
      word.endsWith(bare) &&
      /[^aeious]$/.test(word.slice(0, -bare.length))
    )
      return word.slice(0, -bare.length);
  }
  return null;
};

/** "So Denise we take the collar": said to somebody, where what is done has its own object; "fufu I put in the fridge" is food. */
const isCalled = (words: Words, from: number): boolean => {
  const { tokens, lexicon } = words;
  const opens = tokens.slice(0, from).every((word) => small(lexicon, word));
  const who = opens ? lexicon.phrases.longestAt(tokens, from + 1) : null;
  if (!who?.value.has('i')) return false;
  const does = lexicon.phrases.longestAt(tokens, from + 1 + who.length);
  const deed = does && [...does.value].some((name) => name.startsWith('deed:'));
  return Boolean(deed) && hasObject(words, from + 1 + who.length + does!.length);
};
const small = ({ phrases }: MovesLexicon, word: string): boolean => {
  const does = phrases.longestAt([word], 0)?.value;
  return does !== undefined && ['fill', 'so', 'and'].some((name) => does.has(name));
};

/** The constituents that name somebody at one position; none outside their frames. */
export const somebodyAt = (
  tokens: readonly string[],
  from: number,
  rules: DynamicRules,
  lexicon: MovesLexicon,
): readonly Offer[] => {
  const people = firstDayWords(lexicon.language);
  if (!people) return [];
  const word = withoutMark(tokens[from]!, lexicon);
  const spelled = word === tokens[from] ? tokens : tokens.map((one, at) => (at === from ? word : one));
  const words: Words = { tokens: spelled, rules, lexicon, people };
  const offer = (to: number, name: string): readonly Offer[] => [
    { chunk: { kind: 'person', from, to, words: name, candidates: [] }, cost },
  ];
  // "From our Sheila", "by my sister": an article that says whose leads up to it.
  const owned = endsIn(words, from, 'definite');
  const led =
    endsIn(words, from, 'by') ||
    // "One of those giant bags" is of the bags.
    (owned &&
      (endsIn(words, from - 1, 'by') || (endsIn(words, from - 1, 'of') && !hasObject(words, from + 1))));
  const titled = people.titles.has(word);
  const related = people.relations.longestAt(spelled, from)?.length ?? (titled ? 1 : 0);
  if (related > 0) {
    const at = from + related;
    const named = mayName(words, at) ? 1 : 0;
    if (!led && deedEnds(words, at + named) < 0) return [];
    const said = spelled.slice(named && !titled ? at : from, at + named).join(' ');
    return offer(at + named, named ? inCapitals(said) : said);
  }
  const done = deedEnds(words, from + 1);
  const does = done >= 0 && hasObject(words, done);
  const relative = done >= 0 && endsIn(words, from, 'that', 'who');
  const called = isCalled(words, from);
  if (!(led || does || relative || called) || !mayName(words, from)) return [];
  // "The rendang made me a happy woman": a word that any other article leads is nobody's name.
  if (!owned && endsIn(words, from, 'a')) return [];
  if (called) return [{ chunk: { kind: 'word', from, to: from + 1, classes: new Set(['fill']) }, cost }];
  const bare = does && !led ? withoutClitic(word, lexicon) : null;
  return offer(from + 1, inCapitals(bare ?? word));
};
