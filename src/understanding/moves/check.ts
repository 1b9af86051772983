/**
 * Talk while a place is checked against the record: "peanut stew's here, bean chilli yes, no beef stew that I can
 * find". Each thing has the status that leads to it or follows it; several may share one. Nothing here puts
 * anything away: what is there, is there.
 */
import { existsSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../../project-files.js';
import { answering } from '../expected.js';
import type { Guess } from '../guesses.js';
import type { Act, Finding, Intent, Interpretation, PlaceMention } from '../intents.js';
import { moodOf } from '../learned/index.js';
import type { Reader } from '../readings.js';
import { phraseTable, type PhraseTable } from '../words/phrases.js';
import type { Chunk } from './api.js';
import { cheapestCover, constituentsAt } from './chunks.js';
import { wordFormsOf } from '../languages/index.js';
import { movesLexicon, type MovesLexicon } from './lexicon.js';
import { figureOf, is } from './requests/bits.js';

const file = z.record(z.string(), z.union([z.string(), z.array(z.string())]));
type Words = PhraseTable<ReadonlySet<string>>;

const known = new Map<string, Words | null>();

/** Null for a language that has no `check.json` yet. Throws `ZodError` for a file of another form. */
const checkWords = (language: string): Words | null => {
  const before = known.get(language);
  if (before !== undefined) return before;
  const path = projectFile('grammars', language, 'check.json');
  const classes = new Map<string, Set<string>>();
  if (existsSync(path))
    for (const [name, phrases] of Object.entries(file.parse(JSON.parse(readFileSync(path, 'utf8')))))
      if (Array.isArray(phrases))
        for (const phrase of phrases.flatMap(wordFormsOf(language).asSpelled))
          classes.set(phrase, (classes.get(phrase) ?? new Set<string>()).add(name));
  const words = classes.size > 0 ? phraseTable<ReadonlySet<string>>(classes) : null;
  known.set(language, words);
  return words;
};

const costs = { word: 0.12, unknown: 1.4, pause: 0.6 } as const;

type Seen = NonNullable<Finding['seen']>;
const statuses: readonly Seen[] = ['there', 'gone', 'missing', 'unsure'];

/** What is said of a thing or several, as it is put together. */
interface Draft {
  things: Extract<Chunk, { kind: 'thing' }>[];
  seen: Seen | null;
  /** Led to by "no" or "got the": what follows it joins it, and nothing that follows says otherwise. */
  led: boolean;
  amount?: Finding['amount'];
  place?: Finding['place'];
  /** A word nobody knows stood after its things. */
  astray?: boolean;
  /** And then a place: what was said was of something else. */
  elsewhere?: boolean;
}

const open = (): Draft => ({ things: [], seen: null, led: false });

const leastFit = 0.6;

/** Moved by what is said in a check is only what went to a place that was surely named. */
const isSurelyPlace = ({ candidates, pointer }: PlaceMention): boolean =>
  pointer !== null || (candidates[0]?.fit ?? 0) >= surelyNamed;
const surelyNamed = 0.75;
const isSurelyThing = (bit: Chunk): boolean => bit.kind === 'thing' && bit.fit >= leastFit;

/** Things told of in turn, each with what was said of it. */
const draftsOf = (bits: readonly Chunk[], pauses: ReadonlySet<number>): readonly Draft[] => {
  const drafts: Draft[] = [];
  let now = open();
  let eaten = false;
  const close = (): void => {
    if (now.things.length > 0 || now.seen !== null || now.amount || now.place) drafts.push(now);
    now = open();
  };
  const said = (): boolean => now.seen !== null || now.amount !== undefined || now.place !== undefined;
  bits.forEach((bit, at) => {
    const next = bits[at + 1];
    const leads =
      next !== undefined &&
      !pauses.has(next.from) &&
      (next.kind === 'thing' || next.kind === 'amount' || is(next, 'small', 'count'));
    if (pauses.has(bit.from)) eaten = false;
    // "The soup, the salmon and a bag of prawns": the bag is of the prawns alone.
    const another = (): void => {
      const { seen } = now;
      close();
      now.seen = seen;
      now.led = true;
    };
    if (bit.kind === 'thing') {
      if (now.led && now.amount && now.things.length > 0) another();
      // "Only five of the dal": the figure came first.
      const waits = now.things.length === 0 && now.amount !== undefined;
      if (said() && !now.led && !waits) close();
      else if (now.led && now.things.length > 0 && pauses.has(bit.from)) close();
      now.things.push(bit);
      return;
    }
    const lead = is(bit, 'before-missing') ? 'missing' : is(bit, 'before-there') ? 'there' : null;
    if (lead && leads && thingFollows(bits, at, pauses)) {
      close();
      now.seen = lead;
      now.led = true;
      return;
    }
    const status = statuses.find((one) => is(bit, one));
    if (status) {
      // "Meatballs gone, we had those Tuesday": more of the same.
      if (now.seen === null) now.seen = status;
      // "There's a tub of egusi I think somebody had, that's gone": what was said last of it.
      else if (now.led && now.seen === 'there' && now.things.length === 1 && status === 'gone') {
        now.seen = status;
        now.led = false;
        delete now.amount;
      } else if (now.things.length === 0 && !now.led) now.seen = status;
      return;
    }
    if (is(bit, 'eaten')) eaten = true;
    const figure =
      bit.kind === 'amount'
        ? bit.amount
        : figureOf(bit) === null
          ? null
          : { value: figureOf(bit)!, unit: 'piece' as const };
    // "The pesto, two goat curries": of the next, and of none before it.
    const parted = pauses.has(bit.from);
    if (figure && parted && now.things.length > 0 && !said() && !now.led && thingFollows(bits, at, pauses))
      close();
    // "Two packets, one my son took on Tuesday": one is what went, and not what is there.
    if (figure && takenBy(bits, at, pauses) && (now.amount ?? drafts.at(-1)?.amount)) return;
    if (figure && !eaten) {
      if (now.led && now.things.length > 0 && thingFollows(bits, at, pauses)) another();
      // "Carrots yes, two zucchini": of the next, where this one has its own.
      if ((now.seen !== null || now.amount) && !now.led && thingFollows(bits, at, pauses)) close();
      if (now.things.length === 0 && !now.led && drafts.length > 0 && !thingFollows(bits, at, pauses))
        drafts.at(-1)!.amount = figure;
      else now.amount = figure;
      // "Seven, no, five": the no was of the figure.
      if (now.seen === 'missing' && !now.led) now.seen = null;
    }
    if (figure) eaten = false;
    if (bit.kind === 'unknown' && now.things.length > 0) now.astray = true;
    if (bit.kind === 'place') {
      // "The mustard's there, but I wanted the chest freezer": no place of the mustard.
      // So unlike any place that it may be none: nothing is moved on that.
      if (!isSurelyPlace(bit.place)) now.astray = true;
      else if (now.astray) now.elsewhere = true;
      else now.place = bit.place;
    }
  });
  close();
  return drafts;
};

/** "One my son took": who took it stands between, and no other thing, pause or figure. */
const takenBy = (bits: readonly Chunk[], at: number, pauses: ReadonlySet<number>): boolean => {
  for (const bit of bits.slice(at + 1)) {
    if (pauses.has(bit.from) || bit.kind === 'thing' || bit.kind === 'amount') return false;
    if (is(bit, 'eaten')) return true;
    if (figureOf(bit) !== null) return false;
  }
  return false;
};

/** A thing comes next, before anything that is said of it. */
const thingFollows = (bits: readonly Chunk[], at: number, pauses: ReadonlySet<number>): boolean => {
  for (const bit of bits.slice(at + 1)) {
    if (pauses.has(bit.from)) return false;
    if (bit.kind === 'thing') return true;
    if (!is(bit, 'small', 'count') && bit.kind !== 'amount' && bit.kind !== 'number') return false;
  }
  return false;
};

/** A wish to be asked no more begins what is said, or follows no more than a word that says nothing. */
const wishToStop = (bits: readonly Chunk[], pauses: ReadonlySet<number>): boolean => {
  const [stop, ...more] = bits.filter((bit) => is(bit, 'stops'));
  if (!stop) return false;
  const strange = bits.filter(({ kind }) => kind === 'unknown' || kind === 'time' || kind === 'span').length;
  const before = bits.filter(({ from }) => from < stop.from);
  const led = before.findLastIndex((bit) => pauses.has(bit.from));
  const leads = before
    .slice(Math.max(0, led))
    .every((bit) => is(bit, 'small', 'missing', 'count', 'there', 'passes'));
  const longer = stop.to - stop.from > 1 || more.length > 0;
  return (leads || longer) && strange <= besideStop && !bits.some(isSurelyThing);
};
/** So many words that nothing explains may stand beside a wish to stop. */
const besideStop = 3;

/**
 * What takes something off the record, or passes it over, is told and not asked, denies nothing and quotes
 * nobody; and nothing of what was said is left over.
 */
const isAsked = (guess: Guess, tokens: readonly string[], { language, expecting }: Reader): boolean => {
  const mood = moodOf(tokens, language, { expecting });
  const ends = guess.heard.trimEnd().endsWith('?');
  return (mood?.asked ?? 0) >= surelyAsked || (ends && (mood?.told ?? 0) < surelyTold);
};
/** "The peas are here" is as like a question as not. */
const surelyAsked = 0.9;
const surelyTold = 0.9;
const losing: ReadonlySet<Finding['seen']> = new Set<Finding['seen']>(['gone', 'missing', 'unsure']);
const denies = (bits: readonly Chunk[]): boolean =>
  bits.some((bit) => is(bit, 'denies') && !is(bit, ...statuses, 'before-missing'));

const classesAt = (tokens: readonly string[], at: number, { phrases }: MovesLexicon): readonly string[] => [
  ...(phrases.longestAt(tokens, at)?.value ?? []),
];
const pointsAt = (tokens: readonly string[], lexicon: MovesLexicon): boolean =>
  tokens.some((_, at) => classesAt(tokens, at, lexicon).some((name) => name.startsWith('pointer:')));
/** "In the middle basket", where "middle basket" names one. */
const isLed = (tokens: readonly string[], from: number, lexicon: MovesLexicon): boolean =>
  classesAt(tokens, from - 1, lexicon).includes('prep');

/** A place and nothing else: that is where she looks now. */
const placeAlone = (
  bits: readonly Chunk[],
  tokens: readonly string[],
  lexicon: MovesLexicon,
): PlaceMention | null => {
  const [place, ...others] = bits.filter((bit) => !is(bit, 'small'));
  if (place?.kind !== 'place' || others.length > 0 || !isSurelyPlace(place.place)) return null;
  return pointsAt(tokens, lexicon) || isLed(tokens, place.from, lexicon) ? null : place.place;
};

/** A place that comes before all things, each of which has its own said of it. */
const leadingPlace = ([first, ...rest]: readonly Draft[]): PlaceMention | null =>
  first?.place && first.things.length === 0 && first.seen === null && !first.amount && rest.length > 0
    ? first.place
    : null;

const explains: ReadonlySet<Chunk['kind']> = new Set<Chunk['kind']>([
  ...([
    'marker',
    'container',
    'person',
    'day',
    'time',
    'span',
    'pointer',
    'place',
    'amount',
    'number',
  ] as const),
]);
/** Words that nothing explains: so many for each thing are an aside. */
const strangersFor = (things: number): number => 1 + things;

const findingsOf = ({ things, seen, amount, place }: Draft): readonly Finding[] => {
  const rest = { seen, ...(amount ? { amount } : {}), ...(place ? { place } : {}) };
  return things.length === 0
    ? [{ thing: null, ...rest }]
    : things.map(({ mention }) => ({ thing: mention, ...rest }));
};

const bitsOf = (guess: Guess, words: Words, lexicon: MovesLexicon, reader: Reader) => {
  const { tokens, pauses } = lexicon.forms.spelledOut(guess.said, guess.pauses, reader.rules, lexicon);
  const bits = cheapestCover<Chunk>(tokens.length, (from) => {
    const across = (to: number): number =>
      [...pauses].some((pause) => pause > from && pause < to) ? costs.pause : 0;
    return [
      { chunk: { kind: 'unknown' as const, from, to: from + 1, word: tokens[from]! }, cost: costs.unknown },
      ...words.allAt(tokens, from).map(({ length, value }) => ({
        chunk: { kind: 'word' as const, from, to: from + length, classes: value },
        cost: costs.word + across(from + length),
      })),
      ...constituentsAt(tokens, from, reader.rules).map(({ chunk, cost }) => ({
        chunk,
        cost: cost + across(chunk.to),
      })),
    ];
  }).pieces;
  return { tokens, pauses, bits };
};

/** What was found, as told; null where it is no talk of the check, or nothing but a word that the rules know. */
/** "I feel the kraut, the pesto, two curries": several named with nothing said of them are there. */
const listed = (drafts: readonly Draft[]): readonly Draft[] => {
  const bare = drafts.every(({ seen, place, elsewhere }) => seen === null && !place && !elsewhere);
  const several = drafts.reduce((sum, { things }) => sum + things.length, 0) > 1;
  return bare && several ? drafts.map((draft) => ({ ...draft, seen: 'there' as const })) : drafts;
};

export const checkReading = (
  guess: Guess | undefined,
  parsed: Interpretation | undefined,
  reader: Reader,
): Interpretation | null => {
  const words = checkWords(reader.language);
  const lexicon = movesLexicon(reader.language);
  if (!guess || !words || !lexicon) return null;
  const { tokens, pauses, bits } = bitsOf(guess, words, lexicon, reader);
  const heard = {
    heard: guess.heard,
    normalised: guess.tokens.join(' '),
    framed: true as const,
    agenda: true as const,
  };
  if (wishToStop(bits, pauses) && !bits.some((bit) => is(bit, 'later')))
    return {
      ...heard,
      acts: [{ intent: 'end-session', slots: { asked: 'stopped' } }],
      confidence: sure,
    };
  // "Never mind, I'll do the rest later": it stands where it is, and closes nothing.
  if (bits.some((bit) => is(bit, 'later')) && !bits.some(isSurelyThing))
    return { ...heard, acts: [{ intent: 'wait', slots: {} }], confidence: sure };
  // "I counted wrong, it's three": of what was counted last, and not of what is asked about now.
  const recounted = bits.flatMap((bit) => (bit.kind === 'amount' ? [bit.amount] : [])).at(-1);
  const figure = bits.flatMap((bit) => figureOf(bit) ?? []).at(-1);
  if (bits.some((bit) => is(bit, 'miscounted')) && !bits.some(isSurelyThing)) {
    const amount = recounted ?? (figure === undefined ? undefined : { value: figure, unit: 'piece' });
    if (amount)
      return { ...heard, acts: [{ intent: 'correct', slots: { amount, negated: true } }], confidence: sure };
  }
  const toGo = bits.find(
    (bit) => is(bit, 'to-go') && (bit.from === 0 || pauses.has(bit.from) || bits.length < 4),
  );
  const before = toGo ? bits.filter(({ to }) => to <= toGo.from) : bits;
  const begins = (bit: Chunk): boolean => bit.from === 0 || pauses.has(bit.from);
  if (
    before.some(
      (bit) => begins(bit) && is(bit, 'orders') && !is(bit, ...statuses, 'before-there', 'before-missing'),
    )
  )
    return null;
  const all = draftsOf(before, pauses);
  // "Upright freezer, bottom basket. I've got the soup": where she stands, and no place of what is asked about.
  const scope = placeAlone(before, tokens, lexicon) ?? leadingPlace(all);
  const drafts = listed(scope && all.length > 1 ? all.slice(1) : all);
  if (scope && all.length === 1 && reader.expecting === 'count-answer' && !isAsked(guess, tokens, reader))
    return {
      ...heard,
      acts: [{ intent: 'answer', slots: { place: scope, asked: 'stands-at' } }],
      confidence: sure,
    };
  const things = drafts.flatMap((draft) => draft.things);
  const asks = toGo ? [{ intent: 'answer' as const, slots: { asked: 'to-go' } }] : [];
  const strangers = before.filter(
    ({ kind }) => kind !== 'thing' && kind !== 'word' && !explains.has(kind),
  ).length;
  const findings = drafts.flatMap(findingsOf);
  // Every thing named needs something said of it, and is surely on record.
  const whole =
    things.length > 0 &&
    !drafts.some(({ elsewhere }) => elsewhere) &&
    drafts.every(({ seen, amount, place }) => seen !== null || amount !== undefined || place !== undefined) &&
    things.every(({ fit, source }) => fit >= leastFit || source === 'food');
  // With another question open, what names nothing answers that.
  const asked = reader.expecting === 'count-answer';
  const wholes = findings.every(({ amount }) => amount === undefined || Number.isInteger(amount.value));
  // "It's in the upright" is of what was asked about; a place and nothing else names a place to go through.
  const points = pointsAt(tokens, lexicon);
  const within = before.every(({ kind, from }) => kind !== 'place' || isLed(tokens, from, lexicon));
  const placed = findings.every(({ place }) => place === undefined || points || within);
  const bare = asked && wholes && placed && things.length === 0 && findings.length > 0 && !ofRules(parsed);
  const loses = findings.some(({ seen }) => losing.has(seen));
  const told =
    (whole || bare) &&
    strangers <= (loses ? besideLoss : strangersFor(things.length)) &&
    !(loses && denies(before)) &&
    (toGo !== undefined || !isAsked(guess, tokens, reader));
  if (!told && (asks.length === 0 || things.length > 0)) return null;
  const at = scope ? { place: scope } : {};
  const tells = told ? [{ intent: 'answer' as const, slots: { findings, ...at } }] : [];
  return { ...heard, acts: [...tells, ...asks], confidence: sure };
};
const sure = 0.9;
/** And beside what takes something off: "that I can find over by the peas". */
const besideLoss = 1;

const ofAnswer: ReadonlySet<Intent> = new Set<Intent>([
  ...(['yes', 'no', 'done', 'next', 'maybe', 'cancel', 'finish', 'answer', 'choose', 'take'] as const),
  ...(['amend', 'correct'] as const),
]);
/** Said of nothing by name, these take what is asked about off the record, or pass it over. */
const losesAsked = ({ intent, slots: { asked, item, words } }: Act): boolean =>
  ['no', 'next', 'maybe', 'cancel'].includes(intent) ||
  asked === 'gone' ||
  asked === 'unsure' ||
  (intent === 'finish' && (item?.candidates.length ?? 0) === 0) ||
  (intent === 'answer' && words !== undefined);

/** A check begins where one is asked for, and never for a question of what is there. */
export const asksForCheck = (
  guess: Pick<Guess, 'tokens'>,
  acts: readonly Act[],
  language: string,
): boolean => {
  if (!acts.some(({ intent, slots }) => intent === 'start-count' && slots.asked === undefined)) return true;
  const words = checkWords(language);
  const asked = (from: number): boolean =>
    words?.allAt(guess.tokens, from).some(({ value }) => value.has('asks-for')) === true;
  return words === null || guess.tokens.some((_, from) => asked(from));
};

/**
 * Whether what the rules make of it plainly answers what a check asks: a protest, a question or a plea that has
 * a "no" in it does not. What is no answer at all is none of this.
 */
export const answersCheck = (guess: Guess, acts: readonly Act[], reader: Reader): boolean => {
  if (reader.expecting !== 'count-answer' || !acts.some(({ intent }) => ofAnswer.has(intent))) return true;
  const words = checkWords(reader.language);
  const lexicon = movesLexicon(reader.language);
  if (!words || !lexicon) return true;
  if (isAsked(guess, guess.tokens, reader)) return false;
  if (!acts.some(losesAsked)) return true;
  const { bits } = bitsOf(guess, words, lexicon, reader);
  if (!denies(bits) && !bits.some(({ kind }) => kind === 'unknown')) return true;
  // "Absolutely not": few words that are nothing but an answer.
  const mood = moodOf(guess.tokens, reader.language, { expecting: reader.expecting });
  return guess.tokens.length <= fewWords && (mood?.answered ?? 0) >= surelyAnswered;
};
const fewWords = 3;
const surelyAnswered = 0.8;

/** Few words that the rules know as an answer are theirs: "still there", "only two", "it's half full". */
const ofRules = (parsed: Interpretation | undefined): boolean =>
  parsed !== undefined &&
  parsed.confidence >= fairRule &&
  parsed.acts.every(
    ({ intent }) => answering['count-answer'].has(intent) || intent === 'maybe' || intent === 'cancel',
  );
const fairRule = 0.45;
