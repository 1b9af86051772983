/** Markers: putting them on and off, new ones, what a count on them means, care, and which are spare. */
import {
  addMarker as addMarkerChange,
  applyChange,
  countedHere,
  isRefused,
  itemWithMarker,
  mark as markChange,
  markLot,
  markerNote as markerNoteChange,
  meaningIn,
  proposeDifference,
  spareMarkers,
  unmark as unmarkChange,
  lastItemOf,
  feelAlike,
  findMarkers,
  markedNear,
  stands,
  type Care,
} from '../../kitchen/index.js';
import type { Change, Item, Marker } from '../../kitchen/model.js';
import type { Touch } from '../../terms/touch.js';
import { emptyMention, type Mention } from '../../understanding/intents.js';
import { difference } from './difference.js';
import { checkMeanings } from './checked.js';
import { alikeMarkers, careOfAll, caredFor, likeMarker, suggestMarker } from './choose.js';
import { carryMarker, swapMarkers, wasOn, wornBy } from './carried.js';
import { foundAgain, loseIt } from './lost.js';
import type { Say } from '../../speech/answer.js';
import { groupAmount } from '../describe/item.js';
import { andMore, inGroups } from '../describe/lists.js';
import { withChange } from '../describe/refusals.js';
import { markerFull, markerNoun, raised, touchNoun } from '../describe/touch.js';
import { type Handler, type Reply, type Turn, about, list, say, notFound } from '../handler.js';
import { needItem, needItems } from '../refer/need.js';
import { needMarker } from '../refer/markers.js';

const askMarker = (question: Say) => ({
  parts: [],
  ask: { slot: 'marker', question, again: say('ask-marker-again'), expecting: 'marker' as const },
});

/** A marker that feels like one on another food gets a warning and a way out: its twin anywhere, one nearly like it near by. */
const alikeWarning = (turn: Turn, marker: Marker): Say[] => {
  const item = itemWithMarker(turn.kitchen, marker.id);
  const twins = findMarkers(turn.kitchen, marker.touch).filter(
    ({ of, differs }) => of.id !== marker.id && differs.length === 0,
  );
  const near = item
    ? markedNear(turn.kitchen, item).filter(
        ({ item: other, marker: its }) =>
          other.placeId === item.placeId &&
          (other.batchId === null || other.batchId !== item.batchId) &&
          feelAlike(marker.touch, its.touch),
      )
    : [];
  // Tubs of one dish may feel alike: they are alike.
  const itsLot = ({ batchId }: Item): boolean => batchId !== null && batchId === item?.batchId;
  const [other] = [
    ...twins.flatMap(({ of }) => itemWithMarker(turn.kitchen, of.id) ?? []).filter((one) => !itsLot(one)),
    ...near.map((one) => one.item),
  ];
  if (!other) return [];
  const way = proposeDifference(turn.kitchen, marker.touch);
  return [say('marker-feels-like', { name: other.name, ...(way ? { way: difference(way) } : {}) })];
};

export const mark: Handler = (act, turn) => {
  const { slots } = act;
  if (slots.asked === 'swap') return swapMarkers(act, turn);
  if (slots.asked === 'carry') return carryMarker(act, turn);
  const marker = needMarker(turn, slots.marker ?? pointedMarker(turn) ?? lastMarker(turn), { create: true });
  if ('reply' in marker) return marker.reply;
  if (!marker.got) return askMarker(say('ask-mark-with'));
  const found = needItems(turn, slots.item, {
    question: say('ask-mark-what', { marker: markerNoun(marker.got) }),
    several: true,
  });
  if ('reply' in found) return found.reply;
  const [item, ...others] = found.got as [Item, ...Item[]];
  const ofOneLot = others.every(({ batchId }) => batchId !== null && batchId === item.batchId);
  if (others.length > 0 && ofOneLot && saysAll(slots.item))
    return markAll(turn, { ...marker, got: marker.got }, found.got);
  const doing = { ...turn, kitchen: marker.kitchen };
  const result = markChange(doing, item.id, marker.got.id, { takeIt: turn.sure });
  const noun = markerNoun(marker.got);
  if (isRefused(result) && result.refused === 'marker-in-use') {
    const on = itemWithMarker(marker.kitchen, marker.got.id);
    return {
      parts: [],
      confirm: say('confirm-take-marker', { marker: noun, from: on?.name ?? '', name: item.name }),
      memory: about(turn, [item]),
    };
  }
  const old = item.markerId ? turn.kitchen.markers.get(item.markerId) : undefined;
  return withChange(turn, result, (change) => ({
    parts: [
      say('marked', { name: item.name, marker: noun, ...(old ? { old: markerNoun(old) } : {}) }),
      ...dotsMeaning(turn, marker.got!),
      ...alikeWarning({ ...turn, kitchen: applyChange(marker.kitchen, change) }, marker.got!),
    ],
    changes: [...marker.changes, change],
    doubt: say('confirm-mark', { name: item.name, marker: noun }),
    memory: { ...about(turn, [item]), markerId: marker.got!.id },
  }));
};

/** "The ones in the tall freezer", "they all": every one of them, and not any of them. */
const saysAll = (mention: Mention | undefined): boolean =>
  mention?.pointer === 'them' || mention?.pointer === 'all' || mention?.pointer === 'both';

interface MarkerToPut {
  readonly got: Marker;
  readonly kitchen: Turn['kitchen'];
  readonly changes: readonly Change[];
}

/** "The ones in the tall freezer have three knots": each of them has. */
const markAll = (turn: Turn, { got, kitchen, changes }: MarkerToPut, lot: readonly Item[]): Reply => {
  const ids = lot.map(({ id }) => id);
  const result = markLot({ ...turn, kitchen }, ids, got.id);
  const first = lot[0]!;
  const marker = markerNoun(got);
  const amount = groupAmount({ items: lot, first }) ?? 'none';
  return withChange(turn, result, (change) => ({
    parts: [
      say('marked-all', { name: first.name, marker, amount }),
      ...dotsMeaning(turn, got),
      ...alikeWarning({ ...turn, kitchen: applyChange(kitchen, change) }, got),
    ],
    changes: [...changes, change],
    doubt: say('confirm-mark', { name: first.name, marker }),
    memory: { ...about(turn, lot), markerId: got.id },
  }));
};

const dotsMeaning = (turn: Turn, marker: Marker): Say[] => {
  const meaning = turn.kitchen.household.dotMeanings[marker.touch.dots ?? 0];
  return meaning ? [say('so-it-is', { meaning })] : [];
};

const pointedMarker = (turn: Turn) => {
  const id = turn.memory.touched?.markerId;
  const blank = { words: null, touch: null, ordinal: null, maker: null, diet: null, at: null };
  return id ? { ...blank, candidates: [{ id, fit: 1 }], pointer: 'this' as const } : undefined;
};

/** "It", after a marker was told of. */
const lastMarker = ({ memory, kitchen }: Turn): Mention | undefined => {
  const id = memory.markerId;
  return id && kitchen.markers.has(id) ? { ...emptyMention, candidates: [{ id, fit: 1 }] } : undefined;
};

/** Whether what was said of a marker can be said of this one. */
const fitsWorn = ({ kitchen }: Pick<Turn, 'kitchen'>, worn: Marker, said: Mention | undefined): boolean =>
  !said ||
  said.candidates.some(({ id }) => id === worn.id) ||
  said.words === null ||
  Object.keys(said.touch ?? {}).length === 0 ||
  findMarkers(kitchen, said.touch ?? {}).some(({ of, differs }) => of.id === worn.id && differs.length === 0);

/** "Take that patch off": the one on what was just spoken of, where it may be that. */
const wornBySpoken = ({ kitchen, memory }: Turn, said: Mention | undefined): Item | null => {
  const [item, ...others] = memory.items.flatMap((id) => kitchen.items.get(id) ?? []);
  const worn = item?.markerId ? kitchen.markers.get(item.markerId) : undefined;
  if (!item || !worn || others.length > 0) return null;
  return fitsWorn({ kitchen }, worn, said) ? item : null;
};

export const unmark: Handler = (act, turn) => {
  const { slots } = act;
  if (slots.asked === 'lost') return loseIt(act, turn);
  const worn = slots.item ? null : wornBySpoken(turn, slots.marker);
  const byMarker =
    slots.marker && !worn ? needMarker(turn, slots.marker, { create: false, spareFirst: false }) : null;
  if (byMarker && 'reply' in byMarker && !slots.item) return byMarker.reply;
  const on =
    worn ??
    (byMarker && 'got' in byMarker && byMarker.got ? itemWithMarker(turn.kitchen, byMarker.got.id) : null);
  const found =
    slots.item || !on
      ? needItem(turn, slots.item, {
          question: say('ask-unmark'),
          fitting: ({ markerId }) => markerId !== null,
        })
      : { got: on };
  if ('reply' in found) return found.reply;
  const item = found.got;
  const marker = item.markerId ? turn.kitchen.markers.get(item.markerId) : undefined;
  const other = marker && !fitsWorn(turn, marker, slots.marker);
  return withChange(turn, unmarkChange(turn, item.id), (change) => ({
    // "Take the collar off the stew", which wears a patch: another food's marker, or another marker.
    ...(other
      ? { confirm: say('confirm-unmark-other', { name: item.name, marker: markerNoun(marker) }) }
      : {}),
    parts: [say('unmarked', { name: item.name, ...(marker ? { marker: markerNoun(marker) } : {}) })],
    changes: [change],
    doubt: say('confirm-unmark', { name: item.name }),
    memory: { ...about(turn, [item]), ...(marker ? { markerId: marker.id } : {}) },
  }));
};

export const addMarker: Handler = (act, turn) => {
  if (act.slots.asked === 'found') {
    const found = foundAgain(act, turn);
    if (found) return found;
  }
  const { marker, container, dots, counted } = act.slots;
  const felt: Touch = {
    ...container,
    ...marker?.touch,
    ...(dots === undefined ? {} : { dots }),
    ...(counted === undefined || counted === 'dot' ? {} : { counted }),
  };
  const code = turn.memory.touched && !turn.memory.touched.markerId ? [turn.memory.touched.code] : [];
  if (Object.keys(felt).length === 0) return askMarker(say('ask-new-marker'));
  // One described in fewer words than another may still be its twin to a hand.
  const twins = findMarkers(turn.kitchen, felt).filter(
    ({ of, differs }) => differs.length === 0 && (of.touch.dots ?? 0) === (felt.dots ?? 0),
  );
  if (twins.length > 0 && !turn.sure) {
    const way = proposeDifference(turn.kitchen, felt);
    const on = twins.flatMap(({ of }) => itemWithMarker(turn.kitchen, of.id) ?? [])[0];
    return {
      parts: [],
      confirm: say('confirm-alike', {
        marker: touchNoun(felt),
        ...(on ? { name: on.name } : {}),
        ...(way ? { way: difference(way) } : {}),
      }),
    };
  }
  const result = addMarkerChange(turn, { touch: felt, codes: code }, { anyway: true });
  return withChange(turn, result, (change) => {
    const id = change.ops[0]!.id;
    return {
      parts: [say('marker-added', { marker: touchNoun(felt) })],
      changes: [change],
      doubt: say('confirm-add-marker', { marker: touchNoun(felt) }),
      memory: { markerId: id, touched: null },
    };
  });
};

export const markerNote: Handler = (act, turn) => {
  const { marker: mention, words } = act.slots;
  const marker = needMarker(turn, mention ?? pointedMarker(turn), { create: false, spareFirst: false });
  if ('reply' in marker) return marker.reply;
  if (!marker.got) return askMarker(say('ask-which-marker'));
  const noun = markerNoun(marker.got);
  if (!words)
    return {
      parts: [],
      ask: { slot: 'words', question: say('ask-care', { marker: noun }), expecting: 'words' },
    };
  const care = marker.got.care && marker.got.care !== words ? `${marker.got.care}, ${words}` : words;
  return withChange(turn, markerNoteChange(turn, marker.got.id, { care }), (change) => ({
    parts: [say('care-noted', { marker: noun, care })],
    changes: [change],
    doubt: say('confirm-care', { marker: noun, care }),
    memory: { markerId: marker.got!.id },
  }));
};

/** What it stands: by what is recorded, which is said in its own words, else by what it is made of. */
const careAnswer = ({ marker, what }: { marker: Marker; what: Care | undefined }): readonly Say[] => {
  const noun = markerNoun(marker);
  const { care } = marker;
  const known = what ? stands(marker, what) : null;
  if (!what || !known) {
    const recorded = care ? say('care-is', { marker: noun, care }) : say('care-unknown', { marker: noun });
    // Of this nothing is known: what is known is said, and that it does not speak of it.
    return what && care ? [say('care-not-said', { what }), recorded] : [recorded];
  }
  const by =
    known.recorded && care ? say('care-is', { marker: noun, care }) : say('care-by-make', { marker: noun });
  return [say(known.may ? 'care-may' : 'care-may-not', { what }), by];
};

export const markerCare: Handler = (act, turn) => {
  const { slots } = act;
  const worn = slots.item ? wornBy(turn, slots.item) : null;
  if (worn && 'reply' in worn) return worn.reply;
  const marker =
    worn ??
    needMarker(turn, slots.marker ?? pointedMarker(turn) ?? lastMarker(turn), {
      create: false,
      spareFirst: false,
    });
  if ('reply' in marker) return marker.reply;
  if (!marker.got) return askMarker(say('ask-which-marker'));
  return {
    parts: careAnswer({ marker: marker.got, what: caredFor(slots.words) }),
    memory: { markerId: marker.got.id },
  };
};

/** "How many dots for very soft": the count that has that meaning. */
const countMeaning = (turn: Turn, words: string): number | null => {
  const meant = meaningIn(turn.kitchen, words);
  const found = Object.entries(turn.kitchen.household.dotMeanings).find(
    ([, meaning]) => meaning.toLowerCase() === meant,
  );
  return found ? Number(found[0]) : null;
};

/** What knots or dots mean, which markers are spare, or what a count stands on. */
export const markers: Handler = (act, turn) => {
  const { asked, dots, counted, item, marker, words } = act.slots;
  if (asked === 'suggest') return suggestMarker(act, turn);
  if (asked === 'alike')
    return marker || item || turn.picked.marker ? likeMarker(act, turn) : alikeMarkers(act, turn);
  if (asked === 'was-on') return wasOn(act, turn);
  if (asked === 'checked') return checkMeanings(turn, dots ?? countMeaning(turn, words ?? ''));
  if (asked === 'cares' || asked === 'cares of those') return careOfAll(act, turn);
  const meant = asked === 'count' ? countMeaning(turn, words ?? '') : null;
  if (asked === 'count' && meant === null) return { parts: [notFound('nothing-like-that')], count: 0 };
  const ofKind = marker?.touch?.fastening ?? marker?.touch?.shape;
  const count = dots ?? meant ?? (ofKind === undefined ? marker?.touch?.dots : undefined);
  const kind = counted ?? marker?.touch?.counted ?? countedHere(turn.kitchen);
  const meanings = Object.entries(turn.kitchen.household.dotMeanings);
  if (count !== undefined) {
    const meaning = turn.kitchen.household.dotMeanings[count];
    return {
      parts: [
        meaning
          ? say('dots-mean', { dots: count, raised: raised(count, kind), meaning })
          : say('dots-mean-nothing', { dots: count, raised: raised(count, kind) }),
      ],
    };
  }
  if (asked === 'dots' || asked === 'meaning') {
    if (meanings.length === 0) return { parts: [say('no-dot-meanings', { counted: kind })] };
    const parts = meanings.map(([n, meaning]) =>
      say('dots-mean', { dots: Number(n), raised: raised(Number(n), kind), meaning }),
    );
    return { parts, count: parts.length };
  }
  const fits = marker?.touch && ofKind !== undefined ? alikeIn(turn, marker.touch) : null;
  const free = spareMarkers(turn.kitchen);
  const spare = fits ? free.filter((one) => fits.includes(one)) : free;
  if (asked === 'all' || (fits && spare.length === 0)) {
    const all = fits ?? [...turn.kitchen.markers.values()];
    if (fits && fits.length === 0)
      return { parts: [say('no-such-marker', { marker: touchNoun(marker!.touch!) })], count: 0 };
    const { first, more, left } = inGroups(all.map((one) => markerWithUse(turn, one)));
    if (all.length === 0) return { parts: [say('no-markers')], count: 0 };
    return {
      parts: [
        say('markers-all', { count: all.length, spare: spare.length, markers: list(first) }),
        ...andMore(left),
      ],
      more,
      count: all.length,
    };
  }
  if (spare.length === 0) return { parts: [say('no-spare')], count: 0 };
  const { first, more, left } = inGroups(spare.map((one) => markerWithLast(turn, one)));
  return {
    parts: [say('spare-markers', { count: spare.length, markers: list(first) }), ...andMore(left)],
    more,
    count: spare.length,
    // "Put that one on the salami".
    ...(spare.length === 1 ? { memory: { markerId: spare[0]!.id } } : {}),
  };
};

/** Those of a kind: "which magnets have we got". */
const alikeIn = ({ kitchen }: Turn, touch: Touch): readonly Marker[] =>
  findMarkers(kitchen, touch).flatMap(({ of, differs }) => (differs.length === 0 ? [of] : []));

const markerWithUse = (turn: Turn, marker: Marker): Say => {
  const on = itemWithMarker(turn.kitchen, marker.id);
  return on
    ? say('marker-on', { marker: markerNoun(marker), name: on.name })
    : say('marker-spare-short', { marker: markerNoun(marker) });
};

const markerWithLast = (turn: Turn, marker: Marker): Say => {
  const last = lastItemOf(turn.kitchen, marker);
  return last ? say('marker-was-on', { marker: markerFull(marker), name: last.name }) : markerFull(marker);
};
