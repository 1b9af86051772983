/** Putting food away: what and where; the rest is taken as said and read back in one breath. */
import {
  type Draft,
  applyChange,
  bringBack,
  itemsMade,
  itemWithMarker,
  lastGone,
  learnedDefaults,
  likeNames,
  livingItems,
  lookAlikes,
  foodKey,
  purchaseOf,
  putAway as putAwayChange,
  spareMarkers,
} from '../../kitchen/index.js';
import type { Change, Id, Item, Preparation } from '../../kitchen/model.js';
import type { Say, Value } from '../../speech/answer.js';
import type { Mention, Slots } from '../../understanding/intents.js';
import { groupName, grouped } from '../describe/item.js';
import { placeAt } from '../describe/place.js';
import { markerNoun } from '../describe/touch.js';
import { withChange } from '../describe/refusals.js';
import { type Handler, type Reply, type Turn, about, day, list, say } from '../handler.js';
import { move } from '../move/move.js';
import { type Needed, needPlace } from '../refer/need.js';
import { needMarker } from '../refer/markers.js';
import { amend } from './amend.js';
import { makerName } from './maker-name.js';
import { preparationOf } from './preparation.js';
import { saidDates } from './said-dates.js';

/** What to call it: as this household calls it when it knows it, else as said. */
const nameOf = (turn: Turn, mention: Mention | undefined): string | null => {
  if (!mention) return touchedName(turn);
  const { words, candidates, pointer } = mention;
  const known = candidates.flatMap(({ id, fit }) =>
    fit >= 0.99 ? (turn.kitchen.items.get(id) ?? []) : [],
  )[0];
  if (words && known && foodKey(known.name) === foodKey(words)) return known.name;
  const again =
    words && /\bmore\b|\banother\b/.test(turn.heard ?? '') ? likeNames(turn.kitchen, words, 'all') : [];
  if (again[0] && again.every(({ item }) => foodKey(item.name) === foodKey(again[0]!.item.name)))
    return again[0].item.name;
  if (words) return words;
  if (known) return known.name;
  const ids = pointer === 'this' ? [turn.memory.touched?.itemId ?? null] : [...turn.memory.items];
  const pointed = pointer
    ? ids.flatMap((id) => (id ? (turn.kitchen.items.get(id) ?? []) : []))[0]
    : undefined;
  return pointed?.name ?? touchedName(turn);
};

/** A marker that is in the hand and was on something before says what comes back. */
const touchedName = (turn: Turn): string | null => {
  const { touched } = turn.memory;
  const marker = touched?.markerId ? turn.kitchen.markers.get(touched.markerId) : undefined;
  const last = marker?.lastItemId ? turn.kitchen.items.get(marker.lastItemId) : undefined;
  return last?.name ?? null;
};

const boughtAgain = ({ item, dates }: Slots): boolean =>
  item?.pointer === 'another' || dates?.bought !== undefined;

/** "I bought more ranch": what carries over from the last one that is gone. */
const earlierOf = (turn: Turn, name: string, slots: Slots): Item | null => {
  if (!boughtAgain(slots) && livingItems(turn.kitchen).some((item) => foodKey(item.name) === foodKey(name)))
    return null;
  return lastGone(turn.kitchen, name);
};

const dateWords = (dates: Item['dates']): Say[] =>
  (['made', 'bought', 'opened', 'frozen', 'useBy', 'bestBefore'] as const).flatMap((kind) => {
    const at = dates[kind];
    return at && !(kind === 'frozen' && (dates.made ?? dates.bought) === at)
      ? [say('read-back-date', { what: kind, date: day(at) })]
      : [];
  });

/** "Lentil stew, second shelf of the fridge, made today." */
const readBack = (turn: Turn, items: readonly Item[]): Say => {
  const first = items[0]!;
  const groups = grouped(items);
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
    ...dateWords(first.dates),
  ];
  const whole = groups.length === 1 ? groupName(groups[0]!) : say('item-name', { name: first.name });
  const single = groups.length === 1 && items.length === 1 && first.amount && first.amount.unit !== 'piece';
  return say(groups.length > 1 ? 'put-away-shared' : 'put-away-done', {
    item: single
      ? say('item-amount', { amount: { kind: 'amount', amount: first.amount! }, name: first.name })
      : whole,
    where,
    ...(details.length > 0 ? { details: list(details) } : {}),
  });
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

/** Container words that count ("three tubs") make one record each; other amounts are within one. */
const containers = new Set([
  'tub', 'jar', 'bag', 'box', 'bottle', 'can', 'tin', 'carton', 'container', 'pack', 'packet', 'tray', 'dish', 'pot', 'portion',
]); // prettier-ignore
const mostContainers = 30;

type Shares = NonNullable<Draft['shares']>;

const oneEach = (amount: { value: number; unit: string }, placeId: Id | null, spot: string | null): Shares =>
  Array.from({ length: amount.value }, () => ({ amount: { value: 1, unit: amount.unit }, placeId, spot }));

const countsContainers = (amount: Slots['amount']): amount is NonNullable<Slots['amount']> =>
  amount !== undefined &&
  Number.isInteger(amount.value) &&
  amount.value > 1 &&
  amount.value <= mostContainers &&
  containers.has(amount.unit);

/** "Two on the top shelf, six in the chest freezer". */
const sharesOf = (turn: Turn, slots: Slots): Needed<Shares> => {
  const all: Shares[number][] = [];
  for (const [at, share] of (slots.shares ?? []).entries()) {
    const place = needPlace(turn, share.place, {
      slot: `share-${at}`,
      question: say('ask-place-share', { amount: { kind: 'amount', amount: share.amount } }),
    });
    if ('reply' in place) return place;
    const unit = share.amount.unit === 'piece' ? (slots.amount?.unit ?? 'container') : share.amount.unit;
    const amount = { value: share.amount.value, unit };
    const { place: where, spot } = place.got;
    all.push(
      ...(countsContainers(amount) || amount.value === 1
        ? oneEach(amount, where.id, spot)
        : [{ amount, placeId: where.id, spot }]),
    );
  }
  return { got: all };
};

const saidDraft = (turn: Turn, slots: Slots): Omit<Draft, 'name'> => {
  const dates = saidDates(slots.dates);
  const maker = slots.maker ?? slots.item?.maker;
  const preparation: Preparation | null = slots.preparation ? preparationOf(slots.preparation) : null;
  const owner = slots.person?.candidates[0]?.id;
  return {
    ...(Object.keys(dates).length > 0 ? { dates } : {}),
    ...(slots.container ? { touch: slots.container } : {}),
    ...(maker ? { maker: makerName(turn, maker) } : {}),
    ...(slots.diet ? { diets: [slots.diet] } : {}),
    ...(slots.allergens ? { [slots.free ? 'freeFrom' : 'contains']: slots.allergens } : {}),
    ...(slots.caution ? { cautions: [slots.caution] } : {}),
    ...(preparation ? { preparations: [preparation] } : {}),
    ...(owner && turn.kitchen.people.has(owner) ? { ownerId: owner } : {}),
  };
};

/** "A jar of harissa with the square clip": the clip is its marker, the jar its container. */
const withFeel = (slots: Slots): Slots => {
  const touch = slots.item?.touch;
  if (!slots.item || !touch || !slots.item.words) return slots;
  const { fastening, fastenings, shape, dots, texture, spot, ...container } = touch;
  const mark = {
    ...(shape ? { shape } : {}),
    ...(fastening ? { fastening } : {}),
    ...(dots ? { dots } : {}),
  };
  const item = { ...slots.item, touch: null };
  const marker = { ...item, words: null, candidates: [], touch };
  return {
    ...slots,
    item,
    ...(fastening && !slots.marker
      ? {
          marker: {
            ...marker,
            touch: {
              ...mark,
              ...(fastenings ? { fastenings } : {}),
              ...(spot ? { spot } : {}),
              ...(texture ? { texture } : {}),
            },
          },
        }
      : {}),
    ...(Object.keys(container).length > 0 && !slots.container ? { container } : {}),
  };
};

export const putAway: Handler = (act, turn) => {
  const slots = withFeel(act.slots);
  const many = slots.items;
  if (many && many.length > 1) return putAwayMany(act.slots, turn, many);
  const name = nameOf(turn, slots.item ?? many?.[0]);
  if (!name) {
    return {
      parts: [],
      ask: {
        slot: 'item',
        question: say('ask-put-what'),
        again: say('ask-put-what-again'),
        expecting: 'words',
      },
    };
  }
  const told = justAdded(turn, slots, name);
  if (told) return amend({ intent: 'amend', slots: { ...slots, item: told } }, turn);
  const here = alreadyHere(turn, slots, name);
  if (here) return move({ intent: 'move', slots: { ...slots, item: here } }, turn);
  const marker = needMarker(turn, slots.marker ?? touchedMarker(turn, slots), { create: true });
  if ('reply' in marker) return marker.reply;
  const earlier = earlierOf(turn, name, slots);
  const learned = learnedDefaults(turn.kitchen, name);
  const shares = sharesOf(turn, slots);
  if ('reply' in shares) return shares.reply;
  // Bought again, it goes where it always does; a wrong guess is read back and easily put right.
  const again = turn.state.session?.kind === 'shop' || slots.place?.pointer === 'same' || boughtAgain(slots);
  const fallback = again ? learned?.placeId : undefined;
  const settled: Turn =
    fallback && !slots.place?.candidates.length
      ? { ...turn, picked: { place: [fallback], ...turn.picked } }
      : turn;
  const need = needPlace(settled, slots.place ?? slots.item?.at ?? undefined, {
    nearId: learned?.placeId ?? null,
    question: learned?.placeId
      ? say('ask-put-where-again-there', { name, at: placeAt(turn.kitchen, learned.placeId) })
      : say('ask-put-where', { name }),
    ...(learned?.placeId ? { guess: [learned.placeId] } : {}),
  });
  if ('reply' in need && shares.got.length === 0) return need.reply;
  const place = 'got' in need ? need.got : null;
  const markerId = marker.got?.id ?? null;
  const inUse = markerId ? itemWithMarker(marker.kitchen, markerId) : null;
  if (inUse) {
    const args = { marker: markerNoun(marker.got!), name: inUse.name };
    return {
      parts: [],
      ask: { slot: 'marker', question: say('ask-marker-in-use', args), expecting: 'marker' },
    };
  }
  const said = saidDraft(turn, slots);
  const amount = slots.amount;
  const each = countsContainers(amount) && shares.got.length === 0;
  const spread = each ? oneEach(amount, place?.place.id ?? null, place?.spot ?? null) : shares.got;
  const listed = purchaseOf(turn.kitchen, name);
  const draft: Draft = {
    name,
    ...said,
    ...(amount && !each ? { amount } : {}),
    ...(place ? { placeId: place.place.id, spot: place.spot } : {}),
    ...(markerId ? { markerId } : {}),
    ...(spread.length > 0 ? { shares: spread } : {}),
    ...(listed ? { purchaseIds: [listed.id] } : {}),
  };
  const doing = { ...turn, kitchen: marker.kitchen };
  const result = earlier ? bringBack(doing, earlier.id, draft) : putAwayChange(doing, draft);
  return withChange(turn, result, (change) =>
    recorded(turn, [...marker.changes, change], itemsMade(change), { earlier, offList: listed !== null }),
  );
};

/** "I made the soup yesterday", of the soup put away a moment ago: a date of it, not another soup. */
const justAdded = (
  turn: Turn,
  { item, dates, amount, place, shares, maker }: Slots,
  name: string,
): Mention | null => {
  if (!item || !(dates ?? maker) || amount || place || shares || item.at || turn.memory.touched) return null;
  if (item.pointer === 'another' || /\b(more|another|new)\b/.test(turn.heard ?? '')) return null;
  const ids = turn.memory.lastAdded.filter((id) => {
    const one = turn.kitchen.items.get(id);
    return one?.gone === null && foodKey(one.name) === foodKey(name);
  });
  return ids.length > 0 ? { ...item, candidates: ids.map((id) => ({ id, fit: 1 })) } : null;
};

/** "Put the milk on the third shelf", of the milk there is: it is moved, not recorded a second time. */
const alreadyHere = (turn: Turn, slots: Slots, name: string): Mention | null => {
  const { item, place, dates, amount, maker, shares, container, marker } = slots;
  const fresh = dates ?? amount ?? maker ?? shares ?? container ?? marker;
  if (!item || !place || fresh || turn.state.session?.kind === 'shop' || turn.memory.touched) return null;
  const definite =
    item.pointer !== null ||
    new RegExp(`\\b(the|that|this|my) (\\w+ )?${escaped(item.words ?? name)}\\b`, 'i').test(turn.heard ?? '');
  const same = livingItems(turn.kitchen).filter((one) => foodKey(one.name) === foodKey(name));
  if (!definite || same.length === 0) return null;
  return { ...item, candidates: same.map(({ id }) => ({ id, fit: 1 })) };
};

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** The marker in the hand goes on what is put away with it. */
const touchedMarker = (turn: Turn, slots: Slots): Mention | undefined => {
  const { touched } = turn.memory;
  const using = slots.item?.pointer === 'this' || !slots.item || turn.state.frames.length === 0;
  if (!touched || touched.itemId || !using) return undefined;
  const candidates = touched.markerId ? [{ id: touched.markerId, fit: 1 }] : [];
  return {
    words: null,
    candidates,
    pointer: 'this',
    touch: null,
    ordinal: null,
    maker: null,
    diet: null,
    at: null,
  };
};

interface Told {
  readonly earlier: Item | null;
  readonly offList: boolean;
}

const recorded = (turn: Turn, changes: readonly Change[], items: readonly Item[], told: Told): Reply => {
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
    ...carried,
    ...(told.offList ? [say('off-the-list')] : []),
    ...alikeWarning(after, first),
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
  return kept.length > 0 ? [say('kept-from-before', { what: list(kept) })] : [];
};

/** "Put the milk and the eggs on the door." */
const putAwayMany = (slots: Slots, turn: Turn, mentions: readonly Mention[]): Reply => {
  const names = mentions.flatMap((mention) => nameOf(turn, mention) ?? []);
  const place = needPlace(turn, slots.place, { question: say('ask-put-where', { name: list(names) }) });
  if ('reply' in place) return place.reply;
  const all = mentions.flatMap(
    (mention, at) =>
      alreadyHere(
        turn,
        { ...slots, item: { ...mention, pointer: mention.pointer ?? 'them' } },
        names[at] ?? '',
      ) ?? [],
  );
  if (all.length === mentions.length && /\bthe\b/.test(turn.heard ?? '')) {
    return move(
      { intent: 'move', slots: { ...slots, items: all } },
      { ...turn, picked: { ...turn.picked, place: [place.got.place.id] } },
    );
  }
  const { items: _items, item: _item, marker: _marker, ...rest } = slots;
  const replies: Reply[] = [];
  let at = turn;
  for (const mention of mentions) {
    const reply = putAway(
      { intent: 'put-away', slots: { ...rest, item: mention } },
      { ...at, picked: { place: [place.got.place.id] } },
    );
    if (!reply.changes) return reply;
    replies.push(reply);
    at = {
      ...at,
      kitchen: reply.changes.reduce((kitchen, change) => applyChange(kitchen, change), at.kitchen),
    };
  }
  const made = replies.flatMap(({ changes }) => changes ?? []).flatMap((change) => itemsMade(change));
  const where = placeAt(turn.kitchen, place.got.place.id);
  const { session } = turn.state;
  return {
    parts: [say('put-away-done', { item: list(names), where })],
    changes: replies.flatMap(({ changes }) => changes ?? []),
    names,
    count: names.length,
    memory: about(at, made),
    ...(session?.kind === 'shop'
      ? {
          session: {
            ...session,
            items: [...session.items, ...made.map(({ id }) => id)],
            placeId: place.got.place.id,
          },
        }
      : {}),
  };
};
