/**
 * What speaks for a question of guidance being what was meant, and what speaks for the other reading: typed, so that
 * one sum weighs it (`weigh.ts`). Nothing here decides.
 */
import type { Act, HearingContext, Intent, Understanding } from '../intents.js';
import { sentenceCost } from '../likelihood.js';
import { movesLexicon } from '../moves/lexicon.js';
import type { Asked, GuidanceFacts } from './facts.js';
import {
  asks,
  asksAnywhere,
  foodsIn,
  has,
  isWhatIf,
  isWord,
  ordersIn,
  pointerIn,
  spotsOf,
  type Sentence,
} from './sentence.js';

/** How surely the sentence asks. */
export type Asking =
  /** By how it begins. */
  | 'outright'
  /** By a question later in it. */
  | 'within'
  /** By words that only a question holds. */
  | 'by-words'
  | 'not';

/** What it is asked of. */
export type Of =
  /** A food on record. */
  | 'hers'
  /** A food of any kitchen. */
  | 'food'
  /** "It", or a baby's milk. */
  | 'pointed'
  | 'nothing';

/** How the sentence is read without guidance, from what has least to say to what has most. */
export type Rival =
  | 'none'
  /** A reading nobody is sure of. */
  | 'guess'
  /** How long it keeps, of a food the record does not have. */
  | 'keeps-of-none'
  /** How long it keeps, of a food on record. */
  | 'keeps'
  /** The very thing that is asked here: how it is thawed, cooked, frozen. */
  | 'same'
  /** Something else that is asked of food: where, what is in it, who may have it. */
  | 'question'
  /** The same of the record, with every word used. */
  | 'whole-question'
  /** A change of what is not on record, which nobody can make. */
  | 'change-of-none'
  | 'change'
  /** Told, and asked of what was told. */
  | 'told-before'
  /** Told, with words nobody used. */
  | 'part-told'
  /** Told, every word of it. */
  | 'told'
  /** An answer, a correction, a word of talk. */
  | 'talk'
  /** How a power cut began, stands or ended. */
  | 'power'
  /** What has nothing to do with how food keeps: a clock, a list, a person. */
  | 'elsewhere';

/** A fact that was told with the question. */
export type Fact =
  | 'age'
  | 'end'
  | 'opened'
  | 'printed'
  | 'other-date'
  | 'air'
  | 'probe'
  | 'ice'
  | 'thawed'
  | 'reheated'
  | 'weight'
  | 'risk'
  | 'infant'
  | 'state'
  | 'where'
  /** Which of two places is asked. */
  | 'which-place'
  | 'supposed'
  | 'boiling'
  | 'slow-cooker'
  /** Digits of a pack's code. */
  | 'code';

export interface Evidence {
  readonly asked: Asked;
  readonly asking: Asking;
  readonly of: Of;
  readonly rival: Rival;
  /** Facts told that the other reading has no place for. */
  readonly beyond: readonly Fact[];
  /** Something was told that makes food older or warmer, or its age known. */
  readonly ageing: boolean;
  /** How long it keeps in a place that was said. */
  readonly keptThere: boolean;
  /** A food of hers or anybody's, in a power cut that is told of in the same breath. */
  readonly inCut: boolean;
  /** What has been so far is asked, which the record knows. */
  readonly soFar: boolean;
  /** The other reading would be asked about first. */
  readonly unsure: boolean;
  /** Asked in no other way. */
  readonly only: boolean;
  /** Words of other trades, or a name made of everyday words. */
  readonly foreign: boolean;
  /** A power cut is talked of, and no food: how fridge and freezer stand is about that. */
  readonly standsForPower: boolean;
  /** Part of the sentence tells somebody to do something. */
  readonly orders: boolean;
}

/** Every fact told, by its kind. */
const factsOf = (facts: GuidanceFacts, sentence: Sentence): readonly Fact[] => {
  const { dates, seconds, when, since, overnight } = facts;
  const told: readonly (readonly [Fact, boolean])[] = [
    ['age', seconds !== null || when !== null || since !== null || overnight],
    ['end', facts.until !== null],
    ['opened', dates.opened !== undefined],
    ['printed', (dates.useBy ?? dates.bestBefore ?? dates.sellBy) !== undefined],
    ['other-date', (dates.made ?? dates.bought ?? dates.frozen ?? dates.thawed) !== undefined],
    ['air', facts.air !== null],
    ['probe', facts.probe !== null],
    ['ice', facts.icy !== null],
    ['thawed', facts.thawedIn !== null],
    ['reheated', facts.reheated > 0],
    ['weight', facts.pounds !== null],
    ['risk', facts.risks.length > 0],
    ['infant', facts.infant],
    ['state', facts.states.length > 0],
    ['where', facts.where !== null || facts.elsewhere !== null],
    ['which-place', facts.which],
    ['supposed', facts.mood === 'supposed' && (facts.asked === 'out' || isWhatIf(sentence))],
    ['boiling', facts.boiling],
    ['code', facts.asked === 'code'],
    ['slow-cooker', facts.method === 'slow-cooker'],
  ];
  return told.flatMap(([fact, is]) => (is ? [fact] : []));
};

const ofFood: ReadonlySet<Intent> = new Set<Intent>([
  ...(['keeps', 'left-out', 'cook-temperature', 'item-date', 'how-old', 'use-first', 'thaw-plan'] as const),
  ...(['reheat', 'find', 'contains', 'can-eat', 'count', 'whats-this', 'tell-about'] as const),
]);
/** What only a record can undergo, and what makes one. */
const changes: ReadonlySet<Intent> = new Set<Intent>([
  ...(['freeze', 'thaw', 'finish', 'put-away', 'take', 'move', 'open', 'amend', 'reheated'] as const),
]);
const makes: ReadonlySet<Intent> = new Set<Intent>(['put-away', 'amend']);
const talk: ReadonlySet<Intent> = new Set<Intent>(['answer', 'choose', 'follow-up', 'correct']);
/** Words of assent that a question may begin or end with: "is it all right". */
const assent: ReadonlySet<Intent> = new Set<Intent>(['yes', 'no', 'thanks']);

/** How long it keeps, how old it is, what day is on it. */
const days: ReadonlySet<Intent> = new Set<Intent>(['keeps', 'how-old', 'item-date']);

/** What may be done with food, and how: no question of how long it keeps. */
const ofDoing: ReadonlySet<Asked> = new Set<Asked>(['freeze', 'refreeze', 'thaw', 'cook', 'reheat']);

/** The request that asks for just what is asked here. */
const sameRequest: Partial<Record<Asked, (act: Act, words: string | null | undefined) => boolean>> = {
  cook: ({ intent }) => intent === 'cook-temperature',
  out: ({ intent }) => intent === 'left-out',
  thaw: ({ intent }) => intent === 'thaw-plan',
  reheat: ({ intent }) => intent === 'reheat',
  freeze: ({ intent, slots }, words) =>
    intent === 'keeps' && slots.asked === 'freeze' && slots.item?.words === words,
};

/** What makes food older or warmer, or its age known: a question is asked of these. */
const ageing: ReadonlySet<Fact> = new Set<Fact>([
  ...(['age', 'opened', 'printed', 'other-date', 'air', 'thawed', 'reheated', 'ice'] as const),
]);

/** "Garlic in oil", asked of as garlic and as oil: by their name together it is one food. */
const partsOneFood = ({ slots }: Act, asked: Act, sentence: Sentence): boolean => {
  const { query, edit } = slots;
  const each = (query ?? edit?.query)?.where.find((filter) => filter.by === 'each');
  const words = asked.slots.item?.words?.split(' ') ?? [];
  return (
    each?.by === 'each' &&
    words.some((word) => isWord(sentence, 'in', word)) &&
    each.mentions.every((one) => one.words?.split(' ').every((word) => words.includes(word)) === true)
  );
};

const rivalOf = (
  base: Understanding,
  asked: Act,
  { of, asking, told, soFar }: Pick<Evidence, 'of' | 'asking' | 'soFar'> & { readonly told: readonly Fact[] },
  sentence: Sentence,
): Rival => {
  const { question, verdict } = base;
  const [act, ...more] = base.readings[0]?.acts ?? [];
  const sure = verdict === 'act' || verdict === 'confirm';
  const facts = asked.slots.guidance!;
  const asksOfIt =
    asking === 'outright' ||
    asking === 'within' ||
    (asking === 'by-words' && told.some((fact) => ageing.has(fact)));
  if (act?.intent === 'tell') {
    const { statements = [], unused } = act.slots;
    // "The sour cream I keep" asks nothing of how it keeps.
    if (asksOfIt && (asking !== 'by-words' || statements.every(({ deed }) => deed !== 'kept')))
      return 'told-before';
    return unused === undefined ? 'told' : 'part-told';
  }
  // "If I freeze milk, how long does it keep" asks of no day on record.
  if ((facts.asked !== 'keep' || soFar) && !told.includes('supposed') && asksOfRecord(base, told))
    return 'whole-question';
  if (!act) return question?.outright && question.left.length === 0 && of === 'hers' ? 'question' : 'none';
  if (!sure) return verdict === 'out-of-scope' ? 'none' : 'guess';
  const { intent, slots } = act;
  if (intent === 'power-cut' || intent === 'power-back') return 'power';
  if (more.some((one) => one.intent !== 'ask' && !ofFood.has(one.intent) && !changes.has(one.intent)))
    return 'elsewhere';
  if (intent === 'ask') return partsOneFood(act, asked, sentence) ? 'guess' : 'question';
  if (sameRequest[facts.asked]?.(act, asked.slots.item?.words)) return 'same';
  if (
    intent === 'keeps' &&
    facts.seconds !== null &&
    facts.where !== 'counter' &&
    slots.duration === facts.seconds &&
    told.every((fact) => holds(act, fact, facts))
  )
    return 'same';
  // How long it keeps answers no question of freezing, thawing or heating it.
  if (days.has(intent) && slots.asked !== 'freeze' && !ofDoing.has(facts.asked))
    return of === 'food' ? 'keeps-of-none' : 'keeps';
  // A name that was not heard whole, and a search for what is asked about otherwise.
  if (intent === 'keeps' || (intent === 'find' && (facts.asked === 'keep' || asking === 'not')))
    return 'guess';
  if (ofFood.has(intent)) return 'question';
  if (changes.has(intent) && asksOfIt) return 'told-before';
  if (changes.has(intent)) return of === 'food' && !makes.has(intent) ? 'change-of-none' : 'change';
  if (assent.has(intent)) return asking === 'not' ? 'talk' : 'guess';
  return talk.has(intent) ? 'talk' : 'elsewhere';
};

/** When it was made or opened and how long ago, or, with no fact told, whether it lasts to a day: the record knows. */
const asksOfRecord = ({ question }: Understanding, told: readonly Fact[]): boolean => {
  const { query, edit } = question?.acts[0]?.slots ?? {};
  const { ask = [], by = null } = query ?? edit?.query ?? {};
  const plain = told.length === 0;
  const ages = ask.every((one) => one === 'how-old' || one === 'dates' || one.startsWith('date:'));
  if (ask.length > 0 && ages && question!.left.length <= (plain ? 1 : 0)) return true;
  return plain && by !== null && question!.hers && question!.left.length === 0;
};

const datesIn = ({ intent, slots }: Act): boolean =>
  (slots.statements ?? []).some(({ dates }) => dates !== undefined) ||
  slots.dates !== undefined ||
  intent === 'ask' ||
  intent === 'item-date' ||
  (intent === 'thaw-plan' && slots.when !== undefined) ||
  intent === 'how-old';

const knownDay = (dates: Act['slots']['dates']) =>
  Object.values(dates ?? {}).find((one) => one !== 'unknown');

const ageIn = ({ intent, slots }: Act, { seconds, since, overnight }: GuidanceFacts): boolean => {
  // "Open eight days", of which a reading keeps that it is open, and not since when.
  if (slots.statements?.some(({ when, dates }) => (when ?? knownDay(dates)) !== undefined)) return true;
  if (seconds !== null) return slots.duration === seconds;
  // How long it is heated is no age.
  if (intent === 'reheat') return true;
  if (overnight) return slots.overnight === true;
  return since === null ? slots.when !== undefined || intent === 'ask' : slots.time !== undefined;
};

/** Whether an act has a place for a fact. */
const holds = (act: Act, fact: Fact, facts: GuidanceFacts): boolean => {
  const { intent, slots } = act;
  // "Eight minutes for the dumplings": the clock's.
  if (fact === 'age' && slots.duration !== undefined && slots.duration === facts.seconds) return true;
  // A clock or a list has no place for what is told of food.
  if (!ofFood.has(intent) && !changes.has(intent) && intent !== 'tell' && intent !== 'ask') return false;
  switch (fact) {
    case 'where':
      return !days.has(intent) || (facts.seconds !== null && slots.duration === facts.seconds);
    case 'state':
      return intent !== 'keeps';
    case 'other-date':
    case 'printed':
      return datesIn(act);
    case 'opened':
      return datesIn(act) || intent === 'open';
    case 'age':
      return ageIn(act, facts);
    case 'air':
      return intent === 'left-out' && slots.asked !== undefined;
    case 'supposed':
      return intent === 'thaw-plan' || intent === 'reheat';
    case 'thawed':
      // "In the microwave" is how it is heated as well.
      return (intent === 'thaw-plan' && facts.asked === 'thaw') || slots.method !== undefined;
    case 'weight':
      return intent === 'thaw-plan' && slots.when !== undefined;
    default:
      return false;
  }
};

/** Words of other trades, a name made of everyday words, or one food for another, with no fact that food has. */
const isForeign = (
  sentence: Sentence,
  { item }: Act['slots'],
  asked: Asked,
  told: readonly Fact[],
): boolean => {
  if (told.some((fact) => fact !== 'supposed' && fact !== 'boiling' && fact !== 'air')) return false;
  const ordinary = movesLexicon(sentence.language)?.isOrdinary;
  // "Live mussels" are a food by both their words.
  const states = new Set(
    spotsOf(sentence, 'state').flatMap(({ from, to }) => sentence.tokens.slice(from, to)),
  );
  const everyday = ordinary && item?.words?.split(' ').some((word) => ordinary(word) && !states.has(word));
  const hers = (item?.candidates.length ?? 0) > 0;
  // "Can I use margarine instead of butter" is cookery.
  const others = asked === 'still' && !hers && foodsIn(sentence).length > 1;
  return sentenceCost(sentence.tokens, sentence.language) < 0 || everyday === true || others;
};

const byWords: ReadonlySet<string> = new Set(['still', 'keep', 'refreeze']);
const askingOf = (sentence: Sentence): Asking => {
  if (asks(sentence)) return 'outright';
  if (asksAnywhere(sentence)) return 'within';
  return spotsOf(sentence, 'ask').some(({ value }) => byWords.has(value)) ? 'by-words' : 'not';
};

/** Readings that have a place for no fact of food. */
const nothingHeld: ReadonlySet<Rival> = new Set<Rival>(['none']);

/** Asked in no other way: no other reading has a place for it. */
const nowhereElse: ReadonlySet<Asked> = new Set<Asked>([
  ...([
    'cool',
    'chill-hot',
    'from-frozen',
    'code',
    'boil',
    'roast',
    'claim',
    'label',
    'fridge-reads',
    'freezer-reads',
  ] as const),
]);
const talksOfPower: ReadonlySet<HearingContext['expecting']> = new Set([
  ...(['outage', 'outage-state', 'step'] as const),
]);

const ofSaid = ({ item }: Act['slots'], sentence: Sentence): Of => {
  if (item) return item.candidates.length > 0 ? 'hers' : 'food';
  return pointerIn(sentence) !== null || has(sentence, 'infant') ? 'pointed' : 'nothing';
};

/** What there is to weigh, of a question of guidance, against how the sentence is read without it. */
export const evidenceFor = (
  act: Act,
  base: Understanding,
  sentence: Sentence,
  expecting: HearingContext['expecting'],
): Evidence => {
  const facts = act.slots.guidance!;
  const { asked } = facts;
  const [other] = base.readings[0]?.acts ?? [];
  const told = factsOf(facts, sentence);
  const asking = askingOf(sentence);
  const of = ofSaid(act.slots, sentence);
  const soFar = has(sentence, 'sofar');
  const rival = rivalOf(base, act, { of, asking, told, soFar }, sentence);
  const food = of === 'hers' || of === 'food';
  const heard = base.verdict === 'act' || base.verdict === 'confirm';
  return {
    asked,
    asking,
    of,
    rival,
    beyond: told.filter(
      (fact) => other === undefined || nothingHeld.has(rival) || !holds(other, fact, facts),
    ),
    ageing: rival !== 'same' && told.some((fact) => ageing.has(fact)),
    keptThere:
      asked === 'keep' &&
      facts.where !== 'counter' &&
      (facts.where !== null || facts.states.includes('frozen')),
    inCut: asked === 'power' && food,
    soFar: soFar && asked === 'keep',
    unsure: base.verdict === 'confirm' && rival !== 'told' && rival !== 'part-told',
    only: nowhereElse.has(asked) || (food && asked === 'probe'),
    foreign: !heard && isForeign(sentence, act.slots, asked, told),
    standsForPower:
      talksOfPower.has(expecting) && (!food || (other?.intent === 'answer' && asking === 'not')),
    orders: ordersIn(sentence),
  };
};
