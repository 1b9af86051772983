/** The shortest words by which each of several things differs from the others. */
import { markerOf, placeUnder } from '../../kitchen/index.js';
import type { Item, Kitchen } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import { placeAt, placesUp } from '../describe/place.js';
import { containerWords, markerNoun } from '../describe/touch.js';
import { type Group, grouped, markerFeel } from '../describe/item.js';
import { day, say } from '../handler.js';
import type { Choice } from '../state.js';

/** One way things differ: a key to compare by, and how it is said. Null: nothing recorded. */
interface Feature {
  readonly key: string | null;
  readonly say: () => Say;
}

const dateOf = (item: Item): { kind: string; at: string } | null => {
  for (const kind of ['made', 'frozen', 'bought', 'opened', 'useBy', 'bestBefore'] as const) {
    const at = item.dates[kind];
    if (at) return { kind, at };
  }
  return null;
};

/** In the order a hand and an ear find them: what it is, its container, its marker, where it is, who, when. */
const features = (kitchen: Kitchen, item: Item, others: readonly Item[]): Feature[] => {
  const container = containerWords(item.touch);
  const marker = markerOf(kitchen, item);
  const date = dateOf(item);
  const path = placesUp(kitchen, item.placeId);
  const root = path.at(-1)?.id ?? null;
  return [
    { key: item.name, say: () => say('apart-name', { name: item.name }) },
    {
      key: container,
      say: () => (container ? say('apart-container', { container }) : say('apart-other')),
    },
    {
      key: marker ? marker.id : null,
      say: () => (marker ? say('apart-marker', { marker: markerNoun(marker) }) : say('apart-unmarked')),
    },
    { key: root, say: () => say('apart-place', { at: placeAt(kitchen, root) }) },
    {
      key: item.placeId,
      say: () =>
        // In the fridge, beside one on its shelf: no shelf was told.
        others.some(({ placeId }) => placeId !== item.placeId && placeUnder(kitchen, placeId, item.placeId!))
          ? say('apart-loose', { at: placeAt(kitchen, item.placeId) })
          : say('apart-place', { at: placeAt(kitchen, item.placeId) }),
    },
    {
      key: item.maker,
      say: () => (item.maker ? say('apart-maker', { maker: item.maker }) : say('apart-other')),
    },
    {
      key: date ? `${date.kind} ${date.at}` : null,
      say: () => (date ? say('apart-date', { what: date.kind, date: day(date.at) }) : say('apart-undated')),
    },
    {
      key: item.amount ? `${item.amount.value} ${item.amount.unit}` : null,
      say: () =>
        item.amount
          ? say('apart-amount', { amount: { kind: 'amount', amount: item.amount } })
          : say('item-name', { name: item.name }),
    },
  ];
};

/** How each group is called so that no two are called alike, in as few words as will do. */
export const tellApart = (kitchen: Kitchen, groups: readonly Group[]): Choice[] => {
  const table = groups.map((group) =>
    features(
      kitchen,
      group.first,
      groups.map(({ first }) => first),
    ),
  );
  const width = table[0]?.length ?? 0;
  const spread = (column: number): number => new Set(table.map((row) => row[column]!.key)).size;
  const choice = (group: Group, label: Say): Choice => ({ ids: group.items.map((item) => item.id), label });
  // What every one of them has tells better than what one of them lacks.
  for (const most of [0, 1])
    for (let column = 0; column < width; column += 1) {
      const gaps = table.filter((row) => row[column]!.key === null).length;
      if (spread(column) === groups.length && gaps <= most)
        return groups.map((group, row) => choice(group, table[row]![column]!.say()));
    }
  return groups.map((group, row) => {
    const own = table[row]!;
    const alone = own.findIndex(
      (feature, column) =>
        feature.key !== null && table.filter((other) => other[column]!.key === feature.key).length === 1,
    );
    if (alone >= 0) return choice(group, own[alone]!.say());
    const telling = own.filter((feature, column) => feature.key !== null && spread(column) > 1).slice(0, 2);
    const [first, second] = telling;
    if (first && second) return choice(group, say('apart-two', { first: first.say(), second: second.say() }));
    return choice(group, first ? first.say() : say('item-name', { name: group.first.name }));
  });
};

/** True when no hand or ear could tell them apart: any of them will do. */
export const allAlike = (kitchen: Kitchen, items: readonly Item[]): boolean => {
  const [first, ...rest] = items;
  if (!first) return true;
  const key = (item: Item): string =>
    JSON.stringify([
      item.name,
      containerWords(item.touch),
      markerFeel(kitchen, item),
      item.placeId,
      item.maker,
      item.ownerId,
    ]);
  return rest.every((item) => key(item) === key(first));
};

/** Oldest first, by whatever date there is; undated last. */
export const oldestFirst = (items: readonly Item[]): Item[] =>
  [...items].sort((a, b) => (dateOf(a)?.at ?? '9999').localeCompare(dateOf(b)?.at ?? '9999'));

export const choicesOf = (kitchen: Kitchen, items: readonly Item[]): Choice[] =>
  tellApart(kitchen, grouped(kitchen, items));
