/** The mood of a sentence to learn from, where its request and its form tell it. */
import { readMoodWords } from '../../src/understanding/learned/mood-features.js';
import type { Mood } from '../../src/understanding/learned/mood.js';
import { linesOf } from '../../src/understanding/word-lists.js';

const words = readMoodWords('en');
const isOf = (word: string | undefined, ...names: string[]): boolean =>
  word !== undefined && names.includes(words.classOf.get(word) ?? '');

/** Past what says nothing. "Please" is looked past, too. */
const begun = (tokens: readonly string[]): readonly string[] => {
  let at = 0;
  while (at + 1 < tokens.length && words.fill.has(tokens[at]!)) at += 1;
  return tokens.slice(at);
};

const asksToTell =
  /^(?:(?:can|could|would|will) you )?(?:tell|read|give|show) (?:me|us|her|him) |^(?:list|read) |^let me know|^i (?:wonder|was wondering|am wondering|need to know|want to know|would like to know)|^remind me (?:what|how|when|who|where|which|why)|^do you know|^(?:how|what) about|^(?:any|anything|anybody) /;
const wishes =
  /^(?:can|could|would|will) you |^(?:can|could) (?:i|we) (?:get|have) |^i (?:want|need|would like) (?:you )?to |^i would like|^let us |^(?:do not|never) /;

/** By its form alone; null where that does not tell. `tokens`: contractions spelled out. */
export const moodOfForm = (tokens: readonly string[], marked: boolean): Mood | null => {
  const said = begun(tokens);
  const text = `${said.join(' ')} `;
  if (asksToTell.test(text)) return 'asked';
  if (wishes.test(text)) return 'ordered';
  if (marked || isOf(said[0], 'ask')) return 'asked';
  if (isOf(said[0], 'be', 'have', 'do', 'modal')) return 'asked';
  if (isOf(said[0], 'do-it')) return 'ordered';
  const states = said.some((word) => isOf(word, 'be', 'have', 'done', 'holds'));
  return states || isOf(said[0], 'i', 'they') ? 'told' : null;
};

/** `request: moods it may have`, the one that is taken in doubt first. */
const table: ReadonlyMap<string, readonly Mood[]> = new Map(
  linesOf('en', '../learned/moods').flatMap((line) => {
    const [moods = '', requests = ''] = line.split(':');
    const of = moods.split(',').map((mood) => mood.trim() as Mood);
    return requests.split(',').map((request): [string, readonly Mood[]] => [request.trim(), of]);
  }),
);

export interface LabelledMood {
  readonly mood: Mood;
  /** The form says so, too, or nothing against it. */
  readonly sure: boolean;
}

/** Null for a request that has none. */
export const moodOfRequest = (
  request: string,
  tokens: readonly string[],
  marked: boolean,
): LabelledMood | null => {
  const may = table.get(request);
  if (!may) return null;
  const form = moodOfForm(tokens, marked);
  if (may[0] === 'not-ours' || may[0] === 'answered') return { mood: may[0], sure: true };
  if (form === null || may.includes(form))
    return { mood: form ?? may[0]!, sure: form !== null || may.length === 1 };
  // "May I have that in the freezer instead": what is asked for is done.
  if (form === 'asked' && may.includes('ordered')) return { mood: 'ordered', sure: true };
  return { mood: may[0]!, sure: false };
};
