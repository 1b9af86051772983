/**
 * Places as they are said: "second shelf", "second shelf from the bottom of the fridge", "top
 * shelf in the freezer", "fridge door", "left drawer", "the bread basket", "left side of the top shelf".
 */
import type { PlaceStep } from '../../protocol/mentions.js';
import type { Candidate } from '../intents.js';
import { ordinalAt } from '../numbers/ordinals.js';
import { cardinalAt } from '../numbers/cardinals.js';
import { perLexicon, type Lexicon } from '../words/lexicon.js';
import { phraseSet, phraseTable, synonymTable } from '../words/phrases.js';
import type { PlaceMatch } from './api.js';
import type { NameIndex } from './name-index.js';
import type { PlaceTree, Position } from './place-tree.js';
import { joiningWords } from './stems.js';

interface PlaceReading {
  readonly match: PlaceMatch;
  readonly length: number;
  readonly weight: number;
}

interface Simple {
  readonly end: number;
  readonly candidates: readonly Candidate[];
  /** Said by kind and position: can be looked for inside another place. */
  readonly structure: { readonly kind: string; readonly position: Position | null } | null;
  readonly weight: number;
  readonly from: number;
  /** It has a name that tells it from others of its kind. */
  readonly distinct?: true;
  /** Where its name ends, before what is said of where it stands. */
  readonly nameEnd?: number;
}

const most = 8;
/** What a kind alone is worth: "the shelf" may be any of them. */
const kindFit = 0.6;
const positionFit = 0.95;
/** A name said with all its words. */
const surelyNamed = 0.8;

const tables = perLexicon(({ places }) => ({
  kinds: synonymTable(places.kinds),
  wholes: new Set(places.wholes),
  qualifiers: phraseSet(places.qualifiers),
  stands: phraseSet(places.stands),
  beside: phraseSet(places.beside),
  landmarks: phraseSet(places.landmarks),
  upon: phraseSet(places.upon),
  positions: new Map(Object.entries(places.positions)),
  sideways: phraseTable(Object.entries(places.sideways)),
  fromEnd: phraseTable(Object.entries(places.fromEnd)),
  within: new Set(places.within),
  articles: new Set(places.articles),
  spots: synonymTable(places.spots),
  spotPrepositions: phraseSet(places.spotPrepositions),
}));

const counted = (value: number, from: 'top' | 'left'): Position =>
  value > 0 ? { from, nth: value } : { from: from === 'top' ? 'bottom' : 'right', nth: -value };

/** "second", "top", "left", "second to last" before a kind. */
const positionAt = (
  tokens: readonly string[],
  at: number,
  lexicon: Lexicon,
): { position: Position; end: number } | null => {
  const { positions, sideways } = tables(lexicon);
  const side = sideways.longestAt(tokens, at);
  if (side) return { position: counted(side.value, 'left'), end: at + side.length };
  const word = positions.get(tokens[at] ?? '');
  if (word !== undefined)
    return { position: word === 0 ? { from: 'middle' } : counted(word, 'top'), end: at + 1 };
  const ordinal = ordinalAt(tokens, at, lexicon);
  return ordinal ? { position: counted(ordinal.value, 'top'), end: at + ordinal.length } : null;
};

/** "from the bottom", "on the left": turns or sets the position. */
const turned = (position: Position | null, tail: string): Position | null => {
  const [side, only] = tail.split(' ');
  const nth = position && 'nth' in position ? position.nth : 1;
  if (only) {
    if (position !== null) return null;
    if (side === 'middle') return { from: 'middle' };
    return { from: side as 'top' | 'bottom' | 'left' | 'right', nth: 1 };
  }
  return position && 'nth' in position ? { from: side as 'top' | 'bottom' | 'left' | 'right', nth } : null;
};

/** "Over the kettle", after a place: where it ends; null where no landmark stands there. */
const landmarkEnd = (tokens: readonly string[], at: number, lexicon: Lexicon): number | null => {
  const { beside, landmarks, articles } = tables(lexicon);
  const how = beside.longestAt(tokens, at);
  if (!how) return null;
  const next = at + how.length;
  const noun = landmarks.longestAt(tokens, articles.has(tokens[next] ?? '') ? next + 1 : next);
  return noun ? (articles.has(tokens[next] ?? '') ? next + 1 : next) + noun.length : null;
};

/** Of these there are mostly several, and people tell them apart by what they are next to. */
const byLandmark: ReadonlySet<string> = new Set(['cupboard', 'counter', 'shelf', 'drawer']);

/**
 * "The bread bin", "the cupboard over the kettle": what stands by itself under a name of its own. A fridge under
 * the stairs is the fridge; a cupboard is the one that is on record by no such name, where there is only one.
 */
const ownNameAt = (
  tokens: readonly string[],
  from: number,
  tree: PlaceTree,
  lexicon: Lexicon,
): Simple | null => {
  const { kinds, stands, wholes, upon } = tables(lexicon);
  const own = stands.longestAt(tokens, from);
  if (own) {
    const after = from + own.length;
    const stood = upon.longestAt(tokens, after);
    const end = stood ? after + stood.length : (landmarkEnd(tokens, after, lexicon) ?? after);
    const name = tokens.slice(from, from + own.length).join(' ');
    const candidates = tree
      .at('cupboard', null, most)
      .flatMap((id) => (tree.get(id)!.name.toLowerCase().startsWith(name) ? [{ id, fit: positionFit }] : []));
    return {
      from,
      end,
      structure: { kind: 'cupboard', position: null },
      candidates,
      weight: 1,
      nameEnd: after,
      distinct: true,
    };
  }
  const kind = kinds.longestAt(tokens, from);
  const end = kind ? landmarkEnd(tokens, from + kind.length, lexicon) : null;
  if (!kind || end === null) return null;
  if (!byLandmark.has(kind.value)) {
    if (!wholes.has(kind.value)) return null;
    const candidates = tree.at(kind.value, null, most).map((id) => ({ id, fit: kindFit }));
    return { from, end, structure: { kind: kind.value, position: null }, candidates, weight: 0.9 };
  }
  const noun = tokens.slice(from, from + kind.length).join(' ');
  const plain = tree.at('cupboard', null, most).filter((id) => tree.get(id)!.name.toLowerCase() === noun);
  const candidates = plain.length === 1 ? [{ id: plain[0]!, fit: surelyNamed }] : [];
  const structure = { kind: kind.value === 'counter' ? 'counter' : 'cupboard', position: null };
  return { from, end, structure, candidates, weight: 1, distinct: true };
};

/**
 * By what tells it from the others. "The upright", "the chest": a freezer that is here. "Chest freezer", where no
 * freezer is on record yet: what it is called, and of what kind.
 */
const qualifiedWholeAt = (
  tokens: readonly string[],
  from: number,
  tree: PlaceTree,
  lexicon: Lexicon,
): Simple | null => {
  const { kinds, wholes, qualifiers } = tables(lexicon);
  const qualifier = qualifiers.longestAt(tokens, from);
  if (!qualifier) return null;
  const after = from + qualifier.length;
  const kind = kinds.longestAt(tokens, after);
  const whole = (of: string) => ({ kind: of, position: null });
  if (kind) {
    const isNew = wholes.has(kind.value) && tree.at(kind.value, null, 1).length === 0;
    const end = after + kind.length;
    return isNew ? { from, end, structure: whole(kind.value), candidates: [], weight: 0.9 } : null;
  }
  const said = `${tokens.slice(from, after).join(' ')} `;
  const named = [...wholes].flatMap((of) =>
    tree
      .at(of, null, most)
      .flatMap((id) => (tree.get(id)!.name.toLowerCase().startsWith(said) ? [{ id, of }] : [])),
  );
  const [first] = named;
  const candidates = named.map(({ id }) => ({ id, fit: shortFit }));
  return first ? { from, end: after, structure: whole(first.of), candidates, weight: 0.8 } : null;
};
const shortFit = 0.85;
/** So much better a name fits that it is meant. */
const clearly = 0.05;

const structuresAt = (
  tokens: readonly string[],
  from: number,
  tree: PlaceTree,
  lexicon: Lexicon,
): Simple[] => {
  const { kinds, fromEnd } = tables(lexicon);
  const said = positionAt(tokens, from, lexicon);
  const kindAt = said?.end ?? from;
  const kind = kinds.longestAt(tokens, kindAt);
  const qualified = qualifiedWholeAt(tokens, from, tree, lexicon);
  const own = ownNameAt(tokens, from, tree, lexicon);
  const wholes = [...(qualified ? [qualified] : []), ...(own ? [own] : [])];
  if (!kind) return wholes;
  const simple = (position: Position | null, end: number): Simple => ({
    from,
    end,
    structure: { kind: kind.value, position },
    candidates: tree
      .at(kind.value, position, most)
      .map((id) => ({ id, fit: position ? positionFit : kindFit })),
    weight: 1,
  });
  const end = kindAt + kind.length;
  const found = [simple(said?.position ?? null, end), ...wholes];
  // "shelf two"
  const number = said ? null : cardinalAt(tokens, end, lexicon);
  if (number && Number.isInteger(number.value) && number.value > 0) {
    found.push({ ...simple({ from: 'top', nth: number.value }, end + number.length), weight: 0.8 });
  }
  const tail = fromEnd.longestAt(tokens, end);
  const position = tail && turned(said?.position ?? null, tail.value);
  if (tail && position) found.push(simple(position, end + tail.length));
  return found;
};

const merged = (...lists: (readonly Candidate[])[]): Candidate[] => {
  const best = new Map<string, number>();
  for (const list of lists) for (const { id, fit } of list) best.set(id, Math.max(fit, best.get(id) ?? 0));
  return [...best].map(([id, fit]) => ({ id, fit })).sort((a, b) => b.fit - a.fit);
};

const simplesAt = (
  tokens: readonly string[],
  from: number,
  names: NameIndex,
  tree: PlaceTree,
  lexicon: Lexicon,
): Simple[] => {
  const byEnd = new Map<number, Simple>();
  for (const simple of structuresAt(tokens, from, tree, lexicon)) byEnd.set(simple.end, simple);
  const { sideways } = tables(lexicon);
  for (const span of names.spansAt(tokens, from)) {
    const end = from + span.length;
    const there = byEnd.get(end);
    // Words of a name that is not said to its end are weak ("chest", "second"), and so are ordinals alone.
    // "Second shelf" is not nearly "top shelf": where a position is said, a name has to say it, too.
    const least = there?.structure?.position ? surelyNamed : 0.6;
    // "Door" sounds a little like "drawer", and says plainly what kind of place is meant.
    const kind = there?.structure?.kind;
    const whole = span.candidates.filter(
      ({ id, fit }) =>
        fit >= least && (kind === undefined || fit >= surelyNamed || tree.get(id)?.kind === kind),
    );
    const candidates = merged(there?.candidates ?? [], whole);
    if (!there && whole.length === 0) continue;
    // "the second" is no place: what is counted is not said.
    const said = tokens.slice(from, end);
    if (!there && said.every((token) => joiningWords(lexicon).counting.has(token))) continue;
    // "Right, what needs eating", "what is left": a side is a place only after an article, or where it is all that is said.
    if (!there && said.length === 1 && sideways.longestAt(said, 0) && !isPointedAt(tokens, from, lexicon))
      continue;
    const named = whole[0]?.fit ?? 0;
    byEnd.set(end, {
      from,
      end,
      candidates,
      structure: there?.structure ?? null,
      ...(there?.distinct ? { distinct: true as const } : {}),
      ...(there?.nameEnd ? { nameEnd: there.nameEnd } : {}),
      weight: there ? 1 : Math.max(0.1, span.likeness ** 2 * (named >= 0.8 ? 1 : 0.3)),
    });
  }
  return [...byEnd.values()];
};

/** "The right", "the left one", or nothing else at all. */
const isPointedAt = (tokens: readonly string[], at: number, lexicon: Lexicon): boolean =>
  tables(lexicon).articles.has(tokens[at - 1] ?? '') || tokens.length <= 2;

/** A whole place phrase: what it may be, and its parts, should it be none of them. */
interface Whole {
  readonly end: number;
  readonly candidates: readonly Candidate[];
  readonly weight: number;
  readonly path: readonly PlaceStep[];
}

const inside = (child: Simple, parent: Simple, tree: PlaceTree): Candidate[] => {
  const found: Candidate[][] = [];
  for (const outer of parent.candidates.slice(0, 4)) {
    if (child.structure) {
      const ids = tree.under(outer.id, child.structure.kind, child.structure.position, most);
      found.push(ids.map((id) => ({ id, fit: outer.fit * (child.structure!.position ? 1 : 0.9) })));
    }
    found.push(
      child.candidates
        .filter(({ id }) => tree.isIn(id, outer.id))
        .map(({ id, fit }) => ({ id, fit: fit * outer.fit })),
    );
  }
  return merged(...found).slice(0, most);
};

/** Every place phrase from `from`, article taken along. */
export const placesAt = (
  tokens: readonly string[],
  from: number,
  names: NameIndex,
  tree: PlaceTree,
  lexicon: Lexicon,
): PlaceReading[] => {
  const { articles, kinds, within, spots, spotPrepositions, wholes } = tables(lexicon);
  const afterArticle = (at: number): number => (articles.has(tokens[at] ?? '') ? at + 1 : at);
  const readings = new Map<number, PlaceReading>();
  const put = (
    saidFrom: number,
    saidTo: number,
    end: number,
    candidates: readonly Candidate[],
    spot: string | null,
    weight: number,
    path: readonly PlaceStep[] = [],
  ): void => {
    const match: PlaceMatch = {
      words: tokens.slice(saidFrom, saidTo).join(' '),
      candidates: candidates.slice(0, most),
      spot,
      ...(candidates.length === 0 && path.length > 0 ? { path } : {}),
    };
    const there = readings.get(end);
    const better =
      there !== undefined &&
      candidates.length > 0 &&
      (there.match.candidates.length === 0 ||
        (there.match.spot !== null && spot === null) ||
        // "Upright freezer" is its own name sooner than a part of the upright.
        (spot === there.match.spot && candidates[0]!.fit > there.match.candidates[0]!.fit + clearly));
    if (!there || better) {
      readings.set(end, {
        match,
        length: end - from,
        weight: candidates.length > 0 ? weight : weight * (path.length > 0 ? 0.7 : 0.4),
      });
    }
  };
  const start = afterArticle(from);
  /** What was said, as a part of a place that may have to be made; none for a name alone. */
  const step = ({
    from: start,
    end,
    structure,
    candidates,
    distinct,
    nameEnd,
  }: Simple): readonly PlaceStep[] =>
    structure || candidates.length > 0
      ? [
          {
            words: tokens.slice(start, nameEnd ?? end).join(' '),
            kind: structure?.kind ?? '',
            whole: structure !== null && wholes.has(structure.kind),
            ...(distinct ? { distinct } : {}),
            candidates,
          },
        ]
      : [];
  const isWhole = ({ structure }: Simple): boolean => structure !== null && wholes.has(structure.kind);
  const whole = (at: number): Whole[] => {
    const found: Whole[] = [];
    for (const first of simplesAt(tokens, at, names, tree, lexicon)) {
      found.push({ ...first, path: first.structure ? step(first) : [] });
      // "… of the fridge", and "fridge door", "the freezer, second drawer".
      const joined = within.has(tokens[first.end] ?? '');
      const nextAt = afterArticle(joined ? first.end + 1 : first.end);
      for (const second of simplesAt(tokens, nextAt, names, tree, lexicon)) {
        // "In the fridge on the middle shelf": the shelf is the fridge's, whichever comes first.
        const turned =
          second.structure !== null &&
          !isWhole(second) &&
          (isWhole(first) ||
            (inside(first, second, tree).length === 0 && inside(second, first, tree).length > 0));
        const [child, parent] = joined && !turned ? [first, second] : [second, first];
        if (!joined && !second.structure) continue;
        const candidates = inside(child, parent, tree);
        const apart = parent.structure !== null && wholes.has(parent.structure.kind);
        const partOf = child.structure !== null && !isWhole(child);
        if (candidates.length === 0 && !(partOf && (apart || parent.candidates.length > 0))) continue;
        const weight = Math.min(first.weight, second.weight);
        found.push({
          end: second.end,
          candidates,
          weight,
          // "Fridge butter" is nearly the fridge door, and no place to make a shelf in.
          path:
            apart || parent.candidates.some(({ fit }) => fit >= surelyNamed)
              ? [...step(parent), ...step({ ...child, candidates: [] })]
              : [],
        });
      }
    }
    // "The middle fridge shelf": where it is stands between its position and its kind.
    const position = positionAt(tokens, at, lexicon);
    for (const outer of position ? simplesAt(tokens, position.end, names, tree, lexicon) : []) {
      const kind = kinds.longestAt(tokens, outer.end);
      if (!kind || outer.candidates.length === 0) continue;
      const end = outer.end + kind.length;
      const structure = { kind: kind.value, position: position!.position };
      const candidates = inside({ from: at, end, structure, candidates: [], weight: 1 }, outer, tree);
      if (candidates.length > 0) found.push({ end, candidates, weight: outer.weight, path: [] });
    }
    return found;
  };
  // "the left side of the top shelf": a spot, unless it is a place of its own.
  const spot = spots.longestAt(tokens, start);
  if (spot && within.has(tokens[start + spot.length] ?? '')) {
    const placeAt = afterArticle(start + spot.length + 1);
    for (const place of whole(placeAt)) {
      if (place.candidates.length > 0)
        put(placeAt, place.end, place.end, place.candidates, spot.value, place.weight);
    }
  }
  for (const place of whole(start)) {
    put(start, place.end, place.end, place.candidates, null, place.weight, place.path);
    const on = spotPrepositions.longestAt(tokens, place.end);
    const spotAt = on ? afterArticle(place.end + on.length) : place.end;
    const tail = on ? spots.longestAt(tokens, spotAt) : null;
    if (tail) put(start, place.end, spotAt + tail.length, place.candidates, tail.value, place.weight * 0.9);
  }
  return [...readings.values()].map((reading) => ({
    ...reading,
    match: {
      ...reading.match,
      words: reading.match.spot === null ? reading.match.words : reading.match.words,
    },
  }));
};
