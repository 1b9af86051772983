/**
 * What could be made out of a sentence that made no sense as a whole: things and places of this
 * household, and what a kitchen does with them. So that "it is not mine" is only said of what is not.
 */
import type { DynamicRules } from '../grammar/index.js';
import type { Caught } from './intents.js';
import { sentenceCost } from './likelihood.js';
import type { NamedMatch, PlaceMatch } from './names/api.js';
import { entriesOf } from './word-lists.js';

/** A name must be said nearly word for word: half a likeness is found in any sentence. */
const plainly = 0.9;

const lists = new Map<string, ReadonlySet<string>>();
const listOf = (language: string, list: 'kitchen-verbs' | 'cookery'): ReadonlySet<string> => {
  const key = `${language} ${list}`;
  let words = lists.get(key);
  if (!words) lists.set(key, (words = new Set(entriesOf(language, list))));
  return words;
};

const named = (
  kind: 'item' | 'place',
  tokens: readonly string[],
  at: number,
  rules: DynamicRules,
): readonly { length: number; caught: Caught }[] =>
  (rules.get(`kitchen:${kind}`)?.matchesAt(tokens, at) ?? []).flatMap(({ length, value }) => {
    const { words, candidates } = value as unknown as NamedMatch | PlaceMatch;
    const best = candidates[0];
    return best && best.fit >= plainly && words !== null
      ? [{ length, caught: { kind, id: best.id, words } }]
      : [];
  });

/** Words of another subject, or of cooking at large. */
export const foreign = (tokens: readonly string[], language: string): boolean =>
  sentenceCost(tokens, language) < 0 || tokens.some((token) => listOf(language, 'cookery').has(token));

/** Things, places and deeds in the order they were said; nothing when the sentence is about something else
 * or about cooking at large. */
export const caughtIn = (
  tokens: readonly string[],
  rules: DynamicRules,
  language: string,
): readonly Caught[] => {
  if (foreign(tokens, language)) return [];
  const verbs = listOf(language, 'kitchen-verbs');
  const found: Caught[] = [];
  for (let at = 0; at < tokens.length;) {
    const [longest] = [...named('item', tokens, at, rules), ...named('place', tokens, at, rules)].sort(
      (a, b) => b.length - a.length,
    );
    if (longest) found.push(longest.caught);
    else if (verbs.has(tokens[at]!)) found.push({ kind: 'verb', id: null, words: tokens[at]! });
    at += longest?.length ?? 1;
  }
  return found;
};

/** Enough to ask again: a thing or place of this kitchen, or two words of what one does there. */
export const worthAsking = (caught: readonly Caught[]): boolean =>
  caught.some(({ kind }) => kind !== 'verb') || caught.length >= 2;
