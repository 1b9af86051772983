/** A household's names with weights, for recognisers that take words to listen for. */
import type { Kitchen } from '../kitchen/model.js';
import { phrasesOf, spoken } from './phrases.js';

export interface WeightedPhrase {
  readonly phrase: string;
  /** How many records carry it, of food that is gone too: what comes back is called what it was called. */
  readonly weight: number;
}

const NAMED = ['kitchen:item', 'kitchen:place', 'kitchen:marker', 'kitchen:person'] as const;

/** Heaviest first, then by letter. */
export const weightedPhrases = (kitchen: Kitchen): readonly WeightedPhrase[] => {
  const weights = new Map<string, number>();
  const add = (phrase: string, weight: number): void => {
    if (phrase !== '') weights.set(phrase, (weights.get(phrase) ?? 0) + weight);
  };
  const phrases = phrasesOf(kitchen);
  for (const uri of NAMED) for (const phrase of phrases(uri)) add(phrase, 0);
  for (const { name, maker } of kitchen.items.values()) {
    add(spoken(name), 1);
    if (maker !== null) add(spoken(maker), 1);
  }
  for (const { name } of kitchen.purchases.values()) add(spoken(name), 1);
  return [...weights]
    .map(([phrase, weight]) => ({ phrase, weight: Math.max(1, weight) }))
    .sort((a, b) => b.weight - a.weight || a.phrase.localeCompare(b.phrase, 'en'));
};
