/**
 * The account of what was said. Whichever reader proposed a meaning, each constituent that tells something (a food,
 * an allergen, an amount, a place, a marker, a person, a day) must stand somewhere in it; what stands nowhere is said
 * not to have been got. So no reader has to remember to say what it leaves out.
 */
import { type Clock, today } from '../terms/dates.js';
import { rulesFor } from './grammar-files.js';
import { worthOf, type Worth } from './gate/names.js';
import { sentenceOf, spotsOf } from './guidance/sentence.js';
import { bare, hasRole, heldInActs, passedChunks, surely, type Held } from './held.js';
import {
  BARE_INTENTS,
  type Act,
  type HearingContext,
  type Intent,
  type Mention,
  type Understanding,
} from './intents.js';
import type { Chunk, Span } from './moves/api.js';
import { constituentsOf } from './moves/occasion.js';
import { movesLexicon } from './moves/lexicon.js';
import type { HouseholdNames } from './names/api.js';
import { isSureOfWhole } from './understand.js';
import { lexiconFor, normalise } from './words/index.js';

/** "Six no five": what was taken back stands just before the word that takes it back … */
const takenBack = 4;
/** … and "not the oat" just after it. */
const denied = 2;
/** More than so many pieces are not read out. */
const mostNamed = 3;

const foods: ReadonlySet<Worth> = new Set<Worth>(['hers', 'food']);

interface Account {
  readonly day: string;
  /** Something is written by it. */
  readonly writes: boolean;
  /** A day of the food may be part of it. */
  readonly dates: boolean;
  /** Of two markers that change places, or one that is carried over: which they are is known by what they are on. */
  readonly carries: boolean;
  readonly allergenOf: (words: string) => string | undefined;
  /** A name of hers, or a food everybody knows. */
  readonly isFood: (mention: Mention) => boolean;
}

/** Whether it stands in the meaning, or tells nothing for certain. */
const isHeld = (
  chunk: Chunk,
  said: readonly string[],
  held: Held,
  { day, writes, dates, carries, isFood, allergenOf }: Account,
): boolean => {
  if (said.some((word) => held.words.has(bare(word)))) return true;
  // Which of the steps: "the second" sounds like a shelf.
  if (hasRole(held, 'edit') && chunk.kind !== 'thing') return true;
  if (chunk.kind === 'marker') return carries || hasRole(held, 'touch', 'marker', 'container');
  if (!writes) return true;
  switch (chunk.kind) {
    case 'thing': {
      const allergen = allergenOf(said.join(' '));
      return (
        hasRole(held, 'eaters') ||
        (allergen?.split(' ').some((word) => held.words.has(word)) ?? false) ||
        !isFood(chunk.mention)
      );
    }
    case 'place':
      return chunk.fit < surely || hasRole(held, 'place', 'from', 'spot', 'beside');
    case 'person':
      return (
        (chunk.candidates[0]?.fit ?? 0) < surely || hasRole(held, 'person', 'maker', 'owner', 'eaters', 'by')
      );
    case 'amount':
      return (
        chunk.amount.unit === 'piece' ||
        chunk.amount.value === 1 ||
        held.numbers.has(chunk.amount.value) ||
        hasRole(held, 'share', 'left', 'parts')
      );
    case 'day':
      return (
        !dates || JSON.stringify(chunk.past).includes(day) || hasRole(held, 'day', 'dates', 'when', 'date')
      );
    default:
      return true;
  }
};

const isWord = (chunk: Chunk, name: string): boolean => chunk.kind === 'word' && chunk.classes.has(name);
/** Put right, or denied, by the words beside it: who reads the whole knows what was meant. */
const isExcused = ({ from, to }: Span, chunks: readonly Chunk[]): boolean =>
  chunks.some(
    (other) =>
      (isWord(other, 'repair') && other.from >= to && other.from - to < takenBack) ||
      (isWord(other, 'not') && other.to <= from && from - other.to < denied),
  );

/** One after the other, a word that joins them between them at most: one piece. */
const joined = (spans: readonly Span[]): readonly Span[] =>
  spans.reduce<readonly Span[]>((all, next) => {
    const last = all.at(-1);
    if (!last || next.from > last.to + 1) return [...all, next];
    return [...all.slice(0, -1), { from: last.from, to: Math.max(last.to, next.to) }];
  }, []);

/** What is written of food, its markers and who eats it. */
const ofTheRecord: ReadonlySet<Intent> = new Set<Intent>([
  ...(['tell', 'put-away', 'take', 'finish', 'move', 'amend', 'open', 'freeze', 'thaw', 'put-back'] as const),
  ...(['split', 'merge', 'mark', 'unmark', 'buy-add', 'buy-remove', 'add-person'] as const),
]);
/** What is asked of food, and what answers: only what is no part of any question is lost there. */
const ofFood: ReadonlySet<Intent> = new Set<Intent>([
  ...(['guidance', 'keeps', 'contains', 'can-eat', 'cook-temperature', 'ask', 'find', 'item-date'] as const),
  ...BARE_INTENTS,
  'correct',
]);
/** Where a day is of the food, and not of who comes or of when it was done. */
const dated: ReadonlySet<Intent> = new Set<Intent>(['tell', 'put-away', 'amend']);

/** What begins or ends something, however much else was said with it. */
const takesOver: ReadonlySet<Intent> = new Set<Intent>([
  ...(['end-session', 'reheat', 'thaw-plan', 'set-timer', 'cancel-timer'] as const),
]);

/** What is surely something else than food. */
const counts: ReadonlySet<Chunk['kind']> = new Set<Chunk['kind']>([
  'amount',
  'place',
  'marker',
  'day',
  'time',
]);

const leftOver = (
  tokens: readonly string[],
  acts: readonly Act[],
  beside: readonly Act[],
  names: HouseholdNames,
  context: HearingContext,
): readonly string[] => {
  const clock: Clock = { now: context.now, timeZone: context.timeZone };
  const { language } = lexiconFor(context.locale);
  const rules = rulesFor(names, context.locale, clock);
  const chunks = constituentsOf(tokens, rules, language, new Set());
  const held = heldInActs([...acts, ...beside]);
  const lexicon = movesLexicon(language);
  const account: Account = {
    day: today(clock),
    writes: acts.some(({ intent }) => ofTheRecord.has(intent)),
    dates: acts.some(({ intent }) => dated.has(intent)),
    carries: acts.some(({ intent, slots }) => intent === 'mark' && slots.asked !== undefined),
    // What only sounds like something of hers ("better" of butter) tells nothing of it.
    isFood: (mention) =>
      (mention.candidates[0]?.fit ?? 1) >= surely && foods.has(worthOf(mention, rules, language)),
    allergenOf: (words) => lexicon?.allergenOf(words),
  };
  const told = chunks.filter(
    (chunk) => !isHeld(chunk, tokens.slice(chunk.from, chunk.to), held, account) && !isExcused(chunk, chunks),
  );
  const allergens = spotsOf(sentenceOf(tokens, rules, language, clock), 'allergen').filter(
    (spot) =>
      !isExcused(spot, chunks) &&
      // "Porciones" is an amount, however near it sounds to a shellfish.
      !chunks.some(({ kind, from, to }) => counts.has(kind) && from < spot.to && spot.from < to) &&
      ![...spot.value.split(' '), ...tokens.slice(spot.from, spot.to)].some((word) =>
        held.words.has(bare(word)),
      ),
  );
  const spans = joined([...told, ...allergens].sort((a, b) => a.from - b.from));
  // What somebody must not eat is named before all else.
  const risky = spans.filter(({ from, to }) => allergens.some((one) => from <= one.from && one.to <= to));
  return [...risky, ...spans.filter((span) => !risky.includes(span))]
    .slice(0, mostNamed)
    .map(({ from, to }) =>
      tokens
        .slice(from, to)
        .join(' ')
        .replace(/[,;.!?]+$/u, ''),
    );
};

/** Of a request of another kind: what is of this kitchen, for certain, and has no place in it. */
const passedBy = (
  understanding: Understanding,
  tokens: readonly string[],
  names: HouseholdNames,
  context: HearingContext,
): readonly string[] => {
  const { language } = lexiconFor(context.locale);
  const rules = rulesFor(names, context.locale, { now: context.now, timeZone: context.timeZone });
  const named = constituentsOf(tokens, rules, language, new Set());
  return passedChunks(understanding, named, tokens, context.clocks)
    .slice(0, mostNamed)
    .map(({ from, to }) => tokens.slice(from, to).join(' '));
};

/** What was understood of these words, with what it leaves over. */
export const accounted = (
  understanding: Understanding,
  said: string,
  names: HouseholdNames,
  context: HearingContext,
): Understanding => {
  const { verdict, readings, question, settles } = understanding;
  if (settles) {
    const rest = accounted(settles.rest, settles.said, names, context);
    return rest === settles.rest ? understanding : { ...understanding, settles: { ...settles, rest } };
  }
  const [best] = readings;
  if ((verdict !== 'act' && verdict !== 'confirm') || !best || best.agenda) return understanding;
  // A rule that holds every word of it leaves nothing over.
  if (isSureOfWhole(understanding) && !best.byPhrase) return understanding;
  const { tokens } = normalise(said, context.locale);
  const ofRecord = best.acts.some(({ intent }) => ofTheRecord.has(intent) || ofFood.has(intent));
  if (!ofRecord && !best.acts.some(({ intent }) => takesOver.has(intent))) return understanding;
  const left = ofRecord
    ? leftOver(tokens, best.acts, question?.acts ?? [], names, context)
    : passedBy(understanding, tokens, names, context);
  if (left.length === 0) return understanding;
  const last = best.acts.at(-1)!;
  // Put back for a yes or no anyway, it is named there.
  if (verdict !== 'confirm' || best.acts.some(({ intent }) => intent !== 'tell'))
    return { ...understanding, left };
  const unused = [...(last.slots.unused ?? []), ...left];
  const acts = [...best.acts.slice(0, -1), { ...last, slots: { ...last.slots, unused } }];
  return { ...understanding, readings: [{ ...best, acts }, ...readings.slice(1)] };
};
