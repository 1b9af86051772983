/**
 * The guidance ear: what could hurt somebody is listened for in every sentence, before any other reading
 * counts. It looks for phrases, not sentences (`grammars/<language>/words/guidance.txt`), so that no wording
 * is beyond it; where it finds nothing of its own the reading stays what it was.
 */
import type { Attribute } from '../../protocol/query.js';
import { type Clock } from '../../terms/dates.js';
import type { DynamicRules } from '../../grammar/api.js';
import { isNoFood } from '../gate/index.js';
import { rulesFor } from '../grammar-files.js';
import {
  CHANGING_INTENTS,
  type Act,
  type AskProposal,
  type HearingContext,
  type Hypothesis,
  type Intent,
  type Mention,
  type Understanding,
} from '../intents.js';
import { stepsLeadTo, stepsSpeakOf } from '../moves/steps/at-hand.js';
import { withFuller } from '../holds-more.js';
import type { HouseholdNames } from '../names/api.js';
import type { Understander } from '../understand.js';
import { lexiconFor, normalise } from '../words/index.js';
import { tellsHowKept, type Asked } from './facts.js';
import { guidanceWords } from './lexicon.js';
import { outageAct } from './outage.js';
import { guidanceProposal, isLikely } from './proposal.js';
import { guidanceAct, guidanceAgain } from './question.js';
import { allergenActs, allergensAnswered, bothNuts, everyKind, freeAnswered } from './allergens.js';
import { riskAct } from './at-risk.js';
import { dietGuest } from './guests.js';
import { careAsked, guestAct, guestsAsked, needAct, withVisit } from './person-facts.js';
import { severalHeated } from './heats.js';
import { thenAsked, toldAndAsked } from './told-then-asked.js';
import { asksAnywhere, has, moodOf, personIn, sentenceOf, spotsOf, type Sentence } from './sentence.js';
import { temperaturesIn } from './temperatures.js';
import { hazardAct, urgentAct } from './urgent.js';

const changing: ReadonlySet<Intent> = new Set(CHANGING_INTENTS);

/** How sure the ear is of what it heard: it acts. */
const sure = 0.95;

/** "The stew was not left out". */
const deniedOut = (sentence: Sentence): boolean =>
  spotsOf(sentence, 'denied').some(({ to }) =>
    spotsOf(sentence, 'at').some(({ value, from }) => value === 'counter' && from >= to && from - to <= 1),
  );

/** Acts that note something of food standing out; a sentence that only supposes it notes nothing. */
const supposing = (act: Act, sentence: Sentence): Act =>
  act.intent !== 'left-out' || act.slots.asked !== undefined
    ? act
    : moodOf(sentence) === 'reported'
      ? { ...act, slots: { ...act.slots, asked: 'reported' } }
      : moodOf(sentence) === 'supposed' || deniedOut(sentence)
        ? { ...act, slots: { ...act.slots, negated: true } }
        : act;

/** How hot it was where it stood, by a thermometer or by nobody's: told of whatever stood there, and asked of it as well. */
const inTheHeat = (act: Act, sentence: Sentence): Act => {
  if (act.intent !== 'left-out') return act;
  const { setting, degrees } = act.slots;
  const { air } = degrees === undefined ? temperaturesIn(sentence) : { air: null };
  if (!air && (setting !== undefined || !has(sentence, 'hot'))) return act;
  return {
    ...act,
    slots: {
      ...act.slots,
      ...(setting === undefined && has(sentence, 'hot') ? { setting: 'hot' } : {}),
      ...(air ? { degrees: air } : {}),
    },
  };
};

const readAs = (acts: readonly Act[], said: Hypothesis, tokens: readonly string[]): Understanding => ({
  readings: [
    {
      acts,
      confidence: sure,
      byPhrase: true,
      heard: said.text,
      normalised: tokens.join(' '),
      evidence: { score: 0, part: 1, mended: false },
    },
  ],
  margin: 1,
  verdict: 'act',
});

const ofKeeping: ReadonlySet<Asked> = new Set<Asked>(['keep', 'still', 'label']);

const talkOfSteps: ReadonlySet<Intent> = new Set<Intent>(['ask-step', 'next', 'done', 'back', 'steps-left']);
/** What the steps of a dish tell of it themselves: how long and how hot it is heated, and how it is left to cool. */
const toldBySteps: ReadonlySet<Asked> = new Set<Asked>(['roast', 'cook', 'reheat', 'cool']);

/** What was told of getting a dish ready is asked of it. */
const asksOfTold = ({ intent, slots }: Act): boolean =>
  slots.item !== undefined && (intent === 'ask-step' || (intent === 'reheat' && slots.asked === 'minutes'));

/** "How long should I bake them", "it looks good, what's next": of the dish whose steps are followed. */
const ofStepsAtHand = (
  { intent, slots: { asked, item, guidance } }: Act,
  { verdict, readings: [best] }: Understanding,
  { steps, locale }: HearingContext,
  sentence: Sentence,
): boolean => {
  const acts = verdict === 'act' ? (best?.acts ?? []) : [];
  // "Instructions for the broth: bring it to the boil" tells, and asks nothing of how it keeps.
  if (intent !== 'danger' && acts.some((act) => act.slots.preparation?.steps)) return true;
  // Asked of the steps that somebody told of a dish, though none are followed.
  if (guidance && acts.some(asksOfTold)) {
    const { seconds, since, when, overnight } = guidance;
    const stood = overnight || [seconds, since, when].some((fact) => fact !== null);
    return (
      toldBySteps.has(guidance.asked) ||
      (guidance.asked === 'still' && !tellsHowKept(guidance)) ||
      // "How long does it take from frozen" asks of the heat; "on the stove" is no counter where no time there is told.
      (guidance.asked === 'keep' && acts.some(({ slots }) => slots.asked === 'minutes')) ||
      (guidance.asked === 'out' && !stood)
    );
  }
  const talk = acts.length > 0 && acts.every((act) => talkOfSteps.has(act.intent));
  if (!steps || !talk) return false;
  // That it looks or smells good is said of how a step came out.
  if (intent === 'danger' && asked === 'container')
    return spotsOf(sentence, 'damage').every(({ from }) =>
      stepsLeadTo(sentence.tokens[from] ?? '', steps, locale),
    );
  if (intent === 'danger') return asked === 'sniff';
  const another = item?.words && !stepsSpeakOf(item.words, steps, locale);
  if (!guidance || another) return false;
  // "Can I eat it now" asks whether it is done, where nothing is told of how it was kept.
  if (guidance.asked === 'still') return !tellsHowKept(guidance);
  return toldBySteps.has(guidance.asked) && guidance.pounds === null && guidance.readings.length === 0;
};

/** "Can that go in the freezer", of a marker: guidance is of food. */
const ofMarkerAlone = (asked: Act | null, { readings: [best] }: Understanding): boolean =>
  asked?.intent === 'guidance' &&
  best !== undefined &&
  best.acts.length > 0 &&
  best.acts.every(({ intent }) => intent === 'marker-care');

const sameActs = (one: readonly Act[], other: readonly Act[]): boolean =>
  one.length === other.length && one.every((act, at) => act === other[at]);

/** What is in a food was told with the rest of it, and is kept so; whom it concerns is noted besides. */
const besideTold = (
  acts: readonly Act[],
  { verdict }: Understanding,
  allergens: readonly Act[],
): readonly Act[] => {
  const held = acts.some(({ slots }) =>
    slots.statements?.some(({ contains, freeFrom }) => contains !== undefined || freeFrom !== undefined),
  );
  if (verdict !== 'act' || !held) return allergens;
  return [...acts, ...allergens.filter(({ intent }) => intent === 'add-person')];
};

const asksForSomebody = ({ acts }: AskProposal): boolean =>
  acts[0]?.slots.query?.where.some(({ by }) => by === 'suits') ?? false;

/** "I put the cod in the middle bin, what should I use first": of all there is, and not of the cod. */
const asksWhatComesFirst = ({ acts, outright, ownSubject }: AskProposal): boolean =>
  outright && !ownSubject && acts[0]?.slots.query?.ask.join() === 'use-first';

/** "The sausages and that ham": guidance is asked of one food. */
const asksOfSeveral = ({ acts, hers }: AskProposal): boolean =>
  hers && (acts[0]?.slots.query?.where.some(({ by }) => by === 'each') ?? false);

/** Where it stands, how old it is, how many there are: of what is on record, guidance alone does not say. */
const ofTheRecord: ReadonlySet<Attribute> = new Set<Attribute>([
  'where',
  'spot',
  'how-old',
  'how-many',
  'maker',
  'feel',
]);
/** "The eggs, where are they, how old, and how long have they got": of hers by name, more is asked than how long such food keeps. */
const asksTheRecord = ({ acts, hers, ownSubject }: AskProposal): boolean => {
  const asks = acts[0]?.slots.query?.ask ?? [];
  return hers && ownSubject && asks.length > 1 && asks.some((ask) => ofTheRecord.has(ask));
};

/** "Which foods are past their use-by date": which they are, and not what the words on a label mean. */
const asksWhichOfHers = ({ acts, outright, left }: AskProposal, [asked]: readonly Act[]): boolean => {
  const { query, edit } = acts[0]?.slots ?? {};
  const { where, ask, whether } = query ?? edit?.query ?? { where: [], ask: [], whether: false };
  const ofSet = where.some(({ by }) => by === 'keeping' || by === 'date') || edit?.point === 'told';
  return (
    asked?.slots.guidance?.asked === 'label' &&
    outright &&
    left.length === 0 &&
    ofSet &&
    (whether || ask.length > 0)
  );
};

/**
 * "I'm pregnant, can I eat brie", "my daughter is pregnant, is a runny egg okay for her": what such food is to somebody
 * at risk guidance tells, of what is here and of what is not.
 */
const asksOfFoodAtRisk = ([told, asked]: readonly Act[]): boolean =>
  told?.slots.asked === 'risk' &&
  (told.slots.allergens ?? []).length === 0 &&
  (asked?.slots.query?.where.some((filter) => filter.by === 'named') ?? false);

/** What was told of somebody holds for what is asked after it. */
const forRisks = (asked: Act, { slots: { risks = [] } }: Act): Act => {
  const { guidance } = asked.slots;
  return guidance
    ? {
        ...asked,
        slots: {
          ...asked.slots,
          guidance: { ...guidance, risks: [...new Set([...guidance.risks, ...risks])] },
        },
      }
    : asked;
};

/** "She's pregnant, not allergic": both are told of her. */
const withRisk = (acts: readonly Act[], sentence: Sentence): readonly Act[] => {
  const [told] = acts;
  const risk = told?.intent === 'add-person' && told.slots.asked !== 'risk' ? riskAct(sentence, null) : null;
  if (!risk || risk.slots.person?.words !== told?.slots.person?.words) return acts;
  return [risk, ...acts];
};

/** "The cod was thawed on the counter, can I freeze it again": told, and asked of what was thawed. */
const freezesAgain = ({ slots }: Act, asked: Act | null): boolean =>
  slots.asked === 'freeze' && asked?.slots.guidance?.asked === 'refreeze';

/**
 * "Yes, that's it, oh and how long does the bacon keep": the yes settles what was asked, and only what comes
 * after it is a question of guidance. What could hurt somebody is heard in the whole of it all the same.
 */
const settledFirst = (
  heard: Understanding,
  { settles, ...base }: Understanding,
  listen: (rest: Understanding, said: string) => Understanding,
): Understanding => {
  if (!settles) return heard;
  const asksGuidance = heard.readings[0]?.acts[0]?.slots.guidance !== undefined;
  if (heard.settles === undefined && !(asksGuidance && settles.parted)) return heard;
  const rest = listen(settles.rest, settles.said);
  return { ...(asksGuidance ? base : heard), settles: { ...settles, rest } };
};

/** "The power was off six hours, but the fridge's thermometer says thirty-nine": what was read goes with the cut. */
const withReading = (act: Act, asked: Act | null): Act => {
  const facts = asked?.slots.guidance;
  const ofPower = act.intent === 'power-cut' || act.intent === 'power-back';
  if (!ofPower || act.slots.degrees || facts?.asked !== 'power' || !facts.probe || facts.where === 'freezer')
    return act;
  const { value, scale } = facts.probe;
  return { ...act, slots: { ...act.slots, degrees: { value, scale } } };
};

/** Answered by how such food keeps, or how hot it is to be. */
const byTable: ReadonlySet<Intent> = new Set<Intent>(['keeps', 'guidance', 'left-out', 'cook-temperature']);

/** "How long does a rubber band keep": no table of food is read out for what is none. */
const withoutFood = (heard: Understanding, rules: DynamicRules, language: string): Understanding => {
  const nofood = guidanceWords(language, 'nofood');
  const isNone = (item: Mention): boolean =>
    item.words?.split(' ').every((word) => nofood.has(word)) === true || isNoFood(item, rules, language);
  const marked = (act: Act): Act =>
    byTable.has(act.intent) && act.slots.item && isNone(act.slots.item)
      ? { ...act, slots: { ...act.slots, noFood: true } }
      : act;
  const readings = heard.readings.map((reading) => ({ ...reading, acts: reading.acts.map(marked) }));
  return heard.readings.some(({ acts }) => acts.some((act) => marked(act) !== act))
    ? { ...heard, readings }
    : heard;
};

/** Which nuts, where the sentence says that it is all of them; on which day somebody comes. */
const withPersonFacts = (
  heard: Understanding,
  text: string,
  names: HouseholdNames,
  { locale, now, timeZone, expecting }: HearingContext,
  language: string,
): Understanding => {
  if (!heard.readings.some(({ acts }) => acts.some(({ intent }) => intent === 'add-person'))) return heard;
  const clock: Clock = { now, timeZone };
  const sentence = sentenceOf(
    normalise(text, locale).tokens,
    rulesFor(names, locale, clock),
    language,
    clock,
  );
  const readings = heard.readings.map((reading) => {
    const acts = reading.acts.map((act) =>
      withVisit(everyKind(act, sentence, expecting === 'allergen'), sentence),
    );
    return sameActs(acts, reading.acts) ? reading : { ...reading, acts };
  });
  return { ...heard, readings };
};

/** An understander that listens for guidance first. */
export const withGuidance = (inner: Understander, locale: string): Understander => {
  const { language } = lexiconFor(locale);
  const read = (
    base: Understanding,
    said: Hypothesis,
    names: HouseholdNames,
    context: HearingContext,
  ): Understanding => {
    const { tokens } = normalise(said.text, context.locale);
    const clock: Clock = { now: context.now, timeZone: context.timeZone };
    const sentence = sentenceOf(tokens, rulesFor(names, context.locale, clock), language, clock);
    const urgent = urgentAct(sentence);
    if (urgent) return readAs([urgent], said, tokens);
    const acts = base.readings[0]?.acts ?? [];
    // An answer that says who eats here holds what they must not, person by person; "Noreen is coming, she can't have
    // nuts" is no "she" of before.
    const whom = personIn(sentence)?.words;
    const isNamed = whom !== undefined && whom !== 'she' && whom !== 'me';
    const isLast = acts[0]?.slots.eaters?.every(({ who }) => who === 'last') === true;
    if (acts[0]?.slots.eaters && !(isLast && isNamed)) {
      // "Zoe's allergic to sesame, and Amara's pregnant, what can they both eat": what is asked of them, too.
      const asked =
        context.expecting === 'anything' && acts.length === 1 ? thenAsked(sentence, acts[0]) : null;
      return asked ? readAs([acts[0], asked], said, tokens) : base;
    }
    const hazard = hazardAct(sentence, base.verdict === 'act' ? (acts[0] ?? null) : null);
    if (hazard && !ofStepsAtHand(hazard, base, context, sentence)) return readAs([hazard], said, tokens);
    // "If we're out of chickpeas, put them on the list": all of it is of the list.
    const ofList = acts.length > 0 && acts.every(({ intent }) => intent.startsWith('buy-'));
    if (ofList && base.verdict === 'act' && base.readings[0]?.whole) return base;
    const both = context.expecting === 'anything' ? toldAndAsked(sentence) : null;
    const ofSuch = both && asksOfFoodAtRisk(both.acts) ? guidanceAct(both.rest) : null;
    // Guidance first: what somebody at risk may eat is the answer, and what was told of her is kept with it.
    if (both && ofSuch?.slots.item)
      return readAs([forRisks(ofSuch, both.acts[0]!), both.acts[0]!], said, tokens);
    if (both) return readAs(both.acts, said, tokens);
    const answered = context.expecting === 'allergen' ? allergensAnswered(sentence) : null;
    if (answered) return readAs([answered], said, tokens);
    const noted =
      context.expecting === 'words' || context.expecting === 'detail' ? freeAnswered(sentence) : null;
    if (noted) return readAs(noted, said, tokens);
    const care = careAsked(sentence) ?? guestsAsked(sentence);
    if (care) return readAs([care], said, tokens);
    const allergens = allergenActs(sentence, base.verdict === 'out-of-scope' ? [] : acts);
    const outage = outageAct(sentence, context.expecting, allergens?.[0] ?? acts[0]);
    // "Power's out, I've got Joan here, she can't have nuts": both are told, and neither is dropped.
    if (outage) {
      const people = [...(allergens ?? []), ...acts]
        .filter(({ intent }) => intent === 'add-person')
        .slice(0, 1);
      return readAs([...people, outage], said, tokens);
    }
    if (allergens) {
      const read = readAs(withRisk(besideTold(acts, base, allergens), sentence), said, tokens);
      // What food holds may be asked of one shelf: a question put together from its parts has that, too.
      const ofFood = allergens.every(({ intent }) => intent === 'contains');
      return ofFood && base.question ? { ...read, question: base.question } : read;
    }
    const heated = context.steps ? null : severalHeated(sentence);
    if (heated) return readAs(heated, said, tokens);
    const last = context.expecting === 'anything' && !context.steps ? context.answered?.guidance : undefined;
    const changes = base.verdict === 'act' && acts.some(({ intent }) => changing.has(intent));
    const again = last && !changes ? guidanceAgain(sentence, last) : null;
    if (again) return readAs([again], said, tokens);
    const proposal = guidanceProposal(sentence, base, context.expecting);
    const asked = proposal?.acts[0] ?? null;
    const risk = riskAct(sentence, acts[0] ?? null);
    // "I am pregnant, can I eat the brie": answered, and what was told of her is kept as well.
    if (risk) return readAs(asked?.slots.item ? [asked, risk] : [risk], said, tokens);
    const need = needAct(sentence, acts[0] ?? null);
    if (need) return readAs([need], said, tokens);
    const comes = context.expecting === 'anything' ? guestAct(sentence, base) : null;
    // "Priya's coming on Saturday and she's vegan": how she eats is told with the day.
    if (comes) return readAs([dietGuest(sentence) ?? comes], said, tokens);
    // Somebody without a name who eats so: kept, where nothing else was made of it.
    const [only] = acts;
    const ofNobody =
      only?.intent === 'add-person' && acts.length === 1 && (only.slots.person?.candidates.length ?? 0) === 0;
    const guest =
      base.verdict === 'out-of-scope' || acts.length === 0 || ofNobody ? dietGuest(sentence) : null;
    if (guest) return readAs([guest], said, tokens);
    const ofSteps = asked !== null && ofStepsAtHand(asked, base, context, sentence);
    const ofAll = base.question !== undefined && asksWhatComesFirst(base.question);
    if (proposal && !ofSteps && !ofAll && !ofMarkerAlone(asked, base) && isLikely(proposal)) {
      const read = readAs(proposal.acts, said, tokens);
      // "If I put the pie before Sam, will he be all right": who may have it is asked, too.
      // How it was kept, and whether it may be frozen again, is asked of the food alone.
      // And what guidance says of somebody at risk stands before who may have it.
      const only = proposal.acts.every(
        ({ slots: { guidance } }) =>
          guidance &&
          ofKeeping.has(guidance.asked) &&
          guidance.risks.length === 0 &&
          !guidance.infant &&
          !tellsHowKept(guidance),
      );
      return base.question &&
        ((only &&
          (asksForSomebody(base.question) || asksTheRecord(base.question) || asksOfSeveral(base.question))) ||
          asksWhichOfHers(base.question, proposal.acts))
        ? { ...read, question: base.question }
        : read;
    }
    // "Do I really have to throw it away" asks what guidance says of it, and whether it is here it does not ask.
    const { question, ...plain } = base;
    const judges =
      has(sentence, 'discards') && asksAnywhere(sentence) && acts.some(({ intent }) => intent === 'keeps');
    const heard: Understanding = question && judges ? plain : base;
    const put = acts
      .map((act) => withReading(act, asked))
      .map((act) =>
        freezesAgain(act, asked) ? asked! : inTheHeat(supposing(bothNuts(act, sentence), sentence), sentence),
      );
    const [first, ...rest] = heard.readings;
    return !first || sameActs(acts, put) ? heard : { ...heard, readings: [{ ...first, acts: put }, ...rest] };
  };
  return {
    begins: (words, names, context) => inner.begins(words, names, context),
    understand(hypotheses, names, context) {
      const base = inner.understand(hypotheses, names, context);
      const [said] = hypotheses;
      if (!said || context.expecting === 'spelling' || context.expecting === 'code') return base;
      const ofAll = (one: Understanding, text: string): Understanding =>
        withPersonFacts(one, text, names, context, language);
      const heard = settledFirst(ofAll(read(base, said, names, context), said.text), base, (rest, text) =>
        ofAll(
          read(rest, { text, confidence: said.confidence }, names, { ...context, expecting: 'anything' }),
          text,
        ),
      );
      const clock: Clock = { now: context.now, timeZone: context.timeZone };
      const rules = rulesFor(names, context.locale, clock);
      const whole = withoutFood(heard, rules, language);
      return withFuller(whole, said.text, normalise(said.text, context.locale), rules, language);
    },
  };
};
