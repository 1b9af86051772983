import { LRUCache } from 'lru-cache';
import { lexiconFor, type Lexicon } from './lexicon.js';
import { contractions } from './passes/contractions.js';
import { figures } from './passes/figures.js';
import { fillersAnywhere, fillersAtEnd, fillersAtStart, fillersBetweenCommas } from './passes/fillers.js';
import { textsOf, type Note, type Pass } from './passes/pass.js';
import { repairs } from './passes/repairs.js';
import { splitWords } from './passes/split-words.js';
import { stutters } from './passes/stutters.js';
import { vocatives } from './passes/vocatives.js';
import { wordsOf, type Word } from './tokens.js';

export type { Note } from './passes/pass.js';

/** In order. The list is run again until nothing changes any more. */
const passes: readonly Pass[] = [
  contractions,
  figures,
  splitWords,
  vocatives,
  fillersBetweenCommas,
  stutters,
  // Before fillers: "I mean" and "no wait" are cues here, and "please" would hide a cue's end.
  repairs,
  fillersAnywhere,
  fillersAtStart,
  fillersAtEnd,
];

const unmended = passes.filter((pass) => pass !== repairs);

/** More than anybody says in a breath. Longer input is cut, and a note says so. */
export const longestInput = { characters: 1000, words: 80 } as const;

export interface Normalised {
  readonly tokens: readonly string[];
  /** Tokens a pause was written before, by their index: a comma, a full stop. */
  readonly pauses: ReadonlySet<number>;
  readonly notes: readonly Note[];
  /** True when the input was longer than `longestInput`: the rest was not read. */
  readonly cut: boolean;
  /** True when a word of doubt was taken away: "I think the milk is gone". Ask before losing anything. */
  readonly hedged: boolean;
}

const tidy = (
  words: readonly Word[],
  lexicon: Lexicon,
  note: (note: Note) => void,
  inOrder: readonly Pass[],
): readonly Word[] => {
  let tidied = words;
  // Each change shortens the sentence or spells a word out, so this ends; the bound is a belt to those braces.
  for (let round = 0; round < 200; round += 1) {
    const before = tidied;
    for (const pass of inOrder) {
      const next = pass(tidied, lexicon, note);
      // A sentence of nothing but fillers means what it says: "okay", "thank you".
      if (next.length > 0) tidied = next;
    }
    if (tidied === before) break;
  }
  return tidied;
};

/** Several readers of a turn begin with the same words. */
const lately = new LRUCache<string, Normalised>({ max: 64 });

/**
 * Text of a recogniser or a keyboard to tokens for the grammar: lower case, without punctuation,
 * contractions spelled out, figures as words, fillers and slips of the tongue taken away.
 * Idempotent: normalising `tokens.join(' ')` gives the same tokens.
 * `locale` is BCP 47; its language must have word lists under `grammars/`.
 */
export const normalise = (
  text: string,
  locale: string,
  /** False leaves slips and their mending as they were said, for a reader that knows what each word is. */
  { mended = true }: { readonly mended?: boolean } = {},
): Normalised => {
  const lexicon = lexiconFor(locale);
  const key = `${locale} ${mended ? 'mended' : 'as said'} ${text}`;
  const known = lately.get(key);
  if (known) return known;
  const made = normaliseAnew(text, lexicon, mended ? passes : unmended);
  lately.set(key, made);
  return made;
};

const normaliseAnew = (text: string, lexicon: Lexicon, inOrder: readonly Pass[]): Normalised => {
  const notes: Note[] = [];
  const short = text.slice(0, longestInput.characters);
  const heard = wordsOf(short, lexicon.tidying.symbols.signs);
  const tidied = tidy(heard.slice(0, longestInput.words), lexicon, (note) => notes.push(note), inOrder);
  const tokens = textsOf(tidied).slice(0, longestInput.words);
  const hedges = lexicon.tidying.hedges.phrases;
  return {
    tokens,
    pauses: new Set(tidied.flatMap(({ pause }, at) => (pause && at > 0 ? [at] : []))),
    notes,
    hedged: notes.some(({ from, to }) => to === '' && hedges.includes(from)),
    cut: short.length < text.length || heard.length > longestInput.words || tokens.length < tidied.length,
  };
};
