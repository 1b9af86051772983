/** The list to buy. */
import { emptyMention } from '../../understanding/intents.js';
import {
  applyChange,
  buyAdd as buyAddChange,
  buyClear as buyClearChange,
  buyGot as buyGotChange,
  buyRemove as buyRemoveChange,
  isRefused,
  livingItems,
  purchaseOf,
  shoppingList,
} from '../../kitchen/index.js';
import type { Change } from '../../kitchen/model.js';
import type { Say, Value } from '../../speech/answer.js';
import type { Mention } from '../../understanding/intents.js';
import { refusal, withChange } from '../describe/refusals.js';
import { type Handler, type Reply, type Turn, list, say, todayOf } from '../handler.js';
import { putAway } from '../put-away/put-away.js';
import { type LinesSaid, lineWords, linesSaid, namesSaid, nearLine, replacedBy } from './said.js';

const wordsMention = (words: string): Mention => ({ ...emptyMention, words });

export const buyAdd: Handler = (act, turn) => {
  const { slots } = act;
  // "I only need one bag of flour" is of the flour that is on it, whichever flour that is.
  const named = namesSaid(turn, slots);
  const names =
    slots.asked === 'amount' || slots.asked === 'section'
      ? named.map((name) => nearLine(turn, name)?.name ?? name)
      : named;
  if (slots.asked === 'low') return runningLow(turn);
  if (names.length === 0)
    return { parts: [], ask: { slot: 'item', question: say('ask-buy'), expecting: 'name' } };
  const changes: Change[] = [];
  const added: Value[] = [];
  const had: string[] = [];
  let kitchen = turn.kitchen;
  for (const name of names) {
    const replaces = replacedBy({ ...turn, kitchen }, name);
    const said = names.length === 1 ? (slots.amount ?? null) : null;
    // "Make it three", of two tins: three tins.
    const was = purchaseOf(kitchen, name)?.amount;
    const amount = said?.unit === 'piece' && was ? { ...said, unit: was.unit } : said;
    const result = buyAddChange(
      { ...turn, kitchen },
      { name, amount, section: names.length === 1 && slots.item ? (slots.words ?? null) : null, replaces },
    );
    if (isRefused(result)) {
      if (result.refused !== 'already-listed') return refusal(turn, result);
      had.push(name);
      continue;
    }
    changes.push(result);
    kitchen = applyChange(kitchen, result);
    const line = purchaseOf(kitchen, name);
    added.push(line ? lineWords(line) : name);
  }
  const under = slots.asked === 'section' && slots.words ? slots.words : null;
  const parts: Say[] = [
    ...(added.length > 0 && under ? [say('listed-under', { items: list(added), section: under })] : []),
    ...(added.length > 0 && !under
      ? [say('on-the-list', { items: list(added), count: kitchen.purchases.size })]
      : []),
    ...(had.length > 0 ? [say('already-on-list', { items: list(had) })] : []),
  ];
  const ids = names.flatMap((name) => purchaseOf(kitchen, name)?.id ?? []);
  return {
    parts,
    changes,
    doubt: say('confirm-buy', { items: list(names) }),
    memory: { purchases: ids },
    names,
    count: kitchen.purchases.size,
  };
};

export const buyRemove: Handler = (act, turn) => {
  const { lines, unknown, several } = linesSaid(turn, act.slots);
  if (lines.length === 0) {
    if (several)
      return {
        parts: [],
        ask: {
          slot: 'item',
          question: say('ask-unbuy-which', {
            items: list(
              several.slice(0, 4).map(({ name }) => name),
              true,
            ),
          }),
          expecting: 'name',
        },
      };
    // "Take that off", of what has a marker and is on no list.
    const { item } = act.slots;
    const pointed = item !== undefined && item.words === null && item.pointer !== null;
    const marked = turn.memory.items.some((id) => turn.kitchen.items.get(id)?.markerId);
    if (pointed && marked) return { parts: [], next: { intent: 'unmark', slots: {} } };
    if (unknown.length > 0) return { parts: [say('not-on-list', { items: list(unknown, true) })] };
    return { parts: [], ask: { slot: 'item', question: say('ask-unbuy'), expecting: 'name' } };
  }
  return withChange(
    turn,
    buyRemoveChange(
      turn,
      lines.map(({ id }) => id),
    ),
    (change) => ({
      parts: [
        say('taken-off-list', {
          items: list(lines.map(({ name }) => name)),
          count: turn.kitchen.purchases.size - lines.length,
        }),
        ...(unknown.length > 0 ? [say('not-on-list', { items: list(unknown, true) })] : []),
      ],
      changes: [change],
      doubt: say('confirm-unbuy', { items: list(lines.map(({ name }) => name)) }),
    }),
  );
};

/** Less than this of one container is nearly gone. Our own choice. */
const littleLeft = 0.5;

/** "Whatever we are nearly out of": what the record says there is least of. */
const runningLow = (turn: Turn): Reply => {
  const low = livingItems(turn.kitchen).filter(({ amount }) => amount !== null && amount.value < littleLeft);
  const names = [...new Set(low.map(({ name }) => name))];
  if (names.length === 0) return { parts: [say('nothing-low')] };
  return buyAdd({ intent: 'buy-add', slots: { items: names.map(wordsMention) } }, turn);
};

export const buyClear: Handler = (_act, turn) =>
  turn.kitchen.purchases.size === 0
    ? { parts: [say('list-empty-now')], count: 0 }
    : withChange(turn, buyClearChange(turn), (change) => ({
        parts: [say('list-cleared')],
        changes: [change],
        confirm: say('confirm-clear-list', { count: turn.kitchen.purchases.size }),
      }));

/** "They had no flour": it stays on the list; what was not on it is offered. */
const stillToBuy = ({ lines, unknown }: LinesSaid): Reply => ({
  parts: lines.length > 0 ? [say('still-to-buy', { items: list(lines.map(({ name }) => name)) })] : [],
  ...(unknown.length > 0
    ? {
        offer: {
          question: say('offer-missing', { items: list(unknown) }),
          act: { intent: 'buy-add', slots: { items: unknown.map(wordsMention) } },
        },
      }
    : {}),
  memory: { purchases: lines.map(({ id }) => id) },
});

/** "Got everything but the eggs": off the list, and on to putting away. */
export const buyGot: Handler = (act, turn) => {
  const { slots } = act;
  const all = shoppingList(turn.kitchen);
  const said = linesSaid(turn, slots);
  if (slots.asked === 'still') return stillToBuy(said);
  // "Got the milk", which nobody had put on the list: bought all the same.
  if (said.unknown.length > 0 && said.lines.length === 0 && !slots.negated)
    return putAway(
      { intent: 'put-away', slots: { ...slots, dates: { bought: { day: todayOf(turn) } } } },
      turn,
    );
  if (all.length === 0) return { parts: [say('list-empty-now')], count: 0 };
  const but = slots.negated === true || slots.asked === 'but';
  const got = but || said.lines.length === 0 ? all.filter((line) => !said.lines.includes(line)) : said.lines;
  if (got.length === 0) return { parts: [say('got-nothing')] };
  const left = all.filter((line) => !got.includes(line));
  return withChange(
    turn,
    buyGotChange(
      turn,
      got.map(({ id }) => id),
    ),
    (change) => ({
      parts: [
        say('got-these', { count: got.length, items: list(got.map(({ name }) => name)) }),
        ...(said.unknown.length > 0 && !but ? [say('not-on-list', { items: list(said.unknown, true) })] : []),
        ...(left.length > 0
          ? [say('left-on-list', { items: list(left.slice(0, 4).map(lineWords)), count: left.length })]
          : []),
      ],
      changes: [change],
      doubt: say('confirm-got', { count: got.length }),
      memory: { purchases: left.map(({ id }) => id) },
      offer: {
        question: say('offer-shop'),
        act: { intent: 'start-shop', slots: { items: got.map(({ name }) => wordsMention(name)) } },
      },
    }),
  );
};
