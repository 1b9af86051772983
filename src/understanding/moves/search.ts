/**
 * Which of the proposals for an utterance is taken. Whole readings by rule and what is told are judged by the
 * same account: what part of the words each explains, and how much it makes of them.
 */
import type {
  Act,
  Expectation,
  Intent,
  Interpretation,
  Mention,
  Slots,
  Statement,
  Understanding,
} from '../intents.js';

import type { Guess } from '../guesses.js';
import type { WordForms } from '../languages/index.js';
import type { Reader } from '../readings.js';
import { DESTRUCTIVE_INTENTS, type Proposal } from '../intents.js';
import { chunksOf } from './chunks.js';
import { classAt, movesLexicon } from './lexicon.js';
import { statementsProposal } from './statements/index.js';

/** A rule's reading this likely stands (natural logarithm), unless what was told holds more. */
const sureRule = -1;
/** Below this, too much of the sentence is guessed. */
const leastScore = -7;
const plainScore = -1.6;
const surelyRead = 0.94;
/** By a name of hers, or of a food that is not hers: not by a pointer, nor by what half fits. */
const isNamed = ({ words, candidates }: Mention): boolean =>
  words !== null && (candidates.length === 0 || candidates[0]!.fit >= surelyNamed);
/** It has an amount that the rule passed over, or says of it that so much is left. */
const countsMore = (statements: readonly Statement[], acts: readonly Act[]): boolean =>
  (statements.some(({ amount }) => amount !== undefined) && !acts.some(({ slots }) => slots.amount)) ||
  (statements.some(({ left }) => left !== undefined) && !acts.some(({ slots }) => slots.left));
const isSomeOfHers = ({ thing, definite, fresh, amount, parts }: Statement): boolean =>
  definite && !fresh && (amount ?? parts) !== undefined && (thing?.candidates[0]?.fit ?? 0) >= surelyNamed;

/** So many words that nothing took, and it was about something else. */
const mostLeft = 2;
/** And that many of its words. */
const mostShareLeft = 0.2;
/** Names that fit less are asked about before something is lost. */
const surelyNamed = 0.78;
/** A rule's reading that stands where words were left over. */
const fairRule = 0.45;
/** And other requests than those, this likely, stand as well. */
const likelyRule = 0.7;
const sureAct = 0.9;
const sureAsk = 0.6;

/** What is said then is an answer, whatever it would be else. */
const waitsForWords: ReadonlySet<Expectation> = new Set<Expectation>(['words', 'spelling', 'code', 'method']);
const losing: ReadonlySet<Statement['deed']> = new Set<Statement['deed']>([
  'finished',
  'threw',
  'gave',
  'unlisted',
]);

/** What the two ways of reading compete for: what was done to food, and facts of it. */
const told: ReadonlySet<Intent> = new Set<Intent>([
  'put-away',
  'take',
  'finish',
  'move',
  'amend',
  'open',
  'freeze',
  'thaw',
  'reheated',
  'put-back',
  'mark',
  'buy-add',
  'buy-remove',
  'choose',
  'answer',
  'correct',
  'follow-up',
]);

const answering: ReadonlySet<Intent> = new Set<Intent>(['choose', 'answer', 'correct', 'follow-up']);

/** How much a meaning makes of a sentence: its things, and what is said of them, each once. */
const weightOf = (things: number, roles: readonly (readonly [string, unknown])[]): number =>
  things + new Set(roles.flatMap(([role, value]) => partsOf(role, value))).size;

const partsOf = (role: string, value: unknown): readonly string[] => {
  if (role === 'dates') return Object.entries(value as object).map((part) => JSON.stringify(part));
  if (Array.isArray(value)) return value.map((part) => `${role} ${JSON.stringify(part)}`);
  return [`${role} ${JSON.stringify(value)}`];
};

const weightTold = (statements: readonly Statement[]): number =>
  weightOf(
    statements.filter(({ thing }) => thing?.words).length,
    statements.flatMap(({ thing: _t, definite: _d, fresh: _f, corrects: _c, stands: _s, deed, ...roles }) => [
      ...(deed === 'fact' || deed === 'stored' ? [] : [['deed', deed] as const]),
      ...Object.entries(roles),
    ]),
  );

const weightRead = (acts: readonly Act[]): number =>
  weightOf(
    acts.reduce((sum, { slots: { item, items } }) => sum + (items?.length ?? (item?.words ? 1 : 0)), 0),
    acts.flatMap(({ intent, slots }): readonly (readonly [string, unknown])[] => [
      ...(intent === 'put-away' || intent === 'amend' || answering.has(intent)
        ? []
        : [['deed', intent] as const]),
      ...Object.entries(rolesIn(slots)),
      ...Object.entries({ touch: slots.item?.touch, maker: slots.item?.maker, at: slots.item?.at }).filter(
        ([, value]) => value,
      ),
    ]),
  );
/** What is only reckoned from other parts is not told besides. */
const rolesIn = ({ item: _item, items: _items, asked: _asked, amount, ...roles }: Slots): Slots => ({
  ...roles,
  ...(amount && !roles.shares ? { amount } : {}),
});

/** "Split pea soup four portions" taken for a name: words of hers in what no record and no food fits. */
const longName = 3;
/** "Four tubs of chicken and barley stew": one dish, that a list makes two foods of. */
const cutsDish = (statements: readonly Statement[], acts: readonly Act[]): boolean => {
  const named = acts.flatMap(({ slots: { item, items } }) => items ?? (item ? [item] : []));
  const [first, last, ...more] = named.map(({ words }) => words);
  if (!first || !last || more.length > 0 || first === last) return false;
  return statements.some(({ thing }) => {
    const dish = thing?.words ?? '';
    return (
      dish.startsWith(`${first} `) &&
      dish.endsWith(` ${last}`) &&
      dish.length > first.length + last.length + 1
    );
  });
};

/** "The salad" taken for the salad drawer. */
const wellPlaced = 0.7;
const swallows = ({ slots: { item, items, place } }: Act): boolean =>
  (place?.candidates[0]?.fit ?? 1) < wellPlaced ||
  [item, ...(items ?? [])].some(
    (mention) =>
      mention?.words !== null &&
      mention !== undefined &&
      (mention.candidates[0]?.fit ?? 0) < surelyNamed &&
      mention.words.split(' ').length >= longName,
  );

/** Nothing was asked. */
const isFree: ReadonlySet<Expectation> = new Set<Expectation>([
  'anything',
  'detail',
  'day-or-hour',
  'length',
  'outage',
]);
const moreThanAnAnswer = 3;
const namesDeed = ({ deed, thing }: Statement): boolean =>
  deed !== 'fact' && deed !== 'stored' && (thing?.candidates[0]?.fit ?? 0) >= surelyNamed;

const loses: ReadonlySet<Intent> = DESTRUCTIVE_INTENTS;

/** What an answer of that kind would tell. */
const answerRole: Partial<Record<Expectation, (statement: Statement) => boolean>> = {
  place: ({ place, from, thing }) => Boolean(place ?? from ?? thing?.words),
  date: ({ dates, when, amount }) => (dates ?? when ?? amount) !== undefined,
  marker: ({ marker, container, thing }) => Boolean(marker ?? container ?? thing?.words),
  person: ({ maker, owner, thing }) => Boolean(maker ?? owner ?? thing?.words),
};

/** "No, three": of one part, the rules know what it puts right. */
const corrects = (statements: readonly Statement[], { acts }: Interpretation): boolean =>
  statements.some((statement) => statement.corrects) &&
  weightTold(statements) <= 1 &&
  acts.some(({ intent }) => intent === 'correct');

const lost = (proposal: Proposal | null): string =>
  (proposal?.acts ?? [])
    .flatMap(({ slots }) => slots.statements ?? [])
    .filter(({ deed }) => losing.has(deed))
    .map(({ deed, thing }) => `${deed} ${thing?.candidates[0]?.id ?? thing?.words ?? thing?.pointer ?? ''}`)
    .join();

/** One question and nothing else, by the mark a recogniser wrote. */
const isWrittenQuestion = ({ heard }: Guess, { asksInWriting }: WordForms): boolean =>
  asksInWriting !== null && asksInWriting.test(heard) && !/[.;!]|[^\s¿]\s*¿/u.test(heard.trim());

const proposalOf = (guess: Guess, reader: Reader, goesOn: boolean): Proposal | null => {
  const lexicon = movesLexicon(reader.language);
  if (!lexicon || isWrittenQuestion(guess, lexicon.forms)) return null;
  const { tokens, pauses } = lexicon.forms.spelledOut(guess.said, guess.pauses, reader.rules, lexicon);
  const found = chunksOf(tokens, reader.rules, reader.language, pauses);
  return (
    found &&
    statementsProposal(
      found.chunks,
      found.cost,
      tokens,
      pauses,
      reader.rules,
      lexicon,
      goesOn,
      reader.standing,
    )
  );
};

/** Something is said to have or be something: not only named. */
const states = ({ said }: Guess, { language }: Reader): boolean => {
  const lexicon = movesLexicon(language);
  return lexicon !== null && said.some((_, at) => classAt(lexicon, said, at, 'has') > 0);
};

/** Guesses heard besides the first before something is lost. */
const heardBeside = 3;

export const toldReading = (
  guesses: readonly Guess[],
  read: Interpretation | undefined,
  score: number | undefined,
  reader: Reader,
  /** Something was done or asked just before. */
  goesOn: boolean,
): {
  readonly reading: Interpretation;
  readonly verdict: Understanding['verdict'];
  readonly namesDeed: boolean;
  /** Too much of it was left over to be taken without anything else speaking for it. */
  readonly partial: boolean;
} | null => {
  const [guess, ...others] = guesses;
  if (!guess || waitsForWords.has(reader.expecting)) return null;
  const proposal = proposalOf(guess, reader, goesOn);
  if (!proposal) return null;
  const partial =
    proposal.score < leastScore ||
    proposal.left.length > Math.min(mostLeft, guess.said.length * mostShareLeft);
  if (partial && !saysEnough(proposal, guess)) return null;
  const statements = proposal.acts.flatMap(({ slots }) => slots.statements ?? []);
  // "It has the ribbon on it", where nothing was asked: told of what was spoken of, and none picked.
  const picks = read?.acts.every(({ intent }) => intent === 'choose') === true;
  const parsed =
    picks && isFree.has(reader.expecting) && proposal.left.length === 0 && states(guess, reader)
      ? undefined
      : read;
  const rule = parsed && score !== undefined && score >= sureRule ? parsed : null;
  // Every word of it explained, and cheaply: that stands beside a rule that makes no more of it.
  const plain =
    proposal.left.length === 0 &&
    proposal.score > plainScore &&
    statements.every(
      ({ thing, deed, corrects: again }) =>
        thing !== null && isNamed(thing) && !again && !losing.has(deed) && deed !== 'took',
    ) &&
    (!parsed ||
      parsed.confidence < surelyRead ||
      countsMore(statements, parsed.acts) ||
      // "Four of the bread rolls": of those that are here, which a rule for what comes in does not know.
      (statements.every(isSomeOfHers) && parsed.acts.every(({ intent }) => intent === 'put-away')));
  // "I threw out an egg", by a rule that throws out all of them.
  const losesLess =
    proposal.left.length === 0 &&
    parsed !== undefined &&
    parsed.acts.every(({ intent, slots }) => loses.has(intent) && !slots.amount && !slots.share) &&
    statements.every(({ deed }) => losing.has(deed) || deed === 'took') &&
    statements.some(({ amount, share, left }) => (amount ?? share ?? left) !== undefined);
  // A rule that is not sure of it, and has no place for most of what was told, does not stand before it.
  const holdsMore =
    plain && !rule && parsed !== undefined && weightTold(statements) > weightRead(parsed.acts) + 1;
  if (
    parsed &&
    (rule || parsed.confidence >= likelyRule) &&
    !holdsMore &&
    !losesLess &&
    !parsed.acts.every(({ intent }) => told.has(intent)) &&
    !(plain && parsed.acts.some(({ intent }) => told.has(intent)) && statements.some(namesDeed))
  )
    return null;
  if (parsed && parsed.confidence >= fairRule && (proposal.left.length > 0 || corrects(statements, parsed)))
    return null;
  // A few words answer what was asked; a deed of something named is about that.
  const answersPlace =
    reader.expecting === 'place' &&
    statements.every(({ thing, place }) => !thing?.words && place !== undefined);
  // What holds nothing of the kind that was asked for is no answer, few words as it may be.
  const holds = answerRole[reader.expecting];
  const inFood = statements.some(({ contains, freeFrom }) => (contains ?? freeFrom) !== undefined);
  const besides = holds !== undefined && proposal.left.length === 0 && (inFood || !statements.some(holds));
  if (
    !isFree.has(reader.expecting) &&
    !answersPlace &&
    !besides &&
    weightTold(statements) < moreThanAnAnswer &&
    !statements.some(namesDeed)
  )
    return null;
  // What is waited for, and what puts right, is the rules' as yet where they are sure of it.
  if (parsed && parsed.confidence >= likelyRule && parsed.acts.every(({ intent }) => answering.has(intent)))
    if (!isFree.has(reader.expecting) || parsed.acts.some(({ intent }) => intent === 'correct')) return null;
  // "And one can of the tomatoes": so much of what is hers, with no verb of its own, goes on with what was done.
  const goesOnWith =
    parsed !== undefined &&
    parsed.confidence >= likelyRule &&
    parsed.acts.every(({ intent }) => intent === 'follow-up') &&
    statements.every((one) => one.stands === true && isSomeOfHers(one) && one.place === undefined);
  if (goesOnWith) return null;
  const likely = parsed && parsed.confidence >= likelyRule ? parsed : null;
  const whole = proposal.left.length === 0 && proposal.acts.length > 0;
  if (
    likely &&
    !losesLess &&
    !(likely.acts.length > 1 && whole && statements.length > 1) &&
    weightTold(statements) - (plain ? 0 : 1) < weightRead(likely.acts) &&
    !likely.acts.some(swallows) &&
    // "Throw it out, no, keep it": what was taken back is not done.
    !(
      statements.some(({ deed }) => deed === 'kept') && likely.acts.some(({ intent }) => loses.has(intent))
    ) &&
    !cutsDish(statements, likely.acts)
  )
    return null;
  const gone = lost(proposal);
  const doubtful =
    gone !== '' &&
    (guess.hedged ||
      statements.some(
        ({ deed, thing }) =>
          losing.has(deed) &&
          thing?.words &&
          (thing.candidates[0]?.fit ?? 0) < surelyNamed &&
          deed !== 'unlisted',
      ) ||
      others.slice(0, heardBeside).some((other) => lost(proposalOf(other, reader, goesOn)) !== gone));
  // That something is not in it is kept only after a plain yes.
  const frees = statements.some(({ freeFrom }) => freeFrom !== undefined);
  const clear = proposal.left.length === 0 && !doubtful && !frees;
  return {
    reading: {
      acts: proposal.acts,
      confidence: clear ? sureAct : sureAsk,
      heard: guess.heard,
      normalised: guess.tokens.join(' '),
    },
    verdict: clear ? 'act' : 'confirm',
    namesDeed: statements.some(namesDeed),
    partial,
  };
};

/** Of a sentence half understood, so much that asking about it helps: food that anybody knows, and most of the words. */
const saysEnough = ({ acts, left }: Proposal, { said }: Guess): boolean =>
  left.length <= said.length * mostHalfLeft &&
  acts
    .flatMap(({ slots }) => slots.statements ?? [])
    .some(({ thing }) => thing?.words !== null && thing?.words !== undefined);
/** More than that of its words left over, and it was about something else. */
const mostHalfLeft = 0.45;

export const tellsInFood = ({ acts }: Interpretation): boolean =>
  acts.some(({ slots }) =>
    slots.statements?.some(({ contains, freeFrom }) => (contains ?? freeFrom) !== undefined),
  );

/** What was learned speaks of putting away and using up: what it is and where, the parts of the sentence say. */
export const isTold = ({ acts }: Interpretation): boolean => acts.every(({ intent }) => told.has(intent));
