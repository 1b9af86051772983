/** "Can I freeze it", "what happens if I freeze it": what guidance says, and nothing is frozen by asking. */
import { assessIn, guidanceFor, isHomeMade, mayFreeze } from '../../safety/index.js';
import { isFrozen, isRefreeze } from '../../kitchen/index.js';
import type { Item } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import type { Slots } from '../../understanding/intents.js';
import { reasonsOf, reasonWords, sourcesOf, spanWords, verdictWords } from '../describe/guidance.js';
import { type Reply, type Turn, about, say } from '../handler.js';
import type { PlainDate } from '../../terms/dates.js';
import { hersOf } from '../refer/hers.js';
import { needItem } from '../refer/need.js';

const inFreezer = (turn: Turn, food: string): { told: Say[]; sources: readonly Say[] } => {
  const { region } = turn.kitchen.household;
  const found = guidanceFor({ food, where: 'freezer', region, clock: turn.clock });
  const limit = found.row?.limit;
  const { sources } = reasonsOf(found);
  return limit
    ? { told: [say('freezes-for', { food, span: spanWords(limit) })], sources }
    : { told: [say('freezes-no-figure', { food })], sources };
};

const against = ({ may, reasons }: ReturnType<typeof mayFreeze>, name: string): Say[] =>
  may === 'poorly'
    ? [say('freeze-rather-not', { name })]
    : [say('freeze-too-late', { name }), ...reasons.map(reasonWords)];

/** Of food that is here: its own dates decide before the chart does. */
const ofOwn = (turn: Turn, item: Item): Reply => {
  const { region } = turn.kitchen.household;
  const memory = about(turn, [item]);
  const more = { memory, names: [item.name], count: 1 };
  const found = assessIn(turn.kitchen, item, turn.clock);
  const { first, rest, sources } = reasonsOf(found);
  if (isFrozen(turn, item))
    return {
      parts: [say('is-frozen', { name: item.name }), verdictWords(found, null), ...first],
      sources,
      ...more,
    };
  if (found.verdict === 'throw-out')
    return { parts: [verdictWords(found, item.name), ...first], details: rest, sources, ...more };
  const state = isHomeMade(item) ? ('cooked' as const) : null;
  const may = mayFreeze({ food: item.name, region, state, dates: item.dates, clock: turn.clock });
  if (may.may !== 'yes') return { parts: against(may, item.name), sources: sourcesOf(may.reasons), ...more };
  const { told, sources: from } = inFreezer(turn, item.name);
  return {
    parts: [...told, ...(isRefreeze(turn, item) ? [say('refreeze-caution', { name: item.name })] : [])],
    details: may.reasons.map(reasonWords),
    sources: from,
    ...more,
  };
};

/** @param useBy Told with the question: it is of that food, whatever is on record. */
export const mayBeFrozen = (turn: Turn, slots: Slots, useBy: PlainDate | null = null): Reply => {
  const { item } = slots;
  const food = item?.words ?? slots.words;
  if (food && (useBy !== null || hersOf(turn, item).length === 0)) {
    const { region } = turn.kitchen.household;
    const may = mayFreeze({ food, region, ...(useBy ? { dates: { useBy } } : {}), clock: turn.clock });
    if (may.may !== 'yes')
      return {
        parts: against(may, food),
        sources: sourcesOf(may.reasons),
        names: [food],
      };
    const { told, sources } = inFreezer(turn, food);
    return { parts: told, sources, names: [food] };
  }
  const found = needItem(turn, item, { question: say('ask-may-freeze'), anyOfBatch: true, lastOne: true });
  return 'reply' in found ? found.reply : ofOwn(turn, found.got);
};
