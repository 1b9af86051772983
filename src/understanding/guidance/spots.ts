/** Where phrases of the guidance lexicon, names, foods and figures stand in a sentence. */
import type { DynamicRules, SemanticValue } from '../../grammar/api.js';
import { guidanceLexicon } from './lexicon.js';

export interface Spot {
  readonly kind: string;
  readonly value: string;
  readonly from: number;
  readonly to: number;
}

/**
 * Every phrase of every class, wherever it stands; of one class, none within a longer one ("not opened" is no
 * "opened"), and none within a quality of the food: "shelf stable" is no shelf.
 */
export const spotsIn = (tokens: readonly string[], language: string): readonly Spot[] => {
  const lexicon = guidanceLexicon(language);
  const spots: Spot[] = [];
  tokens.forEach((token, from) => {
    const taken = new Set<string>();
    for (const { kind, value, words } of lexicon.get(token) ?? []) {
      if (taken.has(kind) || !words.every((word, at) => tokens[from + at] === word)) continue;
      taken.add(kind);
      spots.push({ kind, value, from, to: from + words.length });
    }
  });
  return spots.filter(
    (one) =>
      !spots.some(
        ({ kind, from, to }) =>
          (kind === one.kind || kind === 'quality') &&
          from <= one.from &&
          to >= one.to &&
          to - from > one.to - one.from,
      ),
  );
};

export interface Match {
  readonly from: number;
  readonly to: number;
  readonly value: SemanticValue;
  readonly weight: number;
}

/** What a rule of the household finds anywhere in the sentence, longest first, none within another. */
export const matchesIn = (
  tokens: readonly string[],
  rules: DynamicRules,
  uri: string,
  atLeast = 0,
): readonly Match[] => {
  const rule = rules.get(uri);
  if (!rule) return [];
  const all = tokens.flatMap((_, from) =>
    rule.matchesAt(tokens, from).map(({ length, value, weight = 1 }) => ({
      from,
      to: from + length,
      value,
      weight,
    })),
  );
  const kept: Match[] = [];
  for (const one of all.sort((a, b) => b.to - b.from - (a.to - a.from) || b.weight - a.weight)) {
    if (one.weight < atLeast || kept.some(({ from, to }) => one.from < to && from < one.to)) continue;
    kept.push(one);
  }
  return kept.sort((a, b) => a.from - b.from);
};
