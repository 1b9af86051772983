/** What is asked, of all that guidance can be asked; nothing where the sentence asks for none of it. */
import type { Mention } from '../intents.js';
import type { Asked, GuidanceFacts, Heard } from './facts.js';
import { values } from './figures.js';
import { asks, asksAnywhere, foodsIn, has, isWord, saysWord, spotsOf, type Sentence } from './sentence.js';

export const askedIn = (
  sentence: Sentence,
  facts: Omit<GuidanceFacts, 'asked'>,
  food: Mention | null,
): Asked | null => {
  const said = new Set(values<Heard>(sentence, 'ask'));
  const cold = spotsOf(sentence, 'at').filter(({ value }) => value === 'fridge' || value === 'freezer');
  const reads = facts.probe !== null;
  // No figure for cooking, reheating or canning is one for a baby's bottle.
  const heats = said.has('cook') || said.has('boil') || (reads && !said.has('power'));
  if (facts.infant && !said.has('keep') && (has(sentence, 'ofmilk') || heats)) return 'mix';
  const askedFor = asksAnywhere(sentence);
  // A device is let in by digits, too: only of a pack, or asked, are they a date's.
  if (said.has('code') && facts.code !== null && (askedFor || has(sentence, 'ofpack'))) return 'code';
  if (facts.claim !== null && has(sentence, 'means') && !said.has('keep')) return 'claim';
  // "What does sell by mean on a carton of eggs": whatever it stands on, where no day is told.
  const named = facts.labels.length > 0;
  const dayless = Object.keys(facts.dates).length === 0 && facts.seconds === null && facts.when === null;
  if (named && dayless && has(sentence, 'means') && !said.has('keep')) return 'label';
  if (food === null && named && (has(sentence, 'means') || asks(sentence))) return 'label';
  // What it holds may be told after its reading: "the fridge has been at fifty, it holds milk".
  const first = foodsIn(sentence)[0]?.from ?? Number.POSITIVE_INFINITY;
  const ofAppliance = cold.some(({ from }) => from < first && from <= 3);
  if (reads && cold.length > 0 && (first === Number.POSITIVE_INFINITY || ofAppliance) && !said.has('power'))
    return cold.some(({ value }) => value === 'freezer') ? 'freezer-reads' : 'fridge-reads';
  // "The power's back, and there is still ice in it": what the cut made of it is asked.
  const back = has(sentence, 'cutnoun') && has(sentence, 'cutback');
  if (food !== null && facts.icy !== null && back) return 'power';
  // With no food it is about fridge and freezer: how long they hold.
  if (said.has('power')) return 'power';
  // "How long will the food in the fridge stay cold": what a shut door holds, told of no food.
  if (foodsIn(sentence).length === 0 && askedFor && has(sentence, 'staycold') && cold.length > 0)
    return 'power';
  if (said.has('chill-hot') && askedFor && !reads) return 'chill-hot';
  if (said.has('cool') || facts.readings.length > 1) return 'cool';
  // "Okay to cook straight from frozen": whether, and not how long or how hot.
  if (
    said.has('from-frozen') &&
    askedFor &&
    !has(sentence, 'howlong') &&
    !said.has('keep') &&
    facts.method !== 'slow-cooker'
  )
    return 'from-frozen';
  if (cooksFor(sentence)) return 'roast';
  if (said.has('cook') && !(reads && !asks(sentence))) return 'cook';
  if (reads && (food !== null || has(sentence, 'done'))) return 'probe';
  if (said.has('boil') && (food === null || has(sentence, 'homecanned'))) return 'boil';
  if (has(sentence, 'homecanned') && askedFor && (facts.boiling || said.has('still'))) return 'boil';
  // "Thawed breast milk, can I refreeze it": the question need not come first.
  const thawed = facts.thawedIn !== null || facts.states.includes('thawed');
  if (
    said.has('refreeze') &&
    (thawed || asksAnywhere(sentence) || has(sentence, 'asks') || said.has('still'))
  )
    return 'refreeze';
  if (said.has('thaw') && facts.where === 'counter' && askedFor && !facts.states.includes('thawed'))
    return 'thaw';
  if (food !== null && said.has('chill') && askedFor) return 'out';
  // "Which food in the garage should I keep away from": of what stands there on record.
  if (askedFor && asksWhichThere(sentence) && has(sentence, 'shuns')) return null;
  if (
    facts.where === 'counter' &&
    (said.has('keep') ||
      said.has('still') ||
      facts.seconds !== null ||
      facts.since !== null ||
      facts.overnight ||
      facts.mood === 'supposed' ||
      ((asks(sentence) || has(sentence, 'inverted')) && !asksWhichThere(sentence)))
  )
    return 'out';
  // "Three pounds of chicken in cold water, how long": in water nothing is kept.
  const inWater =
    facts.thawedIn === 'cold-water' && !facts.states.includes('thawed') && facts.pounds !== null;
  if ((said.has('thaw') || inWater) && (said.has('keep') || facts.pounds !== null)) return 'thaw';
  // "In the fridge, or shall I freeze it": how long each keeps it.
  if (facts.which && !thawed) return 'keep';
  if (
    said.has('freeze') &&
    asksAnywhere(sentence) &&
    !said.has('keep') &&
    facts.states.every((one) => one !== 'thawed' || said.has('freeze'))
  )
    return facts.states.includes('thawed') ? 'refreeze' : 'freeze';
  if (said.has('reheat') && asksAnywhere(sentence)) return 'reheat';
  // "Can I put frozen chicken straight in the slow cooker": how it is to be heated is asked by naming it.
  if (facts.method === 'slow-cooker' && facts.states.includes('frozen') && askedFor) return 'reheat';
  // A baby's milk and the microwave in one sentence, asked or told: the caution is what matters.
  if (
    facts.infant &&
    facts.method !== null &&
    (asks(sentence) || said.has('reheat') || facts.method === 'microwave')
  )
    return 'reheat';
  if (said.has('thaw') && asks(sentence)) return 'thaw';
  if (said.has('keep') && !(facts.seconds !== null && said.has('still'))) return 'keep';
  // "Is the stuff in the fridge still okay", with nothing told of it: the record knows each by itself.
  const ofAll = foodsIn(sentence).length === 0 && !facts.infant && has(sentence, 'allfood');
  const judged = said.has('still') || (askedFor && has(sentence, 'done'));
  if (judged && ofAll && facts.seconds === null && Object.keys(facts.dates).length === 0) return null;
  if (said.has('still')) return 'still';
  // "I made the bottle at ten, can the baby finish it".
  if (facts.infant && askedFor && (facts.feeding || facts.since !== null)) return 'still';
  // "Raw chicken, three days in the fridge": how old it is and where asks for one thing only.
  const printed = named && (askedFor || has(sentence, 'pastof'));
  const dated = Object.keys(facts.dates).length > 0 || facts.thawedIn !== null;
  const aged = facts.seconds !== null || facts.when !== null || printed || dated;
  if (food !== null && aged) return 'still';
  // "Can my seven month old have honey", "is the pâté all right".
  if (food !== null && askedFor && (facts.risks.length > 0 || has(sentence, 'done'))) return 'still';
  // "Can the kids have some of the cookie dough".
  if (food !== null && askedFor && saysWord(sentence, 'eating') && has(sentence, 'relation')) return 'still';
  // "Mum is eighty-four and wants a soft-boiled egg": whom it is for is told, and what of such food is not for her.
  if (food !== null && facts.risks.length > 0 && saysWord(sentence, 'eating')) return 'still';
  return null;
};

/** "What fish is in the garage", "which food on the counter should I keep away from": of what stands there on record. */
const asksWhichThere = (sentence: Sentence): boolean => {
  const { tokens } = sentence;
  const named = [
    ...foodsIn(sentence),
    ...tokens.flatMap((word, at) => (isWord(sentence, 'nofood', word) ? [{ from: at }] : [])),
  ];
  const sort = tokens.findIndex((word) => isWord(sentence, 'whatsort', word));
  return sort >= 0 && named.some(({ from }) => from === sort + 1);
};

/** "How long should I cook a fourteen-pound turkey", "how many minutes a pound": how long over the heat. */
const cooksFor = (sentence: Sentence): boolean => {
  if (spotsOf(sentence, 'ask').some(({ value }) => value === 'roast')) return true;
  if (!spotsOf(sentence, 'ask').some(({ value }) => value === 'keep') && !has(sentence, 'howlong'))
    return false;
  return (
    has(sentence, 'cooktime') ||
    spotsOf(sentence, 'cookverb').some(({ from }) => isWord(sentence, 'doer', sentence.tokens[from - 1]))
  );
};
