/**
 * Where a food goes when nobody says: where it went last time; else what was cooked here, and milk, eggs
 * and their like, into the fridge. Common practice. Raw meat and fish are asked about: some freeze them.
 */
import { learnedDefaults, storagesOf } from '../../kitchen/index.js';
import type { Id } from '../../kitchen/model.js';
import { isCookedDish, isSoldCold } from '../../safety/index.js';
import type { Slots } from '../../understanding/intents.js';
import type { Turn } from '../handler.js';
import { talkedOfIn } from '../turn/just-done.js';

/** "Put a jar of cumin there", right after a place was told of. */
const putThere = (turn: Turn): boolean => turn.qualifiers.has('there') && talkedOfIn(turn.state) === 'place';

/** "Same place": the one just spoken of; "the same place as last time" is the usual one. */
const placeSpokenOf = (turn: Turn, { place }: Slots): Id | null =>
  (place?.pointer === 'same' && !turn.qualifiers.has('usual-place')) || (!place && putThere(turn))
    ? turn.memory.placeId
    : null;

/** Null when it has to be asked. */
export const usualPlace = (turn: Turn, name: string, slots: Slots): Id | null => {
  // Standing before a place and telling what is there: it is there.
  const { session } = turn.state;
  if (session?.kind === 'shop' && session.survey && session.placeId) return session.placeId;
  const spokenOf = placeSpokenOf(turn, slots);
  if (spokenOf && turn.kitchen.places.has(spokenOf)) return spokenOf;
  const frozen = slots.from_state === 'freezer' || slots.dates?.frozen !== undefined;
  const learned = learnedDefaults(turn.kitchen, name)?.placeId ?? null;
  if (learned && !frozen) return learned;
  const wanted = storagesOf(turn.kitchen, frozen ? 'freezer' : 'fridge');
  const [only] = wanted;
  if (!only || wanted.length > 1) return null;
  const home = slots.dates?.made !== undefined || slots.maker !== undefined;
  return frozen || (home && isCookedDish(name)) || isSoldCold(name) ? only.id : null;
};
