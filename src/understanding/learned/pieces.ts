/** A sentence as what was learned sees it: names, days and numbers each stand as one piece of a kind. */
import type { DynamicRules, SemanticValue } from '../../grammar/api.js';
import type { Candidate } from '../intents.js';

export type PieceKind = 'place' | 'food' | 'length' | 'day' | 'time' | 'number' | 'person';

export interface Piece {
  /** Null for a word that stands for itself. */
  readonly kind: PieceKind | null;
  /** The word, or the kind in angle brackets. */
  readonly text: string;
  /** In tokens. */
  readonly from: number;
  readonly length: number;
  readonly value: SemanticValue | null;
  /** Of two foods the lower is likelier meant: her own, one that everybody knows, household goods. */
  readonly rank: number;
}

/** In this order where two are as long. A name must fit so well that nothing else is likelier. */
const readers: readonly (readonly [uri: string, kind: PieceKind, leastFit: number])[] = [
  ['kitchen:place', 'place', 0.9],
  ['kitchen:item', 'food', 0.9],
  ['kitchen:food', 'food', 0],
  ['kitchen:goods', 'food', 0],
  ['builtin:grammar/duration', 'length', 0],
  ['builtin:grammar/date?lean=past', 'day', 0],
  ['builtin:grammar/time', 'time', 0],
  ['builtin:grammar/number', 'number', 0],
  ['kitchen:person', 'person', 0.95],
];

/** The rank of household goods. */
export const goodsRank = readers.findIndex(([uri]) => uri === 'kitchen:goods');

/** These say more by themselves than as a number or a day. */
const plainWords: ReadonlySet<string> = new Set(
  'one a second first last this that now today tonight morning evening night'.split(' '),
);

interface Named {
  readonly candidates?: readonly Candidate[];
  readonly path?: readonly { readonly candidates?: readonly Candidate[] }[];
}
/** "The second drawer of the upright freezer", which has none, is as surely a place as the freezer is. */
const fitOf = (value: SemanticValue): number => {
  const { candidates, path = [] } = (value as Named | null) ?? {};
  const [whole, ...parts] = path;
  return candidates?.[0]?.fit ?? (parts.length > 0 ? whole?.candidates?.[0]?.fit : undefined) ?? 0;
};

export const piecesOf = (tokens: readonly string[], rules: DynamicRules): readonly Piece[] => {
  const pieces: Piece[] = [];
  for (let at = 0; at < tokens.length;) {
    let best: Piece = { kind: null, text: tokens[at]!, from: at, length: 1, value: null, rank: 0 };
    for (const [rank, [uri, kind, leastFit]] of readers.entries()) {
      for (const { length, value } of rules.get(uri)?.matchesAt(tokens, at) ?? []) {
        if (length === 1 && plainWords.has(tokens[at]!)) continue;
        if (leastFit > 0 && fitOf(value) < leastFit) continue;
        if (length > best.length || (best.kind === null && length === 1))
          best = { kind, text: `<${kind}>`, from: at, length, value, rank };
      }
    }
    pieces.push(best);
    at += best.length;
  }
  return pieces;
};
