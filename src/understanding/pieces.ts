/** What was said, cut into the pieces that moves are made of: sentences, and stretches of one that nobody marked. */
import type { Clock } from '../terms/dates.js';
import { rulesFor } from './grammar-files.js';
import type { HearingContext, Hypothesis } from './intents.js';
import { past, settlingWords } from './moves/settling.js';
import { stretchesOf } from './moves/stretches.js';
import type { HouseholdNames } from './names/api.js';
import { lexiconFor, normalise } from './words/index.js';

/** What was said, in the pieces that moves are made of. */
export interface Piece {
  /** Words that only lead to it: no part of a move that begins here. */
  readonly joint: string;
  readonly words: string;
  /** Nobody marked that it ends there. */
  readonly unmarked: boolean;
  /** The sentence that begins with it, as it was marked, and how many pieces that was cut into. */
  readonly sentence?: { readonly text: string; readonly pieces: number };
}

export const piecesOf = (
  sentences: readonly string[],
  isHeld: (sentence: string, nth: number) => boolean,
  names: HouseholdNames,
  context: HearingContext,
): readonly Piece[] => {
  const clock: Clock = { now: context.now, timeZone: context.timeZone };
  const rules = rulesFor(names, context.locale, clock);
  const { language } = lexiconFor(context.locale);
  return sentences.flatMap((sentence, at) => {
    const stretches = isHeld(sentence, at)
      ? [{ joint: '', words: sentence }]
      : stretchesOf(sentence, rules, language, context.locale);
    return stretches.map((stretch, nth) => ({
      ...stretch,
      unmarked: nth < stretches.length - 1,
      ...(nth === 0 ? { sentence: { text: sentence, pieces: stretches.length } } : {}),
    }));
  });
};

/** As it was said, with its marks where all of a sentence is in it, without what only led to it. */
export const textIn = (pieces: readonly Piece[], from: number, to: number): string => {
  const said: string[] = [];
  for (let at = from; at < to;) {
    const { joint, words, sentence } = pieces[at]!;
    const all = sentence && at + sentence.pieces <= to ? sentence : null;
    said.push(all ? all.text : at === from || joint === '' ? words : `${joint} ${words}`);
    at += all?.pieces ?? 1;
  }
  return said.join(' ');
};

/** The same run of pieces of every guess; of the first alone where the others are cut otherwise. */
export const saidIn = (
  pieces: readonly (readonly Piece[])[],
  hypotheses: readonly Hypothesis[],
  from: number,
  to: number,
): readonly Hypothesis[] =>
  hypotheses.flatMap(({ confidence }, rank) =>
    pieces[rank]!.length === pieces[0]!.length
      ? [
          {
            text: textIn(pieces[rank]!, from, to),
            ...(confidence === undefined ? {} : { confidence }),
          },
        ]
      : [],
  );

/** "Right. No to that.": a word that only leads to what is said is no move. */
export const withLead = (sentences: readonly string[], locale: string): readonly string[] => {
  const [first, second, ...rest] = sentences;
  const words = settlingWords(lexiconFor(locale).language);
  if (first === undefined || second === undefined || !words) return sentences;
  const { tokens } = normalise(first, locale);
  return past(words.before, tokens, 0) === tokens.length ? [`${first} ${second}`, ...rest] : sentences;
};
