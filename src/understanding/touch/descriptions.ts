/**
 * A container as a hand finds it, in any order of words: "the big jar with the wooden bead and
 * one knot", "the one with the patch in the middle", "two rubber bands", "no knots".
 */
import pluralize from 'pluralize';
import type { Touch } from '../../terms/touch.js';
import { cardinalAt } from '../numbers/cardinals.js';
import { perLexicon, type Lexicon } from '../words/lexicon.js';
import { phraseSet, phraseTable, synonymTable, type PhraseTable } from '../words/phrases.js';

type Draft = { -readonly [K in keyof Touch]: Touch[K] };

export interface Description {
  readonly touch: Touch;
  /** Tokens, article included. */
  readonly length: number;
  /** How many things were said of it. */
  readonly parts: number;
}

const plural = (said: string): readonly string[] => [pluralize.plural(said)];

const tables = perLexicon(({ touch }) => ({
  plain: [
    ['size', synonymTable(touch.sizes)],
    ['texture', synonymTable(touch.textures)],
    ['shape', synonymTable(touch.shapes)],
    ['container', synonymTable(touch.containers, plural)],
  ] satisfies [keyof Touch, PhraseTable<string>][],
  fastenings: synonymTable(touch.fastenings, plural),
  counted: phraseTable<{ readonly kind: string; readonly many: boolean }>(
    Object.entries(touch.counted).flatMap(([kind, ways]) =>
      ways.flatMap((said) => [
        [said, { kind, many: false }] as const,
        [pluralize.plural(said), { kind, many: true }] as const,
      ]),
    ),
  ),
  spots: synonymTable(touch.spots),
  notSpot: new Set(touch.spotNotBefore.words),
  spotPrepositions: new Set(touch.spotPrepositions),
  articles: new Set(touch.articles),
  nouns: new Set(touch.nouns),
  joiners: phraseSet(touch.joiners),
  none: phraseSet(touch.none),
  tails: phraseSet(touch.somethingOn.tails),
}));

const isNew = (draft: Draft): boolean => draft.dots === undefined && draft.counted === undefined;

/** "Dots" is what the record means where it says nothing else. */
const count = (draft: Draft, kind: string, dots: number): void => {
  draft.dots = dots;
  if (kind !== 'dot') draft.counted = kind;
};

/** Reads one part into `draft`; gives the place after it, or null. A part said twice ends the description. */
const partAt = (tokens: readonly string[], at: number, draft: Draft, lexicon: Lexicon): number | null => {
  const { plain, fastenings, counted, none, spotPrepositions, articles } = tables(lexicon);
  const without = none.longestAt(tokens, at);
  if (without) {
    const met = counted.longestAt(tokens, at + without.length);
    if (met && isNew(draft)) {
      count(draft, met.value.kind, 0);
      return at + without.length + met.length;
    }
  }
  const many = cardinalAt(tokens, at, lexicon);
  if (many && Number.isInteger(many.value) && many.value <= 12) {
    const next = at + many.length;
    const met = counted.longestAt(tokens, next);
    if (met && isNew(draft)) {
      count(draft, met.value.kind, many.value);
      return next + met.length;
    }
    const fastening = fastenings.longestAt(tokens, next);
    if (fastening && draft.fastening === undefined) {
      draft.fastening = fastening.value;
      if (many.value > 1) draft.fastenings = many.value;
      return next + fastening.length;
    }
  }
  const fastening = fastenings.longestAt(tokens, at);
  const met = counted.longestAt(tokens, at);
  if (met && isNew(draft) && met.length >= (fastening?.length ?? 0)) {
    // "With knots" does not say how many: it asks for a marker that has any.
    if (met.value.many) draft.counted = met.value.kind;
    else count(draft, met.value.kind, 1);
    return at + met.length;
  }
  // A material before a fastening or container is its texture; "rubber band" is one word.
  let best: { key: keyof Touch; value: string; length: number } | null =
    fastening && draft.fastening === undefined
      ? { key: 'fastening', value: fastening.value, length: fastening.length }
      : null;
  // "A string round the neck": a word before where it is, and no shape.
  const leads = spotPrepositions.has(tokens[at] ?? '') && articles.has(tokens[at + 1] ?? '');
  for (const [key, table] of plain) {
    if (key === 'shape' && leads) continue;
    const hit = table.longestAt(tokens, at);
    // "The glass jar with the wooden bead": of two materials the marker's tells more.
    const again =
      hit !== null &&
      key === 'texture' &&
      draft.fastening === undefined &&
      fastenings.longestAt(tokens, at + hit.length) !== null;
    if (hit && (draft[key] === undefined || again) && hit.length > (best?.length ?? 0)) {
      best = { key, value: hit.value, length: hit.length };
    }
  }
  if (!best) return null;
  Object.assign(draft, { [best.key]: best.value });
  return at + best.length;
};

/** "in the middle", "on the lid". */
const spotAt = (tokens: readonly string[], at: number, draft: Draft, lexicon: Lexicon): number | null => {
  const { spots, spotPrepositions, notSpot } = tables(lexicon);
  if (draft.spot !== undefined || !spotPrepositions.has(tokens[at] ?? '')) return null;
  const hit = spots.longestAt(tokens, at + 1);
  if (!hit) return null;
  const end = at + 1 + hit.length;
  if (notSpot.has(tokens[end] ?? '')) return null;
  draft.spot = hit.value;
  return end;
};

const countParts = (draft: Draft): number =>
  Object.keys(draft).length -
  (draft.fastenings === undefined ? 0 : 1) -
  (draft.dots === undefined || draft.counted === undefined ? 0 : 1);

/** Every description from `from`: one for each place where it may end, longest first. */
export const descriptionsAt = (tokens: readonly string[], from: number, lexicon: Lexicon): Description[] => {
  const { articles, nouns, joiners, tails } = tables(lexicon);
  const found: Description[] = [];
  const draft: Draft = {};
  // "the big" of "the big jar" is no end: words that follow on at once belong together.
  let joined = false;
  const end = (at: number): void => {
    if (countParts(draft) === 0) return;
    if (joined) found.shift();
    found.unshift({ touch: { ...draft }, length: at - from, parts: countParts(draft) });
    joined = true;
  };
  let at = articles.has(tokens[from] ?? '') ? from + 1 : from;
  let nounSaid = false;
  for (;;) {
    const part = partAt(tokens, at, draft, lexicon);
    if (part !== null) {
      at = part;
      const tail = tails.longestAt(tokens, at);
      end(at);
      if (tail) {
        joined = false;
        end((at += tail.length));
      }
      continue;
    }
    const spot = countParts(draft) > 0 ? spotAt(tokens, at, draft, lexicon) : null;
    if (spot !== null) {
      joined = false;
      end((at = spot));
      continue;
    }
    if (!nounSaid && nouns.has(tokens[at] ?? '')) {
      nounSaid = true;
      at += 1;
      if (countParts(draft) > 0) end(at);
      continue;
    }
    // A joiner only leads on to another part.
    const joiner = countParts(draft) > 0 || nounSaid ? joiners.longestAt(tokens, at) : null;
    if (!joiner) break;
    let next = at + joiner.length;
    if (articles.has(tokens[next] ?? '')) next += 1;
    if (partAt(tokens, next, { ...draft }, lexicon) === null) break;
    joined = false;
    at = next;
  }
  return found;
};
