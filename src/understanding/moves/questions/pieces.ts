/**
 * A sentence cut into pieces: the cheapest cover of all its words by names, places, days, feels and the
 * wordings of questions. What nothing explains stays visible as `unknown`.
 */
import type { DynamicRules, SemanticValue } from '../../../grammar/api.js';
import type { Touch } from '../../../terms/touch.js';
import type { Candidate, Mention, PlaceMention, SaidDate } from '../../intents.js';
import { asDate, asPlace, asTouch, markerMention, namedMention } from '../../meaning-parts.js';
import type { Wordings } from './wordings.js';

interface Span {
  readonly from: number;
  readonly to: number;
  /** A pause was written before it. */
  readonly parted?: true;
}

export type Piece = Span &
  (
    | { readonly kind: 'words'; readonly classes: ReadonlySet<string> }
    | { readonly kind: 'thing'; readonly mention: Mention; readonly fit: number }
    | { readonly kind: 'place'; readonly place: PlaceMention; readonly fit: number }
    | {
        readonly kind: 'person';
        readonly words: string;
        readonly candidates: readonly Candidate[];
      }
    | { readonly kind: 'felt'; readonly touch: Touch; readonly candidates: readonly Candidate[] }
    | { readonly kind: 'day'; readonly future: SaidDate; readonly past: SaidDate; readonly window: SaidDate }
    | { readonly kind: 'span'; readonly days: number }
    | { readonly kind: 'ordinal'; readonly nth: number }
    | { readonly kind: 'number'; readonly value: number }
    | { readonly kind: 'allergen'; readonly allergen: string }
    | { readonly kind: 'unknown' }
  );
export type PieceOf<K extends Piece['kind']> = Extract<Piece, { readonly kind: K }>;

/** What a piece costs for standing there (natural logarithms): a longer one explains more words for the same. */
const costs = {
  words: 0.1,
  filler: 0.25,
  food: 0.45,
  /** A name of several words is no chance. */
  foodOfWords: 0.28,
  person: 0.14,
  perhapsPerson: 0.3,
  felt: 0.22,
  feltOnlyContainer: 0.32,
  day: 0.15,
  span: 0.25,
  ordinal: 0.3,
  number: 0.6,
  allergen: 0.3,
  unknown: 1.2,
} as const;

const thingCost = (fit: number): number => (fit >= 0.95 ? 0.12 : fit >= 0.78 ? 0.22 : 0.4);
const placeCost = (fit: number): number => (fit >= 0.9 ? 0.12 : fit >= 0.7 ? 0.28 : 0.6);

/** Below these, a name only sounds like one of hers. */
const leastFit = { thing: 0.62, place: 0.6, person: 0.79 } as const;

const secondsADay = 86_400;

type Offer = readonly [Piece, number];
type Finder = (tokens: readonly string[], from: number, rules: DynamicRules) => readonly Offer[];

const byRule =
  (uri: string, make: (value: SemanticValue, from: number, to: number) => Offer | null): Finder =>
  (tokens, from, rules) =>
    (rules.get(uri)?.matchesAt(tokens, from) ?? []).flatMap(({ length, value }) => {
      const offer = make(value, from, from + length);
      return offer ? [offer] : [];
    });

const person = (value: SemanticValue, from: number, to: number): Offer | null => {
  const { words, candidates } = namedMention(value);
  const fit = candidates[0]?.fit ?? 0;
  if (fit < leastFit.person) return null;
  return [
    { kind: 'person', from, to, words: words ?? '', candidates },
    fit >= 0.95 ? costs.person : costs.perhapsPerson,
  ];
};

const felt = (touch: Touch, candidates: readonly Candidate[], from: number, to: number): Offer => {
  const marker = touch.fastening ?? touch.dots ?? touch.shape;
  return [
    { kind: 'felt', from, to, touch, candidates },
    marker === undefined ? costs.feltOnlyContainer : costs.felt,
  ];
};

const days: Finder = (tokens, from, rules) => {
  const at = (lean: string) => rules.get(`builtin:grammar/date?lean=${lean}`)?.matchesAt(tokens, from) ?? [];
  const by = new Map<number, Partial<Record<'past' | 'future' | 'window', SaidDate>>>();
  for (const lean of ['window', 'future', 'past'] as const)
    for (const { length, value } of at(lean)) by.set(length, { ...by.get(length), [lean]: asDate(value) });
  return [...by].map(([length, { past, future, window }]) => {
    const any = (window ?? future ?? past)!;
    const piece = {
      kind: 'day' as const,
      from,
      to: from + length,
      past: past ?? any,
      future: future ?? any,
      window: window ?? any,
    };
    return [piece, costs.day] as const;
  });
};

const finders: readonly Finder[] = [
  byRule('kitchen:item', (value, from, to) => {
    const mention = namedMention(value);
    const fit = mention.candidates[0]?.fit ?? 0;
    // Whose it is stands as a piece of its own.
    if (fit < leastFit.thing || mention.maker !== null) return null;
    return [{ kind: 'thing', from, to, mention, fit }, thingCost(fit)];
  }),
  byRule('kitchen:food', (value, from, to) => [
    { kind: 'thing', from, to, mention: namedMention(value), fit: 0 },
    to - from > 1 ? costs.foodOfWords : costs.food,
  ]),
  byRule('kitchen:place', (value, from, to) => {
    const place = asPlace({ named: value });
    // "The second drawer of the upright freezer", which has none: no other drawer is meant by it.
    const [whole, ...parts] = place.path ?? [];
    const fit = place.candidates[0]?.fit ?? (parts.length > 0 ? whole?.candidates[0]?.fit : undefined) ?? 0;
    return fit < leastFit.place ? null : [{ kind: 'place', from, to, place, fit }, placeCost(fit)];
  }),
  byRule('kitchen:owner', person),
  byRule('kitchen:person', person),
  byRule('kitchen:marker', (value, from, to) => {
    const { touch, candidates } = markerMention(value);
    return felt(touch ?? {}, candidates, from, to);
  }),
  byRule('kitchen:touch', (value, from, to) => felt(asTouch(value), [], from, to)),
  days,
  byRule('builtin:grammar/duration', (value, from, to) => {
    const span = (value as number) / secondsADay;
    return span >= 1 ? [{ kind: 'span', from, to, days: Math.round(span) }, costs.span] : null;
  }),
  byRule('builtin:grammar/ordinal', (value, from, to) => [
    { kind: 'ordinal', from, to, nth: value as number },
    costs.ordinal,
  ]),
  byRule('builtin:grammar/number', (value, from, to) => [
    { kind: 'number', from, to, value: value as number },
    costs.number,
  ]),
];

const wordsAt =
  ({ phrases, allergens }: Wordings): Finder =>
  (tokens, from) => [
    ...phrases.allAt(tokens, from).map(({ length, value }): Offer => {
      const onlyFiller = value.size === 1 && value.has('filler');
      return [
        { kind: 'words', from, to: from + length, classes: value },
        onlyFiller ? costs.filler : costs.words,
      ];
    }),
    ...allergens
      .allAt(tokens, from)
      .map(({ length, value }): Offer => [
        { kind: 'allergen', from, to: from + length, allergen: value },
        costs.allergen,
      ]),
  ];

/** "In this fridge", "in that pie": a word before a noun, and nothing that was spoken of. */
const beforeNoun = (piece: Piece, next: Piece | undefined): Piece =>
  piece.kind === 'words' && piece.classes.has('in-it') && (next?.kind === 'place' || next?.kind === 'thing')
    ? { ...piece, classes: new Set(['small']) }
    : piece;

/** The cheapest cover, in order; every word lies in just one piece. Time grows with the sentence's length. */
export const piecesOf = (
  tokens: readonly string[],
  rules: DynamicRules,
  wordings: Wordings,
  /** Before which words a pause was written: "milk, celery" is no one name. */
  pauses: ReadonlySet<number> = new Set(),
): readonly Piece[] => {
  const listed = ({ kind, from, to }: Piece): boolean =>
    kind === 'thing' && [...pauses].some((at) => at > from && at < to);
  const all = [wordsAt(wordings), ...finders];
  // "Vegan lassi", of which there is none here: a diet, and what else was said.
  const dieted = ({ kind, from, to, ...piece }: Piece): boolean =>
    kind === 'thing' &&
    'fit' in piece &&
    piece.fit === 0 &&
    to - from > 1 &&
    wordings.phrases
      .allAt(tokens, from)
      .some(({ value }) => [...value].some((name) => name.startsWith('diet:')));
  // "Has the meatloaf egg in it": one of hers, and what is asked of it.
  const holding = ({ kind, from, to, ...piece }: Piece): boolean =>
    kind === 'thing' &&
    'fit' in piece &&
    piece.fit === 0 &&
    to - from > 1 &&
    wordings.allergens.longestAt(tokens, to - 1) !== null &&
    wordings.phrases.longestAt(tokens, to)?.value.has('in-it') === true &&
    (rules.get('kitchen:item')?.matchesAt(tokens, from) ?? []).some(
      ({ length, value }) =>
        length === to - from - 1 && (namedMention(value).candidates[0]?.fit ?? 0) >= 0.95,
    );
  const best: { cost: number; last: Piece | null }[] = [{ cost: 0, last: null }];
  for (let to = 1; to <= tokens.length; to += 1) best.push({ cost: Infinity, last: null });
  for (let from = 0; from < tokens.length; from += 1) {
    const here = best[from]!.cost;
    const take = (piece: Piece, cost: number): void => {
      const there = best[piece.to]!;
      if (here + cost < there.cost - 1e-9) best[piece.to] = { cost: here + cost, last: piece };
    };
    take({ kind: 'unknown', from, to: from + 1 }, costs.unknown);
    for (const find of all)
      for (const [piece, cost] of find(tokens, from, rules))
        if (!dieted(piece) && !holding(piece) && !listed(piece)) take(piece, cost);
  }
  const pieces: Piece[] = [];
  for (let at = tokens.length; at > 0; at = best[at]!.last!.from) pieces.unshift(best[at]!.last!);
  return pieces.map((piece, at) => {
    const one = beforeNoun(piece, pieces[at + 1]);
    return at > 0 && pauses.has(one.from) ? { ...one, parted: true as const } : one;
  });
};
