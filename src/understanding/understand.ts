/** From a recogniser's guesses to what was meant, how sure that is, and what to do with it. */
import type { DynamicRules } from '../grammar/api.js';
import { today, type Clock, type PlainDate } from '../terms/dates.js';
import { disputed, losesSomething, withConsensus } from './agreement.js';
import { caughtIn, foreign, worthAsking } from './caught.js';
import { confidenceOf, type Evidence } from './confidence.js';
import { cuedIntent } from './cues.js';
import { rulesExpected } from './expected.js';
import { mayWrite } from './gate/index.js';
import { grammarFor, rulesFor } from './grammar-files.js';
import { guessesFrom, type Guess } from './guesses.js';
import { learnedReading } from './learned-reading.js';
import {
  BARE_INTENTS,
  CHANGING_INTENTS,
  type Act,
  type AskProposal,
  type Caught,
  type HearingContext,
  type Hypothesis,
  type Intent,
  type Interpretation,
  type Understanding,
} from './intents.js';
import { answersCheck, asksForCheck, checkReading } from './moves/check.js';
import { classAt, movesLexicon } from './moves/lexicon.js';
import { firstDayReading } from './moves/first-day.js';
import { listTalkOf, requestReading } from './moves/requests.js';
import { narrowingIn, settledBy } from './moves/settling.js';
import { isTold, tellsInFood, toldReading } from './moves/search.js';
import { stepsReading } from './moves/steps.js';
import { dishReading } from './moves/steps/of-dish.js';
import { stepsSpeakOf } from './moves/steps/at-hand.js';
import { moodOf } from './learned/index.js';
import { answerAlone, onlyDenies, onlyTurnsAway, turnedAway } from './moves/turning-away.js';
import type { HouseholdNames } from './names/api.js';
import { oursOnly } from './not-ours.js';
import { questionIn } from './moves/questions.js';
import { mendedReadings, readingsOf, strayReadings, type Reader, type Reading } from './readings.js';
import { confidenceOfCues, thresholds, verdictOn } from './thresholds.js';
import { lexiconFor, normalise } from './words/index.js';
import { sentencesOf } from './words/sentences.js';

export interface Understander {
  /**
   * Pure: the same arguments, the same answer. `hypotheses` best first; more than five are not read.
   * `names` is the household's index (`createHouseholdNames()`), kept in step by its owner.
   */
  understand(
    hypotheses: readonly Hypothesis[],
    names: HouseholdNames,
    context: HearingContext,
  ): Understanding;
  /** True when words heard so far begin something understood here. */
  begins(words: string, names: HouseholdNames, context: HearingContext): boolean;
}

const ofClocks: ReadonlySet<Intent> = new Set<Intent>([
  ...(['set-reminder', 'change-reminder', 'cancel-reminder', 'set-household'] as const),
  ...(['change-timer', 'cancel-timer'] as const),
]);
/** What a clock is asked, or set to, by its own words: a step that says how long is asked for that. */
const isOfClocks = (acts: readonly Act[], ofSteps: readonly Act[]): boolean => {
  const answered = ofSteps.some(({ intent, slots }) => intent === 'ask-step' && slots.words !== undefined);
  return acts.some(
    ({ intent, slots }) =>
      ofClocks.has(intent) ||
      (intent === 'set-timer' && slots.duration !== undefined) ||
      (intent === 'timers' && !answered),
  );
};

/** "Isn't there milk in that meatloaf?": asked by its order of words, and puts nothing right. */
const asksOnly = (acts: readonly Act[], guess: Guess | undefined, language: string): boolean => {
  const lexicon = movesLexicon(language);
  if (!guess || !lexicon || !acts.every(({ intent }) => intent === 'correct')) return false;
  const opens = classAt(lexicon, guess.said, 0, 'is-not', 'aux', 'opens-question', 'wh') > 0;
  return opens && (moodOf(guess.tokens, language)?.asked ?? 0) >= surelyAsks;
};
const surelyAsks = 0.8;

/** Surely said to somebody else, or of who comes: however it goes on, no report of a step. */
const isApart = (read: Interpretation | undefined): boolean =>
  read !== undefined &&
  read.confidence >= likelyApart &&
  read.acts.every(({ intent }) => apartFromSteps.has(intent));
const likelyApart = 0.8;
const apartFromSteps: ReadonlySet<Intent> = new Set<Intent>([
  ...(['leave-note', 'add-person', 'set-reminder'] as const),
]);

/** Talk of the steps beside a request: reports and questions; praise says nothing more. */
const ofStepsBeside =
  (guess: Guess | undefined, reader: Reader, { steps, locale }: HearingContext) =>
  (tokens: readonly string[]): readonly Act[] | null => {
    if (!steps || !guess) return null;
    const words: Guess = { ...guess, heard: tokens.join(' '), tokens, said: tokens, pauses: new Set() };
    const read = stepsReading(words, undefined, undefined, reader, steps, locale);
    return read?.acts.filter(({ slots }) => slots.asked !== 'wait') ?? null;
  };

const nothing: Understanding = { readings: [], margin: 1, verdict: 'nothing-heard' };

/** Words and numbers of a meaning, without the records they were matched to; of a marker, how it feels. */
const leavesOf = (value: unknown, into: string[]): string[] => {
  if (Array.isArray(value)) for (const part of value) leavesOf(part, into);
  else if (typeof value === 'object' && value !== null) {
    // "Star magnet", "the star magnet": one marker.
    const felt = 'touch' in value && value.touch !== null;
    for (const [key, part] of Object.entries(value))
      if (key !== 'candidates' && !(felt && key === 'words')) leavesOf(part, into);
  } else if (value !== null && value !== undefined) into.push(String(value));
  return into;
};

/** What a meaning tells, whatever is done with it. */
const told = (acts: readonly Act[]): readonly string[] =>
  leavesOf(
    acts.map(({ slots }) => slots),
    [],
  );

/**
 * A reading that stands against the best one: it tells of something else, or it loses what the other keeps. One that
 * says the same of the same ("put it back", "put it") is none, nor is one that leaves out part of what was said.
 */
const rivals = (best: Interpretation, other: Interpretation): boolean => {
  const [mine, theirs] = [told(best.acts), told(other.acts)];
  const within = theirs.every((leaf) => mine.includes(leaf));
  if (within && theirs.length < mine.length) return false;
  return !within || losesSomething(best.acts) !== losesSomething(other.acts);
};

/**
 * Two readings mean the same when they hold the same intents and words, however well names fit
 * and whether "in the freezer" was taken as the thing's place or the sentence's.
 */
const keyOf = (acts: readonly Act[]): string =>
  `${acts.map(({ intent }) => intent).join('+')}: ${leavesOf(
    acts.map(({ slots }) => slots),
    [],
  )
    .sort()
    .join(' ')}`;

interface Meaning {
  acts: readonly Act[];
  guess: Guess;
  best: number;
  mass: number;
  mended: boolean;
}

/** A first guess this sure is taken without reading the others: most turns end here. */
const sure = -1;
/** After so many guesses, a reading this likely is as good as the rest could give. */
const likelyEnough = { after: 2, score: -2.5 } as const;
/** When nothing is likelier than this, a word was perhaps misheard. */
const doubtful = -4;

/** How many of the guesses are searched for every reading, and how many for misheard words. */
const thoroughlyRead = 2;
const mended = 3;
/** With fewer guesses than that, words too many are looked for. */
const fewGuesses = 3;

/** How many of the guesses must agree on what cue words say. */
const mustAgree = 3;

type Meanings = Map<string, Meaning>;

/** Several parses of one guess that mean the same are no more than one: the likeliest counts. */
const gather = (meanings: Meanings, guess: Guess, readings: readonly Reading[]): void => {
  const counted = new Map<string, number>();
  for (const { acts, score, mended = false } of readings) {
    const key = keyOf(acts);
    const mass = guess.share * Math.exp(score);
    const known = meanings.get(key);
    if (!known) meanings.set(key, { acts, guess, best: score, mass, mended });
    else {
      known.mass += Math.max(0, mass - (counted.get(key) ?? 0));
      if (score > known.best) Object.assign(known, { acts, guess, best: score, mended });
    }
    counted.set(key, Math.max(mass, counted.get(key) ?? 0));
  }
};

interface Meant {
  /** As they were read: with what most of them agree on, where the first was in doubt. */
  readonly guesses: readonly Guess[];
  /** Likeliest first. */
  readonly meanings: readonly Meaning[];
  /** What each guess says by itself, of those read that make sense. */
  readonly read: ReadonlyMap<Guess, readonly Act[]>;
}

const meaningsOf = (given: readonly Guess[], reader: Reader): Meant => {
  let guesses = given;
  const meanings: Meanings = new Map();
  const read = new Map<Guess, readonly Act[]>();
  let best = -Infinity;
  let losing = false;
  for (let rank = 0; rank < guesses.length; rank += 1) {
    const guess = guesses[rank]!;
    const readings = readingsOf(guess.tokens, reader, rank < thoroughlyRead);
    gather(meanings, guess, readings);
    const [first] = readings;
    if (first && first.score > best) best = first.score;
    if (first && first.score >= doubtful) {
      read.set(guess, first.acts);
      losing ||= losesSomething(first.acts);
    }
    const clear = rank === 0 && best >= sure;
    if (rank === 0 && !clear) guesses = withConsensus(given);
    // Before something is lost, all are heard.
    if (losing) continue;
    // A bare name while steps are read may be a misheard "pause": the others are heard, too.
    if (reader.expecting === 'step' && first?.acts.length === 1 && BARE_INTENTS.has(first.acts[0]!.intent))
      continue;
    if (clear || (rank >= likelyEnough.after && best >= likelyEnough.score)) break;
  }
  if (best < doubtful)
    for (const guess of guesses.slice(0, mended)) {
      gather(meanings, guess, mendedReadings(guess.tokens, reader));
      // Of several guesses, one or the other has not got the word that was put in.
      if (guesses.length < fewGuesses) gather(meanings, guess, strayReadings(guess.tokens, reader));
    }
  return { guesses, meanings: [...meanings.values()].sort((a, b) => b.mass - a.mass), read };
};

/**
 * What cue words say, where the grammar says nothing or is in doubt between requests about the talk.
 * The guesses must agree: stray words of a misheard sentence soon make a yes.
 */
const cuedReading = (
  guesses: readonly Guess[],
  parsed: Interpretation | undefined,
  score: number | undefined,
  { language }: Reader,
): Interpretation | null => {
  const offered = parsed && parsed.confidence >= thresholds.offer ? parsed : null;
  if (offered && (offered.acts.length > 1 || score! >= sure)) return null;
  const said = guesses
    .slice(0, mustAgree)
    .map(({ tokens, aside }) =>
      cuedIntent([...tokens, ...aside], language, offered?.acts[0]!.intent ?? null),
    );
  const [intent] = said;
  // "And that's all gone as well": what something was done to is no mere talk.
  if (intent && closing.has(intent) && tellsDeed(guesses[0]!.tokens, language)) return null;
  if (intent && said.every((other) => other === intent)) {
    const { heard, tokens } = guesses[0]!;
    return {
      acts: [{ intent, slots: {} }],
      confidence: confidenceOfCues,
      heard,
      normalised: tokens.join(' '),
    };
  }
  return null;
};

const closing: ReadonlySet<Intent> = new Set<Intent>(['goodbye', 'thanks']);
const tellsDeed = (tokens: readonly string[], language: string): boolean => {
  const lexicon = movesLexicon(language);
  return tokens.some((_, at) =>
    [...(lexicon?.phrases.longestAt(tokens, at)?.value ?? [])].some(
      (name) => name.startsWith('deed:') || name.startsWith('state:'),
    ),
  );
};

/** A yes that only cue words speak for settles no open question: it is asked again. */
const verdictOnCues = ({ acts }: Interpretation, { expecting }: HearingContext): Understanding['verdict'] =>
  (expecting === 'yes-no' || expecting === 'outage-state') && acts[0]!.intent === 'yes' ? 'ask-again' : 'act';

/** How sure a question put together from its parts is, where no reading of the whole makes sense. */
const confidenceOfQuestion = 0.6;
/** So many words that nothing is known of are too many, where nothing else speaks for it. */
const strangersAtMost = 2;

/** "What's the date on the milk while I've got you", while steps of something else are followed. */
const asksOfAnother = (
  { outright, hers, ownSubject, fragment, left, acts }: AskProposal,
  { steps, locale }: HearingContext,
): boolean => {
  const [named] = acts[0]?.slots.query?.where ?? [];
  const words = named?.by === 'named' ? named.mention.words : null;
  if (!steps || !words || !(outright && hers && ownSubject) || fragment || left.length > 1) return false;
  return !stepsSpeakOf(words, steps, locale);
};

/** "I've used up a stick of butter frying onions", while steps of something else are followed: of a thing here by its name. */
const tellsOfAnother = (acts: readonly Act[], { steps, locale }: HearingContext): boolean =>
  steps !== undefined &&
  steps !== null &&
  acts.every(({ slots: { statements = [] } }) => {
    const [first] = statements;
    const best = first?.thing?.candidates[0];
    return (
      best !== undefined &&
      best.fit >= surelyNamed &&
      best.id !== steps.dish?.id &&
      !stepsSpeakOf(first?.thing?.words ?? '', steps, locale)
    );
  });
const surelyNamed = 0.9;

const likelyAsked = 0.6;
const surelyTold = 0.9;
/** Of stretches that are this seldom asked. */
const seldomAsked = 0.2;
/** A change that nothing but what was learned speaks for. */
const onlyLearned = ({ verdict, readings: [best] }: Understanding): boolean =>
  verdict === 'confirm' &&
  best !== undefined &&
  best.evidence === undefined &&
  best.framed !== true &&
  best.acts.every(({ intent }) => intent !== 'tell' && changing.has(intent));
const changing: ReadonlySet<Intent> = new Set<Intent>(CHANGING_INTENTS);

/** Pauses are of what was said: with slips put right, nobody knows before which words they stand. */
const pausesOf = ({ tokens, said, pauses }: Guess): ReadonlySet<number> =>
  tokens.length === said.length ? pauses : new Set();

/**
 * "I put the ham on the door. What should I use first?": the last sentence asks all by itself, so that nothing of
 * those before it narrows what it asks, and all of them together are no one question.
 */
const asksByItself = (
  { heard }: Guess,
  rules: DynamicRules,
  day: PlainDate,
  { locale, meanings }: HearingContext,
): boolean => {
  const sentences = sentencesOf(heard);
  const last = sentences.length > 1 ? normalise(sentences.at(-1)!, locale).tokens : [];
  const asked = questionIn(last, rules, day, lexiconFor(locale).language, meanings);
  const { query } = asked?.acts[0]?.slots ?? {};
  const whole = query !== undefined && query.ask.length > 0;
  return whole && asked!.outright && !asked!.fragment && asked!.left.length === 0;
};

/** A question about something of this kitchen is the reading, where there was none. */
const withQuestion = (
  understood: Understanding,
  question: AskProposal,
  { heard, tokens }: Guess,
  language: string,
  /** Food was just told of. */
  told: boolean,
): Understanding => {
  const { verdict, readings } = understood;
  const lost =
    verdict === 'out-of-scope' ||
    (verdict === 'ask-again' && readings.length === 0) ||
    (question.outright &&
      question.left.length === 0 &&
      onlyLearned(understood) &&
      (question.acts[0]?.slots.query?.ask.length ?? 1) > 0 &&
      // "Would anybody unclip the bead from that jar" orders.
      (moodOf(tokens, language)?.asked ?? 1) >= likelyAsked);
  const whole = question.hers && !question.fragment && question.acts[0]!.slots.query !== undefined;
  // What follows an answer is about that: "whose cooking was it".
  const follows =
    question.left.length === 0 && (question.acts[0]!.slots.edit !== undefined || (told && question.outright));
  if (lost && !follows && foreign(tokens, language)) return understood;
  const strange = question.left.length > strangersAtMost;
  if (!lost || !whole || strange) return { ...understood, question };
  const reading: Interpretation = {
    acts: question.acts,
    confidence: confidenceOfQuestion,
    heard,
    normalised: tokens.join(' '),
  };
  return { readings: [reading, ...readings], margin: 1, verdict: 'act', question };
};

/** A rule's reading of every word, this likely, is of the whole. */
export const isSureOfWhole = ({ readings: [best], verdict }: Understanding): boolean =>
  verdict === 'act' &&
  (best?.whole === true || (best?.evidence !== undefined && best.evidence.score >= sure));

/** A request, a statement or a question of its own. */
const standsAlone = ({ verdict, readings: [best], question }: Understanding): boolean =>
  (question !== undefined && question.left.length === 0 && (question.ownSubject || question.outright)) ||
  ((verdict === 'act' || verdict === 'confirm') &&
    best !== undefined &&
    best.acts.every(({ intent }) => !BARE_INTENTS.has(intent) && !ofTalk.has(intent)));
const ofTalk: ReadonlySet<Intent> = new Set<Intent>([
  'correct',
  'yes',
  'no',
  'cancel',
  'stop',
  'wait',
  'maybe',
]);
const goOn: Act = { intent: 'continue', slots: {} };

/** What was going on is left, or what was taken for a subject denied, and nothing else said. */
const leaving = ({ heard, tokens }: Guess, intent: 'cancel' | 'no' = 'cancel'): Understanding => ({
  readings: [
    {
      acts: [{ intent, slots: {} }],
      confidence: 1,
      heard,
      normalised: tokens.join(' '),
      framed: true,
    },
  ],
  margin: 1,
  verdict: 'act',
});

/** `without`: leaves out the last resorts, to see what each is worth. */
export const createUnderstander = (
  locale: string,
  { without = [] }: { readonly without?: readonly ('told' | 'learned' | 'cues')[] } = {},
): Understander => {
  const { language } = lexiconFor(locale);
  const grammar = grammarFor(language);
  const readerFor = (names: HouseholdNames, context: HearingContext): Reader => {
    const clock: Clock = { now: context.now, timeZone: context.timeZone };
    return {
      grammar,
      rules: rulesFor(names, context.locale, clock),
      today: today(clock),
      language,
      expecting: context.expecting,
      standing: context.standing ?? null,
    };
  };
  const byReadings = (
    given: readonly Guess[],
    names: HouseholdNames,
    context: HearingContext,
  ): Understanding => {
    const reader = readerFor(names, context);
    const { guesses, meanings: all, read } = meaningsOf(given, reader);
    const [heardBest] = guesses;
    const mayBe = (acts: readonly Act[]): boolean =>
      mayWrite(acts, reader) &&
      (!heardBest || asksForCheck(heardBest, acts, language)) &&
      (!heardBest || !context.checking || answersCheck(heardBest, acts, reader));
    const meanings = all.filter(({ acts }) => mayBe(acts));
    const belief = all.reduce((sum, { mass }) => sum + mass, 0);
    const readings = meanings.map((meaning): Interpretation => {
      const evidence: Evidence = {
        score: meaning.best,
        part: meaning.mass / belief,
        mended: meaning.mended,
      };
      return {
        acts: meaning.acts,
        confidence: confidenceOf(evidence),
        evidence,
        heard: meaning.guess.heard,
        normalised: meaning.guess.tokens.join(' '),
      };
    });
    const firstDay = firstDayReading(guesses, readings[0], reader);
    // "That's the lot" is what there is, and no end of the questions.
    const allTold = firstDay?.acts[0]?.intent === 'done';
    if (firstDay)
      return { readings: allTold ? [firstDay] : [firstDay, ...readings], margin: 1, verdict: 'act' };
    const check = context.checking ? checkReading(guesses[0], readings[0], reader) : null;
    if (check) return { readings: [check, ...readings], margin: 1, verdict: 'act' };
    const found = without.includes('told')
      ? null
      : toldReading(
          guesses,
          readings[0],
          meanings[0]?.best,
          reader,
          context.expecting !== 'anything' || Boolean(context.last) || context.goesOn === true,
        );
    const told = found?.partial ? null : found;
    const half = found?.partial ? found : null;
    // While steps are followed, only what was surely done to something else is no talk of them.
    const several = (told?.reading.acts[0]?.slots.statements?.length ?? 0) > 1;
    const ofOther =
      found !== null &&
      found.namesDeed &&
      ((told !== null && (told.verdict === 'act' || several)) || tellsOfAnother(found.reading.acts, context));
    const ofSteps =
      context.steps && guesses[0] && !ofOther && !isApart(readings[0])
        ? stepsReading(guesses[0], readings[0], meanings[0]?.best, reader, context.steps, context.locale)
        : null;
    // Of a dish whose steps are not followed: what it was told to take answers before any table.
    const ofDish = ofSteps || without.includes('told') ? null : dishReading(guesses[0], reader, context);
    if (ofDish) return { readings: [ofDish, ...readings], margin: 1, verdict: 'act' };
    const asked = without.includes('told')
      ? null
      : requestReading(
          guesses[0],
          readings[0],
          meanings[0]?.best,
          reader,
          context.clocks ?? [],
          context.last ?? null,
          context.list ?? null,
          context.answered ?? null,
          told?.verdict === 'act' ? (told.reading.acts[0]?.slots.statements ?? []).length : 0,
          ofStepsBeside(guesses[0], reader, context),
          context.talkedOf ?? null,
        );
    const request =
      asked && mayWrite(asked.reading.acts, reader) && !asksOnly(asked.reading.acts, guesses[0], language)
        ? asked
        : null;
    // While steps are followed, a clock or a setting is asked for by its own words; all else is of the steps.
    const besideSteps = request?.verdict === 'act' && isOfClocks(request.reading.acts, ofSteps?.acts ?? []);
    if (request && (!ofSteps || besideSteps))
      return { readings: [request.reading, ...readings], margin: 1, verdict: request.verdict };
    if (ofSteps) return { readings: [ofSteps, ...readings], margin: 1, verdict: 'act' };
    if (told) return { readings: [told.reading, ...readings], margin: 1, verdict: told.verdict };
    const guessed = without.includes('learned')
      ? null
      : learnedReading(guesses, readings[0], meanings[0]?.best, reader);
    const learned = guessed && mayBe(guessed.reading.acts) ? guessed : null;
    // What is in food is never dropped for a guess.
    if (learned && half && (isTold(learned.reading) || tellsInFood(half.reading)))
      return { readings: [half.reading, ...readings], margin: 1, verdict: half.verdict };
    if (learned) return { readings: [learned.reading, ...readings], margin: 1, verdict: learned.verdict };
    const catching = (): readonly Caught[] => caughtIn(guesses[0]!.tokens, reader.rules, language);
    const byCues = without.includes('cues')
      ? null
      : cuedReading(guesses, readings[0], meanings[0]?.best, reader);
    const cued = byCues && mayBe(byCues.acts) ? byCues : null;
    // "Yes, something, salsa": a thing of this kitchen says that it was about more than the talk.
    if (cued && !worthAsking(catching()))
      return { readings: [cued, ...readings], margin: 1, verdict: verdictOnCues(cued, context) };
    const [first, ...others] = readings;
    const rival = first && others.find((other) => rivals(first, other));
    const margin = rival ? Math.max(0, first.confidence - rival.confidence) : 1;
    const best = readings[0] && {
      ...readings[0],
      mended: meanings[0]!.mended,
      hedged: meanings[0]!.guess.hedged,
      disputed: losesSomething(readings[0].acts) && disputed(readings[0].acts, guesses, read),
    };
    const verdict = verdictOn(best, margin);
    if (verdict === 'out-of-scope') {
      const caught = catching();
      if (worthAsking(caught) && half?.namesDeed)
        return { readings: [half.reading, ...readings], margin: 1, verdict: half.verdict };
      if (worthAsking(caught)) return { readings: [], margin, verdict: 'ask-again', caught };
    }
    return {
      readings,
      margin,
      verdict,
      ...(best?.hedged ? { hedged: true } : {}),
      ...(best?.disputed ? { disputed: true } : {}),
    };
  };
  const byQuestionsToo = (
    given: readonly Guess[],
    names: HouseholdNames,
    context: HearingContext,
  ): Understanding => {
    const understood = byReadings(given, names, context);
    const { rules, today: day } = readerFor(names, context);
    const question = questionIn(
      given[0]!.tokens,
      rules,
      day,
      language,
      context.meanings,
      pausesOf(given[0]!),
    );
    if (!question || asksByItself(given[0]!, rules, day, context)) return understood;
    const mood = moodOf(given[0]!.tokens, language, { expecting: context.expecting });
    const changes = understood.readings[0]?.acts.some(({ intent }) => changing.has(intent)) === true;
    // What is surely told asks nothing, where somebody has a place for what it tells.
    const tells = changes && (mood?.told ?? 0) >= surelyTold;
    // Put as no question, and no bit of one: what is not asked is none.
    const guessed = !question.outright && !question.fragment && (mood?.asked ?? 1) < seldomAsked;
    if (tells || guessed) return understood;
    // A clock or a setting asked for by its own words is no question of a thing.
    return asksOfAnother(question, context) && understood.readings[0]?.framed !== true
      ? withQuestion(
          { readings: [], margin: 1, verdict: 'out-of-scope' },
          question,
          given[0]!,
          language,
          context.told === true,
        )
      : withQuestion(understood, question, given[0]!, language, context.told === true);
  };
  /** What was said after "never mind that" or "hold on", where that makes sense by itself and the whole less so. */
  const turnedFrom = (
    whole: Understanding,
    guess: Guess | undefined,
    names: HouseholdNames,
    context: HearingContext,
  ): Understanding => {
    const { steps, checking, standing, expecting, ...free } = context;
    const busy = Boolean(steps) || Boolean(checking) || Boolean(standing) || expecting !== 'anything';
    const away = turnedAway(guess, readerFor(names, context).rules, language, busy);
    // "Cancel the dumplings timer and leave the cornbread": all of it is of timers, and nothing is turned from.
    const [first] = whole.readings;
    const ofTimers = whole.verdict === 'act' && first?.framed === true && isOfClocks(first.acts, []);
    if (!away || ofTimers || isSureOfWhole(whole)) return whole;
    const after: HearingContext = away.leaves
      ? { ...free, expecting: 'anything' }
      : { ...context, expecting: 'anything' };
    const rest = byQuestionsToo([away.rest], names, after);
    const tells = rest.readings[0]?.acts.every(({ intent }) => intent === 'tell') === true;
    if (!standsAlone(rest) || (away.tells && !tells)) return whole;
    const [best, ...others] = rest.readings;
    const goesOn = away.goesOn && best ? [{ ...best, acts: [...best.acts, goOn] }, ...others] : rest.readings;
    return { ...rest, readings: goesOn, ...(away.leaves ? { leaves: true } : {}) };
  };
  /** An answer that was not understood with its "I reckon", without it. */
  const plainly = (
    whole: Understanding,
    guess: Guess | undefined,
    names: HouseholdNames,
    context: HearingContext,
  ): Understanding => {
    const lost = whole.verdict === 'ask-again' || whole.verdict === 'out-of-scope';
    const alone = lost && context.expecting !== 'anything' ? answerAlone(guess, language) : null;
    return alone ? { ...byQuestionsToo([alone], names, context), said: alone.heard } : whole;
  };
  return {
    understand(hypotheses, names, context) {
      const given = guessesFrom(hypotheses, context.locale);
      if (given.length === 0) return nothing;
      // "Never mind", in a check, is of the one thing asked of, and "stop" of the whole; "drop the milk" is of the list.
      const ofList = listTalkOf(given[0]!, readerFor(names, context), context.list ?? null);
      if (!context.checking && !ofList && onlyTurnsAway(given[0], readerFor(names, context).rules, language))
        return leaving(given[0]!);
      if (context.expecting === 'anything' && onlyDenies(given[0], readerFor(names, context).rules, language))
        return leaving(given[0]!, 'no');
      const whole = oursOnly(byQuestionsToo(given, names, context), given, language, context);
      const settledNow = settledBy(given[0], context.expecting, language);
      const own: Act[] = settledNow ? [{ intent: settledNow.intent, slots: {} }] : [];
      const settles = !context.checking || answersCheck(given[0]!, own, readerFor(names, context));
      const settled = settles ? settledNow : null;
      if (!settled) {
        const turned = turnedFrom(whole, given[0], names, context);
        return turned === whole ? plainly(whole, given[0], names, context) : turned;
      }
      const { rest, intent, parted } = settled;
      const after = byQuestionsToo([rest], names, { ...context, expecting: 'anything', goesOn: true });
      const narrows = narrowingIn(rest, readerFor(names, context), context.clocks ?? []);
      const answer = { intent, parted, rest: after, said: rest.heard, ...(narrows ? { narrows } : {}) };
      return { ...whole, settles: answer };
    },
    begins(words, names, context) {
      const { tokens } = normalise(words, context.locale);
      return grammar.acceptsPrefix(tokens, {
        rules: ['act', ...rulesExpected(context.expecting, grammar)],
        dynamic: rulesFor(names, context.locale, { now: context.now, timeZone: context.timeZone }),
      });
    },
  };
};
