/** What dots, knots, ridges and notches mean here. A meaning that warns of an allergen is not replaced without asking. */
import {
  countedHere,
  defineDots as defineDotsChange,
  itemWithMarker,
  withPeopleNames,
} from '../../kitchen/index.js';
import { allergenNamed, speaksOfDiet, warnsOfAllergen } from '../../safety/index.js';
import { withChange } from '../describe/refusals.js';
import { raised, touchNoun } from '../describe/touch.js';
import { type Handler, type Turn, say } from '../handler.js';

/** "Two dots mean peanuts" is a warning, not a diet: what bears them contains peanuts. */
const meaningOf = (turn: Turn, said: string): string =>
  allergenNamed(said).length > 0 ? `contains ${said}` : withPeopleNames(turn.kitchen, said);

export const defineDots: Handler = (act, turn) => {
  const { dots, counted, number, words, written, diet, allergens, marker } = act.slots;
  const count = dots ?? number ?? marker?.touch?.dots;
  const said =
    written ?? words ?? diet ?? (allergens?.length ? `contains ${allergens.join(' and ')}` : undefined);
  // A meaning goes with a count. What was told of the marker itself is not kept, and that is said.
  if (count === undefined && marker && said) {
    const meant = meaningOf(turn, said);
    const meaning = { marker: touchNoun(marker.touch ?? {}), meaning: meant };
    return { parts: [say(speaksOfDiet(meant) ? 'meaning-not-kept-of-diet' : 'meaning-not-kept', meaning)] };
  }
  if (count === undefined)
    return {
      parts: [],
      ask: {
        slot: 'dots',
        question: say('ask-dots', { counted: counted ?? countedHere(turn.kitchen) }),
        expecting: 'amount',
      },
    };
  const these = raised(count, counted ?? marker?.touch?.counted ?? countedHere(turn.kitchen));
  if (!said)
    return {
      parts: [],
      ask: {
        slot: 'words',
        question: say('ask-dots-mean', { dots: count, raised: these }),
        expecting: 'words',
      },
    };
  const meaning = meaningOf(turn, said);
  const result = defineDotsChange(turn, count, meaning);
  const old = turn.kitchen.household.dotMeanings[count];
  const wearing = [...turn.kitchen.markers.values()].filter(
    ({ touch, id }) => touch.dots === count && itemWithMarker(turn.kitchen, id),
  ).length;
  return withChange(turn, result, (change) => ({
    parts: [
      say('dots-mean', { dots: count, raised: these, meaning }),
      ...(old ? [say('dots-meant', { old })] : []),
      ...(wearing > 0 ? [say('dots-on', { count: wearing, meaning })] : []),
    ],
    changes: [change],
    doubt: say('confirm-dots', { dots: count, raised: these, meaning, count: wearing }),
    // Whoever relies on it by touch would eat what she must not.
    ...(old && warnsOfAllergen(old)
      ? { confirm: say('confirm-dots-replace', { dots: count, raised: these, meaning, old, count: wearing }) }
      : {}),
  }));
};
