/** "Dele's pregnant", "Auntie is eighty-two and on chemo", "the baby is seven months old": told of somebody who eats here. */
import type { Act } from '../intents.js';
import {
  asks,
  foodsIn,
  has,
  isWord,
  moodOf,
  personIn,
  saysWord,
  spotsOf,
  type Sentence,
} from './sentence.js';
import { matchesIn, type Match } from './spots.js';

/** From this age guidance counts people as at higher risk: `shared/tables/at-risk.csv`, "65 or older". */
const oldFrom = 65;
const oldest = 120;

/** "Eighty-two", "is eighty-two years old": years of age, where nothing else is counted. */
const yearsIn = (sentence: Sentence): readonly Match[] => {
  const { tokens, rules } = sentence;
  return matchesIn(tokens, rules, 'builtin:grammar/number').filter(({ from, to, value }) => {
    const after = tokens[to];
    const counted = after !== undefined && !isWord(sentence, 'years', after);
    // "Seventy year old neighbor": years that are somebody's.
    const theirs = isTheirs(sentence, to);
    return (theirs || (isWord(sentence, 'aged', tokens[from - 1]) && !counted)) && typeof value === 'number';
  });
};

/** "Seventy year old neighbor", "my three year old": years of somebody, where no food follows ("two year old cheddar"). */
const isTheirs = (sentence: Sentence, at: number): boolean =>
  spotsOf(sentence, 'yearsold').some(
    (one) =>
      one.from === at &&
      (spotsOf(sentence, 'relation').some((who) => who.from === one.to) ||
        (isWord(sentence, 'whose', sentence.tokens[at - 2]) &&
          !foodsIn(sentence).some(({ from }) => from === one.to))),
  );

/** "Six months pregnant": how far on she is, and no age of food. */
const monthsOn = (sentence: Sentence): readonly Match[] =>
  matchesIn(sentence.tokens, sentence.rules, 'builtin:grammar/number').flatMap((number) => {
    const unit = spotsOf(sentence, 'infantage').find(({ from }) => from === number.to);
    const on = unit && spotsOf(sentence, 'risk').some(({ from }) => from === unit.to);
    return on ? [{ ...number, to: unit.to }] : [];
  });

/** Honey and the like are for no child under twelve months: `shared/tables/at-risk.csv`. */
const monthsOfInfancy = 12;

/** "The baby is seven months", "she is three weeks": an age told in months or weeks is below a year, or near it. */
const infantAges = (sentence: Sentence): readonly Match[] =>
  matchesIn(sentence.tokens, sentence.rules, 'builtin:grammar/number').flatMap((number) => {
    const { from, to, value } = number;
    const unit = spotsOf(sentence, 'infantage').find((one) => one.from === to);
    const ofOne =
      isWord(sentence, 'agedsmall', sentence.tokens[from - 1]) &&
      spotsOf(sentence, 'relation').some((one) => one.to <= from);
    return unit && ofOne && typeof value === 'number' && value <= monthsOfInfancy
      ? [{ ...number, to: unit.to }]
      : [];
  });
const isInfant = (sentence: Sentence): boolean => infantAges(sentence).length > 0;

const isOld = ({ value }: Match): boolean => typeof value === 'number' && value >= oldFrom && value <= oldest;

/** Below this age guidance counts children among those at higher risk: `shared/tables/at-risk.csv`, "under 5". */
const youngBelow = 5;
const isYoung = ({ value, to }: Match, sentence: Sentence): boolean =>
  typeof value === 'number' && value < youngBelow && isTheirs(sentence, to);

/** Where somebody's age is told: it is no age of food. */
export const agesOfPeople = (sentence: Sentence): readonly Match[] => [
  ...yearsIn(sentence).filter((one) => isOld(one) || isTheirs(sentence, one.to)),
  ...infantAges(sentence),
  ...monthsOn(sentence),
];

/** What makes them so, as heard. */
export const risksIn = (sentence: Sentence): readonly string[] => {
  const said = spotsOf(sentence, 'risk').map(({ value }) => value);
  const old = yearsIn(sentence).some(isOld) ? ['older'] : [];
  const young = isInfant(sentence) ? ['infant'] : [];
  const child = yearsIn(sentence).some((one) => isYoung(one, sentence)) ? ['child'] : [];
  return [...new Set([...said, ...old, ...young, ...child])];
};

export const riskAct = (sentence: Sentence, base: Act | null): Act | null => {
  if (asks(sentence) || moodOf(sentence) !== 'told' || base?.intent === 'leave-note') return null;
  const risks = risksIn(sentence);
  const baby = risks.length === 1 && risks[0] === 'infant';
  // "The baby's milk is in the door" tells nothing of the baby's age.
  const age =
    isInfant(sentence) ||
    spotsOf(sentence, 'risk').some(({ from, to }) => to - from > 1 || sentence.tokens[from] === 'newborn');
  if (risks.length === 0 || (baby && !age)) return null;
  if (!saysWord(sentence, 'being')) return null;
  const person = personIn(sentence);
  if (!person || has(sentence, 'vessel')) return null;
  const { words, candidates } = person;
  return { intent: 'add-person', slots: { person: { words, candidates }, asked: 'risk', risks } };
};
