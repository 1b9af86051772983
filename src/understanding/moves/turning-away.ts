/**
 * "Never mind the couscous, have we got potatoes", "hold on, Junie's finished the applesauce, put that down":
 * what was going on is left or held, and something else is said. That is heard by itself; what only says that
 * it is to be noted, or that the talk is to go on after it, is no part of it.
 */
import type { DynamicRules } from '../../grammar/api.js';
import type { Guess } from '../guesses.js';
import { movesLexicon } from './lexicon.js';
import { lengthNamed } from './named-at.js';
import { wordingsFor } from './questions/wordings.js';
import { cutFrom, lengthAt, past, settlingWords } from './settling.js';

export interface Away {
  /** What was going on is left for good, rather than held for a moment. */
  readonly leaves: boolean;
  /** "I'm telling you, not asking": what follows is told, and nothing else. */
  readonly tells: boolean;
  /** "Then carry on". */
  readonly goesOn: boolean;
  readonly rest: Guess;
}

const named = ['kitchen:item', 'kitchen:food', 'kitchen:goods', 'kitchen:place'] as const;

/** Past a name and the articles before it; `from` where none stands there. */
const pastName = (tokens: readonly string[], from: number, rules: DynamicRules, language: string): number => {
  const lexicon = movesLexicon(language);
  const isArticle = (at: number): boolean =>
    lexicon?.phrases.longestAt(tokens.slice(at, at + 1), 0)?.value.has('a') === true;
  let at = from;
  while (isArticle(at)) at += 1;
  const going = settlingWords(language);
  const longest = Math.max(
    lengthNamed(rules, tokens, at, ...named),
    going ? lengthAt(going.goings, tokens, at) : 0,
  );
  return longest > 0 ? at + longest : from;
};

/** The tail cut off, with its pauses. */
const cutTo = (guess: Guess, to: number): Guess => {
  const said = guess.said.slice(0, to);
  const tokens = said.every((word, at) => guess.tokens[at] === word) ? guess.tokens.slice(0, to) : said;
  const pauses = new Set([...guess.pauses].filter((at) => at < to));
  return { ...guess, heard: tokens.join(' '), tokens, said, pauses };
};

/** "I wasn't asking about the cod": so many words from there deny what was taken for its subject; 0 for none. */
const deniedAt = (said: readonly string[], from: number, rules: DynamicRules, language: string): number => {
  const denies = wordingsFor(language)?.phrases.longestAt(said, from);
  if (!denies?.value.has('denies-asking')) return 0;
  const end = pastName(said, from + denies.length, rules, language);
  return end > from + denies.length ? end - from : 0;
};

/** Null where nothing is left, held or added to. `busy`: something is going on that could be held. */
export const turnedAway = (
  guess: Guess | undefined,
  rules: DynamicRules,
  language: string,
  busy: boolean,
): Away | null => {
  const words = settlingWords(language);
  if (!guess || !words) return null;
  const { said } = guess;
  let at = past(words.before, said, 0);
  // "Neither. Cancel. Three tins of …": said twice.
  for (let length = 0; (length = lengthAt(words.awayAlone, said, at)) > 0;) {
    const again = lengthAt(words.awayAlone, said, at + length);
    if (again === 0 || !guess.pauses.has(at + length)) break;
    at += length;
  }
  const leads = lengthAt(words.awayFrom, said, at);
  const beyond = leads > 0 ? pastName(said, at + leads, rules, language) : 0;
  // "Cancel. Four tubs of stew": only with a pause after it is it more than the verb of what follows.
  const alone = lengthAt(words.awayAlone, said, at);
  const leaving =
    alone > 0 && guess.pauses.has(at + alone)
      ? alone
      : beyond > at + leads && beyond < said.length
        ? beyond - at
        : lengthAt(words.away, said, at);
  const holding = leaving === 0 && busy ? lengthAt(words.hold, said, at) : 0;
  const denying = leaving + holding === 0 ? deniedAt(said, at, rules, language) : 0;
  const telling = leaving + holding + denying === 0 ? lengthAt(words.tells, said, at) : 0;
  const led = leaving + holding + denying + telling;
  let from = led > 0 ? at + led : 0;
  if (leaving > 0) from += lengthAt(words.matter, said, from);
  if (from > 0) from = past(words.opens, said, from);
  const tailAt = (list: 'tails' | 'on'): number => {
    for (let start = from + 2; start < said.length; start += 1)
      if (lengthAt(words[list], said, start) === said.length - start) return start;
    return said.length;
  };
  const on = busy ? tailAt('on') : said.length;
  const tails = tailAt('tails');
  const to = Math.min(on, tails);
  if ((from === 0 && to === said.length) || to - from < 2) return null;
  return {
    leaves: leaving > 0,
    tells: telling > 0,
    goesOn: on < said.length,
    rest: cutFrom(cutTo(guess, to), from),
  };
};

/** "Never mind the eggs", "cancel the chicken thighs question, for goodness' sake", and nothing else. */
export const onlyTurnsAway = (guess: Guess | undefined, rules: DynamicRules, language: string): boolean => {
  const words = settlingWords(language);
  if (!guess || !words) return false;
  const { said } = guess;
  const at = past(words.before, said, 0);
  const leads = lengthAt(words.awayFrom, said, at);
  const beyond = leads > 0 ? pastName(said, at + leads, rules, language) : at;
  return beyond > at + leads && past(words.matter, said, beyond) === said.length;
};

/** "I wasn't asking about the cod", and nothing else: what it names is no subject, and nothing is left for it. */
export const onlyDenies = (guess: Guess | undefined, rules: DynamicRules, language: string): boolean => {
  const words = settlingWords(language);
  if (!guess || !words) return false;
  const { said } = guess;
  const at = past(words.before, said, 0);
  const denied = deniedAt(said, at, rules, language);
  return denied > 0 && past(words.matter, said, at + denied) === said.length;
};

/** "Never mind that just now", with something else said after it: nothing is to be done for it. */
export const onlyLeavesOff = (tokens: readonly string[], language: string): boolean => {
  const words = settlingWords(language);
  if (!words) return false;
  const at = past(words.before, tokens, 0);
  const away = Math.max(lengthAt(words.away, tokens, at), lengthAt(words.awayAlone, tokens, at));
  return away > 0 && past(words.matter, tokens, at + away) === tokens.length;
};

/** "Oh um, the left one, I reckon": the answer by itself; null where nothing stands around it. */
export const answerAlone = (guess: Guess | undefined, language: string): Guess | null => {
  const words = settlingWords(language);
  if (!guess || !words) return null;
  const { said } = guess;
  const leadAt = (at: number): number =>
    Math.max(lengthAt(words.before, said, at), lengthAt(words.answerLeads, said, at));
  let from = 0;
  for (let length = 0; (length = leadAt(from)) > 0;) from += length;
  const endsAt = (end: number): number => {
    for (let at = from + 1; at < end; at += 1)
      if (lengthAt(words.hedges, said, at) === end - at) return endsAt(at);
    return end;
  };
  const to = endsAt(said.length);
  if (from === 0 && to === said.length) return null;
  return to > from ? cutFrom(cutTo(guess, to), from) : null;
};
