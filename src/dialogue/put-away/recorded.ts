/** What was put away, read back in one breath, and what comes with it. */
import { foodKey, lookAlikes, spareMarkers } from '../../kitchen/index.js';
import type { Change, Item } from '../../kitchen/model.js';
import type { Say, Value } from '../../speech/answer.js';
import { dateSaidAs, madeUnknown } from '../describe/came.js';
import { groupName, grouped } from '../describe/item.js';
import { placeAt } from '../describe/place.js';
import { watchers } from '../describe/watchers.js';
import { markerNoun } from '../describe/touch.js';
import { type Reply, type Turn, about, day, list, onRecord, say } from '../handler.js';

const dateWords = ({ dates, open, maker }: Item): Say[] =>
  (['made', 'bought', 'opened', 'frozen', 'useBy', 'bestBefore'] as const).flatMap((kind) => {
    const at = dates[kind];
    if (kind === 'opened' && !at && open) return [say('read-back-open')];
    return at && !(kind === 'frozen' && (dates.made ?? dates.bought) === at)
      ? [say('read-back-date', { what: dateSaidAs(kind, { maker }), date: day(at) })]
      : [];
  });

/** Who made it, whose it is, what is in it: as it was told, or as it was known before. */
const otherFacts = (turn: Turn, { maker, ownerId, contains, freeFrom }: Item): Say[] => {
  const owner = ownerId ? turn.kitchen.people.get(ownerId) : undefined;
  return [
    ...(maker ? [say('read-back-maker', { maker })] : []),
    ...(owner ? [say('read-back-owner', { name: owner.name })] : []),
    ...(contains.length > 0 ? [say('read-back-contains', { allergens: list(contains) })] : []),
    ...(freeFrom.length > 0 ? [say('read-back-free', { allergens: list(freeFrom) })] : []),
  ];
};

/** "Lentil stew, second shelf of the fridge, made today." */
const readBack = (turn: Turn, items: readonly Item[]): Say => {
  const first = items[0]!;
  const groups = grouped(turn.kitchen, items);
  const where: Value =
    groups.length > 1
      ? list(
          groups.map((group) =>
            say('share-at', {
              amount: groupAmountOf(group.items),
              at: placeAt(turn.kitchen, group.first.placeId),
            }),
          ),
        )
      : placeAt(turn.kitchen, first.placeId, first.spot);
  const marker = first.markerId ? turn.kitchen.markers.get(first.markerId) : undefined;
  const details: Value[] = [
    ...(marker ? [say('with-marker', { marker: markerNoun(marker) })] : []),
    ...dateWords(first),
    ...otherFacts(turn, first),
  ];
  const whole = groups.length === 1 ? groupName(groups[0]!) : say('item-name', { name: first.name });
  const counted = first.amount && (first.amount.unit !== 'piece' || first.amount.value > 1);
  const single = groups.length === 1 && items.length === 1 && counted;
  const said = {
    item: single
      ? say('item-amount', { amount: { kind: 'amount', amount: first.amount! }, name: first.name })
      : whole,
    where,
    ...(details.length > 0 ? { details: list(details) } : {}),
  };
  return groups.length > 1 ? say('put-away-shared', said) : onRecord('put-away-done', said);
};

const groupAmountOf = (items: readonly Item[]): Value => {
  const unit = items[0]?.amount?.unit ?? 'piece';
  const value = items.reduce((sum, { amount }) => sum + (amount?.value ?? 1), 0);
  return { kind: 'amount', amount: { value, unit } };
};

/** Look-alikes warn at once: beside each other is where they get mixed up. */
const alikeWarning = (turn: Turn, item: Item): Say[] => {
  if (!item.touch.container && !item.markerId) return [];
  const other = lookAlikes(turn.kitchen, item).find(({ name }) => foodKey(name) !== foodKey(item.name));
  if (!other) return [];
  const spare = spareMarkers(turn.kitchen).find(({ touch }) => Object.keys(touch).length > 0);
  return [say('feels-like', { name: other.name, ...(spare ? { marker: markerNoun(spare) } : {}) })];
};

interface Told {
  readonly earlier: Item | null;
  readonly offList: boolean;
}

export const recorded = (
  turn: Turn,
  changes: readonly Change[],
  items: readonly Item[],
  told: Told,
): Reply => {
  const first = items[0]!;
  const kitchen = {
    ...turn.kitchen,
    items: new Map([...turn.kitchen.items, ...items.map((item) => [item.id, item] as const)]),
  };
  const after = { ...turn, kitchen: withMarkers(kitchen, changes) };
  const { session } = turn.state;
  const undated = Object.keys(first.dates).length === 0;
  const carried = told.earlier ? carriedWords(after, told.earlier, first) : [];
  const parts = [
    readBack(after, items),
    ...(madeUnknown(first) ? [say('made-when-unknown')] : []),
    ...carried,
    ...(told.offList ? [say('off-the-list')] : []),
    ...alikeWarning(after, first),
    ...watchers(after, first, first.contains),
  ];
  const details = undated ? [say('no-dates')] : [];
  const added = [...items.map(({ id }) => id)];
  return {
    parts,
    details,
    changes,
    doubt: say('confirm-put-away', { what: readBack(after, items) }),
    names: [first.name],
    count: items.length,
    memory: { ...about(after, items), placeId: first.placeId, lastAdded: added, touched: null },
    ...(session?.kind === 'shop'
      ? { session: { ...session, items: [...session.items, ...added], placeId: first.placeId } }
      : {}),
  };
};

const withMarkers = (kitchen: Turn['kitchen'], changes: readonly Change[]): Turn['kitchen'] => {
  const markers = new Map(kitchen.markers);
  for (const op of changes.flatMap(({ ops }) => ops))
    if (op.kind === 'marker' && op.after) markers.set(op.id, op.after);
  return { ...kitchen, markers };
};

/** What came back with the marker: said once, and the new date asked for by its absence. */
const carriedWords = (turn: Turn, earlier: Item, item: Item): Say[] => {
  const kept: Value[] = [
    ...(item.preparations.length > 0 && earlier.preparations.length > 0 ? [say('kept-reheating')] : []),
    ...(item.diets.length > 0 && earlier.diets.length > 0 ? [say('kept-diets')] : []),
    ...(item.contains.length > 0 && earlier.contains.length > 0 ? [say('kept-allergens')] : []),
  ];
  // What is printed on it is new with it, unless it was told.
  const printed = [item, earlier].map(({ dates }) => dates.useBy ?? dates.bestBefore);
  const dateNeeded =
    Object.keys(item.dates).length === 0 || (printed[0] === undefined && printed[1] !== undefined);
  return kept.length > 0
    ? [say('kept-from-before', { what: list(kept), ...(dateNeeded ? { date: 'new' } : {}) })]
    : [];
};
