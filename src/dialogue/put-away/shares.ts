/** How a batch is shared out: one record for each container. */
import type { Draft } from '../../kitchen/index.js';
import type { Id } from '../../kitchen/model.js';
import type { Slots } from '../../understanding/intents.js';
import { type Turn, say } from '../handler.js';
import { type Needed, needPlace } from '../refer/need.js';

/** Container words that count ("three tubs") make one record each; other amounts are within one. */
const containers = new Set([
  'tub', 'jar', 'bag', 'box', 'bottle', 'can', 'tin', 'carton', 'container', 'pack', 'packet', 'tray', 'dish', 'pot', 'portion',
]); // prettier-ignore
const mostContainers = 30;

export type Shares = NonNullable<Draft['shares']>;

export const oneEach = (
  amount: { value: number; unit: string },
  placeId: Id | null,
  spot: string | null,
): Shares =>
  Array.from({ length: amount.value }, () => ({ amount: { value: 1, unit: amount.unit }, placeId, spot }));

export const countsContainers = (amount: Slots['amount']): amount is NonNullable<Slots['amount']> =>
  amount !== undefined &&
  Number.isInteger(amount.value) &&
  amount.value > 1 &&
  amount.value <= mostContainers &&
  containers.has(amount.unit);

/** "Two on the top shelf, six in the chest freezer". */
export const sharesOf = (turn: Turn, slots: Slots): Needed<Shares> => {
  const all: Shares[number][] = [];
  // "Six portions in the chest, two in the fridge": portions, all of them.
  const told = [slots.amount, ...(slots.shares ?? []).map(({ amount }) => amount)];
  const counted = told.find((amount) => amount && amount.unit !== 'piece')?.unit ?? 'container';
  for (const [at, share] of (slots.shares ?? []).entries()) {
    const place = needPlace(turn, share.place, {
      slot: `share-${at}`,
      question: say('ask-place-share', { amount: { kind: 'amount', amount: share.amount } }),
      likely: true,
    });
    if ('reply' in place) return place;
    const unit = share.amount.unit === 'piece' ? (slots.amount?.unit ?? counted) : share.amount.unit;
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
