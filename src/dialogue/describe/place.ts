/** How a place is said: "the second shelf of the fridge", "on the fridge door". */
import type { Id, Kitchen, Place } from '../../kitchen/model.js';
import { pathOf } from '../../kitchen/index.js';
import type { Say } from '../../speech/answer.js';
import { placesNamed } from '../../understanding/index.js';
import { say } from '../handler.js';

/** The place and what holds it, innermost first. */
export const placesUp = (kitchen: Kitchen, id: Id | null): Place[] => [...pathOf(kitchen, id)].reverse();

/** The whole appliance or cupboard a place is in. */
export const rootPlace = (kitchen: Kitchen, id: Id | null): Place | undefined => placesUp(kitchen, id).at(-1);

const noun = (path: readonly Place[]): Say => {
  const [place, ...outer] = path;
  if (!place) return say('place-nowhere');
  if (outer.length === 0) return say('place-whole', { name: place.name });
  const parent = noun(outer);
  if (place.kind === 'door' && place.name === 'door') return say('place-door', { parent });
  return say('place-within', { name: place.name, parent });
};

/** Without article or preposition: "second shelf of the fridge". */
export const placeNoun = (kitchen: Kitchen, id: Id | null): Say => noun(placesUp(kitchen, id));

/**
 * Which preposition the place takes is the phrase file's business; it is told the kind: "on the freezer shelf", though
 * that is a drawer by the record.
 */
const kindOf = (kitchen: Kitchen, place: Place | undefined): string => {
  if (!place) return 'none';
  const called = place.kind === 'drawer' ? placesNamed(place.name, kitchen.household.locale) : [];
  return called.includes('shelf') ? 'shelf' : place.kind;
};

/** "on the second shelf", where what holds it was just named. */
export const partAt = (kitchen: Kitchen, place: Place): Say =>
  say('place-at', { kind: kindOf(kitchen, place), place: say('place-whole', { name: place.name }) });

/** "on the second shelf of the fridge". */
export const placeAt = (kitchen: Kitchen, id: Id | null, spot: string | null = null): Say => {
  const place = id ? kitchen.places.get(id) : undefined;
  const at = say('place-at', { kind: kindOf(kitchen, place), place: placeNoun(kitchen, id) });
  return spot ? say('place-at-spot', { at, spot }) : at;
};
