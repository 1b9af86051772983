/** Putting food away: what and where; the rest is taken as said and read back in one breath. */
import {
  foodKey,
  type Doing,
  type Draft,
  type Result,
  applyChange,
  bringBack,
  isRefused,
  itemsMade,
  itemWithMarker,
  joinChanges,
  markLot,
  buyRemove as buyRemoveChange,
  purchaseOf,
  putAway as putAwayChange,
} from '../../kitchen/index.js';
import { withChange } from '../describe/refusals.js';
import { markerNoun } from '../describe/touch.js';
import { type Act, type Slots, type Statement, emptyMention } from '../../understanding/intents.js';
import type { Id, Item, Purchase } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import { placeAt } from '../describe/place.js';
import { type Handler, type Reply, type Turn, about, say } from '../handler.js';
import { move } from '../move/move.js';
import { offerOf } from '../places/new-place.js';
import { needMarker } from '../refer/markers.js';
import { needPlace } from '../refer/need.js';
import { besideOf } from '../refer/places.js';
import { sameAgain } from './again.js';
import { amend } from './amend.js';
import { touchedMarker, withFeel } from './feel.js';
import { alreadyHere, earlierOf, justAdded, sameJustNow, secondOf } from './known.js';
import { nameOf } from './name.js';
import { recorded } from './recorded.js';
import { saidDraft } from './said.js';
import { putAwayMany } from './several.js';
import { countsContainers, oneEach, sharesOf } from './shares.js';
import { usualPlace } from './usual-place.js';

/** What is there already, as a question about it says it. */
const asItStands = ({ kitchen }: Turn, { name, amount, placeId }: Item): NonNullable<Say['args']> => ({
  name,
  amount: amount ? { kind: 'amount', amount } : 'none',
  at: placeAt(kitchen, placeId),
});

/** The same as was told a moment ago: as much again, or else what is new in it is of that. */
const isItMore = (turn: Turn, slots: Slots, again: Item): Reply => {
  const { dates, allergens, free, maker, diet, caution } = slots;
  const told = {
    ...(dates ? { dates } : {}),
    ...(allergens ? (free ? { freeFrom: allergens } : { contains: allergens }) : {}),
    ...(maker ? { maker } : {}),
    ...(diet ? { diets: [diet] } : {}),
    ...(caution ? { cautions: [caution] } : {}),
  };
  const thing = { ...emptyMention, words: again.name };
  const fact: Statement = {
    ...{ deed: 'fact', thing, definite: true, fresh: false, corrects: false, newest: true },
    ...told,
  };
  return {
    parts: [],
    confirm: say('confirm-another', asItStands(turn, again)),
    memory: about(turn, [again]),
    ...(Object.keys(told).length > 0
      ? { otherwise: { intent: 'tell' as const, slots: { statements: [fact] } } }
      : {}),
  };
};

/** Of several containers, each has the marker, or its like. */
const putMarked = (doing: Doing, put: Result, markerId: Id): Result => {
  if (isRefused(put)) return put;
  const ids = itemsMade(put).map(({ id }) => id);
  const marked = markLot({ ...doing, kitchen: applyChange(doing.kitchen, put) }, ids, markerId);
  return isRefused(marked) ? marked : joinChanges(put, marked);
};

/** It is more of it, or else that one is what was put there. */
const isItAnother = (turn: Turn, { amount, place }: Slots, there: Item): Reply => ({
  parts: [],
  confirm: say('confirm-second', asItStands(turn, there)),
  memory: about(turn, [there]),
  otherwise: {
    intent: 'move',
    slots: {
      item: { ...emptyMention, words: there.name, candidates: [{ id: there.id, fit: 1 }] },
      ...(amount ? { amount } : {}),
      ...(place ? { place } : {}),
    },
  },
});

/** "I bought the lemons", of what is on the list: it is off it, wherever they go. */
const offTheList = (turn: Turn, name: string, { dates }: Slots, reply: Reply): Reply => {
  const line = dates?.bought ? purchaseOf(turn.kitchen, name) : null;
  const change = line ? buyRemoveChange(turn, [line.id]) : null;
  if (!line || !change || isRefused(change)) return reply;
  const count = turn.kitchen.purchases.size - 1;
  return {
    ...reply,
    parts: [say('taken-off-list', { items: line.name, count }), ...reply.parts],
    noted: [...(reply.noted ?? []), change],
  };
};

/** Bought a moment ago, with no word of where it goes: as many as stood on the list. */
const justTickedOff = ({ state: { done } }: Turn, name: string): Purchase | null =>
  (done?.changes ?? [])
    .flatMap(({ verb, ops }) => (verb === 'bought' ? ops : []))
    .flatMap((op) => (op.kind === 'purchase' && op.before && !op.after ? [op.before] : []))
    .find((line) => foodKey(line.name) === foodKey(name)) ?? null;

/** "I bought the lemons", of which four were to be bought: four. */
const asListed = (act: Act, turn: Turn): Act => {
  const { dates, amount, shares, share, items } = act.slots;
  if (!dates?.bought || amount || shares || share || items) return act;
  const name = nameOf(turn, act.slots.item);
  const line = name ? (purchaseOf(turn.kitchen, name) ?? justTickedOff(turn, name)) : null;
  return line?.amount ? { ...act, slots: { ...act.slots, amount: line.amount } } : act;
};

export const putAway: Handler = (said, turn) => {
  const act = asListed(said, turn);
  if (act !== said) {
    // How many is known no longer once it is off the list.
    const reply = putAway(act, turn);
    return reply.ask && !reply.askFor ? { ...reply, askFor: act } : reply;
  }
  if (act.slots.again) return sameAgain(putAway, act, turn);
  const slots = withFeel(act.slots);
  const many = slots.items;
  if (many && many.length > 1) return putAwayMany(putAway, act.slots, turn, many);
  const name = nameOf(turn, slots.item ?? many?.[0]);
  if (!name) {
    return {
      parts: [],
      ask: {
        slot: 'item',
        question: say('ask-put-what'),
        again: say('ask-put-what-again'),
        expecting: 'name',
      },
    };
  }
  const told = justAdded(turn, slots, name);
  if (told) return amend({ intent: 'amend', slots: { ...slots, item: told } }, turn);
  const here = alreadyHere(turn, slots, name);
  if (here) {
    // What was said of it now is no longer heard when a question about it is answered.
    const moving: Act = { intent: 'move', slots: { ...slots, item: here } };
    const reply = move(moving, turn);
    return reply.ask && !reply.askFor ? { ...reply, askFor: moving } : reply;
  }
  const marker = needMarker(turn, slots.marker ?? touchedMarker(turn, slots), { create: true });
  if ('reply' in marker) return marker.reply;
  const earlier = earlierOf(turn, name, slots);
  const shares = sharesOf(turn, slots);
  if ('reply' in shares) return shares.reply;
  const usual = usualPlace(turn, name, slots);
  // A wrong guess is read back and easily put right: "in the freezer".
  const settled: Turn =
    usual && !slots.place?.candidates.length && !slots.place?.words && !besideOf(turn, slots.place ?? {})
      ? { ...turn, picked: { place: [usual], ...turn.picked } }
      : turn;
  const need = needPlace(settled, slots.place ?? slots.item?.at ?? undefined, {
    nearId: usual,
    question: say('ask-put-where', { name }),
    offers: offerOf(turn),
    likely: true,
  });
  if ('reply' in need && shares.got.length === 0) return offTheList(turn, name, slots, need.reply);
  const place = 'got' in need ? need.got : null;
  const again = place && !marker.got ? sameJustNow(turn, slots, name, place.place.id) : null;
  if (again) return isItMore(turn, slots, again);
  const second = place ? secondOf(turn, slots, name) : null;
  if (second) return isItAnother(turn, slots, second);
  const markerId = marker.got?.id ?? null;
  const inUse = markerId ? itemWithMarker(marker.kitchen, markerId) : null;
  if (inUse) {
    const args = { marker: markerNoun(marker.got!), name: inUse.name };
    return {
      parts: [],
      ask: { slot: 'marker', question: say('ask-marker-in-use', args), expecting: 'marker' },
    };
  }
  const facts = saidDraft(turn, slots);
  const amount = slots.amount;
  const each = countsContainers(amount) && shares.got.length === 0;
  const spread = each ? oneEach(amount, place?.place.id ?? null, place?.spot ?? null) : shares.got;
  const listed = purchaseOf(turn.kitchen, name);
  const draft: Draft = {
    name,
    ...facts,
    ...(amount && !each ? { amount } : {}),
    ...(place ? { placeId: place.place.id, spot: place.spot } : {}),
    ...(markerId && spread.length === 0 ? { markerId } : {}),
    ...(spread.length > 0 ? { shares: spread } : {}),
    ...(listed ? { purchaseIds: [listed.id] } : {}),
  };
  const doing = { ...turn, kitchen: marker.kitchen };
  const put = earlier ? bringBack(doing, earlier.id, draft) : putAwayChange(doing, draft);
  const result = markerId && spread.length > 0 ? putMarked(doing, put, markerId) : put;
  return withChange(turn, result, (change) =>
    recorded(turn, [...marker.changes, change], itemsMade(change), { earlier, offList: listed !== null }),
  );
};
