/**
 * The guidance ear: what could hurt somebody is listened for in every sentence, before any other reading
 * counts. It looks for phrases, not sentences (`grammars/<language>/words/guidance.txt`), so that no wording
 * is beyond it; where it finds nothing of its own the reading stays what it was.
 */
import { type Clock } from '../../terms/dates.js';
import { rulesFor } from '../grammar-files.js';
import type { Act, HearingContext, Hypothesis, Understanding } from '../intents.js';
import type { HouseholdNames } from '../names/api.js';
import type { Understander } from '../understand.js';
import { lexiconFor, normalise } from '../words/index.js';
import { allergenActs, bothNuts } from './allergens.js';
import { riskAct } from './at-risk.js';
import { onlySupposed, sentenceOf, type Sentence } from './sentence.js';
import { spotsIn } from './spots.js';
import { hazardAct, urgentAct } from './urgent.js';

/** Classes of which one must be heard before anything is looked up. */
const telling = new Set([
  'body',
  'emergency',
  'ill',
  'medicine',
  'illness',
  'damage',
  'dented',
  'nameless',
  'mould',
  'smell',
  'taste',
  'sniff',
  'homecanned',
  'risk',
  'allergen',
  'allergy',
  'whatif',
  'denied',
  'reported',
  'wished',
]);

/** How sure the ear is of what it heard: it acts. */
const sure = 0.95;

/** Acts that note something of food standing out; a sentence that only supposes it notes nothing. */
const supposing = (act: Act, sentence: Sentence): Act =>
  act.intent === 'left-out' && act.slots.asked === undefined && onlySupposed(sentence)
    ? { ...act, slots: { ...act.slots, negated: true } }
    : act;

const readAs = (acts: readonly Act[], said: Hypothesis, tokens: readonly string[]): Understanding => ({
  readings: [
    {
      acts,
      confidence: sure,
      heard: said.text,
      normalised: tokens.join(' '),
      evidence: { score: 0, part: 1, mended: false },
    },
  ],
  margin: 1,
  verdict: 'act',
});

const sameActs = (one: readonly Act[], other: readonly Act[]): boolean =>
  one.length === other.length && one.every((act, at) => act === other[at]);

/** An understander that listens for guidance first. */
export const withGuidance = (inner: Understander, locale: string): Understander => {
  const { language } = lexiconFor(locale);
  const read = (
    base: Understanding,
    said: Hypothesis,
    names: HouseholdNames,
    context: HearingContext,
  ): Understanding => {
    const { tokens } = normalise(said.text, context.locale);
    if (!spotsIn(tokens, language).some(({ kind }) => telling.has(kind)) && !/['’]s\b/.test(said.text))
      return base;
    const clock: Clock = { now: context.now, timeZone: context.timeZone };
    const sentence = sentenceOf(tokens, rulesFor(names, context.locale, clock), language);
    const urgent = urgentAct(sentence);
    if (urgent) return readAs([urgent], said, tokens);
    const acts = base.readings[0]?.acts ?? [];
    const hazard = hazardAct(sentence, acts[0] ?? null);
    if (hazard) return readAs([hazard], said, tokens);
    const allergens = allergenActs(sentence, base.verdict === 'out-of-scope' ? [] : acts);
    if (allergens) return readAs(allergens, said, tokens);
    const risk = riskAct(sentence, acts[0] ?? null);
    if (risk) return readAs([risk], said, tokens);
    const put = acts.map((act) => supposing(bothNuts(act, sentence), sentence));
    const [first, ...rest] = base.readings;
    return !first || sameActs(acts, put) ? base : { ...base, readings: [{ ...first, acts: put }, ...rest] };
  };
  return {
    begins: (words, names, context) => inner.begins(words, names, context),
    understand(hypotheses, names, context) {
      const base = inner.understand(hypotheses, names, context);
      const [said] = hypotheses;
      if (!said || context.expecting === 'spelling' || context.expecting === 'code') return base;
      return read(base, said, names, context);
    },
  };
};
