/** Using things up: some of it, or all of it. */
import {
  applyChange,
  batchOf,
  finish as finishChange,
  foodKey,
  isFrozen,
  isShare,
  livingItems,
  purchaseOf,
  setLeft,
  take as takeChange,
} from '../../kitchen/index.js';
import type { Change, Item, Marker } from '../../kitchen/model.js';
import type { Say, Value } from '../../speech/answer.js';
import type { Act, Mention } from '../../understanding/intents.js';
import { placeAt } from '../describe/place.js';
import { withChange } from '../describe/refusals.js';
import { markerNoun } from '../describe/touch.js';
import { nameOfGone, noneLeft } from '../refer/none-left.js';
import { type Handler, type Reply, type Turn, about, list, say } from '../handler.js';
import { needItem, needItems } from '../refer/need.js';
import { oldestFirst } from '../refer/tell-apart.js';

type How = NonNullable<Item['gone']>['how'];

const freedMarkers = (turn: Turn, changes: readonly Change[]): Marker[] =>
  changes.flatMap(({ ops }) =>
    ops.flatMap((op) => {
      const marker =
        op.kind === 'marker' && op.after?.lastItemId ? turn.kitchen.markers.get(op.id) : undefined;
      return marker ? [marker] : [];
    }),
  );

/** Foods worth offering to buy: bought ones, not leftovers somebody cooked. */
const buysAgain = (turn: Turn, item: Item, how: How): boolean => {
  const home = item.dates.made !== undefined || (item.maker !== null && item.dates.bought === undefined);
  const more = livingItems(turn.kitchen).some(
    (other) => other.id !== item.id && foodKey(other.name) === foodKey(item.name),
  );
  return !home && !more && how !== 'given away' && purchaseOf(turn.kitchen, item.name) === null;
};

const howPhrase: Readonly<Record<How, string>> = {
  used: 'finished',
  'thrown out': 'thrown-out',
  'given away': 'given-away',
};

const finishAll = (turn: Turn, items: readonly Item[], how: How): Reply => {
  const changes: Change[] = [];
  let kitchen = turn.kitchen;
  for (const item of items) {
    const result = finishChange({ ...turn, kitchen }, item.id, how);
    const reply = withChange(turn, result, (change) => ({ parts: [], changes: [change] }));
    if (!reply.changes) return reply;
    changes.push(...reply.changes);
    kitchen = reply.changes.reduce(applyChange, kitchen);
  }
  const names = list([...new Set(items.map(({ name }) => name))]);
  const first = items[0]!;
  const others = livingItems(kitchen).some(({ name }) => foodKey(name) === foodKey(items[0]!.name));
  const one = items.length === 1 && others ? items[0]!.amount : null;
  // Of several like tubs, it is told that one is gone.
  const name = one
    ? say('item-amount', { amount: { kind: 'amount', amount: one }, name: items[0]!.name })
    : names;
  const args = { name, count: items.length };
  if (items.length > 1 && !turn.sure) {
    return {
      parts: [],
      changes,
      confirm: say(`confirm-${howPhrase[how]}-all`, args),
      memory: about(turn, items),
    };
  }
  const freed = freedMarkers({ ...turn, kitchen: turn.kitchen }, changes);
  const left = livingItems(kitchen).filter(({ name }) => foodKey(name) === foodKey(first.name));
  const parts: Say[] = [
    say(`done-${howPhrase[how]}`, args),
    ...(freed.length > 0
      ? [
          say('marker-free', {
            markers: list(freed.map(markerNoun)),
            count: freed.length,
            ...(items.length > 1 ? { of: 'several' } : {}),
          }),
        ]
      : []),
    ...(left.length > 0 ? [leftWords(turn, left)] : []),
  ];
  const offer = items.length === 1 && buysAgain(turn, first, how);
  return {
    parts,
    changes,
    doubt: say(`confirm-${howPhrase[how]}`, {
      name: first.name,
      at: placeAt(turn.kitchen, first.placeId),
      count: items.length,
    }),
    memory: { ...about(turn, items), markerId: freed[0]?.id ?? turn.memory.markerId },
    names: items.map(({ name }) => name),
    ...(offer && turn.state.session?.kind !== 'count'
      ? {
          offer: {
            question: say('offer-buy', { name: first.name }),
            act: { intent: 'buy-add', slots: { words: first.name } },
          },
        }
      : {}),
  };
};

/** What is still there of the same food: asked next anyway. */
const leftWords = (turn: Turn, left: readonly Item[]): Say => {
  const unit = left[0]?.amount?.unit;
  const whole = unit !== undefined && left.every(({ amount }) => amount?.unit === unit);
  const value = left.reduce((sum, { amount }) => sum + (amount?.value ?? 0), 0);
  const amount: Value = whole ? { kind: 'amount', amount: { value, unit } } : left.length;
  const places = new Set(left.map(({ placeId }) => placeId));
  return places.size === 1
    ? say('still-left-at', { amount, at: placeAt(turn.kitchen, left[0]!.placeId) })
    : say('still-left', { amount });
};

export const finish: Handler = (act, turn) => {
  const how = act.slots.how ?? 'used';
  const mention = act.slots.item;
  const mentions = act.slots.items;
  if (mentions && mentions.length > 1) {
    const found = mentions.map((one, at) =>
      needItems(turn, one, { slot: `item-${at}`, question: say('ask-finish') }),
    );
    const open = found.flatMap((one) => ('reply' in one ? [one.reply] : []));
    const got = found.flatMap((one) => ('got' in one ? one.got : []));
    const asks = open.find(({ ask, confirm }) => ask ?? confirm);
    if (asks ?? got.length === 0) return asks ?? open[0]!;
    // "We're out of lettuce and eggs": those that are here, and that there were none of the others.
    const reply = finishAll(turn, got, how);
    return { ...reply, parts: [...open.flatMap(({ parts }) => parts), ...reply.parts] };
  }
  const gone = mention
    ? nameOfGone(
        turn,
        mention.candidates.map(({ id }) => id),
      )
    : null;
  const found = needItems(turn, mention, { question: say('ask-finish'), several: true, orIt: false });
  if ('reply' in found) {
    if (gone && !found.reply.ask) return noneLeft(turn, gone);
    return found.reply.ask || !mention?.words || how !== 'used'
      ? found.reply
      : outOf(turn, mention, found.reply);
  }
  return finishAll(turn, found.got, how);
};

/** "We're out of coffee", which was never recorded: something to buy all the same. */
const outOf = (turn: Turn, mention: Mention, reply: Reply): Reply => {
  const act: Act = { intent: 'buy-add', slots: { item: mention } };
  if (purchaseOf(turn.kitchen, mention.words ?? '') !== null)
    return { parts: [...reply.parts, say('it-is-on-the-list')] };
  return { ...reply, offer: { question: say('offer-buy', { name: mention.words ?? '' }), act } };
};

/** Enough of it in one container, else from several of the batch, oldest first. */
export const fromWhich = (turn: Turn, item: Item, wanted: number, unit: string): readonly Item[] => {
  const sibs = oldestFirst(batchOf(turn.kitchen, item).filter(({ placeId }) => placeId === item.placeId));
  const pool = [
    ...sibs,
    ...batchOf(turn.kitchen, item).filter(({ id }) => !sibs.some((sib) => sib.id === id)),
  ];
  const same = pool.filter(({ amount }) => amount?.unit === unit || unit === 'piece');
  const taken: Item[] = [];
  let sum = 0;
  for (const one of same) {
    if (sum >= wanted) break;
    taken.push(one);
    sum += one.amount?.value ?? 1;
  }
  return sum >= wanted ? taken : [];
};

const takenWords = (turn: Turn, item: Item, after: Item | undefined, amount: Value | null): Say => {
  const left: Value | null =
    after && !after.gone && after.amount ? { kind: 'amount', amount: after.amount } : null;
  return say('taken', { name: item.name, ...(amount ? { amount } : {}), ...(left ? { left } : {}) });
};

/** "Took two out", of a batch of tubs that each hold one. */
const takeSeveral = (turn: Turn, items: readonly Item[], amount: Value): Reply => {
  const changes: Change[] = [];
  let kitchen = turn.kitchen;
  for (const item of items) {
    const reply = withChange(turn, finishChange({ ...turn, kitchen }, item.id), (change) => ({
      parts: [],
      changes: [change],
    }));
    if (!reply.changes) return reply;
    changes.push(...reply.changes);
    kitchen = reply.changes.reduce(applyChange, kitchen);
  }
  const first = items[0]!;
  const left = livingItems(kitchen).filter(({ name }) => foodKey(name) === foodKey(first.name));
  return {
    parts: [
      say('taken-out', { amount, name: first.name }),
      left.length > 0 ? leftWords(turn, left) : say('that-was-the-last'),
    ],
    changes,
    doubt: say('confirm-take', { amount, name: first.name }),
    memory: about(turn, left.length > 0 ? left : items),
  };
};

export const take: Handler = (act, turn) => {
  const { item: mention, amount, share, left, how } = act.slots;
  const found = needItem(turn, mention, { question: say('ask-take'), anyOfBatch: true });
  if ('reply' in found) return found.reply;
  const item = found.got;
  const { kitchen } = turn;
  const memory = about(turn, [item]);
  const finished = (change: Change): boolean => change.ops.some((op) => op.kind === 'item' && op.after?.gone);
  if (left) {
    return withChange(turn, setLeft(turn, item.id, left), (change) => {
      if (finished(change)) return finishAll(turn, [item], 'used');
      const said: Value = { kind: 'amount', amount: left };
      return {
        parts: [say('left-noted', { name: item.name, left: said })],
        changes: [change],
        memory,
        doubt: say('confirm-left', { name: item.name, left: said }),
      };
    });
  }
  const taking = amount ?? share;
  if (!taking) {
    const one = item.amount && item.amount.value > 1 && item.amount.unit !== 'piece';
    if (!one && item.amount && item.amount.value === 1)
      return takeSeveral(turn, [item], { kind: 'amount', amount: item.amount });
    return {
      parts: [],
      ask: {
        slot: 'amount',
        question: say('ask-how-much', { name: item.name }),
        again: say('ask-how-much-again'),
        expecting: 'amount',
      },
      memory,
    };
  }
  const said: Value = { kind: 'amount', amount: taking };
  if (!isShare(taking) && item.batchId && item.amount && taking.value >= item.amount.value) {
    const several = fromWhich(turn, item, taking.value, taking.unit);
    const unit = taking.unit === 'piece' ? item.amount.unit : taking.unit;
    if (
      several.length > 0 &&
      several.reduce((sum, one) => sum + (one.amount?.value ?? 1), 0) === taking.value
    ) {
      return takeSeveral(turn, several, { kind: 'amount', amount: { value: taking.value, unit } });
    }
  }
  return withChange(turn, takeChange(turn, item.id, taking, how ?? 'used'), (change) => {
    if (finished(change)) return finishAll(turn, [item], how ?? 'used');
    const after = applyChange(kitchen, change).items.get(item.id);
    const counted: Value =
      !isShare(taking) && taking.unit === 'piece' && item.amount
        ? { kind: 'amount', amount: { ...taking, unit: item.amount.unit } }
        : said;
    return {
      parts: [takenWords(turn, item, after, counted), ...lowOffer(turn, after)],
      changes: [change],
      memory,
      doubt: say('confirm-take', { amount: counted, name: item.name }),
    };
  });
};

/** The last one of a staple is worth a word; more would be nagging. */
const lowOffer = (turn: Turn, after: Item | undefined): Say[] => {
  if (!after?.amount || !after.amountAtFirst || isFrozen(turn, after)) return [];
  const low = after.amount.value > 0 && after.amount.value <= after.amountAtFirst.value / 4;
  return low && !purchaseOf(turn.kitchen, after.name) ? [say('running-low')] : [];
};
