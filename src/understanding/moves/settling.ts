/**
 * A yes or a no with something after it: "yes that's right, and the dozen eggs are next to it". The yes or no
 * settles the open question; the rest is a move of its own, heard by itself.
 */
import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../../project-files.js';
import type { Guess } from '../guesses.js';
import type { ClockAtHand, Expectation, Mention, Slots } from '../intents.js';
import type { Reader } from '../readings.js';
import { phraseSet } from '../words/phrases.js';
import { bitsOf, is, ofKind } from './requests/bits.js';
import { requestWords } from './requests/lexicon.js';

const file = z.object({
  yes: z.array(z.string()),
  no: z.array(z.string()),
  more: z.array(z.string()),
  before: z.array(z.string()),
  small: z.array(z.string()),
  leaving: z.array(z.string()),
  opens: z.array(z.string()),
  away: z.array(z.string()),
  awayFrom: z.array(z.string()),
  awayAlone: z.array(z.string()),
  /** What may be going on: steps, a recipe. */
  goings: z.array(z.string()),
  matter: z.array(z.string()),
  hold: z.array(z.string()),
  tails: z.array(z.string()),
  tells: z.array(z.string()),
  hedges: z.array(z.string()),
  answerLeads: z.array(z.string()),
  on: z.array(z.string()),
  /** "Hi, it's Odile", "Sam here": who speaks, which asks and tells nothing. */
  greets: z.array(z.string()),
  introduces: z.array(z.string()),
  here: z.array(z.string()),
  /** Of both kinds, where it was asked which: "both", "nuts of every kind". */
  bothKinds: z.array(z.string()),
});
type Phrases = ReturnType<typeof phraseSet>;
type Lexicon = Readonly<Record<keyof z.infer<typeof file>, Phrases>>;

const known = new Map<string, Lexicon | null>();

/** Null for a language that has no `settling.json` yet. Throws `ZodError` for a file of another form. */
export const settlingWords = (language: string): Lexicon | null => {
  const before = known.get(language);
  if (before !== undefined) return before;
  const path = projectFile('grammars', language, 'settling.json');
  const given = existsSync(path) ? file.parse(JSON.parse(readFileSync(path, 'utf8'))) : null;
  const words =
    given &&
    (Object.fromEntries(Object.entries(given).map(([name, list]) => [name, phraseSet(list)])) as Lexicon);
  known.set(language, words);
  return words;
};

/** Questions that yes or no settles, whatever else may. A place or a thing that was guessed is one, too. */
const settledByYes: ReadonlySet<Expectation> = new Set<Expectation>([
  ...(['yes-no', 'outage-state', 'allergen', 'place', 'item', 'choice', 'date', 'marker'] as const),
]);

export interface Settled {
  readonly intent: 'yes' | 'no';
  /** A pause or a word that joins stood after it: surely two moves. */
  readonly parted: boolean;
  readonly rest: Guess;
}

/** Nothing but parts of what was asked about: "only the meatballs", "not the butter", "in the door", "for the pasta". */
export interface Narrowing {
  /** Those named are not meant. */
  readonly not: boolean;
  readonly things: readonly Mention[];
  readonly slots: Slots;
}

const parts: ReadonlySet<string> = new Set([
  // Whom and which marker it is of, and which part, a narrowing has no place for: such is told, and heard so.
  ...['thing', 'place', 'amount', 'day', 'time', 'span', 'clock'],
]);
const between = ['fill', 'aside', 'not', 'keep', 'except', 'to', 'means', 'meant', 'all', 'opener', 'just'];

/** "Except the milk, I haven't drunk it yet": what is left out, before a reason that names nothing more. */
const withoutReason = (guess: Guess, { rules, language }: Reader, words: Lexicon): Guess | null => {
  const { said, pauses } = guess;
  const to = said.findIndex((_, at) => at > 0 && pauses.has(at));
  if (to < 0 || lengthAt(words.leaving, said, 0) === 0) return null;
  const more = requestWords(language);
  const rest = more ? bitsOf(said.slice(to), rules, more, []) : [];
  if (rest.some(({ kind }) => parts.has(kind) && kind !== 'time' && kind !== 'day')) return null;
  const before = said.slice(0, to);
  return { ...guess, heard: before.join(' '), tokens: before, said: before, pauses: new Set() };
};

/** What is named, and what else is told of it; null where it says anything more than that. */
export const narrowingIn = (
  guess: Guess,
  reader: Reader,
  clocks: readonly ClockAtHand[],
): Narrowing | null => {
  const settling = settlingWords(reader.language);
  const first = settling && withoutReason(guess, reader, settling);
  return narrowing(guess, reader, clocks) ?? (first ? narrowing(first, reader, clocks) : null);
};

const narrowing = (
  { tokens }: Guess,
  { rules, language }: Reader,
  clocks: readonly ClockAtHand[],
): Narrowing | null => {
  const words = requestWords(language);
  const settling = settlingWords(language);
  if (!words || !settling) return null;
  const bits = bitsOf(tokens, rules, words, clocks);
  const small = (from: number, to: number): boolean =>
    tokens.slice(from, to).every((_, at) => lengthAt(settling.small, tokens, from + at) > 0);
  if (!bits.every((bit) => parts.has(bit.kind) || is(bit, ...between) || small(bit.from, bit.to)))
    return null;
  const only = <K extends 'place' | 'amount' | 'share' | 'day' | 'time' | 'span' | 'person'>(kind: K) => {
    const all = ofKind(bits, kind);
    return all.length === 1 ? all[0] : undefined;
  };
  const things = ofKind(bits, 'thing').map(({ mention }) => mention);
  const [place, amount, day, time, span] = [
    only('place'),
    only('amount'),
    only('day'),
    only('time'),
    only('span'),
  ];
  if (things.length + [place, amount, day, time, span].filter((one) => one !== undefined).length === 0)
    return null;
  return {
    not: tokens.some((_, at) => lengthAt(settling.leaving, tokens, at) > 0),
    things,
    slots: {
      ...(place ? { place: place.place } : {}),
      ...(amount ? { amount: amount.amount } : {}),
      ...(day ? { when: day.past } : {}),
      ...(time ? { time: time.time } : {}),
      ...(span ? { duration: span.seconds } : {}),
    },
  };
};

export const lengthAt = (phrases: Phrases, tokens: readonly string[], at: number): number =>
  phrases.longestAt(tokens, at)?.length ?? 0;

/** Past the words of a list, from there on. */
export const past = (phrases: Phrases, tokens: readonly string[], from: number): number => {
  let at = from;
  for (let length = lengthAt(phrases, tokens, at); length > 0; length = lengthAt(phrases, tokens, at))
    at += length;
  return at;
};

const joints: ReadonlySet<string> = new Set(['and', 'but', 'so', 'y', 'pero']);

/** Where the yes or no ends, and which it was; null where what is said begins with neither. */
const opening = (
  tokens: readonly string[],
  pauses: ReadonlySet<number>,
  words: Lexicon,
  yeses: Phrases = words.yes,
): { intent: 'yes' | 'no'; to: number; parted: boolean } | null => {
  const from = past(words.before, tokens, 0);
  // "Right" may stand before or be all there is of it: both are tried.
  for (const start of new Set([from, 0])) {
    const no = lengthAt(words.no, tokens, start);
    // "Both, both, and": said again, it is the same yes.
    const yes = yeses === words.yes ? lengthAt(yeses, tokens, start) : past(yeses, tokens, start) - start;
    if (Math.max(no, yes) === 0) continue;
    const intent = no > yes ? 'no' : 'yes';
    let to = start + Math.max(no, yes);
    // What only says it again goes with it, where it ends at a pause or a joint, or with all that was said.
    for (let at = to, length = 0; (length = lengthAt(words.more, tokens, at)) > 0;) {
      at += length;
      if (at >= tokens.length || pauses.has(at) || joints.has(tokens[at]!)) to = at;
    }
    // "Oh", "right", "um" after it open what is said next.
    const next = past(words.opens, tokens, to);
    const parted = pauses.has(to) || next > to || joints.has(tokens[to] ?? '');
    return { intent, to: next, parted };
  }
  return null;
};

export const cutFrom = (guess: Guess, to: number): Guess => {
  const same = guess.said.slice(0, to).every((word, at) => guess.tokens[at] === word);
  const said = guess.said.slice(to);
  const tokens = same ? guess.tokens.slice(to) : said;
  const pauses = new Set([...guess.pauses].flatMap((at) => (at > to ? [at - to] : [])));
  return { ...guess, heard: tokens.join(' '), tokens, said, pauses, aside: [] };
};

/** What settles the open question, and what else was said; null where that is all, or nothing does. */
export const settledBy = (
  guess: Guess | undefined,
  expecting: Expectation,
  language: string,
): Settled | null => {
  const words = settledByYes.has(expecting) ? settlingWords(language) : null;
  const both =
    guess && words && expecting === 'allergen'
      ? opening(guess.said, guess.pauses, words, words.bothKinds)
      : null;
  const found =
    both?.intent === 'yes' ? both : guess && words ? opening(guess.said, guess.pauses, words) : null;
  if (!guess || !words || !found) return null;
  // "And" leads to the next move, "but" belongs to it.
  const joined = joints.has(guess.said[found.to] ?? '') ? 1 : 0;
  const to = found.to + joined;
  if (to >= guess.said.length) return null;
  return { intent: found.intent, parted: found.parted, rest: cutFrom(guess, to) };
};
