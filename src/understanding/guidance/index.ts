/**
 * The guidance ear: what could hurt somebody is listened for in every sentence, before any other reading
 * counts. It looks for phrases, not sentences (`grammars/<language>/words/guidance.txt`), so that no wording
 * is beyond it; where it finds nothing of its own the reading stays what it was.
 */
import { type Clock } from '../../terms/dates.js';
import { rulesFor } from '../grammar-files.js';
import { sentenceCost } from '../likelihood.js';
import { movesLexicon } from '../moves/lexicon.js';
import type { Act, HearingContext, Hypothesis, Intent, Understanding } from '../intents.js';
import { stepsSpeakOf } from '../moves/steps/at-hand.js';
import type { HouseholdNames } from '../names/api.js';
import type { Understander } from '../understand.js';
import { lexiconFor, normalise } from '../words/index.js';
import { allergenActs, allergensAnswered, bothNuts } from './allergens.js';
import { riskAct } from './at-risk.js';
import {
  asks,
  asksAnywhere,
  foodsIn,
  has,
  isWhatIf,
  moodOf,
  pointerIn,
  sentenceOf,
  spotsOf,
  type Sentence,
} from './sentence.js';
import type { Asked, GuidanceFacts } from './facts.js';
import { guidanceAct, saysMore } from './question.js';
import { hazardAct, urgentAct } from './urgent.js';

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

/** Where it stood was hot, by nobody's thermometer: told of whatever stood there, and asked of it as well. */
const inTheHeat = (act: Act, sentence: Sentence): Act =>
  act.intent === 'left-out' && act.slots.setting === undefined && has(sentence, 'hot')
    ? { ...act, slots: { ...act.slots, setting: 'hot' } }
    : act;

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

/** Requests that a question of guidance with its facts says better. */
const ofGuidance = new Set(
  `keeps left-out cook-temperature item-date how-old use-first find contains can-eat count whats-this tell-about
   thaw-plan reheat freeze thaw finish put-away take move open answer choose follow-up correct no yes`.split(
    /\s+/,
  ),
);

/** When it was made or opened, and how long ago, is asked of the record. */
const ofTheRecord = ({ question }: Understanding, facts: boolean): boolean => {
  const { query, edit } = question?.acts[0]?.slots ?? {};
  const asked =
    question && question.left.length <= (facts ? 0 : 1) ? ((query ?? edit?.query)?.ask ?? []) : [];
  return (
    asked.length > 0 && asked.every((one) => one === 'how-old' || one === 'dates' || one.startsWith('date:'))
  );
};

/** "Is the goat cheese good for another week": of a thing that is here, held against a day. */
const ofOneDay = ({ question }: Understanding): boolean =>
  question !== undefined &&
  question.hers &&
  question.left.length === 0 &&
  (question.acts[0]?.slots.query?.by ?? null) !== null;
/** Asked in no other way: no other reading has a place for it. */
const onlyHere: ReadonlySet<Asked> = new Set(['cool', 'boil', 'roast']);
/** What a word on a label means; what a marker means is heard elsewhere. */
const ofLabels: ReadonlySet<Asked> = new Set(['claim', 'label']);
const ofMarkers: ReadonlySet<string> = new Set(['markers', 'define-dots', 'assign', 'tell']);

/** "It", "these": what was just spoken of, where no food is named. */
const aboutSomething = (sentence: Sentence): boolean =>
  pointerIn(sentence) !== null || has(sentence, 'infant');

/** Where nobody else made sense of it: words of other trades, or a name made of everyday words, with no fact that food has. */
const ofOtherThings = ({ item, guidance }: Act['slots'], sentence: Sentence): boolean => {
  const facts = guidance!;
  const ofFood =
    facts.seconds !== null ||
    facts.risks.length > 0 ||
    facts.infant ||
    facts.probe !== null ||
    facts.states.length > 0 ||
    Object.keys(facts.dates).length > 0 ||
    (facts.where !== null && facts.where !== 'counter');
  const ordinary = movesLexicon(sentence.language)?.isOrdinary;
  const everyday = ordinary && item?.words?.split(' ').some((word) => ordinary(word));
  return !ofFood && (sentenceCost(sentence.tokens, sentence.language) < 0 || everyday === true);
};

/** How long it was out was told, and that reading has not got it. */
const unheld = (facts: GuidanceFacts, { duration, time, words }: Act['slots']): boolean =>
  duration !== (facts.seconds ?? undefined) ||
  (duration === undefined && facts.overnight && words !== 'overnight') ||
  (duration === undefined && time === undefined && facts.since !== null) ||
  facts.until !== null;

/** The ear's question stands where facts were told that the reading so far has no place for. */
const takesOver = (
  { slots }: Act,
  base: Understanding,
  sentence: Sentence,
  expecting: HearingContext['expecting'],
): boolean => {
  const facts = slots.guidance!;
  // While a power cut is talked of, how the fridge stands is about that.
  if (
    onlyHere.has(facts.asked) ||
    (facts.asked === 'probe' && facts.probe !== null && slots.item !== undefined)
  )
    return true;
  const talkOfPower = expecting === 'outage' || expecting === 'outage-state' || expecting === 'step';
  const [act, ...more] =
    base.verdict === 'act' || base.verdict === 'confirm' ? (base.readings[0]?.acts ?? []) : [];
  if (talkOfPower && (slots.item === undefined || (act?.intent === 'answer' && !asksFor(sentence))))
    return false;
  if (!act && ofOtherThings(slots, sentence)) return false;
  if (ofLabels.has(facts.asked)) return !act || !ofMarkers.has(act.intent);
  const food = slots.item !== undefined;
  // "If I leave the cod out what happens": nothing is put on a list or away by it, whatever else hears so.
  const ofThawing = act?.intent === 'thaw-plan';
  if (food && facts.asked === 'out' && facts.mood === 'supposed' && isWhatIf(sentence) && !ofThawing)
    return true;
  // "Can I eat it if I boil it": no heat gives it back, and no other reading has a place for it.
  if (food && facts.boiling && facts.asked === 'still') return true;
  // What the record's questions cannot hold: how it was thawed, how long out, how hot.
  const beyond =
    facts.thawedIn !== null || facts.seconds !== null || facts.air !== null || facts.probe !== null;
  if (food && act?.intent === 'ask' && beyond && asksAnywhere(sentence)) return true;
  const follows = base.question?.acts[0]?.slots.edit !== undefined;
  // "If I freeze milk, how long does it keep" asks of no day on record.
  const sofar = facts.asked !== 'keep' || has(sentence, 'sofar');
  if ((food || follows) && sofar && ofTheRecord(base, saysMore(facts)) && !has(sentence, 'whatif'))
    return false;
  if (food && ofOneDay(base) && !saysMore(facts)) return false;
  // What is told with a question is told for the question; and how old it is and where, with words left over
  // by whoever would note it down, asks too.
  const told = [...(act ? [act] : []), ...more].some(({ intent }) =>
    /^(tell|put-away|thaw|reheated|finish|freeze|take|move|open|amend)$/.test(intent),
  );
  // Asked first because something would be lost, it is heard all the same.
  const whole = act?.intent === 'tell' && act.slots.unused === undefined;
  // "The sour cream I keep" asks nothing of how it keeps.
  if (whole && !asks(sentence) && act.slots.statements?.some(({ deed }) => deed === 'kept')) return false;
  const unsure = base.verdict !== 'act' && !whole;
  // A question is a better reading than a telling that nobody is sure of.
  if (food && facts.asked === 'still' && asksFor(sentence) && told && unsure) return true;
  // A day alone ("a bag of spinach, use by Saturday") is what is told of any food that is put away.
  const aged =
    facts.seconds !== null ||
    facts.when !== null ||
    facts.since !== null ||
    facts.overnight ||
    facts.infant ||
    facts.dates.opened !== undefined;
  if (food && saysMore(facts) && (asksFor(sentence) ? told || unsure : told && unsure && aged)) return true;
  // How it was thawed and how often heated no question about the record has a place for.
  if (food && act?.intent === 'ask' && asksFor(sentence) && (facts.thawedIn !== null || facts.reheated > 0))
    return true;
  const unheard = !act || more.some(({ intent }) => !ofGuidance.has(intent));
  if (facts.asked === 'fridge-reads' || facts.asked === 'freezer-reads')
    return !talkOfPower && (!act || (act.intent !== 'power-cut' && act.intent !== 'power-back'));
  // Of no food only where nobody else made anything of it.
  if (facts.asked === 'power') return food || (!act && !talkOfPower);
  // What is told of a power cut is about that, unless food is asked of with it.
  if (act?.intent === 'power-cut' || act?.intent === 'power-back') return false;
  if (act && !ofGuidance.has(act.intent)) return false;
  if (!food && unheard)
    return (
      facts.asked === 'boil' || (saysMore(facts) && aboutSomething(sentence) && sentence.tokens.length > 3)
    );
  // "Can I use margarine instead of butter": a food nobody here has, and no fact of it, is cookery.
  if (!act)
    return (
      food &&
      ((slots.item?.candidates.length ?? 0) > 0 ||
        saysMore(facts) ||
        facts.asked !== 'still' ||
        foodsIn(sentence).length === 1)
    );
  // "What about the fridge", "what about the raw chicken": the same question again, of something else.
  if (/^(follow-up|choose|answer|correct)$/.test(act.intent) && sentence.tokens.length <= 7) return false;
  // "What's on the counter" asks for no figure.
  if (!food && !/^(keeps|left-out|cook-temperature|reheat|answer|choose|follow-up)$/.test(act.intent))
    return false;
  // "Is the pâté all right" agrees to nothing.
  if (/^(yes|no|thanks)$/.test(act.intent)) return food && asks(sentence);
  if (facts.asked === 'freeze' && food)
    return act.slots.asked !== 'freeze' || act.slots.item?.words !== slots.item?.words || facts.infant;
  // The same, heard as well by the grammar.
  const same =
    act.intent === 'keeps' &&
    facts.seconds !== null &&
    act.slots.duration === facts.seconds &&
    facts.states.length === 0 &&
    facts.risks.length === 0 &&
    facts.where !== 'counter' &&
    Object.keys(facts.dates).length === 0;
  if (same) return false;
  // Told, and asked for no verdict: what changes the record is the record's, where it has such a thing.
  const changing = /^(freeze|thaw|finish|put-away|take|move|open)$/.test(act.intent);
  const onRecord = (slots.item?.candidates.length ?? 0) > 0;
  if (/^(thaw|open|take)$/.test(act.intent) && food && !onRecord && saysMore(facts)) return true;
  // Of food nobody here has, the record can say nothing.
  if (act.intent === 'keeps' && food && !onRecord) return true;
  if (changing && more.length === 0 && !asks(sentence) && !has(sentence, 'ask')) return false;
  if (act.intent === 'left-out' && !food && !facts.infant) return false;
  if (act.intent === 'left-out')
    return (
      unheld(facts, act.slots) ||
      facts.infant ||
      (act.slots.asked === undefined && facts.air !== null) ||
      facts.mood === 'supposed'
    );
  if (act.intent === 'thaw-plan')
    return (
      facts.asked === 'refreeze' ||
      (facts.asked === 'still' && facts.thawedIn !== null) ||
      (facts.asked === 'thaw' && facts.pounds !== null && act.slots.when === undefined)
    );
  if (act.intent === 'reheat')
    return (
      facts.infant ||
      facts.asked === 'probe' ||
      facts.asked === 'refreeze' ||
      (food && facts.reheated > 0) ||
      (food && !onRecord && saysMore(facts)) ||
      facts.method === 'slow-cooker'
    );
  if (act.intent === 'cook-temperature')
    return facts.infant || facts.asked === 'probe' || facts.asked === 'out';
  return (
    saysMore(facts) ||
    (act.intent !== 'keeps' && act.intent !== 'item-date' && asks(sentence) && food && changing)
  );
};

const talkOfSteps: ReadonlySet<Intent> = new Set<Intent>(['ask-step', 'next', 'done', 'back', 'steps-left']);
/** What the steps of a dish tell of it themselves: how long and how hot it is heated, and how it is left to cool. */
const toldBySteps: ReadonlySet<Asked> = new Set<Asked>(['roast', 'cook', 'reheat', 'cool']);

/** "How long should I bake them", "it looks good, what's next": of the dish whose steps are followed. */
const ofStepsAtHand = (
  { intent, slots: { asked, item, guidance } }: Act,
  { verdict, readings: [best] }: Understanding,
  { steps, locale }: HearingContext,
): boolean => {
  const talk = verdict === 'act' && best?.acts.every((act) => talkOfSteps.has(act.intent)) === true;
  if (!steps || !talk) return false;
  // That it looks or smells good is said of how a step came out.
  if (intent === 'danger') return asked === 'sniff';
  const another = item?.words && !stepsSpeakOf(item.words, steps, locale);
  if (!guidance || another) return false;
  // "Can I eat it now" asks whether it is done, where nothing is told of how it was kept.
  if (guidance.asked === 'still') return !saysMore(guidance);
  return toldBySteps.has(guidance.asked) && guidance.pounds === null && guidance.readings.length === 0;
};

/** It asks, by how it begins, by a question later in it, or by words that only a question holds. */
const asksFor = (sentence: Sentence): boolean =>
  asksAnywhere(sentence) ||
  spotsOf(sentence, 'ask').some(({ value }) => value === 'still' || value === 'keep' || value === 'refreeze');

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
    // An answer that says who eats here holds what they must not, person by person.
    if (acts[0]?.slots.eaters) return base;
    const hazard = hazardAct(sentence, base.verdict === 'act' ? (acts[0] ?? null) : null);
    if (hazard && !ofStepsAtHand(hazard, base, context)) return readAs([hazard], said, tokens);
    const answered = context.expecting === 'allergen' ? allergensAnswered(sentence) : null;
    if (answered) return readAs([answered], said, tokens);
    const allergens = allergenActs(sentence, base.verdict === 'out-of-scope' ? [] : acts);
    if (allergens) {
      const read = readAs(besideTold(acts, base, allergens), said, tokens);
      // What food holds may be asked of one shelf: a question put together from its parts has that, too.
      const ofFood = allergens.every(({ intent }) => intent === 'contains');
      return ofFood && base.question ? { ...read, question: base.question } : read;
    }
    const asked = guidanceAct(sentence);
    const risk = riskAct(sentence, acts[0] ?? null);
    // "I am pregnant, can I eat the brie": answered, and what was told of her is kept as well.
    if (risk) return readAs(asked?.slots.item ? [asked, risk] : [risk], said, tokens);
    const ofSteps = asked !== null && ofStepsAtHand(asked, base, context);
    if (asked && !ofSteps && takesOver(asked, base, sentence, context.expecting))
      return readAs([asked], said, tokens);
    const put = acts
      .map((act) => withReading(act, asked))
      .map((act) =>
        freezesAgain(act, asked) ? asked! : inTheHeat(supposing(bothNuts(act, sentence), sentence), sentence),
      );
    const [first, ...rest] = base.readings;
    return !first || sameActs(acts, put) ? base : { ...base, readings: [{ ...first, acts: put }, ...rest] };
  };
  return {
    begins: (words, names, context) => inner.begins(words, names, context),
    understand(hypotheses, names, context) {
      const base = inner.understand(hypotheses, names, context);
      const [said] = hypotheses;
      if (!said || context.expecting === 'spelling' || context.expecting === 'code') return base;
      return settledFirst(read(base, said, names, context), base, (rest, text) =>
        read(rest, { text, confidence: said.confidence }, names, { ...context, expecting: 'anything' }),
      );
    },
  };
};
