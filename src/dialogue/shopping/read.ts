/** What is on the list to buy: all of it, a section, how much of it, or whether one thing is. */
import { likeness, shoppingList } from '../../kitchen/index.js';
import type { Purchase } from '../../kitchen/model.js';
import type { Value } from '../../speech/answer.js';
import { andMore, inGroups } from '../describe/lists.js';
import { type Handler, type Reply, type Turn, list, say } from '../handler.js';
import { aboutLines } from './lines.js';
import { lineName, lineWords, linesSaid } from './said.js';

/** "How many things are on my list?" */
const howManyLines = (turn: Turn): Reply => {
  const all = shoppingList(turn.kitchen);
  return {
    parts: [say('list-number', { count: all.length })],
    memory: { purchases: all.map(({ id }) => id) },
    names: all.map(({ name }) => name),
    count: all.length,
  };
};

/** Lines put on in one breath bear one time: the last of them is meant. */
const lastLine = (turn: Turn): Reply => {
  const all = [...turn.kitchen.purchases.values()];
  const last = all.reduce<Purchase | null>((a, b) => (!a || b.addedAt >= a.addedAt ? b : a), null);
  if (!last) return { parts: [say('list-empty-now')], count: 0 };
  return {
    parts: [say('list-last', { items: lineWords(turn.kitchen, last) })],
    memory: { purchases: [last.id] },
    names: [last.name],
    count: 1,
  };
};

/** "What do I need from the bakery?" Lines without a section may belong to it: that is said. */
const ofSection = (turn: Turn, section: string): Reply => {
  const all = shoppingList(turn.kitchen);
  const here = all.filter((line) =>
    [line.section, line.shop].some((one) => one && likeness(one, section) > 0),
  );
  const loose = all.filter((line) => line.section === null && !line.shop);
  const others =
    loose.length > 0
      ? [say('list-no-section', { items: list(loose.slice(0, 4).map(lineName)), count: loose.length })]
      : [];
  return {
    parts:
      here.length > 0
        ? [say('list-under', { section, items: list(here.map(lineName)), count: here.length })]
        : [say('list-none-under', { section }), ...others],
    details: here.length > 0 ? others : [],
    memory: { purchases: here.map(({ id }) => id) },
    names: here.map(({ name }) => name),
    count: here.length,
  };
};

/** Milk and oats, by section when sections are known; or whether one thing is on it. */
export const buyRead: Handler = (act, turn) => {
  const { asked, words } = act.slots;
  if (asked === 'count') return howManyLines(turn);
  if (asked === 'last') return lastLine(turn);
  if (asked === 'section' && words) return ofSection(turn, words);
  const about = aboutLines(act, turn);
  if (about) return about;
  const { lines, unknown } = linesSaid(turn, act.slots);
  if (lines.length > 0 && (!act.slots.item?.pointer || lines.length === 1)) {
    return {
      parts: [say('yes-on-list', { items: list(lines.map((line) => lineWords(turn.kitchen, line))) })],
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
  const inWords = (line: Purchase): Value => lineWords(turn.kitchen, line);
  const sections = new Set(all.map(({ section }) => section));
  if (sections.size > 1) {
    const groups = [...sections].map((section) => {
      const items = list(all.filter((line) => line.section === section).map(inWords));
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
  const entries: Value[] = all.map(inWords);
  const { first, more, left } = inGroups(entries);
  return {
    parts: [say('list-holds', { count: all.length, items: list(first) }), ...andMore(left)],
    more,
    memory: { purchases: all.map(({ id }) => id) },
    names: all.map(({ name }) => name),
    count: all.length,
  };
};
