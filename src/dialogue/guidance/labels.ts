/** What a claim on a label comes to, and what the kinds of date on it mean: three different things. */
import { claimNamed, labelDate } from '../../safety/index.js';
import { datesPrinted } from '../../kitchen/index.js';
import type { Say } from '../../speech/answer.js';
import { today } from '../../terms/dates.js';
import type { GuidanceFacts } from '../../understanding/guidance/facts.js';
import { sourcesOf } from '../describe/guidance.js';
import { type Reply, type Turn, day, say } from '../handler.js';

/** What must be heard with a claim, lest it be taken for more than it says. */
const notes: ReadonlySet<string> = new Set(['gluten-free', 'unsalted']);

/** What a claim is reckoned on, as the phrases name it. */
const perWhat = (per: string): string =>
  per.startsWith('reference amount')
    ? 'serving'
    : per === 'food'
      ? 'food'
      : per === '100 g'
        ? 'grams'
        : 'hundred';

/** "Does low sodium mean under a hundred and forty milligrams?" */
export const claim = (turn: Turn, claimed: string): Reply => {
  const found = claimNamed(claimed, turn.kitchen.household.region);
  if (!found) return { parts: [say('guidance-claim-unknown')] };
  const limit = found.atMost ?? found.below;
  const parts: Say[] = [
    ...(limit === null
      ? []
      : [
          say('guidance-claim', {
            claim: found.claim,
            limit,
            strict: found.below === null ? 'no' : 'yes',
            unit: found.unit,
            nutrient: found.nutrient,
            per: perWhat(found.per),
          }),
        ]),
    ...(notes.has(claimed) ? [say(`guidance-claim-${claimed}`)] : []),
  ];
  return { parts, sources: sourcesOf([found]) };
};

/** "What does sell by mean?", "what is the difference between use by and sell by?" */
export const labels = (turn: Turn, kinds: GuidanceFacts['labels']): Reply => {
  const { region } = turn.kitchen.household;
  const found = kinds.map((kind) => ({ kind, ...labelDate(kind, region) }));
  return {
    parts: found.map(({ kind, safety }) => say(`guidance-label-${kind}-${safety ? 'safety' : 'quality'}`)),
    sources: sourcesOf(found),
  };
};

/** Before digits that are an element string, whatever they begin with (ISO/IEC 15424). */
const asElements = ']C1';

/** "The code says one seven, two six one two three one": the dates in it, by GS1's identifiers. */
export const code = (turn: Turn, digits: string): Reply => {
  const year = Number(today(turn.clock).slice(0, 4));
  const dates = datesPrinted(`${asElements}${digits}`, year);
  if (dates.length === 0) return { parts: [say('guidance-code-none')] };
  return {
    parts: dates.map((one) =>
      'problem' in one
        ? say('guidance-code-wrong')
        : say('guidance-code-date', { kind: one.kind, day: day(one.day) }),
    ),
  };
};
