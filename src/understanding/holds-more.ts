/**
 * "The sausages and that ham, are they all right still", where a rule knows of the sausages: a question that holds
 * all that was named stands before a reading of some of it. What somebody named is never left out of an answer.
 */
import type { DynamicRules } from '../grammar/api.js';
import type { Query } from '../protocol/query.js';
import { tellsHowKept } from './guidance/facts.js';
import { passedOver } from './held.js';
import type { Act, Intent, Understanding } from './intents.js';
import type { Chunk } from './moves/api.js';
import { chunksOf } from './moves/chunks.js';

/** Asked of food that is named; notes, people, the list and clocks have names of their own. */
const asking: ReadonlySet<Intent> = new Set<Intent>([
  ...(['find', 'count', 'how-old', 'item-date', 'keeps', 'no-date'] as const),
  ...(['use-first', 'contains', 'can-eat', 'guidance'] as const),
]);

const queryOf = ({ slots: { query, edit } }: Act): Query | null => query ?? edit?.query ?? null;

/** For how many it is asked: "for her and for Sam" are two. */
const eatersOf = (acts: readonly Act[]): number =>
  acts.reduce((sum, act) => {
    const who = queryOf(act)?.where.flatMap((filter) => (filter.by === 'suits' ? [filter.who] : []))[0];
    // "Can I still eat it": whoever asks is nobody else.
    const several = who?.who === 'several' ? Math.max(2, who.each.length) : who && who.who !== 'me' ? 1 : 0;
    return sum + Math.max(several, act.slots.person ? 1 : 0);
  }, 0);

/** Of how many foods by name. */
const foodsOf = (acts: readonly Act[]): number =>
  acts.reduce((sum, act) => {
    const named = queryOf(act)?.where.flatMap((filter) =>
      filter.by === 'each' ? filter.mentions : filter.by === 'named' ? [filter.mention] : [],
    );
    const { item, items } = act.slots;
    return sum + Math.max(named?.length ?? 0, items?.length ?? 0, item?.words ? 1 : 0);
  }, 0);

/** Of what is asked and changes nothing; the question with no word left over. */
const mayStand = ({ verdict, readings: [best], question }: Understanding): boolean =>
  question !== undefined &&
  question.outright &&
  question.hers &&
  !question.fragment &&
  question.left.length === 0 &&
  (verdict === 'act' || verdict === 'confirm') &&
  best !== undefined &&
  best.acts.every((act, at) => (asking.has(act.intent) || (at > 0 && isName(act))) && !isOfRisk(act));

/** "And the meatloaf", heard as a name by itself. */
const isName = ({ intent }: Act): boolean => intent === 'choose' || intent === 'answer';

/** What guidance says of a baby, of somebody at risk, or of how it was kept stands: no record holds that. */
const isOfRisk = ({ slots: { guidance } }: Act): boolean =>
  guidance !== undefined && (guidance.infant || guidance.risks.length > 0 || tellsHowKept(guidance));

/** How sure a question put together from its parts is. */
const confidence = 0.6;

/** The same, with the question as its reading where it holds all that was named and the reading does not. */
export const withFuller = (
  understood: Understanding,
  heard: string,
  { tokens, pauses }: { readonly tokens: readonly string[]; readonly pauses: ReadonlySet<number> },
  rules: DynamicRules,
  language: string,
): Understanding => {
  const {
    question,
    readings: [best],
  } = understood;
  if (!question || !best || !mayStand(understood)) return understood;
  // Whom it is asked for is counted by itself: to a question of what is in a food it says nothing.
  const chunks: readonly Chunk[] = (chunksOf(tokens, rules, language, pauses)?.chunks ?? []).filter(
    ({ kind }) => kind !== 'person',
  );
  const asked: Understanding = {
    ...understood,
    readings: [
      { acts: question.acts, confidence, heard, normalised: tokens.join(' ') },
      ...understood.readings,
    ],
    verdict: 'act',
  };
  const over = (one: Understanding): number => passedOver(one, chunks, tokens);
  const left = over(asked);
  const plainly = { ...understood, readings: [{ ...best, acts: best.acts.filter((act) => !isName(act)) }] };
  // Guidance has its facts for one food.
  const counts = [eatersOf, foodsOf].some((count) => count(question.acts) > count(best.acts));
  const more = counts ? left <= over(plainly) : left < over(plainly);
  return more && left === 0 ? { ...asked, question: { ...question, holdsMore: true } } : understood;
};
