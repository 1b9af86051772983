/**
 * "My neighbour's boy is coming and he can't do dairy, what in the fridge has milk in it": told of somebody, and at once
 * asked. Both are kept: what is told first, then the question, of whoever it was told of.
 */
import { today } from '../../terms/dates.js';
import type { Filter, Query } from '../../protocol/query.js';
import type { Act } from '../intents.js';
import { questionIn } from '../moves/questions.js';
import { ofPerson } from './allergens.js';
import { riskAct } from './at-risk.js';
import { dietGuest } from './guests.js';
import { asks, between, foodsIn, isWord, mentionOf, personIn, spotsOf, type Sentence } from './sentence.js';

/** What is asked of food as somebody may have it, or of a place or a thing for her. */
const ofFood: ReadonlySet<Filter['by']> = new Set<Filter['by']>([
  ...(['suits', 'contains', 'free', 'diet', 'named'] as const),
]);

const cut = (sentence: Sentence, to: number): Sentence => between(sentence, 0, to);
const from = (sentence: Sentence, at: number): Sentence => between(sentence, at, sentence.tokens.length);

const toldOf = (sentence: Sentence): Act | null => {
  const told = ofPerson(sentence) ?? riskAct(sentence, null) ?? dietGuest(sentence);
  return told?.intent === 'add-person' ? told : null;
};

/** "Allergic to kiwi, what have we got with it in": it is what somebody must not have, just told. */
const holdingTold = (sentence: Sentence, at: number, told: readonly string[]): Act | null => {
  const holds = spotsOf(sentence, 'holdsit').filter((spot) => spot.from >= at);
  if (holds.length === 0 || told.length === 0) return null;
  const { tokens, rules, language, clock } = sentence;
  const asked = questionIn(tokens.slice(at, holds[0]!.from), rules, today(clock), language)?.acts[0]?.slots;
  const where = (asked?.query ?? asked?.edit?.query)?.where.filter(({ by }) => by === 'place') ?? [];
  const query: Query = {
    where: [...where, { by: 'contains', allergens: told }],
    ask: ['what'],
    whether: false,
    order: null,
    by: null,
  };
  return { intent: 'ask', slots: { query } };
};

/** The question from there on, of whoever was just told of. */
const askedFrom = (
  sentence: Sentence,
  at: number,
  to: number,
  allergens: readonly string[],
  /** Where what was told of somebody ends, where that is known. */
  since = at,
): Act | null => {
  const held = holdingTold(sentence, at, allergens);
  if (held) return held;
  const { tokens, rules, language, clock } = sentence;
  const question = questionIn(tokens.slice(at, to), rules, today(clock), language);
  const [act, ...more] = question?.acts ?? [];
  const query = act?.slots.query ?? act?.slots.edit?.query;
  if (!question || !act || !query || more.length > 0 || question.left.length > 1) return null;
  // "She can't have nuts, any nuts": only what is put as a question is one, or asks whether it is for somebody.
  if (!question.outright && !query.where.some(({ by }) => by === 'suits')) return null;
  if (!query.where.some(({ by }) => ofFood.has(by)) && !query.ask.includes('goes-with')) return null;
  // "She can't have fish. I'm thinking the pie, is that safe for her": what was named in between is what "that" is.
  const [meant] = act.slots.edit?.point === 'it' ? foodsIn(between(sentence, since, at)) : [];
  return meant
    ? {
        intent: 'ask',
        slots: { query: { ...query, where: [{ by: 'named', mention: mentionOf(meant) }, ...query.where] } },
      }
    : act;
};

/** Where the last telling before a word ends. */
const tellingEnds = (sentence: Sentence, at: number): number => {
  const ends = [
    ...spotsOf(sentence, 'cannot'),
    ...spotsOf(sentence, 'allergy'),
    ...spotsOf(sentence, 'allergen'),
  ].flatMap(({ to }) => (to <= at ? [to] : []));
  return ends.length > 0 ? Math.max(...ends) : at;
};

const allergensOf = ({ slots: { allergens = [], eaters = [] } }: Act): readonly string[] => [
  ...new Set([...allergens, ...eaters.flatMap((eater) => eater.allergens)]),
];

/** Where a clause may begin to ask. */
const asksAt = (sentence: Sentence): readonly number[] =>
  sentence.tokens.flatMap((word, at) =>
    at >= 2 && isWord(sentence, 'asks', word) && !isWord(sentence, 'subject', sentence.tokens[at - 1])
      ? [at]
      : [],
  );

/** "What goes with that for Peter, he can't have shellfish": asked first, and told of whoever it was asked for. */
const askedThenTold = (sentence: Sentence): readonly Act[] | null => {
  const { tokens } = sentence;
  if (!asks(sentence)) return null;
  const forbids = [...spotsOf(sentence, 'cannot'), ...spotsOf(sentence, 'allergy')];
  for (let at = 2; at < tokens.length - 2; at += 1) {
    if (
      !isWord(sentence, 'shehe', tokens[at]) ||
      !forbids.some(({ from }) => from - at === 1 || from - at === 2)
    )
      continue;
    const whom = personIn(cut(sentence, at));
    const told = toldOf(from(sentence, at));
    if (!told || !whom || whom.words === 'me') continue;
    const { words, candidates } = whom;
    const kept: Act = { ...told, slots: { ...told.slots, person: { words, candidates } } };
    const asked = askedFrom(sentence, 0, at, []);
    return asked ? [kept, asked] : null;
  }
  return null;
};

/** What was told of people by then, and what is asked after it. */
export const thenAsked = (sentence: Sentence, told: Act): Act | null => {
  for (const at of asksAt(sentence)) {
    // "Dele can not have": within what is told nothing is asked.
    const telling = [...spotsOf(sentence, 'cannot'), ...spotsOf(sentence, 'allergy')];
    if (telling.some((spot) => spot.from <= at + 1 && at < spot.to)) continue;
    // "Marianne is coming, she can't have celery or fish": what is told is no part of what is asked.
    if (telling.length > 0 && !telling.some((spot) => spot.to <= at)) continue;
    const asked = askedFrom(
      sentence,
      at,
      sentence.tokens.length,
      allergensOf(told),
      tellingEnds(sentence, at),
    );
    const query = asked?.slots.query ?? asked?.slots.edit?.query;
    const ofThem = query?.where.some(({ by }) => by === 'suits' || by === 'contains' || by === 'free');
    if (asked && ofThem) return asked;
  }
  return null;
};

/** What is told and what is asked; `rest`: the words that ask, where they come last. */
export const toldAndAsked = (
  sentence: Sentence,
): { readonly acts: readonly Act[]; readonly rest: Sentence } | null => {
  const { tokens } = sentence;
  for (const at of asksAt(sentence)) {
    if (at >= tokens.length - 1) continue;
    const told = toldOf(cut(sentence, at));
    const asked =
      told && askedFrom(sentence, at, tokens.length, allergensOf(told), tellingEnds(sentence, at));
    if (asked) return { acts: [told, asked], rest: from(sentence, at) };
  }
  const acts = askedThenTold(sentence);
  return acts && { acts, rest: sentence };
};
