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
import { type Handler, type Reply, type Turn, say } from '../handler.js';

/** "Two dots mean peanuts" is a warning, not a diet: what bears them contains peanuts. */
const meaningOf = (turn: Turn, said: string): string =>
  allergenNamed(said).length > 0 ? `contains ${said}` : withPeopleNames(turn.kitchen, said);

/** "Three dots mean nothing any more": whoever relies on them by touch is thought of first. */
const undefineDots = (turn: Turn, count: number, counted: string | undefined): Reply => {
  const old = turn.kitchen.household.dotMeanings[count];
  const these = raised(count, counted ?? countedHere(turn.kitchen));
  if (!old) return { parts: [say('dots-mean-nothing', { dots: count, raised: these })] };
  const wearing = wearers(turn, count);
  return withChange(turn, defineDotsChange(turn, count, null), (change) => ({
    parts: [say('dots-mean-no-more', { dots: count, raised: these, old })],
    changes: [change],
    confirm: say('confirm-dots-none', { dots: count, raised: these, old, count: wearing }),
  }));
};

const wearers = ({ kitchen }: Turn, count: number): number =>
  [...kitchen.markers.values()].filter(({ touch, id }) => touch.dots === count && itemWithMarker(kitchen, id))
    .length;

export const defineDots: Handler = (act, turn) => {
  const { asked, dots, counted, number, words, written, diet, allergens, marker } = act.slots;
  // "Let's have them mean gluten free": the count that was just asked about.
  const before = asked === 'same' ? turn.state.told?.act?.slots : undefined;
  const count = dots ?? number ?? marker?.touch?.dots ?? before?.dots;
  if (asked === 'none' && count !== undefined) return undefineDots(turn, count, counted);
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
  const these = raised(
    count,
    counted ?? marker?.touch?.counted ?? before?.counted ?? countedHere(turn.kitchen),
  );
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
  const wearing = wearers(turn, count);
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
