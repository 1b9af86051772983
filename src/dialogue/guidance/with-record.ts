/**
 * "The feta, I only opened it six days ago, is it still good", of feta that is on record: what is told while it is
 * asked is judged together with its record, and the stricter of the two holds. A label, or a milder day, takes nothing
 * back; which day the answer counts from is said with it, so that it never turns about without a reason.
 */
import type { Item } from '../../kitchen/model.js';
import type { Assessment, GuidanceQuestion, Where } from '../../safety/api.js';
import { assessIn, guidanceFor } from '../../safety/index.js';
import type { GuidanceFacts } from '../../understanding/guidance/facts.js';
import type { Slots } from '../../understanding/intents.js';
import { byAge } from '../age/by-age.js';
import { countedFrom } from '../describe/counted.js';
import { mustSay, reasonsOf, verdictWords } from '../describe/guidance.js';
import { type Reply, type Turn, about, day, say, todayOf } from '../handler.js';
import { inCut } from '../outages/power-cut.js';
import { hersOf, whereOfItem } from '../refer/hers.js';
import { oldestFirst } from '../refer/tell-apart.js';

/** Nothing but how old it is, that it is open, and whom it is for; where else it was or how hot has rooms of its own. */
const tellsOnlyAge = (facts: GuidanceFacts, where: Where | null): boolean =>
  facts.asked === 'still' &&
  // What a baby may have is asked of the food itself, however old this one is.
  !facts.infant &&
  !facts.risks.includes('infant') &&
  !facts.overnight &&
  !facts.elsewhere &&
  !facts.which &&
  (facts.where === null || facts.where === where) &&
  [facts.since, facts.until, facts.air, facts.probe, facts.icy, facts.thawedIn].every(
    (one) => one === null,
  ) &&
  facts.reheated === 0 &&
  facts.readings.length === 0 &&
  facts.states.every((state) => state === 'cooked' || state === 'homemade' || state === 'opened');

/** Its age, or that it is open, was told with the question. */
const tellsAge = ({ seconds, when, dates, states }: GuidanceFacts): boolean =>
  seconds !== null || when !== null || Object.keys(dates).length > 0 || states.includes('opened');

/** What is past comes before what is not, then the earlier last day, then any day before none. */
const stricter = (one: Assessment, other: Assessment): Assessment => {
  const past = (found: Assessment): number => (found.verdict === 'throw-out' ? 0 : 1);
  if (past(one) !== past(other)) return past(one) < past(other) ? one : other;
  const last = (found: Assessment): string => found.lastDay ?? '9999-12-31';
  return last(other) < last(one) ? other : one;
};

/** A day printed on it that is still to come. */
const labelOf = ({ dates }: Item, now: string): string | null =>
  [dates.useBy, dates.bestBefore].find((printed) => printed !== undefined && printed > now) ?? null;

/** Null where nothing of the household is meant, or more was told than its age. */
export const withRecord = (
  turn: Turn,
  slots: Slots,
  facts: GuidanceFacts,
  question: Omit<GuidanceQuestion, 'food' | 'where'>,
): Reply | null => {
  const items = hersOf(turn, slots.item);
  const [group, ...others] = byAge(oldestFirst(items));
  if (!group || others.length > 0 || inCut(turn, items)) return null;
  const item = group.first;
  const where = whereOfItem(turn, item);
  if (!where || !tellsAge(facts) || !tellsOnlyAge(facts, where)) return null;
  const recorded = assessIn(turn.kitchen, item, turn.clock);
  const found = stricter(recorded, guidanceFor({ ...question, food: item.name, where }));
  const { first, rest, sources } = reasonsOf(found);
  const printed = found.verdict === 'throw-out' ? labelOf(item, todayOf(turn)) : null;
  return {
    parts: [
      ...mustSay(found, facts.risks.length > 0),
      verdictWords(found, item.name),
      ...first,
      ...(found === recorded ? countedFrom(item, found, turn.clock) : [say('counted-by-told')]),
      ...(printed ? [say('label-outlived', { printed: day(printed) })] : []),
    ],
    details: rest,
    sources,
    memory: about(turn, group.items),
    names: [item.name],
    count: 1,
  };
};
