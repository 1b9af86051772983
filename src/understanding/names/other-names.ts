/** The same food by another region's word, from `grammars/<language>/words/other-names.txt`. */
import { wordFormsOf } from '../languages/index.js';
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
  const byHead = new Map<string, Phrase[]>();
  const { headFirst } = wordFormsOf(lexicon.language);
  const add = (words: string, others: readonly OtherName[], after: boolean): void => {
    const stems = words.split(' ').map((word) => stemOf(word, lexicon));
    const head = stems.at(headFirst ? 0 : -1)!;
    byHead.set(head, [...(byHead.get(head) ?? []), { stems, others, after }]);
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
  return byHead;
});

/** What else `name` may be called: its end (its beginning, where the noun comes first) put into another word, or what kind of food it is said after it. */
export const otherNamesOf = (name: string, lexicon: Lexicon): readonly OtherName[] => {
  const words = name.toLowerCase().split(/\s+/).filter(Boolean);
  const stems = words.map((word) => stemOf(word, lexicon));
  const { headFirst } = wordFormsOf(lexicon.language);
  const fitting = (readPhrases(lexicon).get(stems.at(headFirst ? 0 : -1) ?? '') ?? []).filter((phrase) => {
    const from = headFirst ? 0 : stems.length - phrase.stems.length;
    return phrase.stems.every((stem, at) => stems[from + at] === stem);
  });
  // "Chicken mince" is no other mince: the longest fits best, and its kin are the same line's.
  const longest = Math.max(0, ...fitting.filter(({ after }) => !after).map((phrase) => phrase.stems.length));
  const found = new Map<string, OtherName>();
  for (const phrase of fitting) {
    if (!phrase.after && phrase.stems.length < longest) continue;
    const many = phrase.after ? 0 : phrase.stems.length;
    const rest = headFirst ? words.slice(many) : words.slice(0, words.length - many);
    for (const other of phrase.others) {
      const said = (headFirst ? [other.name, ...rest] : [...rest, other.name]).join(' ');
      if ((found.get(said)?.fit ?? 0) < other.fit) found.set(said, { name: said, fit: other.fit });
    }
  }
  return [...found.values()].slice(0, most);
};
