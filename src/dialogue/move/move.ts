/** Where food is and what state it is in: moved, opened, frozen, thawing, out, back, divided, put together. */
import {
  amend as amendChange,
  freeze as freezeChange,
  isRefreeze,
  isFrozen,
  isRefused,
  itemsAt,
  applyChange,
  merge as mergeChange,
  move as moveChange,
  open as openChange,
  putBack as putBackChange,
  reheated as reheatedChange,
  split as splitChange,
  storagesOf,
  thaw as thawChange,
  storageOf,
} from '../../kitchen/index.js';
import type { Change, Id, Item } from '../../kitchen/model.js';
import type { Say, Value } from '../../speech/answer.js';
import type { PlainDate } from '../../terms/dates.js';
import { emptyMention, type Act, type SaidDate, type Slots } from '../../understanding/intents.js';
import { assessIn, mayRefreeze } from '../../safety/index.js';
import { placeAt, placeNoun } from '../describe/place.js';
import { sourcesOf } from '../describe/guidance.js';
import { refusal, withChange } from '../describe/refusals.js';
import { type Handler, type Reply, type Turn, about, day, list, say, todayOf } from '../handler.js';
import { offerOf } from '../places/new-place.js';
import { bringBack } from '../history/bring-back.js';
import { own, undo } from '../history/history.js';
import { findItems } from '../refer/items.js';
import { itJustGone } from '../refer/none-left.js';
import { needItem, needItems, needPlace } from '../refer/need.js';
import { fromWhich } from '../use/use.js';

const saidDay = (said: SaidDate | 'unknown' | undefined): PlainDate | undefined =>
  said && said !== 'unknown' ? said.day : undefined;

const nameOf = (items: readonly Item[]): Value =>
  items.length === 1 ? items[0]!.name : list([...new Set(items.map(({ name }) => name))]);

/** One change for each of several things; the first refusal is told. */
const each = (
  turn: Turn,
  items: readonly Item[],
  make: (turn: Turn, item: Item) => ReturnType<typeof moveChange>,
): { changes: Change[] } | { reply: Reply } => {
  const changes: Change[] = [];
  let kitchen = turn.kitchen;
  for (const item of items) {
    const result = make({ ...turn, kitchen }, item);
    if (isRefused(result)) return { reply: refusal(turn, result) };
    changes.push(result);
    kitchen = applyChange(kitchen, result);
  }
  return { changes };
};

/** The items of "the rice and the black beans", or of one mention. */
const itemsOf = (turn: Turn, slots: Slots, question: Say): { got: readonly Item[] } | { reply: Reply } => {
  if (slots.negated) return allBut(turn, slots, question);
  const mentions = slots.items && slots.items.length > 1 ? slots.items : [slots.item ?? slots.items?.[0]];
  const got: Item[] = [];
  for (const [at, mention] of mentions.entries()) {
    const slot = mentions.length > 1 ? `item-${at}` : 'item';
    const found = needItems(turn, mention, {
      slot,
      question,
      several: true,
      anyOfBatch: slots.amount !== undefined,
    });
    if ('reply' in found) return found;
    got.push(...found.got);
  }
  return { got };
};

/** "All of it except the garlic": what was meant by all, less what is named. */
const allBut = (
  turn: Turn,
  { item, items = [] }: Slots,
  question: Say,
): { got: readonly Item[] } | { reply: Reply } => {
  const all = needItems(turn, item, { slot: 'item', question, several: true });
  if ('reply' in all) return all;
  const kept = items.flatMap((one) => findItems(turn, one).items.map(({ id }) => id));
  const left = all.got.filter(({ id }) => !kept.includes(id));
  return left.length > 0 ? { got: left } : { reply: { parts: [say('all-kept')] } };
};

/** Those that guidance says to throw out: freezing them does not make them good again. */
const pastGuidance = (turn: Turn, items: readonly Item[]): readonly Item[] =>
  items.filter(
    (item) => !isFrozen(turn, item) && assessIn(turn.kitchen, item, turn.clock).verdict === 'throw-out',
  );

/** Frozen, it would look like good food for months: the warning comes before the question. */
const freezePast = (turn: Turn, items: readonly Item[]): { warning: Say; confirm: Say } | null => {
  const past = pastGuidance(turn, items);
  if (past.length === 0) return null;
  const name = nameOf(past);
  const several = past.length > 1 ? 'yes' : 'no';
  return {
    warning: say('freeze-past-warning', { name, several }),
    confirm: say('confirm-freeze-past', { name, several }),
  };
};

/** "Two of them", "two tubs": so many whole containers, when they hold just that. Else part of one. */
const wholeOnes = (turn: Turn, items: readonly Item[], amount: Slots['amount']): readonly Item[] | null => {
  if (!amount || !Number.isInteger(amount.value)) return null;
  const [first] = items;
  if (!first) return null;
  if (items.length > 1 && amount.unit === 'piece' && amount.value <= items.length)
    return items.slice(0, amount.value);
  const some = first.batchId ? fromWhich(turn, first, amount.value, amount.unit) : [];
  const held = some.reduce((sum, one) => sum + (one.amount?.value ?? 1), 0);
  return some.length > 0 && held === amount.value ? some : null;
};

/** "Everything from the meat drawer": where it is now says which is meant. */
const fromThere = ({ from, item, ...slots }: Slots): Slots => ({
  ...slots,
  ...(item ? { item: from && item.at === null ? { ...item, at: from } : item } : {}),
  ...(from ? { from } : {}),
});

/** "Swap over what's in the two drawers": what is in each goes to the other. */
const swapPlaces = ({ slots }: Act, turn: Turn): Reply => {
  const two = slots.from ? null : (slots.place?.candidates ?? []).map(({ id }) => id);
  const ids: Id[] = [];
  if (two) ids.push(...two);
  else
    for (const [slot, mention] of [
      ['from', slots.from],
      ['place', slots.place],
    ] as const) {
      const found = needPlace(turn, mention, { slot, question: say('ask-move-where', { name: '' }) });
      if ('reply' in found) return found.reply;
      ids.push(found.got.place.id);
    }
  const [one, other] = ids as [Id, Id];
  const held = { one: itemsAt(turn.kitchen, one), other: itemsAt(turn.kitchen, other) };
  if (one === other || held.one.length + held.other.length === 0)
    return { parts: [say('nothing-to-swap')], memory: { placeId: one } };
  const goes = new Map([
    ...held.one.map(({ id }) => [id, other] as const),
    ...held.other.map(({ id }) => [id, one] as const),
  ]);
  const items = [...held.one, ...held.other];
  const made = each(turn, items, (now, item) =>
    moveChange(now, item.id, { placeId: goes.get(item.id)!, spot: null }),
  );
  if ('reply' in made) return made.reply;
  const told = ([some, to]: readonly [readonly Item[], Id]): Say[] =>
    some.length > 0 ? [say('moved', { name: nameOf(some), at: placeAt(turn.kitchen, to) })] : [];
  return {
    parts: [...told([held.one, other]), ...told([held.other, one])],
    changes: made.changes,
    memory: { ...about(turn, items), placeId: one },
    names: items.map(({ name }) => name),
  };
};

/** "Two tubs of the dal", of a lot of seven and a single old one: of the lot that holds so many; else which is asked. */
const lotsHolding = (turn: Turn, items: readonly Item[], { amount }: Slots): readonly Item[] => {
  if (!amount || items.length < 2 || wholeOnes(turn, items, amount)) return items;
  const holding = items.filter(
    (item) =>
      item.amount !== null &&
      item.amount.value >= amount.value &&
      (amount.unit === 'piece' || item.amount.unit === amount.unit),
  );
  return holding.length > 0 ? holding : items;
};

export const move: Handler = (act, turn) => {
  if (act.slots.asked === 'swap') return swapPlaces(act, turn);
  const slots = fromThere(act.slots);
  const all = itemsOf(turn, slots, say('ask-move-what'));
  if ('reply' in all) return all.reply;
  const lots = lotsHolding(turn, all.got, slots);
  // So much of several lots would be all of each: which of them is meant is asked.
  const several = slots.amount !== undefined && lots.length > 1 && !wholeOnes(turn, lots, slots.amount);
  const mention = {
    ...emptyMention,
    words: lots[0]!.name,
    candidates: lots.map(({ id }) => ({ id, fit: 1 })),
  };
  const found = several
    ? needItems(turn, mention, { slot: 'item', question: say('ask-move-what') })
    : { got: lots };
  if ('reply' in found) return found.reply;
  const whole = wholeOnes(turn, found.got, slots.amount);
  const items = whole ?? found.got;
  const name = nameOf(items);
  const place = needPlace(turn, slots.place, {
    question: say('ask-move-where', { name }),
    nearId: items[0]!.placeId,
    offers: offerOf(turn),
  });
  if ('reply' in place) return { ...place.reply, memory: about(turn, found.got) };
  const to = { placeId: place.got.place.id, spot: place.got.spot };
  const amount = slots.amount && !whole && items.length === 1 ? { amount: slots.amount } : {};
  const made = each(turn, items, (now, item) => moveChange(now, item.id, { ...to, ...amount }));
  if ('reply' in made) return made.reply;
  const after = made.changes.reduce(applyChange, turn.kitchen);
  const first = after.items.get(items[0]!.id)!;
  const refrozen = isFrozen({ kitchen: after }, first) && isRefreeze(turn, items[0]!);
  const freezing = isFrozen({ kitchen: after }, first) && !isFrozen(turn, items[0]!);
  const past = freezing ? freezePast(turn, items) : null;
  const at = placeAt(turn.kitchen, to.placeId, to.spot);
  const said: Value | null =
    slots.amount && (whole || items[0]!.amount)
      ? { kind: 'amount', amount: whole ? inContainers(items) : named(slots.amount, items[0]!) }
      : null;
  return {
    parts: [
      said ? say('moved-some', { amount: said, name, at }) : say('moved', { name, at }),
      ...(refrozen ? [say('refreeze-caution', { name })] : []),
    ],
    changes: made.changes,
    ...(past ? { confirm: past.confirm } : {}),
    doubt: say('confirm-move', { name, at }),
    memory: { ...about(turn, items, found.got), placeId: to.placeId },
    names: items.map((item) => item.name),
  };
};

const inContainers = (items: readonly Item[]): { value: number; unit: string } => {
  const [first] = items;
  const each = first?.amount;
  return each && items.every(({ amount }) => amount?.value === 1 && amount.unit === each.unit)
    ? { value: items.length, unit: each.unit }
    : { value: items.length, unit: first?.touch.container ?? 'container' };
};

/** "Two" of something kept in tubs is two tubs. */
const named = (amount: { value: number; unit: string }, item: Item): { value: number; unit: string } =>
  amount.unit === 'piece' && item.amount ? { ...amount, unit: item.amount.unit } : amount;

export const open: Handler = (act, turn) => {
  const found = needItem(turn, act.slots.item, {
    question: say('ask-opened'),
    fitting: ({ dates }) => !dates.opened,
  });
  if ('reply' in found) return found.reply;
  const said = act.slots.dates?.opened ?? act.slots.when;
  const when = saidDay(said);
  const { name, id, dates } = found.got;
  // "The milk is open": since when is known, or nobody said.
  if (said === 'unknown' && dates.opened)
    return {
      parts: [
        say('known-already', {
          name,
          facts: say('read-back-date', { what: 'opened', date: day(dates.opened) }),
        }),
      ],
      memory: about(turn, [found.got]),
    };
  if (said === 'unknown')
    return withChange(turn, amendChange(turn, id, { dates: { opened: null } }), (change) => ({
      parts: [say('amended', { name, facts: say('read-back-open') })],
      changes: [change],
      memory: about(turn, [found.got]),
    }));
  return withChange(turn, openChange(turn, id, when), (change) => ({
    parts: [say('opened', { name, date: day(when ?? todayOf(turn)) })],
    changes: [change],
    doubt: say('confirm-opened', { name }),
    memory: about(turn, [found.got]),
  }));
};

/** "Freeze the chicken in the upright freezer": where to, not which chicken. */
const destined = (slots: Slots): Slots =>
  slots.item?.at && !slots.place
    ? { ...slots, place: slots.item.at, item: { ...slots.item, at: null } }
    : slots;

const isNew = ({ parts, ask }: Reply, { item, place, amount }: Slots): boolean =>
  ask === undefined &&
  parts.some(({ tells }) => tells === 'not-found') &&
  item?.words !== undefined &&
  item.words !== null &&
  place !== undefined &&
  amount !== undefined;

const frozenNew = (turn: Turn, slots: Slots): Act => ({
  intent: 'put-away',
  slots: {
    ...slots,
    dates: { ...slots.dates, frozen: slots.dates?.frozen ?? slots.when ?? { day: todayOf(turn) } },
  },
});

export const freeze: Handler = (act, turn) => {
  const slots = destined(act.slots);
  const found = itemsOf(turn, slots, say('ask-freeze'));
  // "I froze six portions of stew in the left bin", of a stew nobody told of: that is how it came in.
  if ('reply' in found && isNew(found.reply, slots)) return { parts: [], next: frozenNew(turn, slots) };
  if ('reply' in found) return found.reply;
  const items = found.got;
  const name = nameOf(items);
  const past = freezePast(turn, items);
  const when = saidDay(slots.dates?.frozen ?? slots.when);
  const place =
    slots.place || turn.picked.place
      ? needPlace(turn, slots.place, { question: say('ask-which-freezer', { name }) })
      : null;
  if (place && 'reply' in place) return place.reply;
  const how = {
    ...(when ? { day: when } : {}),
    ...(place ? { placeId: place.got.place.id, spot: place.got.spot } : {}),
    ...(slots.amount && items.length === 1 ? { amount: slots.amount } : {}),
  };
  const changes: Change[] = [];
  let kitchen = turn.kitchen;
  for (const item of items) {
    const result = freezeChange({ ...turn, kitchen }, item.id, how);
    if (isRefused(result)) {
      if (result.refused !== 'which-freezer' || (result.ids ?? []).length === 0) return refusal(turn, result);
      const choices = (result.ids ?? []).map((id) => ({
        ids: [id],
        label: say('the-place', { place: placeNoun(turn.kitchen, id) }),
      }));
      const question = say('ask-which-freezer', {
        name,
        choices: list(
          choices.map(({ label }) => label),
          true,
        ),
      });
      return {
        parts: past ? [past.warning] : [],
        ask: { slot: 'place', question, expecting: 'place', choices },
        memory: about(turn, items),
      };
    }
    changes.push(result);
    kitchen = applyChange(kitchen, result);
  }
  const refrozen = items.some((item) => isRefreeze(turn, item));
  const after = kitchen.items.get(items[0]!.id)!;
  return {
    parts: [
      say('frozen', {
        name,
        at: placeAt(kitchen, after.placeId, after.spot),
        date: day(when ?? todayOf(turn)),
      }),
      ...(refrozen ? [say('refreeze-caution', { name })] : []),
    ],
    changes,
    ...(past ? { confirm: past.confirm } : {}),
    doubt: say('confirm-freeze', { name }),
    memory: about(turn, items),
  };
};

export const thaw: Handler = (act, turn) => {
  const { slots } = act;
  const fitting = (item: Item): boolean => isFrozen(turn, item);
  const found = needItem(turn, slots.item, { question: say('ask-thaw'), fitting, anyOfBatch: true });
  if ('reply' in found) return found.reply;
  const item = found.got;
  const when = saidDay(slots.dates?.thawed ?? slots.when);
  // "The third shelf" to thaw on is the fridge's.
  const nearId = storagesOf(turn.kitchen, 'fridge')[0]?.id ?? null;
  const need = { question: say('ask-thaw-where', { name: item.name }), nearId };
  // Where it thaws decides how long it keeps, so this is worth asking.
  const place = needPlace(turn, slots.place, need);
  if ('reply' in place) return { ...place.reply, memory: about(turn, [item]) };
  const { place: where, spot } = place.got;
  const how = {
    placeId: where.id,
    spot,
    ...(when ? { day: when } : {}),
    ...(slots.amount ? { amount: slots.amount } : {}),
  };
  const counter = where.kind === 'counter';
  return withChange(turn, thawChange(turn, item.id, how), (change) => ({
    parts: [
      say('thawing', { name: item.name, at: placeAt(turn.kitchen, where.id) }),
      ...(counter ? [say('thaw-counter-caution')] : []),
    ],
    changes: [change],
    doubt: say('confirm-thaw', { name: item.name }),
    memory: about(turn, [item]),
  }));
};

export const reheated: Handler = (act, turn) => {
  const found = needItem(turn, act.slots.item, { question: say('ask-reheated'), anyOfBatch: true });
  if ('reply' in found) return found.reply;
  const { name, id } = found.got;
  return withChange(turn, reheatedChange(turn, id), (change) => ({
    parts: [say('reheated', { name, times: found.got.timesReheated + 1 })],
    changes: [change],
    doubt: say('confirm-reheated', { name }),
    memory: about(turn, [found.got]),
  }));
};

export const putBack: Handler = (act, turn) => {
  // "Put it back", of what was thrown out a moment ago.
  if (!act.slots.place && itJustGone(turn, act.slots.item)) return undo({ intent: 'undo', slots: {} }, turn);
  const fitting = (item: Item): boolean => item.outSince !== null;
  const mention = act.slots.item;
  const out = mention ? findItems(turn, mention).items.some(fitting) : false;
  const back = mention?.words && !act.slots.place && !out ? bringBack(turn, own(turn), mention) : null;
  if (back) return back;
  const found = needItem(turn, mention, { question: say('ask-put-back'), fitting });
  if ('reply' in found) return found.reply;
  const item = found.got;
  const place = act.slots.place
    ? needPlace(turn, act.slots.place, { question: say('ask-move-where', { name: item.name }) })
    : null;
  if (place && 'reply' in place) return place.reply;
  const to = place ? { placeId: place.got.place.id, spot: place.got.spot } : {};
  return withChange(turn, putBackChange(turn, item.id, to), (change) => ({
    parts: [
      say('put-back', { name: item.name, at: placeAt(turn.kitchen, place?.got.place.id ?? item.placeId) }),
    ],
    changes: [change],
    doubt: say('confirm-put-back', { name: item.name }),
    memory: about(turn, [item]),
  }));
};

export const split: Handler = (act, turn) => {
  const { slots } = act;
  const found = needItem(turn, slots.item, { question: say('ask-split') });
  if ('reply' in found) return found.reply;
  const item = found.got;
  const memory = about(turn, [item]);
  if (slots.shares && slots.shares.length > 0) {
    const shares = [];
    for (const [at, share] of slots.shares.entries()) {
      const place = needPlace(turn, share.place, {
        slot: `share-${at}`,
        question: say('ask-place-share', { amount: { kind: 'amount', amount: share.amount } }),
      });
      if ('reply' in place) return place.reply;
      shares.push({ amount: share.amount, placeId: place.got.place.id, spot: place.got.spot });
    }
    return withChange(turn, splitChange(turn, item.id, shares), (change) => ({
      parts: [say('split', { name: item.name, count: shares.length + 1 })],
      changes: [change],
      memory: partsMemory(turn, change),
    }));
  }
  const into = slots.number ?? slots.amount?.value;
  if (into === undefined) {
    return {
      parts: [],
      ask: { slot: 'number', question: say('ask-split-into', { name: item.name }), expecting: 'amount' },
      memory,
    };
  }
  const unit =
    slots.amount && slots.amount.unit !== 'piece' ? slots.amount.unit : (item.touch.container ?? 'container');
  return withChange(turn, splitChange(turn, item.id, into), (change) => ({
    parts: [say('split-into', { name: item.name, parts: { kind: 'amount', amount: { value: into, unit } } })],
    changes: [change],
    doubt: say('confirm-split', { name: item.name }),
    memory: partsMemory(turn, change),
  }));
};

/** "Two of them": all the parts are what was spoken of. */
const partsMemory = (turn: Turn, change: Change): NonNullable<Reply['memory']> => {
  const parts = change.ops.flatMap((op) => (op.kind === 'item' && op.after ? [op.after] : []));
  return about({ ...turn, kitchen: applyChange(turn.kitchen, change) }, parts);
};

/** "The chilli in the fridge with the one in the freezer": the other is called as the first. */
const withTheOne = ({ slots: { item, items, ...rest } }: Act): { readonly slots: Slots } => {
  if (!item || !items || items.length === 0)
    return { slots: { ...rest, ...(item ? { item } : {}), ...(items ? { items } : {}) } };
  const { words, candidates } = item;
  const called = items.map((one) =>
    one.words === null && one.candidates.length === 0 && !one.pointer ? { ...one, words, candidates } : one,
  );
  return { slots: { ...rest, items: [item, ...called] } };
};

/** Frozen food and food that was not, put together: what guidance says of freezing it again. */
const mixedCaution = (
  turn: Turn,
  items: readonly Item[],
): { readonly say: Say; readonly sources: readonly Say[] } | null => {
  const frozen = items.filter(({ placeId }) => storageOf(turn.kitchen, placeId) === 'freezer');
  const [first] = items;
  if (!first || frozen.length === 0 || frozen.length === items.length) return null;
  const { may, source } = mayRefreeze({
    food: first.name,
    thawedIn: 'fridge',
    region: turn.kitchen.household.region,
    clock: turn.clock,
  });
  return {
    say: say('merged-frozen', { may }),
    sources: source ? sourcesOf([{ source }]) : [],
  };
};

export const merge: Handler = (act, turn) => {
  const { slots } = withTheOne(act);
  const mentions = slots.items && slots.items.length > 1 ? slots.items : null;
  const found = mentions
    ? itemsOf(turn, slots, say('ask-merge'))
    : needItems(turn, slots.item, { question: say('ask-merge'), several: true });
  if ('reply' in found) {
    // "Put the two soups together" names them all at once: the choice offered is the answer.
    const ids = found.reply.ask?.choices?.flatMap((choice) => choice.ids) ?? [];
    const two = ids.flatMap((id) => turn.kitchen.items.get(id) ?? []);
    return two.length === 2 ? mergeThem(turn, two) : found.reply;
  }
  return mergeThem(turn, found.got);
};

const mergeThem = (turn: Turn, items: readonly Item[]): Reply => {
  if (items.length < 2) return { parts: [say('merge-too-few')], memory: about(turn, items) };
  const result = mergeChange(
    turn,
    items.map(({ id }) => id),
    { anyway: turn.sure },
  );
  const [first] = items;
  const names = list([...new Set(items.map(({ name }) => name))]);
  if (isRefused(result)) {
    if (result.refused === 'different-foods')
      return { parts: [], confirm: say('confirm-merge-different', { names }) };
    return refusal(turn, result);
  }
  // Said with the question, before it is done.
  const mixed = mixedCaution(turn, items);
  return {
    parts: [
      say('merged', { name: first!.name, at: placeAt(turn.kitchen, first!.placeId) }),
      say('merged-oldest'),
    ],
    changes: [result],
    sources: mixed?.sources ?? [],
    confirm: say('confirm-merge', {
      name: first!.name,
      count: items.length,
      ...(mixed ? { caution: mixed.say } : {}),
    }),
    memory: about(turn, [first!]),
  };
};
