/**
 * What is told and asked of somebody beside what she must not have: on which day a guest comes, how her food is to be
 * made ready for her, and whether any care is to be taken. Heard wherever in the sentence it stands.
 */
import type { SaidDate } from '../../protocol/mentions.js';
import { today } from '../../terms/dates.js';
import { asDate } from '../meaning-parts.js';
import type { Act, Intent, Slots, Understanding } from '../intents.js';
import {
  asks,
  asksAnywhere,
  has,
  isWord,
  moodOf,
  personIn,
  saysWord,
  spotsOf,
  type Sentence,
} from './sentence.js';
import { matchesIn } from './spots.js';

/** "Comes over to us on Saturday": so many words lie between coming and its day. */
const near = 5;

/** On which day somebody comes; null where none is said. */
export const visitIn = (sentence: Sentence): SaidDate | null => {
  const comes = [...spotsOf(sentence, 'comes'), ...spotsOf(sentence, 'visits')];
  if (comes.length === 0) return null;
  const days = matchesIn(sentence.tokens, sentence.rules, 'builtin:grammar/date?lean=future');
  const day = days.find(({ from, to }) =>
    comes.some(
      (one) => (from >= one.to && from - one.to <= near) || (to <= one.from && one.from - to <= near),
    ),
  );
  if (!day) return null;
  // "Staying with us this week": it began before today, and she is here.
  const said = asDate(day.value);
  const now = today(sentence.clock);
  return said.day < now ? { day: now } : said;
};

/** Whom it is of, as dialogue reads it. */
const personSlot = (sentence: Sentence): Slots['person'] | null => {
  const person = personIn(sentence);
  if (!person) return null;
  const { words, candidates } = person;
  return {
    words,
    candidates,
    ...(words === 'she'
      ? { points: 'other' as const }
      : words === 'me'
        ? { points: 'speaker' as const }
        : {}),
  };
};

/** "Needs his food cut up small", "can only manage soft food", "is diabetic": in her own words; null where nothing is. */
const needsIn = (sentence: Sentence): readonly string[] => {
  const { tokens } = sentence;
  const made = spotsOf(sentence, 'prepared');
  const needs = spotsOf(sentence, 'needsit').filter(({ to }) => made.some(({ from }) => from >= to));
  const [need] = needs;
  const ofFood =
    need && made.length > 0
      ? (() => {
          const last = made.at(-1)!;
          let to = last.to;
          // "Soft food": what is so made ready is said after it as well.
          while (to < tokens.length && isWord(sentence, 'ofmeals', tokens[to])) to += 1;
          let from = need.to;
          while (from < last.from && isWord(sentence, 'whose', tokens[from])) from += 1;
          return [tokens.slice(from, to).join(' ')];
        })()
      : [];
  const states = spotsOf(sentence, 'careof').map(({ from, to }) => tokens.slice(from, to).join(' '));
  return [...new Set([...ofFood, ...states])];
};

/** What is said to somebody or later, heated or timed, tells nothing of a person. */
const ofAnother: ReadonlySet<Intent> = new Set<Intent>([
  ...(['set-reminder', 'change-reminder', 'leave-note', 'reheat', 'set-timer', 'danger'] as const),
]);

/** Told of somebody: how her food is to be. */
export const needAct = (sentence: Sentence, base: Act | null): Act | null => {
  if (asks(sentence) || moodOf(sentence) !== 'told' || has(sentence, 'asksofher')) return null;
  if (base && (ofAnother.has(base.intent) || base.slots.diet !== undefined)) return null;
  const needs = needsIn(sentence);
  const person = needs.length > 0 ? personSlot(sentence) : null;
  if (!person) return null;
  return { intent: 'add-person', slots: { person, needs } };
};

/** "Does Theo need any extra care", "tell me about Joan", "who is at risk". */
export const careAsked = (sentence: Sentence): Act | null => {
  const ofCare = has(sentence, 'askscare');
  const whom = personIn(sentence);
  // "What does Joan need".
  const needs = asks(sentence) && whom !== null && isWord(sentence, 'needword', sentence.tokens[whom.to]);
  const ofAll = has(sentence, 'asksofher') || needs;
  if (!ofCare && !ofAll) return null;
  const asked = ofCare ? 'risk' : 'all';
  const person = personSlot(sentence) ?? null;
  const known = person !== null && person.candidates.length > 0;
  if (ofCare && saysWord(sentence, 'whoever') && !known) return { intent: 'who-allergic', slots: { asked } };
  if (ofCare && !asksAnywhere(sentence)) return null;
  if (!person || (ofAll && person.points === undefined && person.candidates.length === 0)) return null;
  return { intent: 'who-allergic', slots: { person, asked } };
};

/** "Who is coming on Saturday", "is anybody visiting". */
export const guestsAsked = (sentence: Sentence): Act | null => {
  const comes = has(sentence, 'comes') || has(sentence, 'visits');
  if (!comes || !asks(sentence) || !saysWord(sentence, 'whoever')) return null;
  const visit = visitIn(sentence);
  return { intent: 'people', slots: { asked: 'guests', ...(visit ? { visit } : {}) } };
};

/** Beside a reading this sure nobody is made a guest of the sentence. */
const surely = 0.6;

/** "Priya is coming on Saturday", and nothing else of her. */
export const guestAct = (sentence: Sentence, base: Understanding): Act | null => {
  const [best] = base.readings;
  const sure = base.verdict === 'act' && (best?.confidence ?? 0) >= surely;
  if (asks(sentence) || moodOf(sentence) !== 'told' || sure) return null;
  const visit = visitIn(sentence);
  const person = visit ? personSlot(sentence) : null;
  return visit && person && person.points === undefined
    ? { intent: 'add-person', slots: { person, visit } }
    : null;
};

/** What a told person has beside it: the day of her visit. */
export const withVisit = (act: Act, sentence: Sentence): Act => {
  if (act.intent !== 'add-person' || act.slots.visit || asks(sentence)) return act;
  const visit = visitIn(sentence);
  return visit ? { ...act, slots: { ...act.slots, visit } } : act;
};
