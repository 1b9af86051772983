/** Which place was meant. */
import type { Id, Item, Place } from '../../kitchen/model.js';
import { partedPlace, spotIn, standsIn } from '../../understanding/index.js';
import type { PlaceMention } from '../../understanding/intents.js';
import { foodKey, likeNames, placeUnder } from '../../kitchen/index.js';
import { placeNoun, rootPlace } from '../describe/place.js';
import { type Turn, say } from '../handler.js';
import type { Choice } from '../state.js';

export type PlaceFound =
  | { readonly found: 'one'; readonly place: Place; readonly spot: string | null }
  | {
      readonly found: 'several';
      readonly choices: readonly Choice[];
      readonly spot: string | null;
      /** "The top one" was said of places that lie side by side. */
      readonly sideBySide?: true;
    }
  | { readonly found: 'unknown'; readonly words: string }
  | { readonly found: 'none' };

const closeFit = 0.08;
/** Below this a place's own name, as said, is worth more. */
const fairFit = 0.6;

const names = ({ name, aliases }: Place): string => [name, ...aliases].join(' ').toLowerCase();

/**
 * "The top basket", where baskets lie side by side: there is none. Those that lie there, else null.
 * Places beside each other are known by their names: they are called left and right, none top or bottom.
 */
const besideEachOther = (turn: Turn, { words }: PlaceMention, best: readonly Place[]): Place[] | null => {
  const [place] = best;
  const stands = (said: string) => standsIn(said, turn.locale);
  if (!words || !place || best.length > 1 || !stands(words).upright || stands(names(place)).upright)
    return null;
  const beside = [...turn.kitchen.places.values()].filter(
    ({ parentId, kind }) => parentId === place.parentId && kind === place.kind,
  );
  const all =
    beside.length > 1 && beside.every((one) => stands(names(one)).sideways && !stands(names(one)).upright);
  return all ? beside : null;
};

const isCalled = ({ name, aliases }: Place, words: string): boolean =>
  [name, ...aliases].some((called) => foodKey(called) === foodKey(words));

/** By name alone, when the words came without a match: "upright freezer", "door of the fridge". */
const byName = (turn: Turn, words: string): Place[] => {
  const { inner, outer } = partedPlace(words, turn.locale);
  return [...turn.kitchen.places.values()].filter((place) => {
    if (isCalled(place, words)) return true;
    const root = rootPlace(turn.kitchen, place.id);
    return outer !== undefined && root !== undefined && isCalled(place, inner) && isCalled(root, outer);
  });
};

/** "Next to the milk": where the milk is. */
export const besideOf = (turn: Turn, { spot = null, beside }: Partial<PlaceMention>): Place | null => {
  const [best] = (beside?.candidates ?? []).flatMap(({ id }) => turn.kitchen.items.get(id) ?? []);
  if (best) return best.placeId ? (turn.kitchen.places.get(best.placeId) ?? null) : null;
  const name = spotIn(spot ?? '', turn.locale).by?.name;
  const alike = name ? likeNames(turn.kitchen, name) : [];
  // Of two milks, the one that was just put away or spoken of.
  const { lastAdded, items } = turn.memory;
  const spokenOf = alike.find(({ item: { id } }) => lastAdded.includes(id) || items.includes(id));
  const meant = spokenOf ?? alike[0];
  return meant?.item.placeId ? (turn.kitchen.places.get(meant.item.placeId) ?? null) : null;
};

/** "The drawer with the carrots", of several that fit: where those are. */
const withThat = (turn: Turn, { beside }: PlaceMention, best: readonly Place[]): readonly Place[] => {
  const [near] = beside?.candidates ?? [];
  if (!near || best.length < 2) return best;
  const stands = (beside?.candidates ?? []).flatMap(({ id, fit }) => {
    const item = fit >= near.fit - closeFit ? turn.kitchen.items.get(id) : undefined;
    return item && item.gone === null && item.placeId ? [item.placeId] : [];
  });
  const there = best.filter(({ id }) => stands.some((at) => placeUnder(turn.kitchen, at, id)));
  return there.length > 0 ? there : best;
};

/** The places the words fit about equally well. */
const bestOf = (turn: Turn, mention: PlaceMention): Place[] => {
  const known = mention.candidates.flatMap(({ id, fit }) => {
    const place = turn.kitchen.places.get(id);
    return place ? [{ place, fit }] : [];
  });
  const exact = known.filter(({ place }) => mention.words !== null && isCalled(place, mention.words));
  if (exact.length > 0) return exact.map(({ place }) => place);
  const top = Math.max(0, ...known.map(({ fit }) => fit));
  const named = top < fairFit && mention.words ? byName(turn, mention.words) : [];
  if (named.length > 0) return named;
  return known.filter(({ fit }) => fit >= top - closeFit).map(({ place }) => place);
};

/** `near`: it is plain what they are in. */
const choicesAmong = (turn: Turn, places: readonly Place[], near = false): Choice[] =>
  places.map((place) => ({
    ids: [place.id],
    label: say('the-place', { place: near ? place.name : placeNoun(turn.kitchen, place.id) }),
  }));

const othersSaid = ['freezer', 'fridge', 'shelf', 'drawer', 'basket', 'cupboard'] as const;

/** "The other freezer", "the other shelf": of that kind, not the one just spoken of. */
const otherOne = (turn: Turn, nearId: Id | null, spot: string | null): PlaceFound => {
  const kind = othersSaid.find((one) => turn.qualifiers.has(`other-${one}`));
  const root = rootPlace(turn.kitchen, nearId)?.id;
  const those = [...turn.kitchen.places.values()].filter((place) => {
    if (place.kind !== kind || place.id === nearId || place.id === root) return false;
    return place.parentId === null || place.parentId === turn.kitchen.places.get(nearId ?? '')?.parentId;
  });
  if (those.length === 1) return { found: 'one', place: those[0]!, spot };
  if (those.length === 0) return { found: 'none' };
  return { found: 'several', choices: choicesAmong(turn, those), spot };
};

/**
 * Resolves what was said. "The second shelf" of two cupboards is taken to be in the one near which
 * it is looked for, else in the one just spoken of; otherwise it is asked.
 */
export const findPlace = (
  turn: Turn,
  mention: PlaceMention | undefined,
  slot = 'place',
  nearId: Id | null = null,
  /** Of several, the likelier is taken. */
  likely = false,
): PlaceFound => {
  const spot = mention?.spot ?? null;
  const settled = turn.picked[slot]?.[0];
  const settledPlace = settled ? turn.kitchen.places.get(settled) : undefined;
  if (settledPlace) return { found: 'one', place: settledPlace, spot };
  if (!mention) return { found: 'none' };
  const neighbour = mention.candidates.length === 0 ? besideOf(turn, mention) : null;
  if (neighbour) return { found: 'one', place: neighbour, spot };
  const best = withThat(turn, mention, bestOf(turn, mention));
  const beside = besideEachOther(turn, mention, best);
  if (beside) return { found: 'several', choices: choicesAmong(turn, beside, true), spot, sideBySide: true };
  if (best.length === 1) return { found: 'one', place: best[0]!, spot };
  if (best.length > 1) {
    for (const nearby of [nearId, turn.memory.placeId]) {
      const root = rootPlace(turn.kitchen, nearby)?.id;
      const near = best.filter((place) => root && rootPlace(turn.kitchen, place.id)?.id === root);
      if (near.length === 1) return { found: 'one', place: near[0]!, spot };
    }
    // "The top shelf", of the fridge and the pantry: the fridge's is opened ten times as often. Said back in full.
    const cold = best.filter((place) => rootPlace(turn.kitchen, place.id)?.kind === 'fridge');
    if (likely && cold.length === 1) return { found: 'one', place: cold[0]!, spot };
    const whole = best.filter((place) => place.parentId === null);
    if (whole.length === 1) return { found: 'one', place: whole[0]!, spot };
    return { found: 'several', choices: choicesAmong(turn, best), spot };
  }
  if (mention.pointer === 'other') return otherOne(turn, nearId ?? turn.memory.placeId, spot);
  const here = mention.pointer ? turn.memory.placeId : null;
  const place = here ? turn.kitchen.places.get(here) : undefined;
  if (place) return { found: 'one', place, spot };
  return mention.words ? { found: 'unknown', words: mention.words } : { found: 'none' };
};

/** Whether an item is there: "the freezer" of two means either; with no place said, anywhere. */
export const insidePlace =
  (turn: Turn, found: PlaceFound) =>
  ({ placeId }: Item): boolean => {
    if (found.found === 'one') return placeUnder(turn.kitchen, placeId, found.place.id);
    if (found.found !== 'several') return true;
    return found.choices.some(({ ids }) => ids.some((id) => placeUnder(turn.kitchen, placeId, id)));
  };
