/** Talk of the list to buy goes on: "and a dozen eggs", "what about butter", "six of them", "how many are on there". */
import type { Act, Mention, Slots } from '../../understanding/intents.js';
import { findItems } from '../refer/items.js';
import { type Work, runAct, turnOf } from './work.js';

/** True while the last answer was of the list. */
export const goesOnWithList = ({ state: { told, turns } }: Work): boolean =>
  told?.act?.intent.startsWith('buy-') === true && told.turn !== undefined && turns - told.turn <= 1;

const named = ({ item, items }: Slots): boolean => item !== undefined || items !== undefined;

/** Asked about rather than added. */
export const asksAbout = (heard: string | null): boolean =>
  /\b(what|how) about\b|\bwhat of\b/i.test(heard ?? '');

const again = (was: Act, { slots }: Act, about: boolean): Act | null => {
  if (slots.amount && was.intent === 'buy-add' && (!named(slots) || slots.item?.pointer))
    return { intent: 'buy-add', slots: { ...was.slots, amount: slots.amount } };
  if (!named(slots)) return null;
  if (was.intent === 'buy-read') return { intent: named(was.slots) || about ? 'buy-read' : 'buy-add', slots };
  if (about) return { intent: 'buy-read', slots };
  return { intent: was.intent === 'buy-clear' ? 'buy-add' : was.intent, slots };
};

/** The same again of another line; null when the talk was of something else. */
export const listAgain = (work: Work, act: Act): Work | null => {
  const was = work.state.told?.act;
  const meant = was && goesOnWithList(work) ? again(was, act, asksAbout(work.heard)) : null;
  return meant ? runAct(work, meant) : null;
};

const noneHere = (work: Work, item: Mention): boolean => findItems(turnOf(work), item).items.length === 0;

/** "How many are on there", "what's left on it": of the list that was just spoken of, not of a shelf. */
export const ofListInstead = (work: Work, act: Act): Act => {
  const { place, item } = act.slots;
  // "We're out of coffee too": there is none on record to finish.
  if (act.intent === 'finish' && item?.words && goesOnWithList(work) && noneHere(work, item))
    return { intent: 'buy-add', slots: { item } };
  if (!goesOnWithList(work) || item?.words || place?.pointer !== 'same') return act;
  if (act.intent === 'count') return { intent: 'buy-read', slots: { asked: 'count' } };
  return act.intent === 'find' ? { intent: 'buy-read', slots: {} } : act;
};
