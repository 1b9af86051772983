/**
 * The same food as before: "same again, made today", "I refilled the chutney jar", "copy it to two more tubs".
 * What differs is said with it; everything else is on record.
 */
import type { Amount } from '../../../terms/amount.js';
import type { Intent, Slots } from '../../intents.js';
import { itMention } from '../../intents.js';
import {
  classed,
  figureOf,
  is,
  ofKind,
  some,
  wordsIn,
  type Bit,
  type BitOf,
  type Frame,
  type Request,
} from './bits.js';
import { asks } from './last.js';

type Again = NonNullable<Slots['again']>;
const ways: readonly (readonly [list: string, again: Again])[] = [
  ['refilled', 'refill'],
  ['copied', 'copy'],
  ['same-again', 'new'],
];

const deeds = ['made', 'bought', 'frozen', 'opened'] as const;
type Deed = (typeof deeds)[number];

const deedIn = ({ beside }: Request, words: readonly string[]): Deed | undefined =>
  words.flatMap((word) => deeds.find((deed) => beside(word, deed)) ?? [])[0];

/** Each day with the deed that stands nearest before it: "made yesterday, frozen today". */
const datesOf = (request: Request, days: readonly BitOf<'day'>[]): NonNullable<Slots['dates']> =>
  Object.fromEntries(
    days.map((day) => [deedIn(request, request.tokens.slice(0, day.from).toReversed()) ?? 'made', day.past]),
  );

const amountIn = (bits: readonly Bit[]): { readonly amount: Amount; readonly bit: Bit } | null => {
  for (const bit of bits) {
    if (bit.kind === 'amount') return { amount: bit.amount, bit };
    const value = figureOf(bit);
    if (value !== null) return { amount: { value, unit: 'piece' }, bit };
  }
  return null;
};

/** Asked, wished, still to come, or reported: nothing was filled. */
const isDone = ({ bits, tokens, beside }: Request): boolean => {
  const first = bits.find((bit) => !is(bit, 'opener', 'aside'));
  return (
    !asks(bits) &&
    !(first && beside(tokens[first.from]!, 'asks-first')) &&
    !tokens.some((word) => beside(word, 'not-done')) &&
    !some(bits, 'not', 'if', 'timer', 'remind', 'to-buy', 'topic-list')
  );
};

/** With nothing named it is the food of the turn before, so that turn was about food. */
const ofFood: ReadonlySet<Intent> = new Set<Intent>([
  ...(['put-away', 'tell', 'finish', 'take', 'move', 'open', 'freeze', 'amend', 'mark', 'undo'] as const),
]);

export const againFrame: Frame = (request) => {
  const { bits, last, tokens, beside } = request;
  const said = ways.find(([list]) => some(bits, list));
  if (!said || !isDone(request) || ofKind(bits, 'clock').length > 0) return null;
  const [thing, ...others] = ofKind(bits, 'thing').filter(({ source }) => source !== 'open');
  if (others.length > 0 || (!thing && last && !ofFood.has(last.intent))) return null;
  const [place] = ofKind(bits, 'place');
  const much = amountIn(bits);
  const days = ofKind(bits, 'day');
  if (said[1] === 'copy' && !thing && !place && !much) return null;
  const dates = datesOf(request, days);
  // Bought or made anew, it is no more of that batch: its printed dates are not those.
  const again = said[1] === 'copy' && (dates.made ?? dates.bought) ? 'new' : said[1];
  // "I made more, same again": that it was made is told, and no day.
  const done = deedIn(request, tokens);
  return {
    acts: [
      {
        intent: 'put-away',
        slots: {
          item: thing?.mention ?? itMention,
          again,
          ...(place ? { place: place.place } : {}),
          ...(much ? { amount: much.amount } : {}),
          ...(days.length > 0 ? { dates } : done && again !== 'copy' ? { deed: done } : {}),
        },
      },
    ],
    used: wordsIn([
      ...classed(bits, said[0]),
      ...tokens.flatMap((word, from) =>
        ['again', ...deeds].some((list) => beside(word, list)) ? [{ from, to: from + 1 }] : [],
      ),
      ...ofKind(bits, 'pointer'),
      ...ofKind(bits, 'container'),
      ...days,
      ...(thing ? [thing] : []),
      ...(place ? [place] : []),
      ...(much ? [much.bit] : []),
    ]),
  };
};
