import { perLexicon } from '../lexicon.js';
import { phraseTable } from '../phrases.js';
import type { Word } from '../tokens.js';
import { asWords, textsOf, type Pass } from './pass.js';

const tables = perLexicon((lexicon) => ({
  spoken: phraseTable(Object.entries(lexicon.tidying.contractions)),
  afterHas: new Set(lexicon.tidying.afterNounHas.words),
  afterNoun: new Set(lexicon.tidying.afterNounIs.words),
  afterIts: new Set(lexicon.tidying.itsIs.words),
}));

/** "what's" is "what is"; "the milk's gone" is "the milk is gone"; "amara's beans" stay hers. */
export const contractions: Pass = (words, lexicon, note) => {
  const { spoken, afterHas, afterNoun, afterIts } = tables(lexicon);
  const texts = textsOf(words);
  const out: Word[] = [];
  let changed = false;
  for (let at = 0; at < words.length;) {
    const { text, pause } = words[at]!;
    const hit = spoken.longestAt(texts, at);
    const following = texts[at + 1] ?? '';
    let length = 1;
    let to: string | null = null;
    // "It's got nuts in it", "the milk's been out": has, whatever it is said of.
    if (text.length > 3 && /^its$|'s$/.test(text) && afterHas.has(following))
      to = `${text.replace(/'?s$/, '')} has`;
    else if (hit) [to, length] = [hit.value, hit.length];
    else if (text === 'its' && afterIts.has(following)) to = 'it is';
    // "The goat cheese'll hold".
    else if (text.length > 4 && text.endsWith("'ll")) to = `${text.slice(0, -3)} will`;
    else if (text.length > 2 && text.endsWith("'s") && afterNoun.has(following))
      to = `${text.slice(0, -2)} is`;
    if (to === null) out.push(words[at]!);
    else {
      changed = true;
      note({ pass: 'contractions', from: texts.slice(at, at + length).join(' '), to });
      out.push(...asWords(to, pause));
    }
    at += length;
  }
  return changed ? out : words;
};
