/** Somebody is in trouble, or asks what only a clinician may answer: heard in any wording. */
import type { Act } from '../intents.js';
import { matchesIn } from './spots.js';
import {
  asks,
  asksAnywhere,
  foodsIn,
  has,
  isWord,
  mentionOf,
  near,
  saysWord,
  spotsOf,
  type Sentence,
} from './sentence.js';

/** "Will it make me sick": a question about food, and nobody is ill. */
const stillToCome = (sentence: Sentence, from: number): boolean =>
  sentence.tokens.slice(0, from).some((word) => isWord(sentence, 'tocome', word));

const bodyInTrouble = (sentence: Sentence): boolean => {
  // "The chest freezer's lid is tight" is about no chest.
  const bodies = spotsOf(sentence, 'body').filter(
    ({ to }) => !isWord(sentence, 'nobody', sentence.tokens[to]),
  );
  // "Peter is swelling up": of somebody of the household it needs no part of the body.
  const people = matchesIn(sentence.tokens, sentence.rules, 'kitchen:person', 0.85);
  const swells = people.some(({ to }) =>
    spotsOf(sentence, 'symptom').some(
      ({ from }) => from - to === 1 && isWord(sentence, 'being', sentence.tokens[to]),
    ),
  );
  if (swells) return true;
  return bodies.some(({ from }) =>
    spotsOf(sentence, 'symptom').some((symptom) => Math.abs(symptom.from - from) <= 6),
  );
};

export const urgentAct = (sentence: Sentence): Act | null => {
  const foods = foodsIn(sentence);
  const item = foods[0] ? { item: mentionOf(foods[0]) } : {};
  const act = (asked: string): Act => ({ intent: 'urgent', slots: { asked, ...item } });
  const now = spotsOf(sentence, 'emergency').some(
    ({ from }) => !(asks(sentence) && stillToCome(sentence, from)),
  );
  if (now || (bodyInTrouble(sentence) && !has(sentence, 'vessel'))) return act('emergency');
  const ill = spotsOf(sentence, 'ill').some(
    ({ from, to }) => !stillToCome(sentence, from) && !isWord(sentence, 'weary', sentence.tokens[to]),
  );
  if (ill) return act('ill');
  const eating = saysWord(sentence, 'eating');
  if (asks(sentence) && eating && has(sentence, 'medicine')) return act('medicine');
  const own = saysWord(sentence, 'own');
  if (asks(sentence) && own && eating && has(sentence, 'illness')) return act('illness');
  return null;
};

/** A container that may poison, food gone mouldy, a taste to find out: what is done about it has no date in it. */
const surely = 0.8;

export const hazardAct = (sentence: Sentence, base: Act | null): Act | null => {
  if (has(sentence, 'discards') && !asksAnywhere(sentence)) return null;
  // "White spots" name no white rice: only what is surely a name says which food it is.
  const found = foodsIn(sentence, [...spotsOf(sentence, 'vessel'), ...spotsOf(sentence, 'mould')]).filter(
    ({ hers, weight }) => !hers || weight >= surely,
  );
  const act = (asked: string): Act => ({
    intent: 'danger',
    slots: { asked, ...(found[0] ? { item: mentionOf(found[0]) } : {}) },
  });
  const canned = has(sentence, 'homecanned');
  if (near(sentence, 'vessel', 'damage', 7) || (canned && has(sentence, 'damage'))) return act('container');
  if (has(sentence, 'nameless') && (canned || has(sentence, 'vessel'))) return act('nameless');
  if (near(sentence, 'vessel', 'dented', 7)) return act('dented');
  if (base?.intent === 'finish' || base?.intent === 'put-away') return null;
  const ofFood = found.length > 0 || saysWord(sentence, 'pointer');
  if (!ofFood) return null;
  if (has(sentence, 'mould')) return act('mould');
  if (has(sentence, 'frost') && !has(sentence, 'cutnoun') && !has(sentence, 'cutevent')) return act('frost');
  if (has(sentence, 'taste') && asks(sentence)) return act('taste');
  // With its age, guidance tells more than that no nose does.
  if (has(sentence, 'sniff') && !has(sentence, 'span') && !has(sentence, 'label')) return act('sniff');
  // "Smells a little off": the nose and what it finds, a few words apart.
  if (has(sentence, 'smell') || near(sentence, 'smells', 'offness', 4)) return act('smell');
  return null;
};
