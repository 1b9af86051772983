/**
 * What a sentence is judged by: its words and pairs of neighbours, by stem; which senses it holds
 * (`#sense`), any two of them in any order (`#sense+sense`), what it begins and ends with (`^`, `$`),
 * and about how long it is.
 */
import { stemOfPiece, type Senses } from './senses.js';

const lengths: readonly (readonly [most: number, name: string])[] = [
  [2, 'words<3'],
  [4, 'words<5'],
  [7, 'words<8'],
  [11, 'words<12'],
  [Infinity, 'words>11'],
];

/** `texts`: words and pieces as in `Piece.text`. */
export const featuresOf = (texts: readonly string[], senses: Senses): readonly string[] => {
  const stems = texts.map(stemOfPiece);
  const found = new Set<string>();
  const active = new Set<string>();
  stems.forEach((stem, at) => {
    if (stem.startsWith('<')) active.add(stem);
    for (const { stems: phrase, sense } of senses.get(stem) ?? []) {
      if (!phrase.every((word, step) => stems[at + step] === word)) continue;
      active.add(sense);
      if (at === 0) found.add(`^#${sense}`);
      if (at + phrase.length === stems.length) found.add(`#${sense}$`);
    }
  });
  let before = '^';
  for (const stem of stems) {
    found.add(stem);
    found.add(`${before} ${stem}`);
    before = stem;
  }
  found.add(`${before} $`);
  const all = [...active].sort();
  all.forEach((one, at) => {
    found.add(`#${one}`);
    for (const other of all.slice(at + 1)) found.add(`#${one}+${other}`);
  });
  found.add(lengths.find(([most]) => stems.length <= most)![1]);
  return [...found];
};
