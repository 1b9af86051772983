/** What dots, knots, ridges and notches mean here. A meaning that warns of an allergen is not replaced without asking. */
import { countedHere, defineDots as defineDotsChange, itemWithMarker } from '../../kitchen/index.js';
import { allergenNamed, speaksOfDiet } from '../../safety/index.js';
import { withChange } from '../describe/refusals.js';
import { raised, touchNoun } from '../describe/touch.js';
import { type Handler, type Turn, say } from '../handler.js';

/** "for dele" is for Dele: people keep their capital. */
const withNames = (turn: Turn, meaning: string): string =>
  [...turn.kitchen.people.values()].reduce(
    (words, { name }) => words.replace(new RegExp(`\\b${name}\\b`, 'gi'), name),
    meaning,
  );

/** "Two dots mean peanuts" is a warning, not a diet: what bears them contains peanuts. */
const meaningOf = (turn: Turn, said: string): string => {
  const [allergen] = allergenNamed(said);
  if (allergen) return `contains ${said}`;
  // Written as it was heard, where it was: names nobody told of yet keep their capital, too.
  const at = turn.heard?.toLowerCase().indexOf(said.toLowerCase()) ?? -1;
  return withNames(turn, at < 0 ? said : turn.heard!.slice(at, at + said.length));
};

const warns = (meaning: string): boolean => {
  const named = meaning.replace(/^(contains|has|with|no|free from|without) /i, '');
  return allergenNamed(named).length > 0 || /\b(contains|allerg)/i.test(meaning);
};

export const defineDots: Handler = (act, turn) => {
  const { dots, counted, number, words, diet, allergens, marker } = act.slots;
  const count = dots ?? number ?? marker?.touch?.dots;
  const said = words ?? diet ?? (allergens?.length ? `contains ${allergens.join(' and ')}` : undefined);
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
    ...(old && warns(old)
      ? { confirm: say('confirm-dots-replace', { dots: count, raised: these, meaning, old, count: wearing }) }
      : {}),
  }));
};
