/** The list to buy. */
import { emptyMention } from '../../understanding/intents.js';
import {
  applyChange,
  buyAdd as buyAddChange,
  buyClear as buyClearChange,
  buyGot as buyGotChange,
  buyRemove as buyRemoveChange,
  buySome as buySomeChange,
  isRefused,
  livingItems,
  purchaseOf,
  shoppingList,
  sumAmounts,
  totalOf,
  type SaidOfLine,
} from '../../kitchen/index.js';
import type { Change } from '../../kitchen/model.js';
import type { Say, Value } from '../../speech/answer.js';
import type { Amount } from '../../terms/amount.js';
import type { Act, Mention, SaidLine, Slots } from '../../understanding/intents.js';
import { refusal, withChange } from '../describe/refusals.js';
import { type Handler, type Reply, type Turn, list, say, todayOf } from '../handler.js';
import { personSaid } from '../people/people.js';
import { findItems } from '../refer/items.js';
import { putAway } from '../put-away/put-away.js';
import { type LinesSaid, lineName, lineWords, linesSaid, namesSaid, nearLine, replacedBy } from './said.js';

const wordsMention = (words: string): Mention => ({ ...emptyMention, words });

/** What was said to go on, a line each. */
const linesWanted = ({ slots }: Act): readonly SaidLine[] | null =>
  slots.lines ??
  (slots.items
    ? slots.items.map((item) => ({ item }))
    : slots.item
      ? [{ item: slots.item, ...(slots.amount ? { amount: slots.amount } : {}) }]
      : null);

interface Wanted extends SaidOfLine {
  readonly name: string;
}

/** "Make it three", of two tins: three tins. "Two more": beside those that stand there. */
const amountOf = (turn: Turn, { amount, more }: SaidLine, name: string): Amount | null => {
  if (!amount) return null;
  const was = purchaseOf(turn.kitchen, name)?.amount;
  const said = amount.unit === 'piece' && was ? { ...amount, unit: was.unit } : amount;
  return more && was ? (sumAmounts(was, said, turn.kitchen.household.region) ?? said) : said;
};

const wantedOf = (turn: Turn, act: Act): readonly Wanted[] => {
  const { slots } = act;
  const lines = linesWanted(act);
  // "I only need one bag of flour" is of the flour that is on it, whichever flour that is.
  const ofLines = slots.asked === 'amount' || slots.asked === 'section' || slots.lines !== undefined;
  const nameOf = (name: string): string => (ofLines ? (nearLine(turn, name)?.name ?? name) : name);
  if (!lines) return namesSaid(turn, slots).map((name) => ({ name: nameOf(name) }));
  return lines.flatMap((line): Wanted[] => {
    const { shop = null, note = null } = line;
    const person = line.person ? personSaid(turn, { person: line.person }).person : null;
    return namesSaid(turn, { item: line.item }).map((said) => {
      const name = nameOf(said);
      const section = lines.length === 1 && slots.item && !slots.lines ? (slots.words ?? null) : null;
      const forPersonId = person?.id ?? null;
      return { name, amount: amountOf(turn, line, name), section, shop, note, forPersonId };
    });
  });
};

/** How much of it is here, of one unit; null where none is, or it cannot be counted. */
const amountHere = (turn: Turn, item: Mention): { name: string; amount: Amount } | null => {
  const { items } = findItems(turn, item);
  const { amounts } = totalOf(turn.kitchen, items);
  const [amount] = amounts;
  return items[0] && amount && amounts.length === 1 ? { name: items[0].name, amount } : null;
};

/** "If we have fewer than two bags": enough of it is here, so that nothing is put on. */
const enoughHere = (turn: Turn, { ifShort }: Slots): Reply | null => {
  if (!ifShort) return null;
  const here = amountHere(turn, ifShort.item);
  if (!here || (ifShort.below && here.amount.value < ifShort.below.value)) return null;
  const amount = { kind: 'amount', amount: here.amount } as const;
  return { parts: [say('enough-here', { amount, name: here.name })], count: 0 };
};

/** "I want six in the house": so many less what is here. */
const upTo = (turn: Turn, { item, amount }: Slots): Reply => {
  const here = item ? amountHere(turn, item) : null;
  if (!item || !amount) return buyAdd({ intent: 'buy-add', slots: {} }, turn);
  if (!here) return buyAdd({ intent: 'buy-add', slots: { item, amount } }, turn);
  const short = amount.value - here.amount.value;
  const has = { amount: { kind: 'amount', amount: here.amount }, name: here.name } as const;
  if (short <= 0) return { parts: [say('enough-here', has)], count: 0 };
  const unit = amount.unit === 'piece' ? here.amount.unit : amount.unit;
  const slots: Slots = { item: wordsMention(here.name), amount: { value: short, unit } };
  return buyAdd({ intent: 'buy-add', slots }, turn);
};

/** "Limes instead of the lemons": as many, from the same shop, for the same person. */
const inPlaceOf = (act: Act, turn: Turn, not: Mention): Reply => {
  const [was] = linesSaid(turn, { item: not }).lines;
  const { not: _was, ...slots } = act.slots;
  const instead: Act = { intent: 'buy-add', slots };
  if (!was) return buyAdd(instead, turn);
  const off = buyRemoveChange(turn, [was.id]);
  if (isRefused(off)) return refusal(turn, off);
  const amount = slots.amount ?? was.amount;
  const kitchen = applyChange(turn.kitchen, off);
  const reply = buyAdd(
    { ...instead, slots: { ...slots, ...(amount ? { amount } : {}) } },
    { ...turn, kitchen },
  );
  return {
    ...reply,
    parts: [...reply.parts, say('taken-off-list', { items: was.name, count: kitchen.purchases.size })],
    changes: [off, ...(reply.changes ?? [])],
  };
};

export const buyAdd: Handler = (act, turn) => {
  const { slots } = act;
  if (slots.not) return inPlaceOf(act, turn, slots.not);
  if (slots.asked === 'low') return runningLow(turn);
  if (slots.asked === 'up-to') return upTo(turn, slots);
  const wanted = wantedOf(turn, act);
  const names = wanted.map(({ name }) => name);
  if (names.length === 0)
    return { parts: [], ask: { slot: 'item', question: say('ask-buy'), expecting: 'name' } };
  const enough = enoughHere(turn, slots);
  if (enough) return enough;
  const changes: Change[] = [];
  const added: Value[] = [];
  const had: string[] = [];
  let kitchen = turn.kitchen;
  for (const line of wanted) {
    const { name } = line;
    const replaces = replacedBy({ ...turn, kitchen }, name);
    const result = buyAddChange({ ...turn, kitchen }, { ...line, replaces });
    if (isRefused(result)) {
      if (result.refused !== 'already-listed') return refusal(turn, result);
      had.push(name);
      continue;
    }
    changes.push(result);
    kitchen = applyChange(kitchen, result);
    const listed = purchaseOf(kitchen, name);
    added.push(listed ? lineWords(kitchen, listed) : name);
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

/** "I only got two of the four lemons": the others are still to buy. */
const gotSome = (turn: Turn, { lines }: LinesSaid, amount: Amount): Reply | null => {
  const [line, ...others] = lines;
  if (!line || others.length > 0) return null;
  const left = (line.amount?.value ?? 0) - amount.value;
  if (left <= 0 || !line.amount) return null;
  const still = { ...line.amount, value: left };
  return withChange(turn, buySomeChange(turn, line.id, still), (change) => ({
    parts: [
      say('got-some', {
        got: { kind: 'amount', amount: { ...line.amount!, value: amount.value } },
        left: lineName({ ...line, amount: still }),
      }),
    ],
    changes: [change],
    memory: { purchases: [line.id] },
    names: [line.name],
    count: turn.kitchen.purchases.size,
  }));
};

/** "Got everything but the eggs": off the list, and on to putting away. */
export const buyGot: Handler = (act, turn) => {
  const { slots } = act;
  const all = shoppingList(turn.kitchen);
  const said = linesSaid(turn, slots);
  if (slots.asked === 'still') return stillToBuy(said);
  if (slots.place && said.lines.length > 0)
    return putAway(
      {
        intent: 'put-away',
        slots: {
          items: said.lines.map(({ name }) => wordsMention(name)),
          place: slots.place,
          dates: { bought: { day: todayOf(turn) } },
        },
      },
      turn,
    );
  const part = slots.asked === 'some' && slots.amount ? gotSome(turn, said, slots.amount) : null;
  if (part) return part;
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
          ? [say('left-on-list', { items: list(left.slice(0, 4).map(lineName)), count: left.length })]
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
