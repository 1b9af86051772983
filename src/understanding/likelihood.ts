/**
 * What speaks against a reading besides its grammar weight: words of another subject, names
 * that only half fit, things named by nothing but a container. Natural logarithms, at most 0.
 */
import { entriesOf } from './word-lists.js';
import type { Act, Candidate, Expectation, Mention } from './intents.js';

/** A word of another subject: the sentence may still be ours, but something must speak for it. */
const elsewhereCost = -4;
/** "my package": a container alone, that no food, shape or place tells apart. */
const vagueCost = -3;
/** "pizza" alone, when nothing was asked. */
const uncalledCost = -5;

type Phrases = ReadonlyMap<string, readonly (readonly string[])[]>;
const lists = new Map<string, Phrases>();
const elsewhereIn = (language: string): Phrases => {
  let phrases = lists.get(language);
  if (!phrases) {
    const index = new Map<string, (readonly string[])[]>();
    for (const entry of entriesOf(language, 'elsewhere')) {
      const words = entry.split(' ');
      index.set(words[0]!, [...(index.get(words[0]!) ?? []), words]);
    }
    lists.set(language, (phrases = index));
  }
  return phrases;
};

/** Cost of a whole sentence, whatever it is read as. */
export const sentenceCost = (tokens: readonly string[], language: string): number => {
  const phrases = elsewhereIn(language);
  const strange = tokens.some((token, at) =>
    phrases.get(token)?.some((phrase) => phrase.every((word, step) => tokens[at + step] === word)),
  );
  return strange ? elsewhereCost : 0;
};

/** "everything", "the thing": words that name nothing to buy or put away. */
const namelessCost = -5;
const listedIn = (list: string): ((language: string) => ReadonlySet<string>) => {
  const known = new Map<string, ReadonlySet<string>>();
  return (language) => {
    let words = known.get(language);
    if (!words) known.set(language, (words = new Set(entriesOf(language, list))));
    return words;
  };
};
const namelessIn = listedIn('nameless');
const nobodyIn = listedIn('nobody');
const namesNothing = ({ words, candidates }: Mention, language: string): boolean =>
  words !== null &&
  candidates.length === 0 &&
  words.split(' ').some((word) => namelessIn(language).has(word));

const bestFit = (candidates: readonly Candidate[]): number =>
  candidates.reduce((best, { fit }) => Math.max(best, fit), 0);

const vague = ({ words, pointer, touch, ordinal, maker, diet, at }: Mention): boolean =>
  words === null &&
  pointer === null &&
  ordinal === null &&
  maker === null &&
  diet === null &&
  at === null &&
  touch !== null &&
  Object.keys(touch).every((part) => part === 'container');

/** "Shepherd's pie" read as the pie of one Shepherd: what fits whole is likelier. */
const halfNamedCost = -1.2;
const wellNamed = 0.8;
const halfNamed = ({ words, maker, candidates }: Mention): boolean =>
  words !== null && maker !== null && candidates.length > 0 && bestFit(candidates) < wellNamed;

const halfPlacedCost = -1;
const wellPlaced = 0.7;

/** Cost of one act, given what the conversation waits for. */
export const actCost = ({ intent, slots }: Act, expecting: Expectation, language: string): number => {
  let cost = 0;
  const mentions = [slots.item, slots.marker, ...(slots.items ?? [])];
  for (const mention of mentions) {
    if (!mention) continue;
    if (vague(mention)) cost += vagueCost;
    if (namesNothing(mention, language)) cost += namelessCost;
    if (halfNamed(mention)) cost += halfNamedCost;
  }
  // "Into the salad" is hardly the salad drawer.
  const place = slots.place?.candidates ?? [];
  if (place.length > 0 && bestFit(place) < wellPlaced) cost += halfPlacedCost;
  // "What should I cook for dinner" asks nothing of a person called Dinner.
  if (intent === 'can-eat' && slots.words && nobodyIn(language).has(slots.words)) cost += namelessCost;
  if (intent === 'choose' && expecting === 'anything') {
    const named = slots.item?.words !== null && slots.item?.touch === null;
    if (named && bestFit(slots.item?.candidates ?? []) < 1) cost += uncalledCost;
  }
  return cost;
};
