/**
 * "I'm back from the shops, let me get this lot away": a stretch of a sentence that names nothing of the
 * kitchen and takes nothing back sets the scene. Its words say nothing that could be noted, and nobody needs
 * to be asked about them.
 */
import type { DynamicRules } from '../../../grammar/api.js';
import { neverNames } from '../../gate/index.js';
import type { Chunk } from '../api.js';
import type { MovesLexicon } from '../lexicon.js';
import { is } from './telling.js';

interface Given {
  readonly chunks: readonly Chunk[];
  readonly tokens: readonly string[];
  readonly pauses: ReadonlySet<number>;
  readonly rules: DynamicRules;
  readonly lexicon: MovesLexicon;
}

/** Words that begin another stretch, though nobody paused. */
const begins = (chunk: Chunk): boolean => is(chunk, 'and', 'so', 'but', 'because', 'i');

const stretches = ({ chunks, pauses }: Given): readonly (readonly Chunk[])[] =>
  chunks.reduce<Chunk[][]>((all, chunk) => {
    const last = all.at(-1);
    if (last && !pauses.has(chunk.from) && !begins(chunk)) last.push(chunk);
    else all.push([chunk]);
    return all;
  }, []);

/** Said with a word that may take back, doubt, plan or warn: never passed over. */
const weighs = ({ tokens, lexicon }: Given, { from, to }: Chunk): boolean =>
  tokens.slice(from, to).some((word) => lexicon.weighs(word));

/** Where somebody came from or went, which is no place here. */
const elsewhere = (before: Chunk | undefined): boolean => is(before, 'prep', 'from', 'direction', 'by');

/** "Heaving", of "heave": an everyday word, however it ends. */
const isEveryday = ({ lexicon }: Given, word: string): boolean => {
  const stem = word.replace(/(ing|ed|s)$/, '');
  return (
    neverNames(word, lexicon.language) ||
    lexicon.isOrdinary(word) ||
    lexicon.isOrdinary(stem) ||
    lexicon.isOrdinary(`${stem}e`)
  );
};

/** Something was done, or is so, or on a day. */
const tells = (chunk: Chunk): boolean =>
  chunk.kind === 'word' && [...chunk.classes].some((name) => /^(deed|state|date):/.test(name));

const isAside = (given: Given, stretch: readonly Chunk[]): boolean =>
  stretch.every((chunk, at) => {
    if (weighs(given, chunk)) return false;
    const words = given.tokens.slice(chunk.from, chunk.to);
    const everyday = words.every((word) => isEveryday(given, word));
    switch (chunk.kind) {
      case 'word':
        return !is(chunk, 'not', 'without', 'if', 'wished', 'reported', 'wh', 'caution', 'diet');
      case 'unknown':
        return everyday || elsewhere(stretch[at - 1]);
      case 'thing':
        return chunk.source === 'open' && (everyday || elsewhere(stretch[at - 1]));
      case 'container':
        return everyday;
      // "It was heaving in there": nothing here.
      case 'pointer':
        return !stretch.some(tells);
      default:
        return false;
    }
  });

/** The positions of all words that stand in asides; none where the whole sentence would be one. */
export const wordsAside = (given: Given): ReadonlySet<number> => {
  const all = stretches(given);
  const asides = all.filter((stretch) => isAside(given, stretch));
  if (asides.length === all.length) return new Set();
  return new Set(
    asides.flatMap((stretch) =>
      stretch.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, step) => from + step)),
    ),
  );
};
