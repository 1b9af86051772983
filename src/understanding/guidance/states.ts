/** How the food is: told beside its name, or part of it. */
import type { Mention } from '../intents.js';
import { OF_NAMES, type foodOf } from './food.js';
import type { FoodState } from './facts.js';
import { spotsOf, type Sentence } from './sentence.js';

/** States told beside the name; what stands in it ("roast beef", "fresh ham") is the name's. */
export const statesIn = (
  sentence: Sentence,
  named: { readonly from: number; readonly to: number } | null,
): readonly FoodState[] => [
  ...new Set(
    spotsOf(sentence, 'state')
      .filter(({ value, from, to }) => !named || !OF_NAMES.has(value) || to <= named.from || from >= named.to)
      .map(({ value }) => value as FoodState),
  ),
];

/**
 * "Eggnog I made myself", "lobsters that are still alive", "a can of ham", "ham that says keep refrigerated": told
 * beside the name, and a row of its own.
 */
export const withStates = (sentence: Sentence, named: ReturnType<typeof foodOf>): Mention | null => {
  if (!named) return null;
  const { mention, from, to } = named;
  const beside = [
    ...statesIn(sentence, named).filter((state) => state === 'homemade' || state === 'live'),
    ...spotsOf(sentence, 'tinof').flatMap((one) => (one.to === from ? [one.value] : [])),
    ...spotsOf(sentence, 'soldat').map(({ value }) => value),
    ...spotsOf(sentence, 'quality')
      .filter((one) => one.value !== '' && (one.to <= from || one.from >= to))
      .map(({ value }) => value),
  ].filter((word) => !mention.words?.split(' ').includes(word));
  return beside.length === 0 ? mention : { ...mention, words: [...beside, mention.words].join(' ') };
};
