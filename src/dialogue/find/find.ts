/** Where something is, what is somewhere, and whether there is any. */
import { itemsAt, marksOf, placesIn, placeUnder } from '../../kitchen/index.js';
import type { Item, Place } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import { spotIn } from '../../understanding/index.js';
import type { Act } from '../../understanding/intents.js';
import { ageParts } from '../age/age-parts.js';
import {
  type Group,
  groupAmount,
  grouped,
  groupName,
  itemWhere,
  toldGroups,
  whereAndFeel,
} from '../describe/item.js';
import { andMore, groupSize, inGroups } from '../describe/lists.js';
import { partAt, placeAt, placeNoun } from '../describe/place.js';
import { itemFeel } from '../describe/touch.js';
import { type Handler, type Reply, type Turn, about, list, say, notFound } from '../handler.js';
import { buyRead } from '../shopping/read.js';
import { findItems, hereItems } from '../refer/items.js';
import { itJustGone, nameOfGone, noneLeft } from '../refer/none-left.js';
import { findPlace } from '../refer/places.js';

/** What a question names, put together from wherever the grammar put it. */
export const askedItems = (
  act: Act,
  turn: Turn,
): { items: readonly Item[]; unknown: string | null; named: boolean } => {
  const { item, items: many, maker, diet, marker, container, allergens } = act.slots;
  const settled = (turn.picked.item ?? []).flatMap((id) => turn.kitchen.items.get(id) ?? []);
  if (settled.length > 0) return { items: settled, unknown: null, named: true };
  const mentions = many ?? (item ? [item] : []);
  const found = mentions.map((mention) =>
    findItems(turn, {
      ...mention,
      maker: mention.maker ?? maker ?? null,
      diet: mention.diet ?? diet ?? null,
    }),
  );
  let items: readonly Item[] = found.flatMap((one) => (one.near ? [] : one.items));
  const unknown = found.find((one) => one.unknown)?.unknown ?? null;
  // "Which jars have a cloth patch": what it is in, and what is on it.
  const felt = (marker?.touch ?? container) ? { ...container, ...marker?.touch } : null;
  if (mentions.length === 0 && (felt || maker || diet || marker)) {
    const described = { words: null, candidates: marker?.candidates ?? [], pointer: null, touch: felt };
    const more = { ordinal: null, maker: maker ?? null, diet: diet ?? null, at: null };
    items = findItems(turn, { ...described, ...more }).items;
  }
  if (allergens?.length) {
    const pool = mentions.length > 0 ? items : hereItems(turn);
    items = pool.filter((one) =>
      marksOf(turn.kitchen, one).contains.some((name) => allergens.includes(name)),
    );
  }
  const named =
    mentions.some((one) => one.words || one.candidates.length > 0 || one.pointer) || items.length > 0;
  return { items: [...new Set(items)], unknown, named: named || Boolean(felt || maker || diet || allergens) };
};

/** "Do I have any …", which is answered with yes or no first. */
const asksWhether = (turn: Turn): boolean => turn.qualifiers.has('whether');

const onePart = (turn: Turn, group: Group, whether: boolean): Say =>
  say(whether ? 'found-yes-one' : 'found-one', {
    item: whether ? howMuchOf(group) : groupName(group),
    where: whereAndFeel(turn.kitchen, group),
  });

/** Whether there is any is asked to know if it will do: how many there are, where it is more than one. */
const howMuchOf = (group: Group): Say => {
  const { amount } = group.first;
  return group.items.length === 1 && amount && amount.value > 1 && !amount.rough
    ? say('item-amount', { amount: { kind: 'amount', amount }, name: group.first.name })
    : groupName(group);
};

const tellItems = (turn: Turn, items: readonly Item[]): Reply => {
  const groups = grouped(turn.kitchen, items);
  const whether = asksWhether(turn);
  const { memory, names } = toldGroups(turn, items, groups);
  if (groups.length === 1) {
    const item = groups[0]!.first;
    const age = ageParts(turn, item);
    const amount = item.amount
      ? [say('amount-left', { amount: { kind: 'amount', amount: item.amount } })]
      : [];
    return {
      parts: [onePart(turn, groups[0]!, whether)],
      details: [...amount, ...age.parts, ...age.details],
      sources: age.sources,
      memory,
      names,
      count: items.length,
    };
  }
  // Of one food, its name is not said again with each.
  const alike = new Set(names).size === 1;
  const entries = groups.map((group) => (alike ? amountWhere(turn, group) : itemWhere(turn.kitchen, group)));
  const { first, more, left } = inGroups(entries);
  const head = { count: groups.length, ...(alike ? { name: names[0]! } : {}) };
  return {
    parts: [
      say(whether ? 'found-yes-many' : 'found-many', head),
      // A sentence each: cut off, it goes on where it was.
      ...first.map((entry) => say('list-entry', { entry })),
      ...andMore(left),
    ],
    more,
    memory,
    names,
    count: groups.length,
  };
};

/** "four tubs in the left basket": how many of several alike, and where. */
const amountWhere = (turn: Turn, group: Group): Say => {
  const where = whereAndFeel(turn.kitchen, group);
  // One tub is said by how it feels.
  const counts = group.items.length > 1 || (group.first.amount?.value ?? 1) !== 1;
  const amount = counts ? groupAmount(group) : null;
  return amount ? say('item-where', { item: amount, where }) : where;
};

/** More things than these in one place of several parts are counted by part, and one part is asked for. */
const manyThings = 12;
/** Parts named with their count; the others are "elsewhere". */
const partsNamed = 3;

const noPlaceWords = { words: null, pointer: null, spot: null } as const;

/** "Twelve on the door, eight on the first shelf": the fullest parts of a place that holds much. */
const byPart = (turn: Turn, place: Place, groups: readonly Group[]): Reply | null => {
  if (groups.length <= manyThings) return null;
  const counts = placesIn(turn.kitchen, place.id)
    .map((part) => ({
      part,
      count: groups.filter(({ first }) => placeUnder(turn.kitchen, first.placeId, part.id)).length,
    }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count);
  if (counts.length < 2) return null;
  const named = counts.length === partsNamed + 1 ? counts : counts.slice(0, partsNamed);
  const elsewhere = groups.length - named.reduce((sum, { count }) => sum + count, 0);
  const parts = [
    ...named.map(({ part, count }) => say('part-count', { count, at: partAt(turn.kitchen, part) })),
    ...(elsewhere > 0 ? [say('elsewhere-count', { count: elsewhere })] : []),
  ];
  return {
    parts: [
      say('place-by-part', {
        at: placeAt(turn.kitchen, place.id),
        count: groups.length,
        parts: list(parts),
      }),
    ],
    // All of it was told of, by its parts: "which of those are vegan".
    asked: {
      query: {
        where: [{ by: 'place', places: [{ ...noPlaceWords, candidates: [{ id: place.id, fit: 1 }] }] }],
        ask: ['what'],
        whether: false,
        order: null,
        by: null,
      },
      members: groups.flatMap(({ items }) => items.map(({ id }) => id)),
    },
    ask: {
      slot: 'place',
      question: say('which-part'),
      expecting: 'place',
      passing: true,
      choices: counts.map(({ part }) => ({ ids: [part.id], label: partAt(turn.kitchen, part) })),
    },
  };
};

export const tellPlace = (turn: Turn, place: Place, items: readonly Item[]): Reply => {
  const groups = grouped(turn.kitchen, items);
  const where = placeNoun(turn.kitchen, place.id);
  const at = placeAt(turn.kitchen, place.id);
  const memory = {
    ...about(
      turn,
      items,
      groups.map(({ first }) => first),
    ),
    placeId: place.id,
  };
  if (groups.length === 0)
    return { parts: [say('place-empty', { place: where })], memory, count: 0, names: [] };
  // Which shelf of the fridge it is on helps only when there are few to say it of.
  const inner = groups.length <= groupSize && groups.some(({ first }) => first.placeId !== place.id);
  const entries = groups.map((group) =>
    inner
      ? say('item-where', { item: groupName(group), where: placeAt(turn.kitchen, group.first.placeId) })
      : said(turn, group),
  );
  const names = groups.map(({ first: item }) => item.name);
  const parted = byPart(turn, place, groups);
  if (parted) {
    // "All of them", "go on": from the start, a group at a time.
    const all = inGroups(entries);
    const start = say('list-group', { items: list(all.first) });
    const more = [start, ...all.more];
    return { ...parted, more, memory: { placeId: place.id }, names, count: groups.length };
  }
  const { first, more, left } = inGroups(entries);
  const parts = [say('place-holds', { at, count: groups.length, items: list(first) }), ...andMore(left)];
  return { parts, more, memory, names, count: groups.length };
};

/** "At the back of the fourth shelf": what is recorded to be just there; else all of it, and that no spot is known. */
const tellSpot = (turn: Turn, place: Place, spot: string | null): Reply => {
  const all = itemsAt(turn.kitchen, place.id);
  const { side } = spotIn(spot ?? '', turn.locale);
  if (!side) return tellPlace(turn, place, all);
  const there = all.filter((item) => (item.spot ?? '').toLowerCase().split(' ').includes(side));
  const told = tellPlace(turn, place, there.length > 0 ? there : all);
  if (there.length === 0) return { ...told, parts: [say('spot-not-recorded'), ...told.parts] };
  const unknown = all.filter((item) => item.spot === null).length;
  const { first, more, left } = inGroups(grouped(turn.kitchen, there).map((group) => said(turn, group)));
  return {
    ...told,
    parts: [
      say('spot-holds', { spot: side, at: placeAt(turn.kitchen, place.id), items: list(first) }),
      ...andMore(left),
      ...(unknown > 0 && left === 0 ? [say('spots-unknown', { count: unknown })] : []),
    ],
    more,
  };
};

/** With its feel where that was recorded: on one shelf, the hand tells things apart. */
const said = (turn: Turn, group: Group): Say => {
  const feel = group.items.length === 1 ? itemFeel(turn.kitchen, group.first) : null;
  return feel ? say('item-felt', { item: groupName(group), feel }) : groupName(group);
};

export const find: Handler = (act, turn) => {
  const { item, items: many, place: saidPlace } = act.slots;
  // "What have I got on there", when the talk is of the list.
  if (saidPlace?.pointer === 'same' && turn.state.told?.act?.intent.startsWith('buy-') === true)
    return buyRead({ intent: 'buy-read', slots: {} }, turn);
  const place =
    saidPlace ?? (item?.words === null && item.candidates.length === 0 && !item.pointer ? item.at : null);
  const { items, unknown, named } = askedItems(act, turn);
  if (place) {
    const found = findPlace(turn, place);
    // "In the freezer", of two: a thing that was named is in either.
    if (found.found === 'several' && items.length > 0) {
      const ids = found.choices.flatMap((choice) => choice.ids);
      const inside = items.filter(({ placeId }) => ids.some((id) => placeUnder(turn.kitchen, placeId, id)));
      if (inside.length > 0) return tellItems(turn, inside);
    }
    // Of what is not here at all, no place need be asked.
    if (found.found === 'several' && !(named && items.length === 0 && act.slots.asked === 'only')) {
      const labels = found.choices.map(({ label }) => label);
      const question = say(found.sideBySide ? 'which-beside' : 'which-place', {
        choices: list(labels, true),
      });
      return { parts: [], ask: { slot: 'place', question, expecting: 'place', choices: found.choices } };
    }
    if (found.found === 'unknown') return { parts: [say('no-such-place-told', { words: found.words })] };
    if (found.found === 'one') {
      if (!named) return tellSpot(turn, found.place, found.spot);
      const inside = items.filter(({ placeId }) => placeUnder(turn.kitchen, placeId, found.place.id));
      if (inside.length > 0) return tellItems(turn, inside);
      if (items.length > 0) {
        const elsewhere = tellItems(turn, items);
        const none = notFound('not-there', { at: placeAt(turn.kitchen, found.place.id) });
        // "Only those in the freezer": where the others are was told before.
        if (act.slots.asked === 'only') return { parts: [none], count: 0, names: [] };
        return {
          ...elsewhere,
          parts: [none, ...elsewhere.parts],
        };
      }
    }
  }
  if (items.length > 0) return tellItems(turn, items);
  if (unknown) return noneLeft(turn, unknown);
  const goneName = nameOfGone(
    turn,
    [...(many ?? []), ...(item ? [item] : [])].flatMap(({ candidates }) => candidates.map(({ id }) => id)),
  );
  const gone = goneName ?? (item && !item.words ? itJustGone(turn, item) : null);
  if (gone) return noneLeft(turn, gone);
  if (named) return { parts: [notFound('nothing-like-that')], count: 0, names: [] };
  return { parts: [], ask: { slot: 'item', question: say('ask-find'), expecting: 'item' } };
};
