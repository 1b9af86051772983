/** A bare place, amount or date, when nothing was asked: a detail of what was just put away or told. */
import { type Act, type Intent, itMention } from '../../understanding/intents.js';
import { correctLast, lastAdded } from './correct.js';
import { type Work, runAct, tryAct } from './work.js';

/** After these, a date by itself is one of the thing they were about. */
const aboutDates: ReadonlySet<Intent> = new Set<Intent>([
  'put-away',
  'amend',
  'item-date',
  'how-old',
  'no-date',
  'keeps',
  'open',
  'freeze',
]);

const doneJustNow = ({ state: { done, turns } }: Work, ...deeds: readonly Intent[]): boolean =>
  done?.turn !== undefined && deeds.includes(done.act.intent) && turns - done.turn <= 1;

/** What was set just now may still be told another day, hour or length. */
export const setJustNow = (work: Work): boolean => doneJustNow(work, 'set-reminder', 'set-timer');

const putAwayJustNow = (work: Work): boolean => doneJustNow(work, 'put-away');

/** Whether such a detail may come next. Asked when the turn is over, so that it can be listened for. */
export const awaitsDetail = (work: Work): boolean => {
  const { items } = work.state.memory;
  if (work.act && aboutDates.has(work.act.intent) && items.length > 0) return true;
  return putAwayJustNow(work);
};

/** "I used some of it." "One stick.": how much it was, and not how much there is. Null where it was told already. */
const howMuchWasTaken = (work: Work, { slots: { statements = [] } }: Act): Work | null => {
  const taken = work.state.done?.act.slots;
  const [only, ...more] = statements;
  if (!taken || !only || more.length > 0 || !doneJustNow(work, 'take')) return null;
  if (taken.amount ?? taken.left) return null;
  const {
    deed,
    thing,
    amount,
    definite: _definite,
    fresh,
    corrects: _corrects,
    stands: _stands,
    ...rest
  } = only;
  const names = thing?.words ? thing.candidates.map(({ id }) => id) : work.state.memory.items;
  const same = work.state.memory.items.some((id) => names.includes(id));
  if (!amount || fresh || !same || Object.keys(rest).length > 0) return null;
  if (deed !== 'fact' && deed !== 'stored') return null;
  return correctLast(work, { intent: 'correct', slots: { amount } }, []);
};

/** The detail recorded; null when it is about nothing. */
export const detailOf = (work: Work, { intent, slots }: Act): Work | null => {
  if (intent === 'tell') return howMuchWasTaken(work, { intent, slots });
  if (intent !== 'answer' && intent !== 'choose') return null;
  const { item, items, when } = slots;
  const named = items ?? item?.words ?? item?.touch ?? item?.pointer ?? item?.ordinal ?? slots.marker;
  if (named) return null;
  if (setJustNow(work)) {
    const { time, duration, number } = slots;
    const anew = { when, time, duration, number };
    const said = Object.fromEntries(Object.entries(anew).filter(([, value]) => value !== undefined));
    return Object.keys(said).length > 0 ? correctLast(work, { intent: 'correct', slots: said }) : null;
  }
  const place = slots.place ?? item?.at ?? undefined;
  if (place && putAwayJustNow(work)) {
    const put = correctLast(work, { intent: 'correct', slots: { place } }, []);
    // "It is on the bottom shelf and contains milk": what else was told of it is kept as well.
    const { allergens, dates, maker, free } = slots;
    const facts = { allergens, dates, maker, free };
    const told = Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined));
    return put && Object.keys(told).length > 0
      ? runAct(put, { intent: 'amend', slots: { item: itMention, ...told } })
      : put;
  }
  // "Six tubs", after a pot of soup.
  if (slots.amount && !when && putAwayJustNow(work))
    return correctLast(work, { intent: 'correct', slots: { amount: slots.amount } }, []);
  if (!when || place) return null;
  const added = work.state.memory.lastAdded;
  const those = putAwayJustNow(work) && added.length > 1 ? { item: lastAdded(added) } : {};
  const told: Act = { intent: 'amend', slots: { when, ...those } };
  const { ask } = tryAct(work, told);
  return ask?.slot === 'item' ? null : runAct(work, told);
};
