/** What a move is worth: what its meaning holds, less what it leaves over; and what is lost with words that no move took. */
import {
  ASKING_INTENTS,
  BARE_INTENTS,
  CHANGING_INTENTS,
  type Act,
  type Deed,
  type Intent,
  type Slots,
  type Understanding,
} from './intents.js';
import { moodOf, type MoodShares } from './learned/index.js';
import type { Chunk } from './moves/api.js';
import { movesLexicon, type MovesLexicon } from './moves/lexicon.js';
import { isSureOfWhole } from './understand.js';

export const worth = {
  /** A move of several sentences that goes on with what it tells, over as many moves. */
  goesOn: 1,
  /** And one that does not: a sentence is likelier a move of its own. */
  joined: -2,
  left: -1.5,
  /** Only what was learned speaks for it. */
  doubtful: -2,
  /** A few words that only the talk before makes sense of. */
  bare: 0.5,
  /** What is of this kitchen and was not understood, each. */
  lost: -0.7,
  /** Another move begins where nobody marked it. */
  cut: -2,
  /** What was asked for, said first, whatever stands after it. */
  answer: 6,
  /** All moves of an unmarked sentence together. */
  enough: 1,
  /** A question word, a negation or a condition that no move took. */
  weighty: -2.5,
  /** Another word that no move took, in a stretch that is not for somebody else. */
  untaken: -1.5,
  /** And where nothing of this kitchen is named: why, or what else happened. */
  reason: -0.5,
} as const;

/** How a name was said, and what a record may be. */
const saysNothing: ReadonlySet<string> = new Set([
  ...['candidates', 'unused', 'definite', 'fresh', 'corrects', 'how', 'stands'],
]);

/** Values of a meaning, each once; records a name may mean are no more than the name. */
const heldIn = (value: unknown, into: Set<string>, role = ''): Set<string> => {
  if (Array.isArray(value)) for (const part of value) heldIn(part, into, role);
  else if (typeof value === 'object' && value !== null) {
    const words = (value as { words?: unknown }).words;
    if (typeof words === 'string') into.add(`${role} ${words}`);
    else for (const [key, part] of Object.entries(value)) if (!saysNothing.has(key)) heldIn(part, into, key);
  } else if (value !== null && value !== undefined && value !== false) into.add(`${role} ${String(value)}`);
  return into;
};

const worthOfActs = (acts: readonly Act[]): number =>
  acts.reduce(
    (sum, { intent, slots }) =>
      sum +
      (BARE_INTENTS.has(intent)
        ? worth.bare
        : (slots.statements ?? [slots]).reduce((held, part) => held + heldIn(part, new Set()).size, 1) +
          worth.left * (slots.unused?.length ?? 0)),
    0,
  );

/** What is heard in it, in numbers; null where nothing is. */
export const worthOf = ({ verdict, readings: [best], question, settles }: Understanding): number | null => {
  if (settles) return 1 + Math.max(0, worthOf(settles.rest) ?? 0);
  if (best && (verdict === 'act' || verdict === 'confirm'))
    return (
      worthOfActs(best.acts) +
      (verdict === 'confirm' && !best.evidence && !best.acts.every(isTold) ? worth.doubtful : 0)
    );
  return question?.outright && !question.fragment
    ? worthOfActs(question.acts) + worth.left * question.left.length
    : null;
};

const isTold = ({ intent }: Act): boolean => intent === 'tell';
/** Told, with no word left over. */
const tellsWhole = (acts: readonly Act[]): boolean =>
  acts.every((act) => isTold(act) && !act.slots.unused?.length);
/** What is told accounts for its own words, slips put right and all; so does what guidance is asked of one food. */
export const tellsAll = ({ readings: [best] }: Understanding): boolean =>
  best !== undefined &&
  best.acts.length > 0 &&
  (tellsWhole(best.acts) || best.acts.every(({ intent }) => intent === 'guidance'));
/** It moves the steps on, or is about them. */
export const isOfSteps = ({ readings: [best] }: Understanding): boolean =>
  best?.agenda === true || best?.acts.every(({ intent }) => ofSteps.has(intent)) === true;
/** What was done of them: all that was put into a pan is its own. */
export const isReport = ({ readings: [best] }: Understanding): boolean =>
  best !== undefined && best.acts.length > 0 && best.acts.every(({ intent }) => reports.has(intent));
const reports: ReadonlySet<Intent> = new Set<Intent>([
  'next',
  'done',
  'back',
  'yes',
  'continue',
  'steps-left',
]);
const ofSteps: ReadonlySet<Intent> = new Set<Intent>([
  ...(['next', 'done', 'back', 'repeat', 'ask-step', 'steps-left', 'yes', 'continue'] as const),
]);

export const onlyTells = ({ readings: [best] }: Understanding): boolean =>
  best !== undefined && best.acts.length > 0 && best.acts.every(isTold);

export const onlyChanges = ({ readings: [best] }: Understanding): boolean =>
  best !== undefined &&
  best.acts.length > 0 &&
  best.acts.every(({ intent }) => intent === 'tell' || changing.has(intent));

const isOfPeople = ({ intent }: Act): boolean => intent === 'add-person';
/** What somebody must not eat, or who comes. */
export const tellsOfPeople = ({ readings: [best] }: Understanding): boolean =>
  best !== undefined && best.acts.some(isOfPeople);
/** And of whom, nobody can tell from these words alone. */
export const isOfSomebody = ({ readings: [best] }: Understanding): boolean =>
  best !== undefined &&
  best.acts.some((act) => isOfPeople(act) && act.slots.eaters?.some(({ who }) => who === 'last') === true);

/** Surely asked for, by a rule that holds every word of it, and no part of what is told of food. */
export const isRequest = (understanding: Understanding): boolean =>
  (isSureOfWhole(understanding) ||
    (understanding.verdict === 'act' && understanding.readings[0]?.framed === true)) &&
  understanding.readings[0]!.acts.every(
    ({ intent }) => !tellsOfFood.has(intent) && !BARE_INTENTS.has(intent),
  );
const tellsOfFood: ReadonlySet<Intent> = new Set<Intent>([
  ...(['tell', 'put-away', 'take', 'finish', 'move', 'amend', 'open', 'freeze', 'thaw', 'reheated'] as const),
  ...(['put-back', 'mark', 'unmark', 'split', 'merge', 'correct', 'left-out', 'add-person'] as const),
]);

/** "What is it?", "what's the total?": asked of what stands before it. */
export const pointsBack = ({ readings: [best], question }: Understanding): boolean => {
  const [act, ...more] = best?.acts ?? question?.acts ?? [];
  if (!act || more.length > 0 || !asking.has(act.intent)) return false;
  const { item, items, place, query } = act.slots;
  return (
    (item?.words ?? items ?? place) === undefined &&
    !query?.where.some(({ by }) => by === 'named' || by === 'each' || by === 'place')
  );
};
const asking: ReadonlySet<Intent> = new Set<Intent>(ASKING_INTENTS);

/** How much of this kitchen is named. */
export const mattersIn = (chunks: readonly Chunk[]): number =>
  chunks.filter(
    (chunk) =>
      (chunk.kind === 'thing' &&
        (chunk.source === 'food' || (chunk.source === 'hers' && chunk.fit >= surely))) ||
      (chunk.kind === 'place' && chunk.fit >= surely) ||
      (chunk.kind === 'person' && (chunk.candidates[0]?.fit ?? 0) >= surely) ||
      chunk.kind === 'marker' ||
      chunk.kind === 'amount',
  ).length;
const surely = 0.9;

/** Of an unmarked stretch only what is surely understood is a move: small bits of a sentence soon sound like one. */
export const isSureMove = (
  understanding: Understanding,
  tokens: readonly string[],
  language: string,
): boolean => {
  const {
    verdict,
    readings: [best],
    question,
    settles,
  } = understanding;
  if (settles) return true;
  const asks = question?.outright === true && !question.fragment && question.left.length === 0;
  if (
    verdict === 'confirm' &&
    best &&
    tellsDeed(best.acts) &&
    (moodOf(tokens, language)?.told ?? 0) >= surelyTold
  )
    return true;
  if (verdict !== 'act' || !best) return asks;
  const { acts } = best;
  if (
    acts.some(({ intent, slots }) => BARE_INTENTS.has(intent) || (intent === 'amend' && !slots.item?.words))
  )
    return false;
  // "I had the tap running" is no report of a step.
  if (acts.some(({ intent, slots }) => intent === 'done' && slots.reported) && tokens.length > shortReport)
    return false;
  const changes = acts.some(({ intent }) => changing.has(intent));
  // "Salami opened when": what is asked is not told by a bit of it.
  if (changes && (moodOf(tokens, language)?.asked ?? 0) > seldomAsked) return false;
  const whole = tellsWhole(acts) && acts.every(({ slots }) => hasSubject(slots));
  // "How many does that leave": what was learned knows questions by their wording.
  const known = acts.every(({ intent }) => asking.has(intent)) && best.confidence >= likelyKnown;
  if (known && (moodOf(tokens, language)?.asked ?? 0) >= surelyAsked) return true;
  const framed = best.agenda === true || best.framed === true || best.byPhrase === true;
  return isSureOfWhole(understanding) || framed || whole || asks;
};
/** "The ham and the turkey are going in the trash right now": what was done to something by name, a word left over. */
const tellsDeed = (acts: readonly Act[]): boolean =>
  acts.every(
    (act) =>
      isTold(act) &&
      (act.slots.unused?.length ?? 0) <= 1 &&
      act.slots.statements?.every(({ thing, deed }) => thing?.words && deed !== 'fact' && deed !== 'stored'),
  );
const surelyTold = 0.8;
const shortReport = 3;
const likelyKnown = 0.6;
const surelyAsked = 0.6;

/** "Use by Saturday" belongs to what was told before it; "ate it" is a move. */
const hasSubject = ({ statements = [] }: Slots): boolean =>
  statements.every(({ thing, deed }) => thing?.words || (deed !== 'fact' && deed !== 'stored'));

const changing: ReadonlySet<Intent> = new Set<Intent>(CHANGING_INTENTS);
const seldomAsked = 0.35;

/** All that was said is held in one move. */
export const holdsAll = (understanding: Understanding, mood: MoodShares | null): boolean => {
  const {
    verdict,
    readings: [best],
    question,
  } = understanding;
  // A rule for two things at once makes less of each than it would of one.
  if ((isSureOfWhole(understanding) && best?.acts.length === 1) || best?.agenda) return true;
  const asks = question?.outright === true && question.left.length === 0 && (mood?.asked ?? 1) >= surelyAsked;
  if (verdict !== 'act' || !best) return asks;
  if (best.acts.every(isTold)) return tellsWhole(best.acts) && !marksWhatIsGone(best.acts);
  return best.framed === true || asks;
};

/** "The ham is finished, so put its magnet on the soup": nothing is marked that is gone. */
export const marksWhatIsGone = (acts: readonly Act[]): boolean =>
  acts.some(({ slots }) => slots.statements?.some(({ deed, marker }) => marker && goes.has(deed)));
const goes: ReadonlySet<Deed> = new Set<Deed>(['finished', 'threw', 'gave']);

/** Kinds of constituent that are a fact, whoever it is told of. */
const facts: ReadonlySet<Chunk['kind']> = new Set<Chunk['kind']>([
  ...([
    'place',
    'person',
    'marker',
    'amount',
    'share',
    'number',
    'day',
    'time',
    'span',
    'container',
  ] as const),
]);
const turning = ['wh', 'not', 'if', 'without', 'aux'] as const;

/** What is lost with one constituent of an unmarked stretch that no move took; `named`: something of this kitchen is. */
const lossOf = (chunk: Chunk, lexicon: MovesLexicon, named: boolean): number => {
  if (chunk.kind === 'word') {
    if (turning.some((name) => chunk.classes.has(name))) return worth.weighty;
    const tells = [...chunk.classes].some((name) => /^(?:date|state|deed):/u.test(name));
    return tells ? worth.untaken : 0;
  }
  if (chunk.kind === 'unknown') {
    if (lexicon.weighs(chunk.word)) return worth.weighty;
    return lexicon.isOrdinary(chunk.word) ? 0 : named ? worth.untaken : worth.reason;
  }
  if (chunk.kind === 'thing') return chunk.source === 'open' ? worth.reason : worth.untaken;
  return facts.has(chunk.kind) ? worth.untaken : 0;
};

export const lostWith = (
  chunks: readonly Chunk[],
  tokens: readonly string[],
  named: boolean,
  language: string,
): number => {
  const lexicon = movesLexicon(language);
  if (!lexicon || (moodOf(tokens, language)?.['not-ours'] ?? 0) >= mostlyOthers) return 0;
  return chunks.reduce((sum, chunk) => sum + lossOf(chunk, lexicon, named), 0);
};

/** It is of another world, however well bits of it fit. */
export const mostlyOthers = 0.5;
