import type { DynamicMatch, DynamicRule, DynamicRules, SemanticValue } from '../../grammar/api.js';
import type { Candidate } from '../intents.js';
import { descriptionsAt } from '../touch/descriptions.js';
import { lexiconFor, type Lexicon } from '../words/lexicon.js';
import { rememberingRule } from '../words/rule.js';
import type { HouseholdNames, MarkerMatch, NamedKind, NamedMatch, NamedRecords, PlaceMatch } from './api.js';
import { createCodeIndex, createMarkerIndex } from './markers.js';
import { createNameIndex, type NameIndex } from './name-index.js';
import { otherNamesOf } from './other-names.js';
import { placesAt } from './place-phrases.js';
import { createPlaceTree } from './place-tree.js';
import { stemOf, withoutPossessive } from './stems.js';
import { unknownWordsAt } from './unknown-words.js';

/** Foods that every household knows share one index a language. */
const sharedFoods = new WeakMap<Lexicon, WeakMap<readonly string[], NameIndex>>();
const foodIndex = (foods: readonly string[], lexicon: Lexicon): NameIndex => {
  let ofLexicon = sharedFoods.get(lexicon);
  if (!ofLexicon) sharedFoods.set(lexicon, (ofLexicon = new WeakMap()));
  let index = ofLexicon.get(foods);
  if (!index) {
    index = createNameIndex(lexicon);
    for (const food of foods) index.set({ id: food, names: [food], gone: false });
    ofLexicon.set(foods, index);
  }
  return index;
};
const noFoods: readonly string[] = [];

// The matches are plain data; the grammar's type asks for an index signature.
const value = (match: NamedMatch | MarkerMatch | PlaceMatch): SemanticValue =>
  ({ ...match }) as unknown as SemanticValue;

/** Words half understood weigh much less than words understood. */
const weightOf = (likeness: number): number => Math.max(0.01, likeness ** 4);
/** "amara's beans" for beans that somebody else made. */
const otherMaker = 0.75;

/** From here on a name that was heard may be that of somebody of the household. */
const perhaps = 0.65;
/** Below this it is theirs only where the sentence makes no sense otherwise: "deli" is a word of its own. */
const surely = 0.85;
const onlyBySound = 0.15;

/** A message is as likely one as another, and runs to the end. */
const messageWeight = 0.25;
const messageAt = (tokens: readonly string[], from: number): DynamicMatch[] =>
  from < tokens.length
    ? [{ length: tokens.length - from, value: tokens.slice(from).join(' '), weight: messageWeight }]
    : [];

/** Where a possessive ends that starts at `from`: "amara's" or "aunt ola's"; null when there is none. */
const possessiveEnd = (tokens: readonly string[], from: number): number | null => {
  for (let at = from; at < Math.min(from + 3, tokens.length); at += 1) {
    if (/(?:'s|s')$/.test(tokens[at]!)) return at + 1;
  }
  return null;
};

/** "amara's white beans" to its maker and the rest; maker null when nobody's. */
export const splitMaker = (words: string): { maker: string | null; words: string } => {
  const tokens = words.split(' ');
  const end = possessiveEnd(tokens, 0);
  if (end === null || end >= tokens.length) return { maker: null, words };
  const maker = [...tokens.slice(0, end - 1), withoutPossessive(tokens[end - 1]!)].join(' ');
  return { maker, words: tokens.slice(end).join(' ') };
};

/**
 * An index of one household's names, empty at first. `locale` is BCP 47. `foods` are food words
 * that anybody may say; pass the same array for every household, it is indexed once.
 */
export const createHouseholdNames = (locale: string, foods: readonly string[] = noFoods): HouseholdNames => {
  const lexicon = lexiconFor(locale);
  const items = createNameIndex(lexicon);
  const people = createNameIndex(lexicon);
  const placeNames = createNameIndex(lexicon);
  const ownFoods = createNameIndex(lexicon);
  const tree = createPlaceTree();
  const markers = createMarkerIndex();
  const markerCodes = createCodeIndex();
  const everybodysFoods = foodIndex(foods, lexicon);
  const personNames = new Map<string, string>();
  /** Stems of each item's maker, and how many items have a maker of that stem. */
  const makers = new Map<string, readonly string[]>();
  const makerCounts = new Map<string, number>();

  const countMaker = (id: string, by: 1 | -1): void => {
    for (const stem of makers.get(id) ?? []) {
      const many = (makerCounts.get(stem) ?? 0) + by;
      if (many > 0) makerCounts.set(stem, many);
      else makerCounts.delete(stem);
    }
  };
  const stemsOf = (words: string): string[] =>
    words
      .toLowerCase()
      .split(' ')
      .filter(Boolean)
      .map((word) => stemOf(word, lexicon));

  const setters: { [K in NamedKind]: (record: NamedRecords[K]) => void } = {
    item(record) {
      const others = otherNamesOf(record.name, lexicon);
      items.set({ id: record.id, names: [record.name], others, gone: Boolean(record.gone) });
      countMaker(record.id, -1);
      makers.delete(record.id);
      if (!record.maker) return;
      makers.set(record.id, stemsOf(record.maker));
      countMaker(record.id, 1);
    },
    person({ id, name }) {
      people.set({ id, names: [name], gone: false });
      personNames.set(id, name);
    },
    place(record) {
      tree.set(record);
      placeNames.set({ id: record.id, names: [record.name, ...record.aliases], gone: false });
    },
    marker: ({ id, touch, codes = [] }) => {
      markers.set(id, touch);
      markerCodes.set(id, touch, codes);
    },
    food: ({ id, name }) => ownFoods.set({ id, names: [name], gone: false }),
  };

  const named = (
    index: NameIndex,
    tokens: readonly string[],
    from: number,
    keepCandidates = true,
  ): DynamicMatch[] =>
    index.spansAt(tokens, from).map(({ length, candidates, likeness }) => ({
      length,
      value: value({
        words: tokens.slice(from, from + length).join(' '),
        candidates: keepCandidates ? candidates : [],
        maker: null,
      }),
      weight: weightOf(likeness),
    }));

  /** Candidates made by `maker` first. */
  const madeBy = (candidates: readonly Candidate[], maker: readonly string[]): Candidate[] =>
    candidates
      .map(({ id, fit }) => {
        const stems = makers.get(id);
        const made = stems !== undefined && maker.some((stem) => stems.includes(stem));
        return { id, fit: made ? fit : fit * otherMaker };
      })
      .sort((a, b) => b.fit - a.fit);

  const makersItems = (tokens: readonly string[], from: number): DynamicMatch[] => {
    const first = tokens[from] ?? '';
    // Recognisers leave the apostrophe out: "amaras beans", when a amara has made something.
    const bare =
      first.length > 3 && first.endsWith('s') && makerCounts.has(stemOf(first.slice(0, -1), lexicon));
    const end = possessiveEnd(tokens, from) ?? (bare ? from + 1 : null);
    if (end === null) return [];
    const maker = [...tokens.slice(from, end - 1), withoutPossessive(tokens[end - 1]!)].join(' ');
    const said = bare && !first.includes("'") ? first.slice(0, -1) : maker;
    const stems = stemsOf(said);
    return items.spansAt(tokens, end).map((span) => ({
      length: end - from + span.length,
      value: value({
        words: tokens.slice(end, end + span.length).join(' '),
        candidates: madeBy(span.candidates, stems),
        maker: said,
      }),
      weight: weightOf(span.likeness),
    }));
  };

  /** "Dell a" for Dele: the name as recorded beside the words, where they only sound like it. */
  const persons = (tokens: readonly string[], from: number): DynamicMatch[] =>
    people.spansAt(tokens, from).map(({ length, candidates, likeness }) => {
      const [best] = candidates;
      const recorded = best && best.fit >= perhaps && best.fit < 1 ? personNames.get(best.id) : undefined;
      return {
        length,
        value: value({
          words: tokens.slice(from, from + length).join(' '),
          candidates,
          maker: null,
          ...(recorded === undefined ? {} : { recorded }),
        }),
        weight: likeness < surely ? likeness * onlyBySound : weightOf(likeness),
      };
    });

  /** Before a food only "dele's", or the name itself: "deli salad" and "daily bread" are nobody's. */
  const owners = (tokens: readonly string[], from: number): DynamicMatch[] =>
    persons(tokens, from).filter((match) => {
      const { candidates, words } = match.value as unknown as NamedMatch;
      return (candidates[0]?.fit ?? 0) >= surely || /(?:'s|s')$/.test(words);
    });

  /** By length, the readings of both: a name may hold the possessive itself. */
  const itemMatches = (tokens: readonly string[], from: number): DynamicMatch[] => [
    ...makersItems(tokens, from),
    ...named(items, tokens, from),
  ];

  const readers: Record<string, (tokens: readonly string[], from: number) => readonly DynamicMatch[]> = {
    'kitchen:item': itemMatches,
    'kitchen:person': persons,
    'kitchen:owner': owners,
    'kitchen:food': (tokens, from) => {
      const own = named(ownFoods, tokens, from, false);
      const lengths = new Set(own.map(({ length }) => length));
      return [
        ...own,
        ...named(everybodysFoods, tokens, from, false).filter(({ length }) => !lengths.has(length)),
      ];
    },
    'kitchen:place': (tokens, from) =>
      placesAt(tokens, from, placeNames, tree, lexicon).map(({ match, length, weight }) => ({
        length,
        value: value(match),
        weight,
      })),
    'kitchen:marker': (tokens, from) => [
      ...markerCodes.at(tokens, from).map(({ id, touch, length }) => ({
        length,
        value: value({
          words: tokens.slice(from, from + length).join(' '),
          touch,
          candidates: [{ id, fit: 1 }],
        }),
        weight: 1,
      })),
      ...descriptionsAt(tokens, from, lexicon).map(({ touch, length }, place) => ({
        length,
        value: value({
          words: tokens.slice(from, from + length).join(' '),
          touch,
          candidates: markers.find(touch),
        }),
        weight: place === 0 ? 1 : 0.5,
      })),
    ],
    'kitchen:message': (tokens, from) => messageAt(tokens, from),
    'kitchen:words': (tokens, from) => unknownWordsAt(tokens, from, lexicon),
  };
  /** Rises with each change: what was remembered of sentences ends with it. */
  let version = 0;
  const forget = (): void => {
    version += 1;
  };
  const rules: DynamicRules = new Map(
    Object.entries(readers).map(([uri, read]) => {
      let remembering = rememberingRule(read);
      let readAt = version;
      const rule: DynamicRule = {
        matchesAt(tokens, from) {
          if (readAt !== version) {
            remembering = rememberingRule(read);
            readAt = version;
          }
          return remembering.matchesAt(tokens, from);
        },
      };
      return [uri, rule];
    }),
  );

  const indexes: Partial<Record<NamedKind, NameIndex>> = { item: items, person: people, food: ownFoods };
  return {
    set(kind, record) {
      setters[kind](record);
      forget();
    },
    remove(kind, id) {
      if (kind === 'marker') {
        markers.remove(id);
        markerCodes.remove(id);
      } else if (kind === 'place') {
        tree.remove(id);
        placeNames.remove(id);
      } else indexes[kind]!.remove(id);
      if (kind === 'person') personNames.delete(id);
      if (kind === 'item') {
        countMaker(id, -1);
        makers.delete(id);
      }
      forget();
    },
    get size() {
      return items.size + people.size + tree.size + markers.size + ownFoods.size;
    },
    rules,
    named: (tokens) =>
      (
        [
          ['item', items],
          ['place', placeNames],
          ['person', people],
        ] as const
      ).flatMap(([kind, index]) => index.holding(tokens).map((one) => ({ kind, ...one }))),
    find(kind, words, limit = 8) {
      const tokens = words.toLowerCase().split(/\s+/).filter(Boolean);
      const uri = `kitchen:${kind}`;
      const whole = (rules.get(uri)?.matchesAt(tokens, 0) ?? []).filter(
        ({ length }) => length === tokens.length,
      );
      const best = new Map<string, number>();
      for (const match of whole) {
        const { candidates } = match.value as unknown as { candidates: readonly Candidate[] };
        for (const { id, fit } of candidates) best.set(id, Math.max(fit, best.get(id) ?? 0));
      }
      if (kind === 'food') {
        for (const span of ownFoods.spansAt(tokens, 0)) {
          if (span.length === tokens.length) for (const { id, fit } of span.candidates) best.set(id, fit);
        }
      }
      return [...best]
        .map(([id, fit]) => ({ id, fit }))
        .sort((a, b) => b.fit - a.fit)
        .slice(0, limit);
    },
  };
};
