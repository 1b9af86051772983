/**
 * Requests that are neither questions about food nor statements of it, in any wording: each frame knows by a word
 * or two what it is about, and takes its values from the constituents wherever they stand. What no frame takes is
 * counted, and too much of it makes no request.
 */
import type { Guess } from '../guesses.js';
import {
  CHANGING_INTENTS,
  type Act,
  type Answered,
  type ClockAtHand,
  type Expectation,
  type Intent,
  type Interpretation,
  type LastDone,
  type ListAtHand,
  type PlaceMention,
  type TalkedOf,
  type Understanding,
} from '../intents.js';
import type { Reader } from '../readings.js';
import { wordFormsOf } from '../languages/index.js';
import { oneInside } from './statements/places.js';
import {
  anywhereIn,
  bitsAfter,
  bitsOf,
  is,
  type Bit,
  type Frame,
  type Made,
  type Request,
} from './requests/bits.js';
import { isBeside, requestWords, type RequestWords } from './requests/lexicon.js';
import { movesLexicon } from './lexicon.js';
import { againFrame } from './requests/again.js';
import { additionsFrame, wantedFrame } from './requests/additions.js';
import { asideBitsOf, asidesFrame } from './requests/asides.js';
import { answersFrame } from './requests/answers.js';
import { correctionsFrame } from './requests/corrections.js';
import {
  guideFrame,
  helpFrame,
  leftOutFrame,
  mustThawFrame,
  powerFrame,
  reachFrame,
  thawedByFrame,
} from './requests/kitchen.js';
import { lessonsFrame } from './requests/lessons.js';
import { listFrame, onTheList } from './requests/list.js';
import { listBitsOf } from './requests/list/pieces.js';
import { instructionsFrame } from './requests/instructions.js';
import { lastCheckFrame } from './requests/last-check.js';
import { markerFrames } from './requests/markers.js';
import { markersMetFrames } from './requests/markers-met.js';
import { marksCheckedFrame, meaningsFrame } from './requests/meanings.js';
import { placeFrames } from './requests/places.js';
import { puttingRightFrame } from './requests/putting-right.js';
import { reheatingFrame } from './requests/reheating.js';
import { remindersFrame } from './requests/reminders.js';
import { settingFrames } from './requests/settings.js';
import { surveyFrame } from './requests/survey.js';
import { timersFrame } from './requests/timers.js';
import { bringingBackFrame, takingBackFrame, undoingFrame } from './requests/undoing.js';

/** The first that makes something of it has it: what is told apart by one word comes first. */
const frames: readonly Frame[] = [
  guideFrame,
  helpFrame,
  lessonsFrame,
  powerFrame,
  leftOutFrame,
  mustThawFrame,
  thawedByFrame,
  reachFrame,
  lastCheckFrame,
  surveyFrame,
  againFrame,
  bringingBackFrame,
  undoingFrame,
  marksCheckedFrame,
  ...markersMetFrames,
  ...markerFrames,
  ...placeFrames,
  meaningsFrame,
  remindersFrame,
  timersFrame,
  instructionsFrame,
  reheatingFrame,
  ...settingFrames,
];
/** These are of the talk before: where what was told says it all, they say nothing. */
const ofTheTalk: readonly Frame[] = [correctionsFrame, answersFrame];
/** And these of what was just done: they read the pieces such talk is made of. */
const ofWhatWasDone: readonly Frame[] = [takingBackFrame, wantedFrame, puttingRightFrame, additionsFrame];

/** A rule's reading this likely (natural logarithm) stands, unless it does less. */
const sureRule = -1;
const sureAct = 0.9;
const sureAsk = 0.6;
/** So many words beside the request are talk to somebody else, or a reason given. */
const mostLeft = 4;

/** A rule's reading of the talk before stands from here. */
const fairRule = 0.45;
const ofTheTalkBefore: ReadonlySet<Intent> = new Set<Intent>(['correct', 'choose', 'answer', 'yes', 'no']);

const changing: ReadonlySet<Intent> = new Set(CHANGING_INTENTS);

/** What never is passed over: a denial, a condition, a figure. */
const weighs = (bit: Bit): boolean =>
  is(bit, 'not', 'if', 'keep') || ['number', 'amount', 'span'].includes(bit.kind);

/** Words that say something and that the frame did not take: fillers, asides and what follows a reason are none. */
const leftOf = (bits: readonly Bit[], { used }: Made): { words: number; weighty: boolean } => {
  let words = 0;
  let weighty = false;
  bits.forEach((bit, at) => {
    if (
      used.has(bit.from) ||
      is(bit, 'fill', 'aside', 'repair', 'lasting', 'what-to', 'says', 'meant', 'opener')
    )
      return;
    if (bit.kind === 'person') return;
    words += bit.to - bit.from;
    const mended = bits.slice(at + 1, at + 4).some((next) => is(next, 'repair', 'aside'));
    weighty ||= weighs(bit) && !mended;
  });
  return { words, weighty };
};

const same = (one: readonly Act[], other: readonly Act[]): boolean =>
  one.length === other.length && one.every(({ intent }, at) => intent === other[at]!.intent);

/** How much the acts hold. */
const weightOf = (acts: readonly Act[]): number =>
  acts.reduce(
    (sum, { slots: { item, words, lines = [], ...slots } }) =>
      sum +
      Object.keys(slots).length +
      ((item ?? words) === undefined ? 0 : 1) +
      lines.reduce((held, line) => held + Object.keys(line).length - 1, 0),
    acts.length,
  );

const setting: ReadonlySet<Intent> = new Set<Intent>([
  ...(['set-timer', 'change-timer', 'set-reminder', 'change-reminder'] as const),
]);
/** What comes after the last word taken, where it is no figure, no denial and no condition. */
const withWhy = (bits: readonly Bit[], made: Made): Made => {
  const why = bits.filter(({ from }) => from > Math.max(...made.used));
  return why.some(weighs) ? made : { ...made, used: new Set([...made.used, ...why.map(({ from }) => from)]) };
};

const ofFewWords: ReadonlySet<Intent> = new Set<Intent>([
  ...(['choose', 'answer', 'follow-up', 'longer', 'shorter', 'cancel', 'no'] as const),
]);
/** No question waits for more than a yes. */
const isFree: ReadonlySet<Expectation> = new Set<Expectation>([
  ...(['anything', 'detail', 'day-or-hour', 'length', 'outage', 'yes-no'] as const),
]);

/**
 * "Lid's on, it's going round, two minutes for the stew, and what comes next": what stands before and after the
 * request, where it is talk of the steps that are followed. `bits` are those it does not explain.
 */
const talkAround = (
  bits: readonly Bit[],
  tokens: readonly string[],
  { acts, used }: Made,
  ofSteps: (tokens: readonly string[]) => readonly Act[] | null,
): { readonly acts: readonly Act[]; readonly bits: readonly Bit[] } => {
  const own = bits.filter(({ from }) => used.has(from));
  const [from, to] = [own[0]?.from ?? 0, own.at(-1)?.to ?? tokens.length];
  const says = (some: readonly Bit[]): readonly Act[] | null => {
    const [first, last] = [some[0], some.at(-1)];
    return first && last && !some.every((bit) => is(bit, 'fill', 'opener', 'aside', 'and'))
      ? ofSteps(tokens.slice(first.from, last.to))
      : null;
  };
  const [before, after] = [bits.filter((bit) => bit.to <= from), bits.filter((bit) => bit.from >= to)];
  const [lead, tail] = [says(before), says(after)];
  return {
    acts: [...(lead ?? []), ...acts, ...(tail ?? [])],
    bits: bits.filter((bit) => !(lead && before.includes(bit)) && !(tail && after.includes(bit))),
  };
};

const nothingLeft = { words: 0, weighty: false };

const afterBits = (guess: Guess, { rules, language }: Reader, words: RequestWords, last: LastDone) => {
  const lexicon = movesLexicon(language);
  const tokens = lexicon
    ? lexicon.forms.spelledOut(guess.said, guess.pauses, rules, lexicon).tokens
    : guess.said;
  return bitsAfter(tokens, rules, words, language, last);
};

/** What was said as talk of the list, with its endings spelled out. */
const listTalk = (guess: Guess, { rules, language }: Reader, words: RequestWords, list: ListAtHand) => {
  const lexicon = movesLexicon(language);
  const { tokens, pauses } = lexicon
    ? lexicon.forms.spelledOut(guess.said, guess.pauses, rules, lexicon)
    : { tokens: guess.said, pauses: guess.pauses };
  const bits = listBitsOf(tokens, pauses, rules, language, words, list);
  return bits ? { bits, tokens, pauses } : null;
};

const asideTalk = (guess: Guess, { rules, language }: Reader, clocks: readonly ClockAtHand[]) => {
  const lexicon = movesLexicon(language);
  const { tokens, pauses } = lexicon
    ? lexicon.forms.spelledOut(guess.said, guess.pauses, rules, lexicon)
    : { tokens: guess.said, pauses: guess.pauses };
  const bits = asideBitsOf(tokens, rules, language, clocks);
  return bits ? { bits, tokens, pauses } : null;
};

/** While the list is talked of: whether that alone is what was said. */
export const listTalkOf = (guess: Guess, reader: Reader, list: ListAtHand | null): boolean => {
  const words = list?.talk ? requestWords(reader.language) : null;
  const said = words && list ? listTalk(guess, reader, words, list) : null;
  return said !== null && list !== null && onTheList({ ...said, list }) !== null;
};

/** With its endings spelled out: "the bead's come off". */
const spelledTokens = (guess: Guess, { rules, language }: Reader): readonly string[] => {
  const lexicon = movesLexicon(language);
  return lexicon ? lexicon.forms.spelledOut(guess.said, guess.pauses, rules, lexicon).tokens : guess.said;
};

const onceOnly = <T>(make: () => T): (() => T) => {
  let made: { readonly value: T } | null = null;
  return () => (made ??= { value: make() }).value;
};

export const requestReading = (
  guess: Guess | undefined,
  parsed: Interpretation | undefined,
  score: number | undefined,
  reader: Reader,
  clocks: readonly ClockAtHand[],
  last: LastDone | null,
  list: ListAtHand | null,
  answered: Answered | null,
  /** How many statements the whole of it surely is. */
  told: number,
  /** What words beside a request for a timer say of the steps that are followed; null where they say nothing of them. */
  ofSteps: ((tokens: readonly string[]) => readonly Act[] | null) | null = null,
  talkedOf: TalkedOf | null = null,
): { readonly reading: Interpretation; readonly verdict: Understanding['verdict'] } | null => {
  const words = requestWords(reader.language);
  if (!guess || !words) return null;
  const tokens = guess.said;
  const says = (word: string, list: string): boolean => words.longestAt([word], 0)?.value.has(list) === true;
  const within = (a: string, b: string): PlaceMention | null =>
    oneInside(a, b, reader.rules, wordFormsOf(reader.language));
  const bits = bitsOf(tokens, reader.rules, words, clocks);
  // Few words that the rules take for an answer or for what puts right are theirs.
  const ofRules =
    parsed !== undefined &&
    parsed.confidence >= fairRule &&
    parsed.acts.every(({ intent }) => ofTheTalkBefore.has(intent));
  const after = last ? afterBits(guess, reader, words, last) : [];
  const { expecting } = reader;
  const { pauses } = guess;
  const beside = (word: string, list: string): boolean => isBeside(reader.language, list, word);
  const onList = onceOnly(() => (list ? listTalk(guess, reader, words, list) : null));
  const anywhere = anywhereIn(tokens, reader.rules);
  const request: Request = {
    ...{ bits, after, last, tokens, pauses, clocks, expecting, talkedOf, says, beside },
    list,
    onList,
    asAsides: onceOnly(() => asideTalk(guess, reader, clocks)),
    answered,
    spelledOut: onceOnly(() => {
      const spelled = spelledTokens(guess, reader);
      return { tokens: spelled, bits: bitsOf(spelled, reader.rules, words, clocks) };
    }),
    oneInside: within,
    lengthAt: (from: number) => {
      const [longest] = (
        reader.rules.get('builtin:grammar/duration')?.matchesAt(tokens, from) ?? []
      ).toSorted((a, b) => b.length - a.length);
      return longest ? { seconds: longest.value as number, to: from + longest.length } : null;
    },
    anywhere,
  };
  // "Is the bacon down or not" asks, and puts nothing right.
  const opens = after.find((bit) => !is(bit, 'fill', 'aside', 'opener', 'and', 'repair'));
  const free = isFree.has(expecting) && !is(opens, 'aux', 'opens-question');
  for (const frame of [
    asidesFrame,
    listFrame,
    ...(free && told < 2 ? ofWhatWasDone : []),
    ...frames,
    ...(told > 0 || ofRules ? [] : ofTheTalk),
  ]) {
    const made = frame(request);
    if (!made || made.acts.length === 0) continue;
    const ofDone = ofWhatWasDone.includes(frame);
    // What is stopped must be all that is said: "we ate every scrap of the stew" stops nothing.
    const sets = frame === timersFrame && made.acts.every(({ intent }) => intent !== 'cancel-timer');
    const around = sets && ofSteps ? talkAround(bits, tokens, made, ofSteps) : null;
    // "Half past seven rather, I've only just sat down", of what was set just now: why.
    const why = last && setting.has(last.intent) && made.acts.every(({ intent }) => setting.has(intent));
    const left =
      made.whole || (ofDone && made.reason)
        ? nothingLeft
        : leftOf(ofDone ? after : (around?.bits ?? bits), why ? withWhy(bits, made) : made);
    if (left.words > Math.max(1, Math.min(mostLeft, made.used.size))) continue;
    const sure = parsed && score !== undefined && score >= sureRule;
    const less = weightOf(made.acts) - (sure ? weightOf(parsed.acts) : 0);
    // What is running by that name is likelier meant than a food of it.
    const running = bits.some((bit) => bit.kind === 'clock' && made.used.has(bit.from));
    // A few words may be an answer, or the same again; with a word that puts right they are that.
    const fewer =
      made.ours || made.follows || (ofDone && parsed?.acts.every(({ intent }) => ofFewWords.has(intent)));
    if (sure && !fewer && (same(parsed.acts, made.acts) || running ? less < 0 : less <= 0)) return null;
    const changes = made.acts.some(({ intent }) => changing.has(intent));
    const clear = !changes || !(left.weighty || left.words > 2);
    return {
      reading: {
        acts: around?.acts ?? made.acts,
        confidence: clear ? sureAct : sureAsk,
        framed: true,
        ...(made.ours ? { whole: true as const } : {}),
        heard: guess.heard,
        normalised: guess.tokens.join(' '),
      },
      verdict: clear ? 'act' : 'confirm',
    };
  }
  return null;
};
