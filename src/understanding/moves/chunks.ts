/**
 * Constituents: every rule finds its spans anywhere in the sentence, and the cheapest cover of all its words
 * by them is taken. What nothing explains stays visible as `unknown`.
 *
 * Costs are what a constituent takes for standing there, in natural logarithms: a longer one explains more
 * words for the same, and a name known for certain is cheaper than one that only nearly fits.
 */
import type { DynamicRules, SemanticValue } from '../../grammar/api.js';
import type { Touch } from '../../terms/touch.js';
import type { Candidate, Mention, PlaceMention } from '../intents.js';
import { emptyMention } from '../intents.js';
import {
  asAmount,
  asDate,
  asPlace,
  asShare,
  asTouch,
  markerMention,
  namedMention,
  pointed,
} from '../meaning-parts.js';
import type { Chunk, Offer, Span } from './api.js';
import { classAt, movesLexicon, type MovesLexicon } from './lexicon.js';
import { somebodyAt } from './somebody.js';

const costs = {
  word: 0.12,
  /** A word that names nothing to eat. */
  nameless: 0.6,
  pointer: 0.25,
  amount: 0.2,
  bareUnit: 0.3,
  share: 0.28,
  number: 0.45,
  day: 0.2,
  time: 0.35,
  span: 0.3,
  marker: 0.2,
  vagueMarker: 0.6,
  container: 0.4,
  ordinal: 0.4,
  food: 0.3,
  goods: 0.4,
  /** A name nobody knows: once, and for each of its words. */
  open: 0.75,
  openWord: 0.35,
  /** A word of it that names nothing to eat; and if it is the last. */
  ordinaryWord: 0.3,
  ordinaryHead: 1.2,
  containerHead: 0.8,
  unknown: 1.4,
  twoFoods: 0.4,
  /** "To the right", of "to the right bin": a word that ends within a name of hers. */
  cutsName: 0.6,
} as const;

/** The longest open name, in words. */
const longestOpen = 4;

const hersCost = (fit: number): number => (fit >= 0.95 ? 0.18 : fit >= 0.8 ? 0.4 : fit >= 0.6 ? 0.75 : 1.6);
const placeCost = (fit: number): number => (fit >= 0.9 ? 0.2 : fit >= 0.7 ? 0.35 : 0.7);
const personCost = (fit: number): number => (fit >= 0.95 ? 0.2 : fit >= 0.8 ? 0.6 : 1);
const describedFit = 0.7;

const fitOf = (value: SemanticValue): number => {
  const candidates = (value as { candidates?: readonly Candidate[] } | null)?.candidates;
  return candidates?.[0]?.fit ?? 0;
};

type Finder = (tokens: readonly string[], from: number, rules: DynamicRules) => readonly Offer[];

/** The cheapest cover of the words by what stands at each position, in order: every token lies in just one piece. */
export const cheapestCover = <T extends Span>(
  length: number,
  offersAt: (from: number) => readonly Offer<T>[],
): { readonly pieces: readonly T[]; readonly cost: number } => {
  const best: { cost: number; last: T | null; before: number }[] = [{ cost: 0, last: null, before: -1 }];
  for (let to = 1; to <= length; to += 1) best.push({ cost: Infinity, last: null, before: -1 });
  for (let from = 0; from < length; from += 1)
    for (const { chunk, cost } of offersAt(from)) {
      const there = best[chunk.to]!;
      const sum = best[from]!.cost + cost;
      if (sum < there.cost - 1e-9) best[chunk.to] = { cost: sum, last: chunk, before: from };
    }
  const pieces: T[] = [];
  for (let at = length; at > 0; at = best[at]!.before) pieces.unshift(best[at]!.last!);
  return { pieces, cost: best[length]!.cost };
};

const byRule =
  (
    uri: string,
    make: (value: SemanticValue, from: number, to: number, tokens: readonly string[]) => Offer | null,
  ): Finder =>
  (tokens, from, rules) =>
    (rules.get(uri)?.matchesAt(tokens, from) ?? []).flatMap(({ length, value }) => {
      const offer = make(value, from, from + length, tokens);
      return offer ? [offer] : [];
    });

/** "Smoked salmon milk": a food of hers after another food is likelier the next of a list than part of its name. */
const twoFoods = (tokens: readonly string[], from: number, length: number, rules: DynamicRules): boolean => {
  const foodsAt = (at: number, of: number): boolean =>
    (rules.get('kitchen:food')?.matchesAt(tokens, at) ?? []).some((match) => match.length === of);
  for (let cut = 1; cut < length; cut += 1) {
    const hers = rules
      .get('kitchen:item')
      ?.matchesAt(tokens, from + cut)
      .some((match) => match.length === length - cut && fitOf(match.value) >= 0.99);
    const food = foodsAt(from, cut);
    if (hers && food && cut > 1) return true;
    // "Oranges grapefruit": of several oranges no other food is made.
    if (food && /[^s]s$/.test(tokens[from + cut - 1]!) && foodsAt(from + cut, length - cut)) return true;
  }
  return false;
};

/** Records of hers. `lexicon`: to know everyday words, of which a name that only half fits is not made. */
const hers =
  (lexicon: MovesLexicon | null): Finder =>
  (tokens, from, rules) =>
    (rules.get('kitchen:item')?.matchesAt(tokens, from) ?? []).flatMap(({ length, value }) => {
      const fit = fitOf(value);
      const to = from + length;
      if (fit < 0.5) return [];
      // "Sister's house", that half fits something: everyday words name nothing of hers.
      const vague = fit < 0.75 && tokens.slice(from, to).some((word) => lexicon?.isOrdinary(word));
      const chunk = {
        kind: 'thing' as const,
        from,
        to,
        mention: namedMention(value),
        fit,
        source: 'hers' as const,
      };
      return [{ chunk, cost: hersCost(fit) + (vague ? costs.ordinaryHead : 0) }];
    });

/** "Dish of lasagna": a container, and what is in it. */
const isUnitOf = (tokens: readonly string[], from: number, to: number, rules: DynamicRules): boolean => {
  for (let at = from + 2; at < to; at += 1)
    if (
      rules
        .get('kitchen:food')
        ?.matchesAt(tokens, at)
        .some(({ length }) => at + length === to)
    )
      return to - at < to - from - 1;
  return false;
};

/** "The gumbo": a food anybody knows, and short for something of hers. */
const nearlyHers = (
  tokens: readonly string[],
  from: number,
  length: number,
  rules: DynamicRules,
): readonly Candidate[] => {
  const match = rules
    .get('kitchen:item')
    ?.matchesAt(tokens, from)
    .find((one) => one.length === length);
  return match && fitOf(match.value) >= shortFit ? namedMention(match.value).candidates : [];
};
const shortFit = 0.6;

/** "Lentil stew with ham in": ham is what is in it, and no part of its name. */
const saysInside = (tokens: readonly string[], from: number, length: number): boolean =>
  tokens.slice(from + 1, from + length).includes('with') &&
  tokens[from + length] === 'in' &&
  !articles.has(tokens[from + length + 1] ?? '');
const articles: ReadonlySet<string> = new Set(['the', 'a', 'my', 'our']);

const things: readonly Finder[] = [
  (tokens, from, rules) =>
    (rules.get('kitchen:food')?.matchesAt(tokens, from) ?? [])
      // A dish is no food, nor is "a dish of lasagna".
      .filter(
        ({ length }) =>
          !isContainer(tokens, from, rules) || (length > 1 && !isUnitOf(tokens, from, from + length, rules)),
      )
      .map(({ length, value }) => ({
        chunk: {
          kind: 'thing',
          from,
          to: from + length,
          mention: { ...namedMention(value), candidates: nearlyHers(tokens, from, length, rules) },
          fit: 0,
          source: 'food',
        },
        cost:
          costs.food +
          (twoFoods(tokens, from, length, rules) ? costs.twoFoods : 0) +
          (saysInside(tokens, from, length) ? costs.twoFoods : 0),
      })),
  byRule('kitchen:goods', (value, from, to) => ({
    chunk: { kind: 'thing', from, to, mention: namedMention(value), fit: 0, source: 'goods' },
    cost: costs.goods,
  })),
];

/** The words of an amount that say how its container feels: "big glass jar". */
const containerWithin = (
  tokens: readonly string[],
  from: number,
  to: number,
  rules: DynamicRules,
): Touch | null => {
  for (let at = from + 1; at < to - 1; at += 1) {
    const match = rules
      .get('kitchen:touch')
      ?.matchesAt(tokens, at)
      .find(({ length }) => at + length === to);
    if (match) return asTouch(match.value);
  }
  return null;
};

/** "New jar of pesto", "a nice bunch of celery": one, where no number stands. */
const bareUnits =
  (lexicon: MovesLexicon): Finder =>
  (tokens, from, rules) => {
    if (lexicon.one === null) return [];
    const some = [lexicon.one, ...tokens.slice(from, from + longestUnit)];
    return (rules.get('builtin:grammar/amount')?.matchesAt(some, 0) ?? []).flatMap(({ length, value }) => {
      const to = from + length - 1;
      const of = lexicon.phrases.longestAt(tokens, to)?.value.has('of');
      if (length < 2 || !of) return [];
      return [
        { chunk: { kind: 'amount' as const, from, to, amount: asAmount(value) }, cost: costs.bareUnit },
      ];
    });
  };
const longestUnit = 3;

/** A place; "account" and "order", that sound a little like one, are none. */
const placesOf = (lexicon: MovesLexicon | null): Finder =>
  byRule('kitchen:place', (value, from, to, tokens) => {
    const place = asPlace({ named: value });
    const fit = place.candidates[0]?.fit ?? 0;
    const everyday = tokens
      .slice(from, to)
      .every((word) => lexicon?.isOrdinary(word) || lexicon?.phrases.longestAt([word], 0) !== null);
    if (lexicon && everyday && fit < clearPlace && !place.path) return null;
    // One not told of yet is as plain as one nearly named, when its parts are said.
    const cost = placeCost(place.path ? Math.max(fit, describedFit) : fit);
    return { chunk: { kind: 'place', from, to, place, fit }, cost };
  });
const clearPlace = 0.75;

const simple: readonly Finder[] = [
  (tokens, from, rules) =>
    (rules.get('builtin:grammar/amount')?.matchesAt(tokens, from) ?? []).map(({ length, value }) => {
      const touch = containerWithin(tokens, from, from + length, rules);
      const amount = asAmount(value);
      const chunk = { kind: 'amount' as const, from, to: from + length, amount };
      return { chunk: touch ? { ...chunk, touch } : chunk, cost: costs.amount };
    }),
  byRule('builtin:grammar/share', (value, from, to) => ({
    chunk: { kind: 'share', from, to, share: asShare(value) },
    cost: costs.share,
  })),
  byRule('builtin:grammar/number', (value, from, to) => ({
    chunk: { kind: 'number', from, to, value: value as number },
    cost: costs.number,
  })),
  byRule('builtin:grammar/duration', (value, from, to) => ({
    chunk: { kind: 'span', from, to, seconds: value as number },
    cost: costs.span,
  })),
  byRule('builtin:grammar/time', (value, from, to) => ({
    chunk: { kind: 'time', from, to, time: String(value) },
    cost: costs.time,
  })),
  byRule('builtin:grammar/ordinal', (value, from, to) => ({
    chunk: { kind: 'ordinal', from, to, ordinal: value as number },
    cost: costs.ordinal,
  })),
  byRule('kitchen:person', (value, from, to) => {
    const { words, candidates } = namedMention(value);
    const fit = candidates[0]?.fit ?? 0;
    if (fit < 0.6) return null;
    return { chunk: { kind: 'person', from, to, words: words ?? '', candidates }, cost: personCost(fit) };
  }),
  byRule('kitchen:marker', (value, from, to) => {
    const mention = markerMention(value);
    const { fastening, dots, shape } = mention.touch ?? {};
    const said = mention.touch !== null && mention.touch !== undefined;
    const felt =
      fastening !== undefined ||
      dots !== undefined ||
      shape !== undefined ||
      (!said && mention.candidates.length > 0);
    // "Been round with a pan": a shape and what it is in, and nothing that a hand could find on it.
    const vague = said && fastening === undefined && dots === undefined && mention.touch?.container;
    const cost = costs.marker + (vague ? costs.vagueMarker : 0);
    return felt ? { chunk: { kind: 'marker', from, to, mention }, cost } : null;
  }),
  byRule('kitchen:touch', (value, from, to) => ({
    chunk: { kind: 'container', from, to, touch: asTouch(value) },
    cost: costs.container,
  })),
];

/** "On the third shelf": no third of the month, where the word for it begins a place. */
const countsPlace = (tokens: readonly string[], at: number, rules: DynamicRules): boolean =>
  (rules.get('builtin:grammar/ordinal')?.matchesAt(tokens, at) ?? []).length > 0 &&
  (rules.get('kitchen:place')?.matchesAt(tokens, at) ?? []).some(({ length }) => length > 1);

/** A day leans to what it is the day of: one match of each leaning. */
const days: Finder = (tokens, from, rules) => {
  const at = (lean: string) => rules.get(`builtin:grammar/date?lean=${lean}`)?.matchesAt(tokens, from) ?? [];
  const ahead = at('future');
  const printed = at('printed');
  const window = at('window');
  const seen = new Set<number>();
  return [...at('past'), ...ahead, ...printed].flatMap(({ length, value }) => {
    if (seen.has(length) || countsPlace(tokens, from + length - 1, rules)) return [];
    seen.add(length);
    const same = (list: typeof ahead) => list.find((match) => match.length === length)?.value ?? value;
    return [
      {
        chunk: {
          kind: 'day' as const,
          from,
          to: from + length,
          past: asDate(value),
          future: asDate(ahead.length > 0 ? same(ahead) : same(printed)),
          printed: asDate(printed.length > 0 ? same(printed) : ahead.length > 0 ? same(ahead) : value),
          window: asDate(same(window)),
        },
        cost: costs.day,
      },
    ];
  });
};

/** Everything that names or measures something, at one position, whatever the sentence is about. */
export const constituentsAt = (
  tokens: readonly string[],
  from: number,
  rules: DynamicRules,
): readonly Offer[] =>
  [hers(null), ...things, placesOf(null), ...simple, days].flatMap((find) => find(tokens, from, rules));

const words =
  (lexicon: MovesLexicon): Finder =>
  (tokens, from) =>
    lexicon.phrases.allAt(tokens, from).flatMap(({ length, value }) => {
      const span = { from, to: from + length };
      const pointers = [...value].filter((name) => name.startsWith('pointer:'));
      const plain = [...value].filter((name) => !name.startsWith('pointer:'));
      return [
        ...(plain.length > 0
          ? [
              {
                chunk: { kind: 'word' as const, ...span, classes: new Set(plain) },
                cost: value.size === 1 && value.has('nameless') ? costs.nameless : costs.word,
              },
            ]
          : []),
        ...pointers.map((name) => ({
          chunk: { kind: 'pointer' as const, ...span, mention: pointed(name.slice('pointer:'.length)) },
          cost: costs.pointer,
        })),
      ];
    });

/** "The chest ones", "the fridge one": of what was spoken of, those that are there. */
const placedOnes =
  (lexicon: MovesLexicon): Finder =>
  (tokens, from, rules) =>
    (rules.get('kitchen:place')?.matchesAt(tokens, from) ?? []).flatMap(({ length, value }): Offer[] => {
      const place = asPlace({ named: value });
      const fit = place.candidates[0]?.fit ?? 0;
      const to = from + length + 1;
      // "The second one" is of what was told.
      const ordinal = (rules.get('builtin:grammar/ordinal')?.matchesAt(tokens, from).length ?? 0) > 0;
      if (!lexicon.isOne(tokens[to - 1] ?? '') || ordinal) return [];
      const before = classAt(lexicon, tokens, from - 1, 'a') > 0 ? from - 2 : from - 1;
      // "Four in the tall one": the place itself, by half its name.
      const [best] = place.candidates;
      if (classAt(lexicon, tokens, before, 'in-it') > 0)
        return !best || fit < likelyPlace
          ? []
          : [
              {
                chunk: {
                  kind: 'place',
                  from,
                  to,
                  place: { ...place, candidates: [{ ...best, fit: 1 }] },
                  fit: 1,
                },
                cost: costs.pointer,
              },
            ];
      if (fit < clearPlace) return [];
      const mention: Mention = { ...pointed('them'), at: place };
      return [{ chunk: { kind: 'pointer', from, to, mention }, cost: costs.pointer }];
    });
const likelyPlace = 0.65;

/** A name of hers of several words is no part of another. */
const holdsHers = (tokens: readonly string[], from: number, to: number, rules: DynamicRules): boolean => {
  for (let at = from; at < to - 1; at += 1)
    if (
      rules
        .get('kitchen:item')
        ?.matchesAt(tokens, at)
        .some(
          ({ length, value }) =>
            length > 1 && at + length <= to && to - from > length && fitOf(value) >= 0.95,
        )
    )
      return true;
  return false;
};

/** Just these words are a name of hers. */
const isHers = (tokens: readonly string[], from: number, words: number, rules: DynamicRules): boolean =>
  (rules.get('kitchen:item')?.matchesAt(tokens, from) ?? []).some(
    ({ length, value }) => length === words && fitOf(value) >= surelyNamed,
  );

/** "A chicken and okra stew", "her chicken and rice casserole": one dish named by two foods, of which only the first has an article. */
const dishes =
  (lexicon: MovesLexicon): Finder =>
  (tokens, from, rules) => {
    const does = (at: number, ...names: readonly string[]): boolean => {
      const classes = at >= 0 ? lexicon.phrases.longestAt(tokens.slice(at, at + 1), 0)?.value : undefined;
      return classes !== undefined && names.some((name) => classes.has(name));
    };
    const one = does(from - 1, 'a', 'of') && !does(from - 1, 'definite');
    if (!one && !does(from - 1, 'definite')) return [];
    const foodsAt = (at: number) => rules.get('kitchen:food')?.matchesAt(tokens, at) ?? [];
    return foodsAt(from).flatMap(({ length }) => {
      if (!does(from + length, 'and')) return [];
      return foodsAt(from + length + 1).flatMap((second) => {
        const to = from + length + 1 + second.length;
        if (!lexicon.isDish(tokens[to - 1]!)) return [];
        // "The chicken and onion soup", where there is an onion soup, may be two of hers.
        if (!one && holdsHers(tokens, from, to, rules)) return [];
        // "We are out of lettuce and fish sauce", both of them hers by those names.
        if (isHers(tokens, from, length, rules) && isHers(tokens, from + length + 1, second.length, rules))
          return [];
        const mention: Mention = { ...emptyMention, words: tokens.slice(from, to).join(' ') };
        return [
          {
            chunk: { kind: 'thing' as const, from, to, mention, fit: 0, source: 'food' as const },
            cost: costs.food,
          },
        ];
      });
    });
  };
/** "Blue dish" is what it is in. */
const isContainer = (tokens: readonly string[], at: number, rules: DynamicRules): boolean =>
  rules
    .get('kitchen:touch')
    ?.matchesAt(tokens, at)
    .some(({ length, value }) => length === 1 && asTouch(value).container !== undefined) ?? false;

/** Nothing that does anything in a move, and no figure. */
const isPlain = (lexicon: MovesLexicon, tokens: readonly string[], at: number): boolean =>
  tokens[at] !== undefined && !/^\d/.test(tokens[at]) && lexicon.phrases.longestAt(tokens, at) === null;

/** Words that may be part of a name nobody knows: not those that do something in a move. */
const opens =
  (lexicon: MovesLexicon): Finder =>
  (tokens, from, rules) => {
    const offers: Offer[] = [];
    /** The word that says what it is: the first or the last. */
    const head = (to: number): number => (lexicon.forms.headFirst ? from : to);
    let foods = 0;
    let ordinary = 0;
    let joined = 0;
    for (let to = from; to < tokens.length && to - from - joined < longestOpen; to += 1) {
      const word = tokens[to]!;
      // "Leche de almendra": two parts of one name, where a plain word follows.
      const join = to > from ? lexicon.forms.joinAt(tokens, to) : 0;
      if (join > 0 && isPlain(lexicon, tokens, to + join)) {
        joined += join;
        to += join - 1;
        continue;
      }
      if (lexicon.phrases.longestAt(tokens, to)?.length === 1 || /^\d/.test(word)) break;
      // "What is in the fridge" begins no name.
      if (lexicon.phrases.allAt(tokens, to).some(({ length, value }) => length === 1 && value.has('wh')))
        break;
      if (rules.get('builtin:grammar/number')?.matchesAt(tokens, to).length) break;
      if (rules.get('kitchen:food')?.matchesAt(tokens, to).length) foods += 1;
      const length = to + 1 - from - joined;
      const mention: Mention = { ...emptyMention, words: tokens.slice(from, to + 1).join(' ') };
      // A known food among its words makes a name of it likelier: "beetroot hummus".
      ordinary += lexicon.isOrdinary(word) ? 1 : 0;
      const cost =
        costs.open +
        costs.openWord * Math.max(0, length - foods) -
        (foods > 0 ? 0.25 : 0) +
        // "Cheese slices": of a food, everyday words are part of the name.
        (foods > 0 ? 0.4 : 1) *
          (costs.ordinaryWord * ordinary + (lexicon.isOrdinary(tokens[head(to)]!) ? costs.ordinaryHead : 0)) +
        (isContainer(tokens, head(to), rules) ? costs.containerHead : 0);
      if (holdsHers(tokens, from, to + 1, rules)) break;
      if (length > foods)
        offers.push({
          chunk: { kind: 'thing', from, to: to + 1, mention, fit: 0, source: foods > 0 ? 'food' : 'open' },
          cost,
        });
    }
    return offers;
  };

/** Names nobody knows, and dishes named by two foods, at one position; none for a language without a lexicon of moves. */
export const openNamesAt = (
  tokens: readonly string[],
  from: number,
  rules: DynamicRules,
  language: string,
): readonly Offer[] => {
  const lexicon = movesLexicon(language);
  return lexicon
    ? [opens(lexicon), dishes(lexicon), bareUnits(lexicon)].flatMap((find) => find(tokens, from, rules))
    : [];
};

/** "New milk" sounds like another food, and is milk that is new. */
const notLed =
  (lexicon: MovesLexicon, find: Finder): Finder =>
  (tokens, from, rules) =>
    find(tokens, from, rules).filter(
      ({ chunk }) =>
        chunk.to - chunk.from < 2 ||
        lexicon.phrases.longestAt([tokens[from]!], 0)?.value.has('more') !== true,
    );

/** Who does something stands right before `at`: "we", "Sam", "they just". */
const doerBefore = (
  lexicon: MovesLexicon,
  tokens: readonly string[],
  at: number,
  rules: DynamicRules,
): boolean => {
  for (let from = at - 1; from >= 0 && from >= at - longestDoer; from -= 1) {
    const said = tokens.slice(from, at);
    const phrase = lexicon.phrases.allAt(said, 0).find(({ length }) => length === said.length)?.value;
    // "I have cooked rice" may be what she has; with a day it is what she did.
    if (phrase?.has('deed:stored')) {
      if (phrase.has('i') && dayAfter(tokens, at, rules)) return true;
    } else if (phrase?.has('i') || phrase?.has('they')) return true;
    if (
      rules
        .get('kitchen:person')
        ?.matchesAt(said, 0)
        .some(({ length, value }) => length === said.length && fitOf(value) >= surelyDoer)
    )
      return true;
  }
  return false;
};
const longestDoer = 4;
const surelyDoer = 0.9;

const dayAfter = (tokens: readonly string[], from: number, rules: DynamicRules): boolean =>
  tokens.some(
    (_, at) =>
      at > from && (rules.get('builtin:grammar/date?lean=past')?.matchesAt(tokens, at) ?? []).length > 0,
  );

/** "I cooked rice", "cooked rendang today": made by somebody, where "cooked rice is in the fridge" is its name. */
const notDone =
  (lexicon: MovesLexicon, find: Finder): Finder =>
  (tokens, from, rules) => {
    const offers = find(tokens, from, rules);
    const verb = offers.length > 0 ? lexicon.phrases.longestAt([tokens[from]!], 0)?.value : undefined;
    if (verb?.has('deed:made') !== true) return offers;
    if (doerBefore(lexicon, tokens, from, rules)) return [];
    const days = (at: number): boolean =>
      (rules.get('builtin:grammar/date?lean=past')?.matchesAt(tokens, at) ?? []).length > 0;
    return offers.filter(
      ({ chunk }) =>
        from > 0 ||
        !days(chunk.to) ||
        (chunk.kind === 'thing' && chunk.source === 'hers' && chunk.fit >= 0.95),
    );
  };

const finders = new Map<string, readonly Finder[]>();
const findersFor = (language: string): readonly Finder[] | null => {
  const lexicon = movesLexicon(language);
  if (!lexicon) return null;
  let found = finders.get(language);
  if (!found)
    finders.set(
      language,
      (found = [
        words(lexicon),
        ...[hers(lexicon), ...things.map((find) => notLed(lexicon, find))].map((find) =>
          notDone(lexicon, find),
        ),
        placesOf(lexicon),
        ...simple,
        days,
        bareUnits(lexicon),
        dishes(lexicon),
        opens(lexicon),
        placedOnes(lexicon),
        (tokens, from, rules) => somebodyAt(tokens, from, rules, lexicon),
      ]),
    );
  return found;
};

const noPauses: ReadonlySet<number> = new Set();

/** "Okra, flour": a pause seldom stands within a name; "fridge, top shelf" and "Monday, the fourth" go on over it. */
const pauseWithin: Partial<Record<Chunk['kind'], number>> = {
  thing: 1.1,
  container: 0.8,
  person: 0.8,
  place: 0.1,
  day: 0.1,
};
const pauseElsewhere = 0.4;
/** "Salad drawer: one cucumber" names no drawer one. */
const pauseBeforeLast = 0.5;
const pauseCost = ({ kind, from, to }: Chunk, pauses: ReadonlySet<number>): number => {
  if (pauses.size === 0) return 0;
  let cost = 0;
  for (let at = from + 1; at < to; at += 1)
    if (pauses.has(at))
      cost += kind === 'place' && at === to - 1 ? pauseBeforeLast : (pauseWithin[kind] ?? pauseElsewhere);
  return cost;
};

const surelyNamed = 0.95;
/** Where names of hers, of more than one word, begin and end. */
const namesOfHers = (tokens: readonly string[], rules: DynamicRules): readonly Span[] =>
  tokens.flatMap((_, from) =>
    ['kitchen:item', 'kitchen:place'].flatMap((uri) =>
      (rules.get(uri)?.matchesAt(tokens, from) ?? []).flatMap(({ length, value }) =>
        length > 1 && fitOf(value) >= surelyNamed ? [{ from, to: from + length }] : [],
      ),
    ),
  );
const cutsName = ({ kind, from, to }: Chunk, names: readonly Span[]): boolean =>
  kind === 'word' && names.some((name) => from < name.from && name.from < to && to < name.to);

/**
 * The cheapest cover of the sentence, in order; every token lies in just one chunk. `cost` is the sum.
 * Null for a language without a lexicon of moves. Time grows with the length of the sentence.
 */
export const chunksOf = (
  tokens: readonly string[],
  rules: DynamicRules,
  language: string,
  pauses: ReadonlySet<number> = noPauses,
): { readonly chunks: readonly Chunk[]; readonly cost: number } | null => {
  const found = findersFor(language);
  if (!found) return null;
  const names = namesOfHers(tokens, rules);
  const { pieces, cost } = cheapestCover<Chunk>(tokens.length, (from) => [
    { chunk: { kind: 'unknown', from, to: from + 1, word: tokens[from]! }, cost: costs.unknown },
    ...found.flatMap((find) =>
      find(tokens, from, rules).map(({ chunk, cost }) => ({
        chunk,
        cost: cost + pauseCost(chunk, pauses) + (cutsName(chunk, names) ? costs.cutsName : 0),
      })),
    ),
  ]);
  return {
    chunks: pieces.map((piece, at) => pointedAt(piece, pieces[at + 1], tokens, pauses, language)),
    cost,
  };
};

/** After which a word that may open a name does not: "two of those", "those are in the fridge". */
const endsNames = ['is', 'prep', 'in-it', 'and', 'but', 'with', 'for', 'direction', 'back', 'now'];

/** "Those" with no name after it points at what was spoken of. */
const pointedAt = (
  chunk: Chunk,
  next: Chunk | undefined,
  tokens: readonly string[],
  pauses: ReadonlySet<number>,
  language: string,
): Chunk => {
  if (chunk.kind !== 'word' || !chunk.classes.has('definite')) return chunk;
  const ends =
    next === undefined ||
    pauses.has(chunk.to) ||
    next.kind === 'place' ||
    (next.kind === 'word' && endsNames.some((name) => next.classes.has(name)));
  const pointer = ends
    ? [...(movesLexicon(language)?.phrases.allAt(tokens, chunk.from) ?? [])]
        .filter(({ length }) => chunk.from + length === chunk.to)
        .flatMap(({ value }) => [...value])
        .find((name) => name.startsWith('pointer:'))
    : undefined;
  return pointer === undefined
    ? chunk
    : {
        kind: 'pointer',
        from: chunk.from,
        to: chunk.to,
        mention: pointed(pointer.slice('pointer:'.length)),
      };
};

/** "The middle", after a shelf was named: the same kind of part. Null where that names no place. */
export const placeLike = (said: readonly string[], rules: DynamicRules): PlaceMention | null => {
  const match = [...(rules.get('kitchen:place')?.matchesAt(said, 0) ?? [])]
    .filter(({ length }) => length === said.length)
    .at(0);
  return match ? asPlace({ named: match.value }) : null;
};
