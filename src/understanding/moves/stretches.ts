/**
 * Where another move may begin inside a sentence that nobody marked: after a pause, where a question or a command
 * opens, where somebody is told to have done something, after "oh" or "hang on". What is made of the stretches
 * between is decided by what each of them holds.
 */
import type { DynamicRules } from '../../grammar/api.js';
import { normalise } from '../words/index.js';
import { classAt, movesLexicon, type MovesLexicon } from './lexicon.js';
import { lengthNamed } from './named-at.js';
import { lengthAt, settlingWords } from './settling.js';

/** A sentence is cut into so many stretches at most: the likeliest places are taken. */
const mostStretches = 8;

/** Nothing but a pause or a joint cuts off fewer words. */
const shortest = 3;

/** How likely another move begins there. */
const likely = { pause: 3, joint: 2, opens: 1 } as const;

const orders = ['command', 'you'] as const;
const tells = ['i', 'they', 'there', 'instead'] as const;
const joins = ['and', 'but', 'so', 'because', 'if'] as const;

/** Who or what a clause may be about: "Theo has …", "the sourdough is …", "it is …". */
const subjectAt = (
  tokens: readonly string[],
  at: number,
  rules: DynamicRules,
  lexicon: MovesLexicon,
): number => {
  const pointer = lexicon.phrases.longestAt(tokens, at);
  return Math.max(
    pointer && [...pointer.value].some((name) => name.startsWith('pointer:')) ? pointer.length : 0,
    lengthNamed(rules, tokens, at, 'kitchen:person', 'kitchen:item', 'kitchen:food'),
  );
};

/** A clause begins there: a question, an order, somebody or something that does or is. */
const opensAt = (
  tokens: readonly string[],
  from: number,
  lexicon: MovesLexicon,
  rules: DynamicRules,
): boolean => {
  const asked = classAt(lexicon, tokens, from, 'wh');
  // "The lasagne what I made" asks nothing.
  if (asked > 0) return classAt(lexicon, tokens, from + asked, ...tells) === 0;
  if (classAt(lexicon, tokens, from, ...orders, ...tells) > 0) return true;
  // "Is left" goes on with what stands before it; "is it", "does Sam" ask.
  const verb = classAt(lexicon, tokens, from, 'aux', 'opens-question');
  if (verb > 0) {
    const next = from + verb;
    return (
      classAt(lexicon, tokens, from, 'aux') > 1 ||
      classAt(lexicon, tokens, next, ...tells, 'a', 'any') > 0 ||
      subjectAt(tokens, next, rules, lexicon) > 0
    );
  }
  const subject = subjectAt(tokens, from, rules, lexicon);
  return subject > 0 && classAt(lexicon, tokens, from + subject, 'has', 'is', 'may') > 0;
};

/** "How long | does the pork go in": the verb goes on with it. */
const longestQuestionWord = 4;
const endsQuestionWord = (tokens: readonly string[], at: number, lexicon: MovesLexicon): boolean => {
  for (let length = 1; length <= Math.min(at, longestQuestionWord); length += 1)
    if (classAt(lexicon, tokens, at - length, 'wh') === length) return true;
  return false;
};

/** ", no, seven", ", no wait, the top shelf": what puts right is of the same move as what it puts right. */
const mendedAt = (
  tokens: readonly string[],
  pauses: ReadonlySet<number>,
  lexicon: MovesLexicon,
  rules: DynamicRules,
): ReadonlySet<number> =>
  new Set(
    tokens.flatMap((_, at): readonly number[] => {
      const length = at > 0 && pauses.has(at) ? classAt(lexicon, tokens, at, 'repair') : 0;
      const to = at + length;
      if (length === 0 || to >= tokens.length || opensAt(tokens, to, lexicon, rules)) return [];
      return [at, to];
    }),
  );

const strengthAt = (
  tokens: readonly string[],
  at: number,
  lexicon: MovesLexicon,
  rules: DynamicRules,
  language: string,
): number => {
  const opens = (from: number): boolean => opensAt(tokens, from, lexicon, rules);
  const words = settlingWords(language);
  // "As well", "right hand": a word inside a longer phrase opens nothing.
  if ((lexicon.phrases.longestAt(tokens, at - 1)?.length ?? 0) > 1) return 0;
  const joint = classAt(lexicon, tokens, at, ...joins);
  if (joint > 0) return at + joint < tokens.length && opens(at + joint) ? likely.joint : 0;
  const leads = words ? lengthAt(words.opens, tokens, at) : 0;
  if (leads > 0 && at + leads < tokens.length && opens(at + leads)) return likely.joint;
  // "The right bin": what follows an article names something.
  const named = classAt(lexicon, tokens, at - 1, 'a', 'prep') > 0;
  if (words && !named && Math.max(lengthAt(words.hold, tokens, at), lengthAt(words.before, tokens, at)) > 0)
    return likely.joint;
  // "Until what date", "tell me what", "what again did he": within a question no other begins.
  const within =
    classAt(lexicon, tokens, at - 1, 'prep', 'from', 'of', 'by', 'for', 'command', 'a') > 0 ||
    endsQuestionWord(tokens, at, lexicon);
  return !within && opens(at) ? likely.opens : 0;
};

const pastJoints = (
  tokens: readonly string[],
  from: number,
  lexicon: MovesLexicon,
  language: string,
): number => {
  const words = settlingWords(language);
  let at = from;
  for (let length = 1; length > 0; at += length)
    length = Math.max(classAt(lexicon, tokens, at, ...joins), words ? lengthAt(words.opens, tokens, at) : 0);
  return at;
};

/** Of a sentence, in order. */
export interface Stretch {
  /** Words that only lead to it from the one before: "and", "oh". */
  readonly joint: string;
  readonly words: string;
}

/** The stretches of a sentence in order; the sentence alone, as it was said, where nothing else may begin in it. */
export const stretchesOf = (
  sentence: string,
  rules: DynamicRules,
  language: string,
  locale: string,
): readonly Stretch[] => {
  const lexicon = movesLexicon(language);
  const whole = [{ joint: '', words: sentence }];
  if (!lexicon) return whole;
  const { tokens, pauses } = normalise(sentence, locale, { mended: false });
  let last = 0;
  const mended = mendedAt(tokens, pauses, lexicon, rules);
  const places = tokens
    .map((_, at) => {
      const strength = mended.has(at)
        ? 0
        : pauses.has(at)
          ? likely.pause
          : at === 0
            ? 0
            : strengthAt(tokens, at, lexicon, rules, language);
      const near = strength === likely.opens && at - last < shortest;
      if (strength > 0 && !near) last = at;
      return { at, strength: near ? 0 : strength };
    })
    .filter(({ at, strength }) => at > 0 && strength > 0)
    .sort((a, b) => b.strength - a.strength)
    .slice(0, mostStretches - 1)
    .map(({ at }) => at)
    .sort((a, b) => a - b);
  if (places.length === 0) return whole;
  return [0, ...places].map((from, nth) => {
    const end = places[nth] ?? tokens.length;
    const begins = nth === 0 ? from : pastJoints(tokens, from, lexicon, language);
    const at = begins < end ? begins : from;
    return { joint: tokens.slice(from, at).join(' '), words: tokens.slice(at, end).join(' ') };
  });
};
