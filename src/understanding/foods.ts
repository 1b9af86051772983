/**
 * Foods and household goods that everybody knows, from `grammars/<language>/words/foods.txt`,
 * `food-modifiers.txt` and `goods.txt`: so that a food this household never had is still heard as food.
 */
import pluralize from 'pluralize';
import { wordFormsOf } from './languages/index.js';
import type { DynamicMatch, DynamicRule } from '../grammar/api.js';
import { createFoodSounds, type FoodHeard } from './foods-by-sound.js';
import type { NamedMatch } from './names/api.js';
import { lexiconFor } from './words/index.js';
import { entriesOf } from './word-lists.js';
import { noMatches, rememberingRule } from './words/rule.js';

type Singular = (word: string) => string;

/** What one and several of a word share; remembered, and forgotten wholesale before it could grow without end. */
const remembering = (stem: Singular): Singular => {
  const known = new Map<string, string>();
  return (word) => {
    let found = known.get(word);
    if (found === undefined) {
      if (known.size > 20_000) known.clear();
      found = stem(word);
      known.set(word, found);
    }
    return found;
  };
};
const singulars = new Map<string, Singular>();
const singularIn = (language: string): Singular => {
  let found = singulars.get(language);
  if (!found) singulars.set(language, (found = remembering(wordFormsOf(language).stemOf)));
  return found;
};

/** Phrases by first word, so that a look-up costs one map access at most places of a sentence. */
type PhraseIndex = ReadonlyMap<string, readonly (readonly string[])[]>;

const indexOf = (entries: readonly string[], singular: Singular): PhraseIndex => {
  const index = new Map<string, string[][]>();
  for (const entry of entries) {
    const words = entry.split(/\s+/).map(singular);
    const list = index.get(words[0]!);
    if (list) list.push(words);
    else index.set(words[0]!, [words]);
  }
  return index;
};

/** Lengths of all phrases that start at `from`. */
const lengthsAt = (index: PhraseIndex, words: readonly string[], from: number): number[] => {
  const lengths: number[] = [];
  for (const phrase of index.get(words[from] ?? '') ?? []) {
    if (phrase.every((word, at) => words[from + at] === word)) lengths.push(phrase.length);
  }
  return lengths;
};

/** "cream of mushroom soup", "pasta with meatballs": one food named by two. English, where a language lists none. */
const englishJoiners = ['of', 'with'];
type FoodSounds = (word: string) => FoodHeard | null;

/** Longest name of a food, in words. */
const longestName = 7;

const matchOf = (said: readonly string[], from: number, length: number, weight: number): DynamicMatch => {
  const value: NamedMatch = {
    words: said.slice(from, from + length).join(' '),
    candidates: [],
    maker: null,
  };
  return { length, value: { ...value, candidates: [] }, weight };
};

/** A word that is no food but sounds like one is less likely meant so; least where it is a word of its own. */
const bySound = { misspelt: 0.6, homophone: 0.5 } as const;

/** The words with each put right that only sounds like a food, and how much less likely they are for it. */
const putRight = (
  tokens: readonly string[],
  from: number,
  soundsLike: FoodSounds,
  singular: Singular,
): { readonly tokens: readonly string[]; readonly weight: number } => {
  let weight = 1;
  const right = tokens.map((token, at) => {
    if (at < from || at >= from + longestName) return token;
    const single = singular(token);
    const heard = soundsLike(single);
    if (!heard || heard.doubtful) return token;
    weight *= heard.misspelt ? bySound.misspelt : bySound.homophone;
    return single === token ? heard.food : pluralize.plural(heard.food);
  });
  return { tokens: right, weight };
};

const foodRule = (words: FoodWords, soundsLike: FoodSounds): DynamicRule => {
  const asHeard = plainFoodRule(words);
  return rememberingRule((tokens, from) => {
    const plain = asHeard.matchesAt(tokens, from);
    const right = putRight(tokens, from, soundsLike, words.singular);
    if (right.weight === 1) return plain;
    const lengths = new Set(plain.map(({ length }) => length));
    const more = asHeard
      .matchesAt(right.tokens, from)
      .filter(({ length }) => !lengths.has(length))
      .map((match) => ({ ...match, weight: (match.weight ?? 1) * right.weight }));
    return [...plain, ...more];
  });
};

interface FoodWords {
  readonly foods: PhraseIndex;
  readonly modifiers: PhraseIndex;
  /** Words between two parts of one name. */
  readonly joiners: PhraseIndex;
  readonly singular: Singular;
  /** "Queso fresco": what kind it is stands after it. */
  readonly headFirst: boolean;
}

const plainFoodRule = ({ foods, modifiers, joiners, singular, headFirst }: FoodWords): DynamicRule =>
  rememberingRule((tokens, from) => {
    const first = singular(tokens[from] ?? '');
    if (!foods.has(first) && (headFirst || !modifiers.has(first))) return noMatches;
    const words = tokens.map(singular);
    const best = new Map<number, number>();
    /** Walks modifiers and foods; every place where a food ends is a match. */
    const walk = (at: number, weight: number): void => {
      if (at - from >= longestName || at >= words.length) return;
      for (const length of lengthsAt(foods, words, at)) {
        const end = at + length;
        if (!((best.get(end - from) ?? -1) >= weight)) {
          best.set(end - from, weight);
          if (headFirst) described(end, weight);
          else walk(end, weight);
          for (const joint of lengthsAt(joiners, words, end))
            walk(end + joint, weight * (headFirst ? 0.8 : 0.5));
        }
      }
      if (!headFirst) for (const length of lengthsAt(modifiers, words, at)) walk(at + length, weight);
    };
    const described = (at: number, weight: number): void => {
      for (const length of lengthsAt(modifiers, words, at)) {
        const end = at + length;
        if ((best.get(end - from) ?? -1) >= weight) continue;
        best.set(end - from, weight);
        described(end, weight);
        for (const joint of lengthsAt(joiners, words, end)) walk(end + joint, weight * 0.8);
      }
    };
    walk(from, 1);
    return [...best].map(([length, weight]) => matchOf(tokens, from, length, weight));
  });

const goodsRule = (goods: PhraseIndex, singular: Singular): DynamicRule =>
  rememberingRule((tokens, from) => {
    if (!goods.has(singular(tokens[from] ?? ''))) return noMatches;
    const lengths = lengthsAt(goods, tokens.map(singular), from);
    return [...new Set(lengths)].map((length) => matchOf(tokens, from, length, 1));
  });

const made = new Map<string, ReadonlyMap<string, DynamicRule>>();
const understood = new Map<string, FoodSounds>();

/**
 * A name as it is said back: "chikin thighs" are chicken thighs. A word of its own ("time") stays as it
 * was heard, unless only a food can be meant.
 */
export const asUnderstood = (words: string, language: string, foodMeant: boolean): string => {
  const singular = singularIn(language);
  return words
    .split(' ')
    .map((word) => {
      const single = singular(word);
      const heard = understood.get(language)?.(single);
      if (!heard || !(foodMeant || heard.misspelt)) return word;
      return single === word ? heard.food : pluralize.plural(heard.food);
    })
    .join(' ');
};

/** `kitchen:food` and `kitchen:goods` for a language; the same for every household. */
export const foodRules = (language: string): ReadonlyMap<string, DynamicRule> => {
  let rules = made.get(language);
  if (!rules) {
    const singular = singularIn(language);
    const { headFirst } = wordFormsOf(language);
    const named = entriesOf(language, 'foods');
    const foods = indexOf(named, singular);
    const ofOneWord = new Set(named.filter((food) => !food.includes(' ')).map(singular));
    const goods = new Set(entriesOf(language, 'goods').map(singular));
    const soundsLike = createFoodSounds(
      ofOneWord,
      new Set([...goods, ...entriesOf(language, 'no-food')]),
      lexiconFor(language),
    );
    understood.set(language, soundsLike);
    const listed = entriesOf(language, 'food-joiners');
    const joiners = listed.length > 0 ? listed : englishJoiners;
    rules = new Map([
      [
        'kitchen:food',
        foodRule(
          {
            foods,
            modifiers: indexOf(entriesOf(language, 'food-modifiers'), singular),
            joiners: indexOf(joiners, singular),
            singular,
            headFirst,
          },
          soundsLike,
        ),
      ],
      ['kitchen:goods', goodsRule(indexOf(entriesOf(language, 'goods'), singular), singular)],
    ]);
    made.set(language, rules);
  }
  return rules;
};
