/** The same food again: what is known of it is kept, and what differs is said once. */
import {
  anotherLike,
  copyItem,
  foodKey,
  itemsMade,
  likeNames,
  purchaseOf,
  refill,
  type Draft,
} from '../../kitchen/index.js';
import type { Item } from '../../kitchen/model.js';
import { emptyMention, type Act, type Slots } from '../../understanding/intents.js';
import { withChange } from '../describe/refusals.js';
import { type Handler, type Reply, type Turn, say, todayOf } from '../handler.js';
import { offerOf } from '../places/new-place.js';
import { needItem, needPlace } from '../refer/need.js';
import { recorded } from './recorded.js';
import { saidDraft } from './said.js';
import { countsContainers, oneEach } from './shares.js';

/** Its last one, here or gone, by the name that was said; else what was just spoken of. */
const lastOf = (turn: Turn, { item: mention }: Slots): Item | null => {
  const { kitchen, memory } = turn;
  const words = mention?.words;
  if (words) {
    const [best] = likeNames(kitchen, words, 'all');
    if (!best) return null;
    const same = likeNames(kitchen, words, 'all').filter(
      ({ item }) => foodKey(item.name) === foodKey(best.item.name),
    );
    const spokenOf = same.find(({ item }) => memory.items.includes(item.id));
    const latest = same.map(({ item }) => item).sort((a, b) => b.addedAt.localeCompare(a.addedAt))[0];
    return spokenOf?.item ?? latest ?? best.item;
  }
  const named = mention?.candidates[0]?.id;
  if (named !== undefined) return kitchen.items.get(named) ?? null;
  const spokenOf = [memory.items, memory.lastAdded]
    .map((ids) => ids.flatMap((one) => kitchen.items.get(one) ?? []))
    .find((items) => new Set(items.map(({ name }) => foodKey(name))).size === 1);
  return spokenOf?.[0] ?? null;
};

const askWhat = (): Reply => ({
  parts: [],
  ask: {
    slot: 'item',
    question: say('ask-again-what'),
    again: say('ask-put-what-again'),
    expecting: 'item',
  },
});

/** "I made more, same again": today, as with anything that is told to be done. */
const doneToday = (turn: Turn, { deed }: Slots): Pick<Slots, 'dates'> =>
  deed === 'made' || deed === 'bought' || deed === 'opened' || deed === 'frozen'
    ? { dates: { [deed]: { day: todayOf(turn) } } }
    : {};

/** "The same again", of three portions that just came in: three. */
const lotOf = ({ kitchen, memory }: Turn, item: Item, how: keyof typeof deeds): Slots['amount'] => {
  if (how !== 'new' || !memory.lastAdded.includes(item.id) || !item.amount) return undefined;
  const lot = memory.lastAdded.flatMap((id) => kitchen.items.get(id) ?? []);
  const alike = lot.every(
    ({ name, amount }) => foodKey(name) === foodKey(item.name) && amount?.unit === item.amount!.unit,
  );
  if (!alike || lot.length < 2) return undefined;
  return { ...item.amount, value: lot.reduce((sum, { amount }) => sum + (amount?.value ?? 0), 0) };
};

const deeds = { new: anotherLike, copy: copyItem, refill } as const;

/** `putAway`: what is not on record yet is put away as anything else. */
export const sameAgain = (putAway: Handler, act: Act, turn: Turn): Reply => {
  const { again, ...plain } = act.slots;
  const { slots } = act;
  const how = again ?? 'new';
  // More of one batch: which of several is asked, for their dates differ.
  const one =
    how === 'copy' ? needItem(turn, slots.item, { question: say('ask-again-what'), anyOfBatch: true }) : null;
  if (one && 'reply' in one) return one.reply;
  const item = one?.got ?? lastOf(turn, slots);
  if (!item)
    return plain.item?.words
      ? putAway({ ...act, slots: { ...plain, ...(plain.dates ? {} : doneToday(turn, slots)) } }, turn)
      : askWhat();
  const place = slots.place
    ? needPlace(turn, slots.place, {
        question: say('ask-put-where', { name: item.name }),
        offers: offerOf(turn),
        likely: true,
      })
    : null;
  if (place && 'reply' in place) return place.reply;
  const placeId = place?.got.place.id ?? item.placeId;
  const spot = place?.got.spot ?? null;
  const amount = slots.amount ?? lotOf(turn, item, how);
  // "Two more", of tubs: two tubs.
  const unit = amount?.unit === 'piece' ? (item.amountAtFirst?.unit ?? 'piece') : amount?.unit;
  const counted = amount && unit ? { ...amount, unit } : undefined;
  const each = countsContainers(counted);
  const listed = purchaseOf(turn.kitchen, item.name);
  const said: Partial<Draft> = {
    ...saidDraft(turn, slots.dates ? slots : { ...slots, ...doneToday(turn, slots) }),
    ...(place ? { placeId, spot } : {}),
    ...(counted && !each ? { amount: counted } : {}),
    ...(each ? { shares: oneEach(counted, placeId, spot) } : {}),
    ...(listed ? { purchaseIds: [listed.id] } : {}),
  };
  return withChange(turn, deeds[how](turn, item.id, said), (change) => {
    const reply = recorded(turn, [change], itemsMade(change), {
      earlier: how === 'copy' ? null : item,
      offList: listed !== null,
    });
    return how === 'refill' && leftIn(item) ? { ...reply, offer: olderDate(item, itemsMade(change)) } : reply;
  });
};

/** By the record something was in it still, and it is known from when. */
const leftIn = ({ gone, dates }: Item): boolean => gone === null && Object.keys(dates).length > 0;

/** Old and new in one container are as old as the older. */
const olderDate = (item: Item, made: readonly Item[]): NonNullable<Reply['offer']> => ({
  question: say('offer-older-date', { name: item.name }),
  act: {
    intent: 'amend',
    slots: {
      item: { ...emptyMention, candidates: made.map(({ id }) => ({ id, fit: 1 })) },
      dates: Object.fromEntries(Object.entries(item.dates).map(([kind, day]) => [kind, { day }])),
    },
  } satisfies Act,
});
