/**
 * "My neighbour's boy is coming and he can't do dairy, what in the fridge has milk in it": told of somebody, and at once
 * asked. Both are kept: what is told first, then the question, of whoever it was told of.
 */
import { today } from '../../terms/dates.js';
import type { Filter } from '../../protocol/query.js';
import type { Act } from '../intents.js';
import { questionIn } from '../moves/questions.js';
import { ofPerson } from './allergens.js';
import { riskAct } from './at-risk.js';
import { dietGuest } from './guests.js';
import { isWord, type Sentence } from './sentence.js';

/** What is asked of food as somebody may have it, or of a place or a thing for her. */
const ofFood: ReadonlySet<Filter['by']> = new Set<Filter['by']>([
  ...(['suits', 'contains', 'free', 'diet', 'named'] as const),
]);

const cut = (sentence: Sentence, to: number): Sentence => ({
  ...sentence,
  tokens: sentence.tokens.slice(0, to),
  spots: sentence.spots.filter((spot) => spot.to <= to),
});

const toldOf = (sentence: Sentence): Act | null => {
  const told = ofPerson(sentence) ?? riskAct(sentence, null) ?? dietGuest(sentence);
  return told?.intent === 'add-person' ? told : null;
};

/** The question from there on, of whoever was just told of. */
const askedFrom = ({ tokens, rules, language, clock }: Sentence, at: number): Act | null => {
  const question = questionIn(tokens.slice(at), rules, today(clock), language);
  const [act, ...more] = question?.acts ?? [];
  const query = act?.slots.query;
  if (!question || !act || !query || more.length > 0 || question.left.length > 1) return null;
  // "She can't have nuts, any nuts": only what is put as a question is one, or asks whether it is for somebody.
  if (!question.outright && !query.where.some(({ by }) => by === 'suits')) return null;
  if (!query.where.some(({ by }) => ofFood.has(by))) return null;
  return act;
};

export const toldThenAsked = (sentence: Sentence): readonly Act[] | null => {
  const { tokens } = sentence;
  for (let at = 2; at < tokens.length - 1; at += 1) {
    if (!isWord(sentence, 'asks', tokens[at]) || isWord(sentence, 'subject', tokens[at - 1])) continue;
    const told = toldOf(cut(sentence, at));
    const asked = told && askedFrom(sentence, at);
    if (asked) return [told, asked];
  }
  return null;
};
