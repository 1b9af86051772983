/** The same food by another region's word, from `grammars/<language>/words/other-names.txt`. */
import { linesOf } from '../word-lists.js';
import { perLexicon, type Lexicon } from '../words/lexicon.js';
import { stemOf } from './stems.js';

export interface OtherName {
  readonly name: string;
  /** 0 to 1: how well it fits, said in full. */
  readonly fit: number;
}

/** The name on record goes before, where both are in the kitchen. */
const sameFit = 0.87;
/** Less than what a loss wants: it is asked about. */
const nearFit = 0.76;
/** A record has no more names than this. */
const most = 12;

interface Phrase {
  readonly stems: readonly string[];
  readonly others: readonly OtherName[];
  /** Put after the name rather than in place of its end. */
  readonly after: boolean;
}

const readPhrases = perLexicon((lexicon): ReadonlyMap<string, readonly Phrase[]> => {
  const byLast = new Map<string, Phrase[]>();
  const add = (words: string, others: readonly OtherName[], after: boolean): void => {
    const stems = words.split(' ').map((word) => stemOf(word, lexicon));
    const last = stems.at(-1)!;
    byLast.set(last, [...(byLast.get(last) ?? []), { stems, others, after }]);
  };
  for (const line of linesOf(lexicon.language, 'other-names')) {
    const [, sort = '', of, rest = ''] = /^(same|near|kind)(?: ([^:]+))?:(.*)$/.exec(line) ?? [];
    const names = rest
      .split(',')
      .map((name) => name.trim().toLowerCase())
      .filter(Boolean);
    for (const name of names) {
      if (sort === 'kind') add(name, of ? [{ name: of, fit: 1 }] : [], true);
      else {
        const fit = sort === 'same' ? sameFit : nearFit;
        add(
          name,
          names.filter((other) => other !== name).map((other) => ({ name: other, fit })),
          false,
        );
      }
    }
  }
  return byLast;
});

/** What else `name` may be called: its end put into another word, or what kind of food it is said after it. */
export const otherNamesOf = (name: string, lexicon: Lexicon): readonly OtherName[] => {
  const words = name.toLowerCase().split(/\s+/).filter(Boolean);
  const stems = words.map((word) => stemOf(word, lexicon));
  const fitting = (readPhrases(lexicon).get(stems.at(-1) ?? '') ?? []).filter((phrase) =>
    phrase.stems.every((stem, at) => stems[stems.length - phrase.stems.length + at] === stem),
  );
  // "Chicken mince" is no other mince: the longest fits best, and its kin are the same line's.
  const longest = Math.max(0, ...fitting.filter(({ after }) => !after).map((phrase) => phrase.stems.length));
  const found = new Map<string, OtherName>();
  for (const phrase of fitting) {
    if (!phrase.after && phrase.stems.length < longest) continue;
    const before = phrase.after ? words : words.slice(0, words.length - phrase.stems.length);
    for (const other of phrase.others) {
      const said = [...before, other.name].join(' ');
      if ((found.get(said)?.fit ?? 0) < other.fit) found.set(said, { name: said, fit: other.fit });
    }
  }
  return [...found.values()].slice(0, most);
};
