/** The list to buy. */
import {
  applyChange,
  buyAdd as buyAddChange,
  buyClear as buyClearChange,
  buyGot as buyGotChange,
  buyRemove as buyRemoveChange,
  isRefused,
  lastGone,
  likeness,
  purchaseOf,
  shoppingList,
} from '../../kitchen/index.js';
import type { Change, Purchase } from '../../kitchen/model.js';
import type { Say, Value } from '../../speech/answer.js';
import type { Mention, Slots } from '../../understanding/intents.js';
import { andMore, inGroups } from '../describe/lists.js';
import { refusal, withChange } from '../describe/refusals.js';
import { type Handler, type Turn, list, say } from '../handler.js';

const lineWords = ({ name, amount }: Purchase): Value =>
  amount ? say('item-amount', { amount: { kind: 'amount', amount }, name }) : name;

/** What was named, in the household's own words where it has some. */
const namesSaid = (turn: Turn, slots: Slots): string[] => {
  const mentions: readonly Mention[] = slots.items ?? (slots.item ? [slots.item] : []);
  const names = mentions.flatMap((mention) => {
    if (mention.words) return [mention.words];
    const ids = mention.pointer ? turn.memory.items : mention.candidates.map(({ id }) => id);
    const known = ids.flatMap((id) => turn.kitchen.items.get(id)?.name ?? []);
    return known.slice(0, mention.pointer === 'them' ? known.length : 1);
  });
  if (names.length > 0) return [...new Set(names)];
  return slots.words ? [slots.words] : [];
};

/** Lines of the list that a name or a pointer means. */
const linesSaid = (turn: Turn, slots: Slots): { lines: Purchase[]; unknown: string[] } => {
  const all = shoppingList(turn.kitchen);
  const { pointer, ordinal } = slots.item ?? { pointer: null, ordinal: null };
  const at = ordinal ?? slots.ordinal ?? null;
  if (at) {
    const line = at < 0 ? all.at(at) : all[at - 1];
    return { lines: line ? [line] : [], unknown: [] };
  }
  if (pointer && !slots.item?.words) {
    if (pointer === 'all') return { lines: [...all], unknown: [] };
    const lines = turn.memory.purchases.flatMap((id) => turn.kitchen.purchases.get(id) ?? []);
    if (lines.length > 0) return { lines, unknown: [] };
  }
  const lines: Purchase[] = [];
  const unknown: string[] = [];
  for (const name of namesSaid(turn, slots)) {
    const exact = purchaseOf(turn.kitchen, name);
    const near = exact ?? all.find((line) => likeness(line.name, name) > 0) ?? null;
    if (near) lines.push(near);
    else unknown.push(name);
  }
  return { lines, unknown };
};

export const buyAdd: Handler = (act, turn) => {
  const { slots } = act;
  const names = namesSaid(turn, slots);
  if (names.length === 0)
    return { parts: [], ask: { slot: 'item', question: say('ask-buy'), expecting: 'words' } };
  const changes: Change[] = [];
  const added: Value[] = [];
  const had: string[] = [];
  let kitchen = turn.kitchen;
  for (const name of names) {
    const replaces = lastGone(kitchen, name)?.id ?? null;
    const amount = names.length === 1 ? (slots.amount ?? null) : null;
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
  const parts: Say[] = [
    ...(added.length > 0 ? [say('on-the-list', { items: list(added), count: kitchen.purchases.size })] : []),
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
  const { lines, unknown } = linesSaid(turn, act.slots);
  if (lines.length === 0) {
    if (unknown.length > 0) return { parts: [say('not-on-list', { items: list(unknown, true) })] };
    return { parts: [], ask: { slot: 'item', question: say('ask-unbuy'), expecting: 'words' } };
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

export const buyClear: Handler = (_act, turn) =>
  turn.kitchen.purchases.size === 0
    ? { parts: [say('list-empty-now')], count: 0 }
    : withChange(turn, buyClearChange(turn), (change) => ({
        parts: [say('list-cleared')],
        changes: [change],
        confirm: say('confirm-clear-list', { count: turn.kitchen.purchases.size }),
      }));

/** "Got everything but the eggs": off the list, and on to putting away. */
export const buyGot: Handler = (act, turn) => {
  const { slots } = act;
  const all = shoppingList(turn.kitchen);
  if (all.length === 0) return { parts: [say('list-empty-now')], count: 0 };
  const said = linesSaid(turn, slots);
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
        ...(left.length > 0
          ? [say('left-on-list', { items: list(left.slice(0, 4).map(lineWords)), count: left.length })]
          : []),
      ],
      changes: [change],
      doubt: say('confirm-got', { count: got.length }),
      memory: { purchases: left.map(({ id }) => id) },
      ...(turn.state.session?.kind === 'shop'
        ? {}
        : { offer: { question: say('offer-shop'), act: { intent: 'start-shop', slots: {} } } }),
    }),
  );
};

/** Milk and oats, by section when sections are known; or whether one thing is on it. */
export const buyRead: Handler = (act, turn) => {
  const { lines, unknown } = linesSaid(turn, act.slots);
  if (lines.length > 0 && !act.slots.item?.pointer) {
    return {
      parts: [say('yes-on-list', { items: list(lines.map(lineWords)) })],
      memory: { purchases: lines.map(({ id }) => id) },
      count: lines.length,
    };
  }
  if (unknown.length > 0) {
    const name = unknown[0]!;
    const act2 = { intent: 'buy-add', slots: { words: name } } as const;
    return {
      parts: [say('not-on-list', { items: list(unknown, true) })],
      offer: { question: say('offer-buy', { name }), act: act2 },
    };
  }
  const all = shoppingList(turn.kitchen);
  if (all.length === 0) return { parts: [say('list-empty-now')], count: 0, names: [] };
  const sections = new Set(all.map(({ section }) => section));
  if (sections.size > 1) {
    const groups = [...sections].map((section) => {
      const items = list(all.filter((line) => line.section === section).map(lineWords));
      return section ? say('list-section', { section, items }) : say('list-others', { items });
    });
    return {
      parts: [
        say('list-count', { count: all.length }),
        ...groups.map((entry) => say('list-entry', { entry })),
      ],
      memory: { purchases: all.map(({ id }) => id) },
      names: all.map(({ name }) => name),
      count: all.length,
    };
  }
  const entries: Value[] = all.map(lineWords);
  const { first, more, left } = inGroups(entries);
  return {
    parts: [say('list-holds', { count: all.length, items: list(first) }), ...andMore(left)],
    more,
    memory: { purchases: all.map(({ id }) => id) },
    names: all.map(({ name }) => name),
    count: all.length,
  };
};
