/** "No, the top shelf": the last thing done is done again with one part put right, as one change. */
import { emptyMention } from '../../understanding/intents.js';
import {
  DATE_KINDS,
  applyChange,
  changedSince,
  foodKey,
  invertChange,
  joinChanges,
  placeUnder,
} from '../../kitchen/index.js';
import type { Change, Id, Item, Kitchen, Op } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import type { Act, Mention, PlaceMention, Slots } from '../../understanding/intents.js';
import { say, assent } from '../handler.js';
import { findItems } from '../refer/items.js';
import { linesSaid, ofTheList } from '../shopping/said.js';
import { handlers } from '../table.js';
import type { Done, Picked } from '../state.js';
import { type Work, absorb, changesSoFar, runAct, saying, turnOf, withMemory, withState } from './work.js';

const minutesOpen = 10;

/** "It", of what was done: the one thing it was done to, whatever else was spoken of since. */
const pinned = (slots: Slots, changes: readonly Change[]): Slots => {
  if (slots.item && slots.item.words !== null) return slots;
  const ids = new Set(
    changes.flatMap(({ ops }) => ops.flatMap((op) => (op.kind === 'item' && op.before ? [op.id] : []))),
  );
  const [id, ...more] = ids;
  return id && more.length === 0 && slots.item?.pointer ? { ...slots, item: lastAdded([id]) } : slots;
};

/** "The twentieth", as which of the dates it was recorded. */
const asRecorded = (slots: Slots, changes: readonly Change[]): Slots => {
  const { when, ...others } = slots;
  if (when === undefined || slots.dates) return slots;
  const kinds = changes.flatMap(({ ops }) =>
    ops.flatMap((op) =>
      op.kind === 'item' && op.before && op.after
        ? DATE_KINDS.filter((kind) => op.before?.dates[kind] !== op.after?.dates[kind])
        : [],
    ),
  );
  const [kind, ...more] = new Set(kinds);
  return kind && more.length === 0 ? { ...others, dates: { [kind]: when } } : slots;
};

/** "No, the second shelf", of a batch on two: the share that was on such a place of the same cupboard. */
const sharesCorrected = (
  kitchen: Kitchen,
  shares: NonNullable<Slots['shares']>,
  place: PlaceMention,
): Slots['shares'] | null => {
  const called = [...kitchen.places.values()].filter(
    ({ name }) => place.words !== null && foodKey(name) === foodKey(place.words),
  );
  for (const { id } of [...called, ...place.candidates]) {
    const wanted = kitchen.places.get(id);
    const at = shares.findIndex((share) => {
      const was = kitchen.places.get(share.place.candidates[0]?.id ?? '');
      return was && wanted && was.kind === wanted.kind && was.parentId === wanted.parentId;
    });
    const share = shares[at];
    if (share) return shares.with(at, { ...share, place: { ...place, candidates: [{ id, fit: 1 }] } });
  }
  return null;
};

/** What the correction replaces, in terms of the act that was done. */
export const correctedSlots = (
  kitchen: Kitchen,
  was: Slots,
  said: Slots,
  other: Id | undefined,
): { slots: Slots; redo: (keyof Slots)[] } => {
  // Spelling one word of it settles that word: the rest is as said.
  const called = said.item?.words ?? said.words ?? null;
  const name = said.spelled && called?.includes(said.spelled) ? called : (said.spelled ?? null);
  if (name && was.item) {
    return { slots: { ...was, item: { ...was.item, words: name, candidates: [] } }, redo: ['item'] };
  }
  const { item, number, not, asked: _asked, person, ...others } = said;
  // "Make it twelve", of a timer for ten minutes.
  const units = number ?? (said.amount?.unit === 'piece' ? said.amount.value : undefined);
  if (was.duration !== undefined && units !== undefined && said.duration === undefined && !was.amount)
    return {
      slots: { ...was, duration: units * (was.duration % 3600 === 0 ? 3600 : 60) },
      redo: ['duration'],
    };
  // "Make it six", of a reminder at five.
  if (was.when !== undefined && was.duration === undefined && units !== undefined && units < 24 && !was.item)
    return { slots: { ...was, time: `${String(units).padStart(2, '0')}:00` }, redo: ['time'] };
  // "Just the one", of tubs taken: one tub.
  const figure = number ?? (said.amount?.unit === 'piece' ? said.amount.value : undefined);
  const whole = figure !== undefined && Number.isInteger(figure);
  const one = whole && was.amount ? { amount: { ...was.amount, value: figure } } : null;
  const rest: Slots = one ? { ...others, ...one } : number === undefined ? others : { ...others, number };
  if (rest.place && was.shares) {
    const shares = sharesCorrected(kitchen, was.shares, rest.place);
    if (shares) return { slots: { ...was, shares }, redo: ['shares'] };
  }
  // "It was the right bin", of what was frozen in the left one.
  if (rest.place && !was.place && was.item?.at && !item) {
    const { place, ...others } = rest;
    return { slots: { ...was, ...others, item: { ...was.item, at: place } }, redo: ['item'] };
  }
  // "No, the twenty-first", of a use-by: that date, and no other.
  const [dated, ...otherDates] = Object.keys(was.dates ?? {});
  if (said.when !== undefined && !item && dated && otherDates.length === 0 && was.when === undefined)
    return { slots: { ...was, dates: { [dated]: said.when } }, redo: ['dates'] };
  // "Not Sam, Junie": who made it, unless it was told whose it is.
  const who: Slots = person ? (was.person && !was.maker ? { person } : { maker: person.words }) : {};
  const slots: Slots = { ...was, ...rest, ...who };
  if (item?.pointer === 'other' && other && was.item) {
    const candidates = [{ id: other, fit: 1 }];
    return { slots: { ...slots, item: { ...was.item, pointer: null, candidates } }, redo: ['item'] };
  }
  if (item)
    return {
      slots: { ...slots, item: { ...was.item, ...renamed(was.item, item, not) } },
      redo: ['item', ...(Object.keys({ ...rest, ...who }) as (keyof Slots)[])],
    };
  return { slots, redo: Object.keys({ ...rest, ...who }) as (keyof Slots)[] };
};

/** "Peach, not apricot", of the apricot jam: the jam's kind is another, and it is jam. */
const renamed = (was: Mention | undefined, item: Mention, not: Mention | undefined): Mention => {
  const [name, wrong, right] = [was?.words ?? '', not?.words ?? '', item.words ?? ''];
  if (!wrong || !right || name === wrong || right.split(' ').length > 1) return item;
  const words = ` ${name} `.replace(` ${wrong} `, ` ${right} `).trim();
  return words === name ? item : { ...item, words, candidates: [] };
};

/** What was just recorded, be it one thing or several. */
export const lastAdded = (ids: readonly Id[]): Mention => ({
  ...emptyMention,
  candidates: ids.map((id) => ({ id, fit: 1 })),
  pointer: 'them',
});

const createdIds = (changes: readonly Change[]): Id[] =>
  changes.flatMap(({ ops }) => ops.filter(({ before }) => before === null).map(({ id }) => id));

/** So many turns later, at most, what was done may still be put right in passing. */
const turnsBetween = 2;
const onlyAPlace = ({ slots }: Act): boolean => Object.keys(slots).join() === 'place';

const placePut = (changes: readonly Change[]): Id | null =>
  changes
    .flatMap(({ ops }) => ops.flatMap((op) => (op.kind === 'item' && op.after ? [op.after.placeId] : [])))
    .at(-1) ?? null;

/** "No, the cheddar went on the door", when the eggs came last: that is a move of the cheddar. */
const otherItem = (work: Work, act: Act, changes: readonly Change[]): Work | null => {
  const { item, place } = act.slots;
  if (!item || !place || item.pointer || act.slots.spelled) return null;
  const { items } = findItems(turnOf(work), item);
  const changed = new Set(changes.flatMap(({ ops }) => ops.map(({ id }) => id)));
  const named = items.filter(({ id }) => !changed.has(id));
  if (items.length === 0 || named.length !== items.length) return null;
  const settled = { picked: named.length === 1 ? { item: [named[0]!.id] } : {}, sure: false };
  return runAct(work, { intent: 'move', slots: act.slots }, settled);
};

/** What was put away in one breath, where that were several foods told one by one. */
const severalMade = ({ kitchen }: Work, { act, changes }: Done): readonly Item[] => {
  const made = [...new Set(createdIds(changes))].flatMap((id) => kitchen.items.get(id) ?? []);
  const names = new Set(made.map(({ name }) => foodKey(name)));
  return names.size > 1 && (act.slots.items?.length ?? 0) < names.size ? made : [];
};

/** The one food of them that is meant: by name, by part of its name; else what came last. */
const oneMeant = (made: readonly Item[], { item }: Slots): readonly Item[] => {
  const said = item?.words ? foodKey(item.words) : null;
  const heard = new Set(item?.candidates.map(({ id }) => id));
  const last = foodKey(made.at(-1)!.name);
  return (
    [
      made.filter(({ name }) => foodKey(name) === said),
      made.filter(({ id }) => heard.has(id)),
      made.filter(({ name }) => said?.split(' ').every((word) => foodKey(name).split(' ').includes(word))),
    ].find((some) => some.length > 0) ?? made.filter(({ name }) => foodKey(name) === last)
  );
};
/** Its own part of what was done, as if it had been told alone. */
const partDone = (done: Done, items: readonly Item[]): Done => {
  const [first] = items;
  const ids = new Set(items.map(({ id }) => id));
  const { name, placeId, dates, maker, contains } = first!;
  return {
    ...done,
    picked: {},
    changes: done.changes
      .map((change) => ({ ...change, ops: change.ops.filter(({ id }) => ids.has(id)) }))
      .filter(({ ops }) => ops.length > 0),
    act: {
      intent: 'put-away',
      slots: {
        item: { ...emptyMention, words: name },
        ...(first!.amount ? { amount: { ...first!.amount, value: first!.amount.value * items.length } } : {}),
        ...(placeId
          ? {
              place: { words: null, candidates: [{ id: placeId, fit: 1 }], pointer: null, spot: first!.spot },
            }
          : {}),
        ...(Object.keys(dates).length > 0
          ? { dates: Object.fromEntries(Object.entries(dates).map(([kind, day]) => [kind, { day }])) }
          : {}),
        ...(maker ? { maker } : {}),
        ...(contains.length > 0 ? { allergens: contains } : {}),
      },
    },
  };
};

/**
 * "No, eight eggs", after four foods of one breath: the eggs, and the other three stay as they are. "No, the
 * second shelf" is of all of them.
 */
const oneOfSeveral = (work: Work, act: Act, said: readonly Say[]): Work | null => {
  const { done } = work.state;
  const made = done ? severalMade(work, done) : [];
  if (!done || made.length === 0) return null;
  if (onlyAPlace(act)) {
    const ids = made.map(({ id }) => id);
    return runAct(
      saying(work, ...said),
      { intent: 'move', slots: act.slots },
      { picked: { item: ids }, sure: true },
    );
  }
  const meant = oneMeant(made, act.slots);
  const { item, ...others } = act.slots;
  const place = others.place ?? item?.at ?? undefined;
  const slots: Slots = { ...others, ...(place ? { place } : {}) };
  const named = item?.words && foodKey(meant[0]!.name).includes(foodKey(item.words));
  const alone = withState(work, { done: partDone(done, meant) });
  const put = correctLast(alone, named ? { ...act, slots } : act, said);
  // Which part is put right cannot be told: the others are left alone all the same.
  if (!put) return saying(work, assent('nothing-to-correct'));
  // What comes next may put right another of them.
  return put.state.done && put.state.done !== done
    ? withState(put, {
        done: { ...put.state.done, act: done.act, changes: [...done.changes, ...put.state.done.changes] },
      })
    : put;
};

/** "The pantry one", of a top shelf that might have been hers: the one that was meant by the same words. */
const narrowed = ({ kitchen }: Work, { slots }: Act, was: PlaceMention | undefined): Act | null => {
  const [whole] = slots.place?.candidates ?? [];
  const meant = (was?.candidates ?? []).find(
    ({ id }) => whole && id !== whole.id && placeUnder(kitchen, id, whole.id),
  );
  return whole && meant && slots.place
    ? {
        intent: 'correct',
        slots: { ...slots, place: { ...slots.place, words: was!.words, candidates: [meant] } },
      }
    : null;
};

/** "The fridge, same shelf though": the part of the new place that is called as the part before was. */
const samePart = (kitchen: Kitchen, act: Act, changes: readonly Change[]): Act => {
  const { place, asked } = act.slots;
  const [best] = place?.candidates ?? [];
  const before = kitchen.places.get(placePut(changes) ?? '');
  if (asked !== 'same-part' || !place || !best || !before) return act;
  const there = [...kitchen.places.values()].find(
    ({ name, parentId }) => parentId === best.id && foodKey(name) === foodKey(before.name),
  );
  if (!there) return act;
  const named = { ...place, words: there.name, candidates: [{ id: there.id, fit: 1 }] };
  return { ...act, slots: { ...act.slots, place: named } };
};

/** "Make that six lemons", "not parsley, kale", while the list is talked of. */
const onTheList = (work: Work, { slots: { item, amount, not } }: Act): Work | null => {
  if (!item || !ofTheList(turnOf(work))) return null;
  const lines = linesSaid(turnOf(work), { item: not ?? item }).lines;
  if (lines.length === 0 || (!not && !amount)) return null;
  if (!not || amount)
    return runAct(work, {
      intent: 'buy-add',
      slots: { item, ...(amount ? { amount } : {}), asked: 'amount' },
    });
  return runAct(runAct(work, { intent: 'buy-remove', slots: { item: not } }), {
    intent: 'buy-add',
    slots: { item },
  });
};

/** "No, the milk went on the door", after the recap of what was put away: that milk is moved. */
const amongTold = (work: Work, act: Act): Work | null => {
  const { item, place } = act.slots;
  if (!item || !place || item.pointer) return null;
  const told = findItems(turnOf(work), item).items.filter(({ id }) => work.state.memory.items.includes(id));
  const [first] = told;
  return first && told.length === 1
    ? runAct(work, { intent: 'move', slots: { place } }, { picked: { item: [first.id] }, sure: false })
    : null;
};

/** "Sam's one", right after another of that name was used up: that was meant, and not the first. */
export const otherOfName = (work: Work, { slots: { item } }: Act): Work | null => {
  const { done, turns } = work.state;
  const was = done?.act.slots.item;
  if (!item || item.words !== null || item.pointer || !was?.words || done?.turn !== turns - 1) return null;
  if (createdIds(done.changes).length > 0) return null;
  const { touch, maker, diet, at } = item;
  const meant = findItems(turnOf(work), { ...was, candidates: was.candidates, touch, maker, diet, at }).items;
  const changed = new Set(done.changes.flatMap(({ ops }) => ops.map(({ id }) => id)));
  const [one, ...more] = meant.filter(({ id }) => !changed.has(id));
  return one && more.length === 0
    ? correctLast(work, {
        intent: 'correct',
        slots: { item: { ...was, candidates: [{ id: one.id, fit: 1 }] } },
      })
    : null;
};

/** "Where is the milk?" "No, I meant the oat milk": what was asked, or tried in vain, is asked again put right. */
const correctAsked = (work: Work, act: Act): Work | null => {
  const asked = work.state.told?.act;
  if (!asked || asked.intent === 'correct' || asked.intent === 'undo') return null;
  const { slots, redo } = correctedSlots(work.kitchen, asked.slots, act.slots, undefined);
  const fits = redo.length > 0 && redo.every((slot) => slot in asked.slots);
  return fits ? runAct(work, { intent: asked.intent, slots }) : null;
};

/**
 * Runs the correction; null when there is nothing it could be a correction of. It corrects what was
 * last talked of: something done earlier is left alone. `said` comes before what is read back, where
 * something was put right: of what stayed as it was, nobody says so.
 */
export const correctLast = (work: Work, act: Act, said: readonly Say[] = [say('put-right')]): Work | null => {
  const put = corrected(work, act, said);
  if (!put || changesSoFar(put) !== changesSoFar(work) || put.lookUp) return put;
  const added = put.parts.slice(work.parts.length).filter((part) => !said.includes(part));
  if (put.asking) return { ...put, parts: [...work.parts, ...added] };
  // Read back as it was before: whatever was to be put right was not heard.
  const known = put.changes.length === work.changes.length && added.some(({ tells }) => tells === 'record');
  return {
    ...put,
    parts: [...work.parts, ...(known || added.length === 0 ? [assent('told-nothing-new')] : added)],
  };
};
const corrected = (work: Work, act: Act, said: readonly Say[]): Work | null => {
  const { done, told, session } = work.state;
  const earlier = told?.turn !== undefined && (done?.turn ?? -1) < told.turn;
  if (earlier && !session) {
    const elsewhere = done ? otherItem(work, act, done.changes) : null;
    const asked = onTheList(work, act) ?? amongTold(work, act) ?? correctAsked(work, act) ?? elsewhere;
    // A question in between ("what did I just do") does not put what was done out of reach.
    if (asked || !onlyAPlace(act) || work.state.turns - (done?.turn ?? -9) > turnsBetween) return asked;
  }
  if (!done) return onTheList(work, act);
  const age = (Date.parse(work.around.clock.now) - Date.parse(done.at)) / 60_000;
  const [first, ...rest] = done.changes;
  if (age > minutesOpen || !first) return null;
  const whole = joinChanges(first, ...rest);
  if (changedSince(work.kitchen, whole).length > 0) {
    return saying(work, say('changed-since'));
  }
  const elsewhere = otherItem(work, act, done.changes) ?? oneOfSeveral(work, act, said);
  if (elsewhere) return elsewhere;
  const other = work.state.memory.offered.find((id) => !work.state.memory.items.includes(id));
  const { slots, redo } = correctedSlots(
    work.kitchen,
    asRecorded(pinned(done.act.slots, done.changes), done.changes),
    (narrowed(work, act, done.act.slots.place) ?? samePart(work.kitchen, act, done.changes)).slots,
    other,
  );
  if (redo.length === 0) return null;
  const picked: Picked = Object.fromEntries(
    Object.entries(done.picked).filter(
      ([slot]) =>
        !redo.includes(slot as keyof Slots) && !(slot.startsWith('share-') && redo.includes('shares')),
    ),
  );
  const back: Change = { verb: first.verb, about: first.about, ops: invertChange(whole) };
  const kitchen = applyChange(work.kitchen, back);
  // The same records come back under the same ids, so that markers and batches hold.
  const ids = createdIds(done.changes);
  const newId = (): Id => ids.shift() ?? work.around.newId();
  // "No, the middle basket": of the cupboard it was put in, not of the one it came from.
  const put = placePut(done.changes);
  const was: Work = withMemory({ ...work, kitchen }, put ? { placeId: put } : {});
  const settled = { picked, sure: true };
  const redoneAct: Act = { intent: done.act.intent, slots };
  const reply = handlers[redoneAct.intent](redoneAct, { ...turnOf(was, settled), newId });
  const [newFirst, ...newRest] = reply.changes ?? [];
  // Which freezer, has to be asked: what was put away stays, and is moved when that is known.
  if (!newFirst && reply.ask && createdIds(done.changes).length > 0 && act.slots.place)
    return runAct(work, {
      intent: 'move',
      slots: { item: lastAdded(work.state.memory.lastAdded), place: act.slots.place },
    });
  // "No, not cream, coconut milk", of what is in a dish: what else was told with it is never taken back for that.
  if (!newFirst && !reply.ask && done.act.intent === 'tell') return null;
  // "It was shallots", and none are on record: what was done to the onions was not.
  if (!newFirst && !reply.ask && act.slots.item && createdIds(done.changes).length === 0)
    return saying(runAct(work, { intent: 'undo', slots: {} }), ...reply.parts);
  if (!newFirst) return absorb(work, redoneAct, settled, reply);
  const again = joinChanges(back, newFirst, ...newRest);
  const ops = again.ops.filter((op: Op) => JSON.stringify(op.before) !== JSON.stringify(op.after));
  const change: Change = { verb: newFirst.verb, about: newFirst.about, ops };
  const redone = absorb({ ...work, act: redoneAct }, redoneAct, settled, {
    ...reply,
    parts: [...said, ...reply.parts],
    changes: ops.length > 0 ? [change] : [],
  });
  const now = redone.state.done;
  // Put right once more, it starts again from before any of it was done.
  return ops.length > 0 && now
    ? withState(redone, { done: { ...now, changes: [joinChanges(whole, change)] } })
    : redone;
};
