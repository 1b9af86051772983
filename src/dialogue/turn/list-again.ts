/** Talk of the list to buy goes on: "and a dozen eggs", "what about butter", "six of them", "how many are on there". */
import { likeness } from '../../kitchen/index.js';
import type { Purchase } from '../../kitchen/model.js';
import { today } from '../../terms/dates.js';
import { type Act, type Mention, type Slots, emptyMention } from '../../understanding/intents.js';
import { findItems } from '../refer/items.js';
import { nearLine } from '../shopping/said.js';
import { type Work, runAct, turnOf } from './work.js';

/** True while the last answer was of the list. */
export const goesOnWithList = ({ state: { told, turns }, journal }: Work): boolean => {
  if (!told?.act || told.turn === undefined || turns - told.turn > 1) return false;
  if (told.act.intent.startsWith('buy-')) return true;
  // "Undone: lemons are back on the list."
  const { ops } = journal[0] ?? { ops: [] };
  return told.act.intent === 'undo' && ops.length > 0 && ops.every(({ kind }) => kind === 'purchase');
};

const named = ({ item, items }: Slots): boolean => item !== undefined || items !== undefined;

const again = (was: Act, { slots }: Act, about: boolean): Act | null => {
  if (slots.amount && was.intent === 'buy-add' && (!named(slots) || slots.item?.pointer))
    return { intent: 'buy-add', slots: { ...was.slots, amount: slots.amount } };
  if (!named(slots)) return null;
  if (was.intent === 'buy-read') return { intent: named(was.slots) || about ? 'buy-read' : 'buy-add', slots };
  if (about) return { intent: 'buy-read', slots };
  // After it was emptied, or something on it taken back, what is named now is wanted on it.
  const anew = was.intent === 'buy-clear' || was.intent === 'undo';
  return { intent: anew ? 'buy-add' : was.intent, slots };
};

/** The same again of another line; null when the talk was of something else. */
export const listAgain = (work: Work, act: Act): Work | null => {
  const was = work.state.told?.act;
  const meant = was && goesOnWithList(work) ? again(was, act, work.qualifiers.has('about')) : null;
  return meant ? runAct(work, meant) : null;
};

const noneHere = (work: Work, item: Mention): boolean => findItems(turnOf(work), item).items.length === 0;

/** "I got the vinegar and the salsa", each of them on the list, and no word of where they go. */
const boughtFromList = (work: Work, { intent, slots }: Act): boolean => {
  const { item, items, place, amount, shares } = slots;
  if (intent !== 'put-away' || place || amount || shares || work.state.session || work.state.memory.touched)
    return false;
  if (!work.qualifiers.has('got')) return false;
  const mentions = items ?? (item ? [item] : []);
  return (
    mentions.length > 0 &&
    mentions.every(({ words, at }) => words !== null && !at && nearLine(turnOf(work), words) !== null)
  );
};

/** Lines just ticked off as bought: where they go may be told next. */
const boughtJustNow = ({ state: { done, told, turns } }: Work): readonly Purchase[] =>
  told?.act?.intent === 'buy-got' && turns - (told.turn ?? -9) <= 1
    ? (done?.changes ?? []).flatMap(({ verb, ops }) =>
        verb === 'bought'
          ? ops.flatMap((op) => (op.kind === 'purchase' && op.before && !op.after ? [op.before] : []))
          : [],
      )
    : [];

/** "They're in the salad drawer", "the lemons are on the door", right after they were bought: put away there. */
const putWhereTold = (work: Work, { intent, slots }: Act): Act | null => {
  const bought = work.state.session ? [] : boughtJustNow(work);
  const [only, ...more] = slots.statements ?? [];
  const told = intent === 'tell' && more.length === 0 ? only : undefined;
  const place = told ? told.place : slots.place;
  const item = told ? told.thing : slots.item;
  const moves = intent === 'move' || intent === 'put-away' || (told && stays.has(told.deed));
  if (bought.length === 0 || !moves || !place || place.candidates.length === 0 || slots.items) return null;
  const words = item?.words ?? null;
  const meant = words === null ? bought : bought.filter(({ name }) => likeness(name, words) > 0);
  if (meant.length === 0) return null;
  const items = meant.map(({ name }) => ({ ...emptyMention, words: name }));
  const dates = { bought: { day: today(work.around.clock) } };
  return {
    intent: 'put-away',
    slots: { ...(items.length === 1 ? { item: items[0]! } : { items }), place, dates },
  };
};
const stays: ReadonlySet<string> = new Set(['stored', 'fact', 'moved']);

/** "How many are on there", "what's left on it": of the list that was just spoken of, not of a shelf. */
export const ofListInstead = (work: Work, act: Act): Act => {
  const { place, item } = act.slots;
  const put = putWhereTold(work, act);
  if (put) return put;
  if (boughtFromList(work, act)) return { intent: 'buy-got', slots: act.slots };
  // "We're out of coffee too": there is none on record to finish.
  if (act.intent === 'finish' && item?.words && goesOnWithList(work) && noneHere(work, item))
    return { intent: 'buy-add', slots: { item } };
  if (!goesOnWithList(work) || item?.words || place?.pointer !== 'same') return act;
  if (act.intent === 'count') return { intent: 'buy-read', slots: { asked: 'count' } };
  return act.intent === 'find' ? { intent: 'buy-read', slots: {} } : act;
};
