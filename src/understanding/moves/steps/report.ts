/** What a run of words that asks nothing tells of the step: it is done, it is in, time is up, not yet. */
import { durationsAt } from '../../numbers/durations.js';
import type { Lexicon } from '../../words/lexicon.js';
import type { ReadSteps } from './at-hand.js';
import type { StepsLexicon } from './lexicon.js';

/**
 * done: it was done. placed: it was begun and takes its time. over: its time is up, or it came out as it should.
 * not: it is not so far. praise: of its looks or smell. echo: words of the steps and nothing told of them, as
 * one says them to hear whether they are right. eaten: nothing is left to be done with it. none: it tells nothing
 * of the step. away: something calls her away.
 */
export type Report = 'done' | 'placed' | 'over' | 'not' | 'praise' | 'echo' | 'eaten' | 'away' | 'none';

interface Reading {
  readonly lexicon: StepsLexicon;
  readonly words: Lexicon;
  readonly steps: ReadSteps;
}

const durationAt = (tokens: readonly string[], from: number, words: Lexicon): number =>
  durationsAt(tokens, from, words)[0]?.length ?? 0;

export const hasDuration = (tokens: readonly string[], words: Lexicon): boolean =>
  tokens.some((_, from) => durationAt(tokens, from, words) > 0);

/** "The ten minutes are up", "the timer went off". */
const timeIsUp = (tokens: readonly string[], { lexicon, words }: Reading): boolean => {
  if (lexicon.has('timer', tokens) && lexicon.has('rang', tokens)) {
    const timer = tokens.findIndex((_, at) => lexicon.at('timer', tokens, at) > 0);
    if (tokens.slice(timer).some((_, at) => lexicon.at('rang', tokens, timer + at) > 0)) return true;
  }
  return tokens.some((_, from) => {
    const length = durationAt(tokens, from, words);
    return (
      length > 0 &&
      tokens.slice(from + length).some((__, at) => lexicon.at('passed', tokens, from + length + at) > 0)
    );
  });
};

/** "It beeped", "I think I heard it ping": something rang, whatever it was, and no more is told. */
export const isRinging = (tokens: readonly string[], lexicon: StepsLexicon, waiting = false): boolean => {
  // "It finished", while a timer runs, and "there goes the bell".
  const named = (waiting || lexicon.has('timer', tokens)) && lexicon.has('rang', tokens);
  if (!named && !lexicon.has('beeps', tokens)) return false;
  for (let at = 0; at < tokens.length;) {
    const length = Math.max(
      ...(
        [
          ...(named ? (['timer', 'rang'] as const) : []),
          'beeps',
          'things',
          'small',
          'self',
          'hearing',
        ] as const
      ).map((name) => lexicon.at(name, tokens, at)),
    );
    if (length === 0) return false;
    at += length;
  }
  return true;
};

/** Where a time runs, it is that one's. */
const rang = (tokens: readonly string[], { lexicon, words, steps }: Reading): boolean => {
  const timed = steps.steps[steps.at]?.sentences.some((one) => hasDuration(one.tokens, words)) === true;
  return (steps.waiting || timed) && isRinging(tokens, lexicon, steps.waiting);
};

/** Where something new is told: "i put it in | it is covered | we have the rest". */
export const clausesOf = (
  tokens: readonly string[],
  { lexicon }: Pick<Reading, 'lexicon'>,
): readonly (readonly string[])[] => {
  const starts = [0];
  tokens.forEach((_, at) => {
    // "And i put it in": a joint or a filler before it begins no clause of its own.
    const joined = lexicon.at('small', tokens, at - 1) > 0 || lexicon.at('self', tokens, at - 1) > 0;
    if (at === 0 || lexicon.at('sub', tokens, at - 1) > 0 || (starts.at(-1) === at - 1 && joined)) return;
    const self = lexicon.at('self', tokens, at) > 0;
    const thing = lexicon.at('things', tokens, at);
    if (self || (thing > 0 && lexicon.at('state', tokens, at + thing) > 0)) starts.push(at);
  });
  return starts.map((from, index) => tokens.slice(from, starts[index + 1]));
};

const withoutSmall = (tokens: readonly string[], { lexicon }: Reading): readonly string[] =>
  tokens.filter((_, at) => lexicon.at('small', tokens, at) === 0);

const clauseReport = (tokens: readonly string[], reading: Reading): Report => {
  const { lexicon, words, steps } = reading;
  const ofStep = (word: string): boolean => steps.anywhere.has(steps.stem(word));
  const done = lexicon.has('done', tokens);
  if (lexicon.at('sub', tokens, 0) > 0) return 'none';
  if (lexicon.has('not', tokens)) return 'not';
  if (timeIsUp(tokens, reading) || rang(tokens, reading)) return 'over';
  if (lexicon.has('running', tokens)) return 'placed';
  const self = lexicon.at('self', tokens, 0);
  const intends = lexicon.has('intent', tokens);
  if (self > 0) {
    if (intends) return 'none';
    if (lexicon.has('eaten', tokens)) return 'eaten';
    const rest = tokens.slice(self);
    const past = rest.findIndex((_, at) => lexicon.at('past', rest, at) > 0);
    // "I am adding them now": under way.
    if (past < 0 && rest.some((_, at) => lexicon.at('ongoing', rest, at) > 0)) return 'placed';
    if (past >= 0) {
      const placed = rest.some((_, at) => lexicon.at('placed', rest, at) > 0);
      const verb = rest[past]!;
      // "I baked it for ten minutes": the time is over with it.
      if (hasDuration(rest, words) && !placed) return 'over';
      return steps.here.has(steps.stem(verb)) && !placed ? 'over' : placed ? 'placed' : 'done';
    }
    if (done || rest.some(ofStep) || lexicon.has('already', rest)) return 'done';
    return rest.length > 0 && lexicon.at('small', tokens, 0) === 0 ? 'none' : 'none';
  }
  if (intends) return 'none';
  // "There is one tub left" counts, and tells of no step.
  if (lexicon.has('remaining', tokens)) return 'none';
  const state = tokens.findIndex((_, at) => lexicon.at('state', tokens, at) > 0);
  // "Someone's at the door" is of no step.
  if (lexicon.has('somebody', tokens.slice(0, Math.max(0, state)))) return 'away';
  if (state >= 0) {
    const after = tokens.slice(state + lexicon.at('state', tokens, state));
    const telling = withoutSmall(after, reading).filter((_, at, all) => lexicon.at('praise', all, at) === 0);
    // "It's been in for three minutes", "it has done its two minutes".
    if (hasDuration(after, words) && lexicon.has('lasted', tokens)) return 'over';
    // "Ya está": that it is so is all that is said of it.
    if (lexicon.has('done', after) || (after.length === 0 && done)) return 'done';
    if (lexicon.has('reached', after)) return 'over';
    if (after.some((_, at) => lexicon.at('placed', after, at) > 0)) return 'placed';
    if (telling.length === 0) return lexicon.has('praise', after) ? 'praise' : 'none';
    // "There is somebody at the door" is of no step.
    const there = state > 0 && lexicon.at('existing', tokens, state - 1) > 0;
    return there && !telling.some(ofStep) ? 'none' : 'over';
  }
  if (done) return 'done';
  const telling = withoutSmall(tokens, reading);
  if (telling.length === 0) return lexicon.has('placed', tokens) && tokens.length > 1 ? 'placed' : 'none';
  if (telling.every((_, at) => lexicon.at('praise', telling, at) > 0)) return 'praise';
  // "Stirred it", "all the onions in".
  const past =
    lexicon.at('past', telling, 0) > 0 ||
    telling.some((word, at) => lexicon.at('past', telling, at) > 0 && ofStep(word));
  if (past) return steps.here.has(steps.stem(telling[0]!)) ? 'over' : 'done';
  if (telling.every(ofStep)) return lexicon.has('placed', tokens) ? 'placed' : 'echo';
  return 'none';
};

/** Where it is told that it was eaten; -1 where that is not told. */
export const eatenFrom = (tokens: readonly string[], reading: Reading): number => {
  let from = 0;
  for (const clause of clausesOf(tokens, reading)) {
    if (clauseReport(clause, reading) === 'eaten') return from;
    from += clause.length;
  }
  return -1;
};

const TELLS_MORE = ['over', 'done', 'placed'] as const;

/** What it tells in all: the last thing counts where it is "not yet", else what says most. */
export const reportOf = (tokens: readonly string[], reading: Reading): Report => {
  if (tokens.length === 0) return 'none';
  const { lexicon } = reading;
  const tag = tokens.findIndex((_, at) => at > 0 && lexicon.at('tag', tokens, at) === tokens.length - at);
  const asks = tag > 0 && !lexicon.has('done', tokens.slice(0, tag)) && lexicon.at('self', tokens, 0) === 0;
  if (rang(tokens, reading)) return 'over';
  if (asks) return withoutSmall(tokens.slice(0, tag), reading).length > 0 || tag > 1 ? 'echo' : 'none';
  const told = clausesOf(tokens, reading).map((clause) => clauseReport(clause, reading));
  const telling = told.filter((one) => one !== 'none' && one !== 'praise');
  if (telling.includes('eaten')) return 'eaten';
  if (telling.every((one) => one === 'away') && telling.length > 0) return 'away';
  if (telling.at(-1) === 'not') return 'not';
  return (
    TELLS_MORE.find((one) => telling.some((other) => other === one)) ??
    (told.includes('praise') ? 'praise' : telling.includes('echo') ? 'echo' : 'none')
  );
};
