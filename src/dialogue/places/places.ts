/** The place tree by voice: built, renamed, removed, told; and how full it is. */
import {
  applyChange,
  buildPlaces,
  isRefused,
  itemsAt,
  joinChanges,
  move as moveChange,
  noteFilled,
  placeCounts,
  placesIn,
  placeUnder,
  removePlace as removePlaceChange,
  renamePlace as renamePlaceChange,
} from '../../kitchen/index.js';
import type { Change, Id, Item, PlaceKind } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import type { PlaceMention } from '../../understanding/intents.js';
import { andMore, groupSize, inGroups } from '../describe/lists.js';
import { placeAt, placeNoun } from '../describe/place.js';
import { refusal, withChange } from '../describe/refusals.js';
import { type Handler, type Reply, type Turn, about, ago, list, say } from '../handler.js';
import { needPlace } from '../refer/need.js';
import { findPlace } from '../refer/places.js';
import { isWholeKind, kindNamed, recordKind } from './place-kinds.js';

/** "The chest freezer has three baskets", "I have a chest freezer". */
export const buildPlace: Handler = (act, turn) => {
  if (act.slots.asked === 'fullness') return noteFullness(act, turn);
  const { placeKind, placeNames, number, amount, place, words, asked, alsoParts } = act.slots;
  const names = placeNames ?? (words ? [ownName(turn, words, placeKind)] : undefined);
  const kind =
    kindNamed(placeKind, turn.locale) ??
    kindNamed(names?.[0], turn.locale) ??
    // "The drop zone in the pantry": of no kind that has a name, and part of another, it is a shelf of it.
    (names && place ? 'shelf' : null);
  const said = number ?? amount?.value;
  // "There's a new place in the pantry": what it is called tells what it is.
  if ((asked === 'new' || asked === 'new part') && !names)
    return { parts: [], ask: { slot: 'words', question: say('ask-build-name'), expecting: 'words' } };
  if (!kind)
    return { parts: [], ask: { slot: 'words', question: say('ask-build-what'), expecting: 'words' } };
  const top = isWholeKind(kind) && !place;
  const parent = top
    ? null
    : needPlace(turn, asked === 'new part' ? outerOf(turn, place) : place, {
        question: say('ask-build-where', { kind }),
      });
  if (parent && 'reply' in parent) {
    // A fridge nobody told of yet, with shelves: the fridge is made along with them.
    const outer = findPlace(turn, place);
    const parentKind = outer.found === 'unknown' ? kindNamed(outer.words, turn.locale) : null;
    if (outer.found === 'unknown' && parentKind && isWholeKind(parentKind))
      return buildWhole(turn, outer.words, parentKind, [
        { kind, count: said ?? 1 },
        ...(alsoParts ?? []).flatMap((part) => partOf(part)),
      ]);
    return parent.reply;
  }
  const parentId = parent?.got.place.id ?? null;
  if (parentId && alsoParts)
    return buildParts(turn, parentId, [
      { kind, count: said ?? 1 },
      ...alsoParts.flatMap((part) => partOf(part)),
    ]);
  const have = placesIn(turn.kitchen, parentId).filter((one) => one.kind === kind).length;
  const count = asked === 'more' && parentId ? have + (said ?? 1) : said;
  const named = names && (count === undefined || names.length > 1 || top) ? names : undefined;
  const wanted = { kind, parentId, ...(named ? { names: named } : { count: count ?? 1 }) };
  const fallback = !named && top ? { kind, parentId, names: [placeKind ?? kind] } : wanted;
  return withChange(turn, buildPlaces(turn, fallback), (change) => {
    const made = change.ops.filter((op) => op.kind === 'place' && op.before === null).map(({ id }) => id);
    const where = parentId ? placeNoun(turn.kitchen, parentId) : null;
    const parts = [
      where && named
        ? say('built-named', { place: where, names: list(named) })
        : where
          ? say('built-in', { place: where, kind, count: count ?? made.length })
          : say('built', { names: list(named ?? [placeKind ?? kind]) }),
    ];
    return {
      parts,
      changes: [change],
      doubt: say('confirm-build', { kind, count: count ?? made.length }),
      // What was given a name is spoken of: "I put the cumin there".
      memory: { placeId: (named && made.length === 1 ? made[0] : parentId) ?? made[0] ?? null },
    };
  });
};

/** "A shelf in the pantry", that is new: what the shelves of hers that fit are part of. */
const outerOf = ({ kitchen }: Turn, place: PlaceMention | undefined): PlaceMention | undefined => {
  const parent = kitchen.places.get(place?.candidates[0]?.id ?? '')?.parentId;
  return place && parent ? { ...place, candidates: [{ id: parent, fit: 1 }], words: null } : place;
};

/** "A bread shelf" is called bread shelf; "a shelf called bread" just bread. */
const ownName = (turn: Turn, words: string, kind: string | undefined): string =>
  kind && !turn.qualifiers.has('called') && !words.endsWith(kind) ? `${words} ${kind}` : words;

interface Part {
  readonly kind: PlaceKind;
  readonly count: number;
}

const partOf = ({ kind, count }: { kind: string; count: number }): Part[] => {
  const known = recordKind(kind);
  return known ? [{ kind: known, count }] : [];
};

const partWords = ({ kind, count }: Part): Say => say('place-part', { kind, count });

/** Several kinds of parts of one place; those it has already count as told. */
const partChanges = (turn: Turn, parentId: Id, parts: readonly Part[]): Change[] => {
  const changes: Change[] = [];
  let { kitchen } = turn;
  for (const { kind, count } of parts) {
    const made = buildPlaces({ ...turn, kitchen }, { kind, parentId, count });
    if (isRefused(made)) continue;
    changes.push(made);
    kitchen = applyChange(kitchen, made);
  }
  return changes;
};

const buildParts = (turn: Turn, parentId: Id, parts: readonly Part[]): Reply => {
  const place = placeNoun(turn.kitchen, parentId);
  const told = list(parts.map(partWords));
  const [first, ...rest] = partChanges(turn, parentId, parts);
  if (!first) return { parts: [say('has-those-already', { place, parts: told })] };
  return {
    parts: [say('built-parts', { place, parts: told })],
    changes: [joinChanges(first, ...rest)],
    doubt: say('confirm-build-parts', { place, parts: told }),
    memory: { placeId: parentId },
  };
};

/** A fridge, freezer or cupboard nobody told of yet, and how it is divided. */
export const buildWhole = (turn: Turn, name: string, kind: PlaceKind, parts: readonly Part[]): Reply => {
  const outer = buildPlaces(turn, { kind, parentId: null, names: [name] });
  if (isRefused(outer)) return refusal(turn, outer);
  const parentId = outer.ops[0]!.id;
  const within = { ...turn, kitchen: applyChange(turn.kitchen, outer) };
  const changes = partChanges(within, parentId, parts);
  const place = say('place-whole', { name });
  const [only] = parts;
  return {
    parts: [
      only && parts.length === 1
        ? say('built-in', { place, kind: only.kind, count: only.count })
        : say('built-parts', { place, parts: list(parts.map(partWords)) }),
    ],
    changes: [joinChanges(outer, ...changes)],
    memory: { placeId: parentId },
  };
};

export const renamePlace: Handler = (act, turn) => {
  const { place, words, spelled } = act.slots;
  const found = needPlace(turn, place, { question: say('ask-rename-what') });
  if ('reply' in found) return found.reply;
  const name = spelled ?? words;
  const old = placeNoun(turn.kitchen, found.got.place.id);
  if (!name)
    return {
      parts: [],
      ask: { slot: 'words', question: say('ask-rename-to', { place: old }), expecting: 'words' },
    };
  return withChange(turn, renamePlaceChange(turn, found.got.place.id, name), (change) => ({
    parts: [say('renamed', { place: old, name })],
    changes: [change],
    doubt: say('confirm-rename', { place: old, name }),
    memory: { placeId: found.got.place.id },
  }));
};

/** How full a place was said to be: kept with the day, since only who looks can know it. */
const noteFullness: Handler = ({ slots }, turn) => {
  const found = needPlace(turn, slots.place, { question: say('ask-full-what') });
  if ('reply' in found) return found.reply;
  const { id } = found.got.place;
  const place = placeNoun(turn.kitchen, id);
  const share = slots.number ?? 100;
  return withChange(turn, noteFilled(turn, id, share), (change) => ({
    parts: [say('filled-noted', { place, filled: say('filled', { share }) })],
    changes: [change],
    memory: { placeId: id },
  }));
};

/** What is in a place that is done away with, put where it is now: moved at once, for that was told. */
const emptied = (
  turn: Turn,
  held: readonly Item[],
  to: { readonly placeId: Id; readonly spot: string | null },
): { readonly kitchen: Turn['kitchen']; readonly changes: readonly Change[] } =>
  held.reduce<{ kitchen: Turn['kitchen']; changes: readonly Change[] }>(
    ({ kitchen, changes }, item) => {
      const moved = moveChange({ ...turn, kitchen }, item.id, to);
      return isRefused(moved)
        ? { kitchen, changes }
        : { kitchen: applyChange(kitchen, moved), changes: [...changes, moved] };
    },
    { kitchen: turn.kitchen, changes: [] },
  );

export const removePlace: Handler = ({ slots }, turn) => {
  const gone = slots.from ?? slots.place;
  const found = needPlace(turn, gone, { slot: 'from', question: say('ask-remove-place') });
  if ('reply' in found) return found.reply;
  const { id } = found.got.place;
  const place = placeNoun(turn.kitchen, id);
  const held = itemsAt(turn.kitchen, id);
  if (held.length > 0) {
    const args = {
      place,
      count: held.length,
      items: list(held.slice(0, groupSize).map(({ name }) => name)),
      more: Math.max(0, held.length - groupSize),
    };
    // Asked again with where they go, it is this place that is emptied and taken away.
    const from = { words: null, candidates: [{ id, fit: 1 }], pointer: null, spot: null };
    const act = { intent: 'remove-place' as const, slots: { from } };
    if (!slots.from || !slots.place)
      return {
        parts: [],
        ask: { slot: 'place', question: say('place-not-empty', args), expecting: 'place' },
        askFor: act,
      };
    const to = needPlace(turn, slots.place, { question: say('ask-where-instead', args), nearId: id });
    if ('reply' in to) return to.reply;
    if (placeUnder(turn.kitchen, to.got.place.id, id)) return { parts: [say('place-itself', { place })] };
    const { kitchen, changes } = emptied(turn, held, { placeId: to.got.place.id, spot: to.got.spot });
    const removed = removePlaceChange({ ...turn, kitchen }, id);
    if (isRefused(removed)) return refusal(turn, removed);
    return {
      parts: [
        say('moved', {
          name: list(held.map(({ name }) => name)),
          at: placeAt(turn.kitchen, to.got.place.id),
        }),
        say('place-removed', { place }),
      ],
      changes: [...changes, removed],
      memory: { ...about(turn, held), placeId: to.got.place.id },
    };
  }
  return withChange(turn, removePlaceChange(turn, id), (change) => ({
    parts: [say('place-removed', { place })],
    changes: [change],
    confirm: say('confirm-remove-place', { place }),
  }));
};

/** "What bins are there": every one of that kind, each with what it is part of. */
const placesOfKind = (turn: Turn, kind: PlaceKind, parentId: Id | null): Reply => {
  const those = [...turn.kitchen.places.values()].filter(
    (place) => place.kind === kind && (parentId === null || placeUnder(turn.kitchen, place.id, parentId)),
  );
  if (those.length === 0) return { parts: [say('no-places-of-kind', { kind })], count: 0 };
  const names = those.map(({ id, name }) => (parentId ? name : placeNoun(turn.kitchen, id)));
  const { first, more, left } = inGroups(names);
  return {
    parts: [say('places-of-kind', { count: those.length, kind, places: list(first) }), ...andMore(left)],
    more,
    count: those.length,
    names: those.map(({ name }) => name),
    memory: { placeId: parentId ?? those[0]!.parentId ?? those[0]!.id },
  };
};

export const places: Handler = (act, turn) => {
  const found = findPlace(turn, act.slots.place);
  const parentId = found.found === 'one' ? found.place.id : null;
  const kind = kindNamed(act.slots.placeKind, turn.locale);
  // "Which shelves are there in the pantry": the crate is told, too, where all its other parts are shelves.
  if (kind && !(parentId && placesIn(turn.kitchen, parentId).every((one) => one.kind === kind)))
    return placesOfKind(turn, kind, parentId);
  const inside = placesIn(turn.kitchen, parentId);
  if (parentId) {
    const place = placeNoun(turn.kitchen, parentId);
    if (inside.length === 0)
      return { parts: [say('place-undivided', { place })], count: 0, memory: { placeId: parentId } };
    const { first, more, left } = inGroups(inside.map(({ name }) => name));
    return {
      parts: [say('place-parts', { place, count: inside.length, parts: list(first) }), ...andMore(left)],
      more,
      count: inside.length,
      names: inside.map(({ name }) => name),
      memory: { placeId: parentId },
    };
  }
  if (inside.length === 0) return { parts: [say('no-places')], count: 0 };
  const all = inside.map(({ id, name }) => {
    const parts = placesIn(turn.kitchen, id);
    if (act.slots.asked === 'tour' && parts.length > 0)
      return say('place-tour', { name, parts: list(parts.map((part) => part.name)) });
    return parts.length > 0
      ? say('place-with-parts', { name, count: parts.length })
      : say('place-whole', { name });
  });
  const { first, more, left } = inGroups(all);
  return {
    parts: [say('places-all', { count: inside.length, places: list(first) }), ...andMore(left)],
    more,
    count: inside.length,
  };
};

/** This many things on one shelf or in one basket is called crowded. Common practice; our own figure. */
const crowded = 8;

/** "Which freezer has room": nobody measured it, but how many things are in each is on record. */
const wholeOfKind = (turn: Turn, kind: PlaceKind): Reply | null => {
  const those = [...turn.kitchen.places.values()].filter((place) => place.kind === kind && !place.parentId);
  if (those.length === 0) return null;
  const counted = those
    .map((place) => ({ place, items: itemsAt(turn.kitchen, place.id).length }))
    .sort((a, b) => a.items - b.items);
  const [least] = counted;
  const entries = counted.map(({ place, items }) =>
    say('place-count', { place: placeNoun(turn.kitchen, place.id), count: items }),
  );
  const empty = placeCounts(turn.kitchen, least!.place.id)
    .filter(({ items, place }) => items === 0 && place.id !== least!.place.id)
    .slice(0, groupSize)
    .map(({ place }) => placeNoun(turn.kitchen, place.id));
  return {
    parts: [
      say('place-counts', { places: list(entries) }),
      ...(empty.length > 0 ? [say('empty-within', { places: list(empty) })] : []),
      say('room-not-known'),
    ],
    count: counted.length,
    memory: { placeId: least!.place.id },
  };
};

interface Counted {
  readonly id: Id;
  readonly items: number;
}

/** Every place of that kind, or of those named, with how many things are in it, the fewest first. */
const partsByRoom = (turn: Turn, kind: PlaceKind, mention: PlaceMention | undefined): readonly Counted[] => {
  const within = (mention?.candidates ?? []).map(({ id }) => id);
  return [...turn.kitchen.places.values()]
    .filter(
      ({ id, kind: its }) =>
        its === kind && (!mention || within.some((outer) => placeUnder(turn.kitchen, id, outer))),
    )
    .map(({ id }) => ({ id, items: itemsAt(turn.kitchen, id).length }))
    .sort((a, b) => a.items - b.items);
};

const tellRoom = (those: readonly Counted[], turn: Turn, fullest: boolean): Reply => {
  const inTurn = fullest ? [...those].reverse() : those;
  const entries = inTurn.map(({ id, items }) =>
    say('place-count', { place: placeNoun(turn.kitchen, id), count: items }),
  );
  const { first, more, left } = inGroups(entries);
  return {
    parts: [
      say(fullest ? 'place-counts-down' : 'place-counts', { places: list(first) }),
      ...andMore(left),
      ...(fullest ? [] : [say('room-not-known')]),
    ],
    more,
    count: those.length,
    memory: { placeId: inTurn[0]!.id },
  };
};

export const placeState: Handler = (act, turn) => {
  const { asked, place: mention, placeKind } = act.slots;
  const kind = kindNamed(placeKind, turn.locale);
  const whole = kind ? wholeOfKind(turn, kind) : null;
  if (whole && asked !== 'full') return whole;
  const those = kind && (asked === 'room' || asked === 'full') ? partsByRoom(turn, kind, mention) : [];
  if (those.length > 0) return tellRoom(those, turn, asked === 'full');
  const found = findPlace(turn, mention);
  if (found.found === 'one') {
    const { id } = found.place;
    const count = itemsAt(turn.kitchen, id).length;
    const place = placeNoun(turn.kitchen, id);
    const { filled } = found.place;
    const said = filled
      ? say('filled-told', {
          place,
          filled: say('filled', { share: filled.hundredths }),
          when: ago(filled.at),
        })
      : null;
    const parts: Say[] = [
      ...(said ? [said] : []),
      say(count === 0 ? 'place-empty' : count >= crowded ? 'place-crowded' : 'place-has-room', {
        place,
        count,
      }),
    ];
    const empty = placeCounts(turn.kitchen, id).filter((one) => one.items === 0 && one.place.id !== id);
    // What was said of it is the answer; what is on record of it stands besides.
    if (said && asked === 'fullness')
      return { parts: [said], details: parts.slice(1), count, memory: { placeId: id } };
    if (asked === 'fullness') parts.push(say('room-not-known'));
    if (count > 0 && empty.length > 0)
      parts.push(
        say('empty-within', {
          places: list(empty.slice(0, groupSize).map((one) => placeNoun(turn.kitchen, one.place.id))),
        }),
      );
    return { parts, count, memory: { placeId: id } };
  }
  const counts = placeCounts(turn.kitchen);
  if (asked === 'full' || asked === 'crowded' || turn.qualifiers.has('full')) {
    const full = counts.filter(({ items }) => items >= crowded);
    const fullest = counts[0];
    if (full.length === 0 && fullest)
      return {
        parts: [say('none-crowded', { at: placeAt(turn.kitchen, fullest.place.id), count: fullest.items })],
      };
    const entries = full.map(({ place, items }) =>
      say('place-count', { place: placeNoun(turn.kitchen, place.id), count: items }),
    );
    const { first, more, left } = inGroups(entries);
    return {
      parts: [say('places-crowded', { count: full.length, places: list(first) }), ...andMore(left)],
      more,
      count: full.length,
    };
  }
  const empty = counts.filter(({ items }) => items === 0);
  if (empty.length === 0) {
    const least = counts.at(-1);
    return least
      ? { parts: [say('none-empty', { at: placeAt(turn.kitchen, least.place.id), count: least.items })] }
      : { parts: [say('no-places')] };
  }
  const { first, more, left } = inGroups(empty.map(({ place }) => placeNoun(turn.kitchen, place.id)));
  return {
    parts: [say('places-empty', { count: empty.length, places: list(first) }), ...andMore(left)],
    more,
    count: empty.length,
  };
};
