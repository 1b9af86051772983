/**
 * Self-repairs: a slip, a cue ("no", "I mean", "scratch that"), and the mending. What was
 * slipped on (the reparandum) is found by what the mending starts with: the same small word
 * ("the milk, I mean the cream"), or a word of the same class ("two, no, three tubs").
 */
import { perLexicon, type Lexicon } from '../lexicon.js';
import { phraseSet, phraseTable } from '../phrases.js';
import type { Word } from '../tokens.js';
import { textOf, textsOf, type Pass } from './pass.js';

type Cue = 'strong' | 'weak' | 'restart' | 'drop' | 'retract';
/** How far back a slip may lie, in words. */
const reach = 9;

const tables = perLexicon((lexicon: Lexicon) => {
  const { repairCues } = lexicon.tidying;
  const cues: [string, Cue][] = [];
  for (const kind of ['weak', 'strong', 'restart', 'drop', 'retract'] as const)
    for (const phrase of repairCues[kind]) cues.push([phrase, kind]);
  const classes = new Map<string, string>();
  const put = (name: string, words: Iterable<string>): void => {
    for (const word of words) classes.set(word, name);
  };
  const { numbers, dates, joining } = lexicon;
  put('link', [...joining.articles, ...joining.inside]);
  put('month', Object.keys(dates.months));
  put('weekday', Object.keys(dates.weekdays));
  put(
    'day',
    Object.keys(dates.days).filter((phrase) => !phrase.includes(' ')),
  );
  put('ordinal', Object.keys(numbers.ordinals));
  put('number', [...Object.keys(numbers.words), ...Object.keys(numbers.scales), 'half']);
  return {
    cues: phraseTable(cues),
    classes,
    notBefore: phraseSet(repairCues.notBefore.phrases),
    notAfter: new Set(repairCues.notAfter),
    pronounOneAfter: new Set(repairCues.pronounOneAfter),
  };
});

/** Where the slip starts, going back from the cue; null when nothing aligns. */
const slipStart = (
  texts: readonly string[],
  cueAt: number,
  mending: string,
  lexicon: Lexicon,
): number | null => {
  const { classes, pronounOneAfter } = tables(lexicon);
  const wanted = classes.get(mending);
  if (wanted === undefined) return null;
  for (let at = cueAt - 1; at >= Math.max(0, cueAt - reach); at -= 1) {
    const text = texts[at]!;
    if (wanted === 'link' ? text !== mending : classes.get(text) !== wanted) continue;
    // "the small one" counts nothing.
    if (text === 'one' && pronounOneAfter.has(texts[at - 1] ?? '')) continue;
    if (wanted !== 'number') return at;
    // A number of several words starts at its first.
    let start = at;
    while (start > 0 && classes.get(texts[start - 1]!) === 'number') start -= 1;
    return start;
  }
  return null;
};

const mend = (
  words: readonly Word[],
  cueAt: number,
  cueLength: number,
  cue: Cue,
  lexicon: Lexicon,
): readonly Word[] | null => {
  const { classes, notBefore, notAfter } = tables(lexicon);
  const texts = textsOf(words);
  const after = words.slice(cueAt + cueLength);
  if (cue === 'drop') return cueAt > 0 && after.length === 0 ? words.slice(cueAt) : null;
  // "Finished the butter, no, I tell a lie, leave it": all of it is taken back, and the "no" is what is left of it.
  if (cue === 'retract') return cueAt > 0 && after.length === 0 ? words.slice(cueAt, cueAt + 1) : null;
  if (after.length === 0 || cueAt === 0) return null;
  if (cue === 'restart') return after;
  // "have to wait to", "wait a moment": no cue but a verb.
  const verb = notAfter.has(texts[cueAt - 1]!) || notBefore.longestAt(texts, cueAt + cueLength) !== null;
  if (cue === 'weak' && verb) return null;
  const mending = after[0]!.text;
  const start = slipStart(texts, cueAt, mending, lexicon);
  if (start === null) {
    // Only a cue that means nothing else may replace a bare word: "milk, I mean cream".
    const bare = cue === 'strong' && after.length <= 2 && !classes.has(texts[cueAt - 1]!);
    return bare ? [...words.slice(0, cueAt - 1), ...after] : null;
  }
  const kind = classes.get(mending);
  if (kind === 'link') return [...words.slice(0, start), ...after];
  const run = (at: number, end: number): number => {
    let to = at;
    while (to < end && classes.get(texts[to]!) === kind) to += 1;
    return to;
  };
  // "two tubs, no, three" and "two tubs, no three, on the shelf": what was counted stays.
  const mendedTo = run(cueAt + cueLength, words.length);
  const countedFrom = run(start, cueAt);
  const rest = words.slice(mendedTo);
  const stays =
    rest.length === 0 ||
    (classes.get(rest[0]!.text) === 'link' &&
      cueAt - countedFrom <= 2 &&
      classes.get(texts[countedFrom]!) !== 'link');
  const counted = stays ? words.slice(countedFrom, cueAt) : [];
  return [...words.slice(0, start), ...words.slice(cueAt + cueLength, mendedTo), ...counted, ...rest];
};

export const repairs: Pass = (words, lexicon, note) => {
  const { cues } = tables(lexicon);
  const texts = textsOf(words);
  for (let at = 1; at < words.length; at += 1) {
    const hit = cues.longestAt(texts, at);
    if (!hit) continue;
    const mended = mend(words, at, hit.length, hit.value, lexicon);
    if (mended === null) continue;
    note({ pass: 'repairs', from: textOf(words), to: textOf(mended) });
    return mended;
  }
  return words;
};
