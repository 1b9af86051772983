/**
 * Words of allergy and risk under another spelling: "coalic" for coeliac, "keemo" for chemo. Only a word that is none
 * of the language's, of the kitchen's or of the list's is taken so, and what is noted is said back by its own name.
 */
import type { DynamicRules } from '../../grammar/api.js';
import { movesLexicon } from '../moves/lexicon.js';
import { alike, hasPronunciation, soundsOf } from '../names/sounds.js';
import { lexiconFor } from '../words/index.js';
import { guidanceLexicon, guidanceWords } from './lexicon.js';

const kinds = ['allergy', 'coeliac', 'risk', 'allergen'] as const;
const known = ['kitchen:item', 'kitchen:food', 'kitchen:person'] as const;
/** So alike that no other word of the list is meant. */
const nearly = 0.8;
const shortest = 5;

const meant = new Map<string, readonly { readonly word: string; readonly sounds: string }[]>();
const wordsMeant = (language: string) => {
  const before = meant.get(language);
  if (before) return before;
  const lexicon = lexiconFor(language);
  const words = new Set(kinds.flatMap((kind) => [...guidanceWords(language, kind)]));
  const made = [...words]
    .filter((word) => word.length >= shortest)
    .map((word) => ({ word, sounds: soundsOf(word, lexicon) }));
  meant.set(language, made);
  return made;
};

export const asMeant = (
  tokens: readonly string[],
  rules: DynamicRules,
  language: string,
): readonly string[] => {
  const lexicon = lexiconFor(language);
  const strange = (word: string, at: number): boolean =>
    word.length >= shortest &&
    /^\p{L}+$/u.test(word) &&
    !hasPronunciation(word, lexicon) &&
    !guidanceLexicon(language).has(word) &&
    movesLexicon(language)?.isOrdinary(word) !== true &&
    !known.some((uri) =>
      tokens.some((_, from) =>
        (rules.get(uri)?.matchesAt(tokens, from) ?? []).some(
          ({ length, weight = 1 }) => weight >= surely && from <= at && at < from + length,
        ),
      ),
    );
  return tokens.map((word, at) => {
    if (!strange(word, at)) return word;
    const sounds = soundsOf(word, lexicon);
    const [best] = wordsMeant(language)
      .map((one) => ({ word: one.word, fit: alike(sounds, one.sounds) }))
      .filter(({ fit }) => fit >= nearly)
      .sort((a, b) => b.fit - a.fit);
    return best?.word ?? word;
  });
};
/** A name that only half fits is no name of hers. */
const surely = 0.9;
