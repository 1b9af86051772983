/**
 * The same again of something else, right after it was done: "and also coriander", "same goes for the peppers",
 * "and another one". What was done is for the turn before to say; here stand only the things and how many.
 */
import type { Amount } from '../../../terms/amount.js';
import type { Act, Deed, Intent, LastDone, Mention, PlaceMention, Statement } from '../../intents.js';
import { itMention } from '../../intents.js';
import { classed, figureOf, is, ofKind, some, wordsIn, type Bit, type Frame } from './bits.js';
import { asks, isJust, isKnown } from './last.js';

const gone = { used: 'finished', 'thrown out': 'threw', 'given away': 'gave' } as const;
const deeds: Readonly<Partial<Record<Intent, Deed>>> = {
  'put-away': 'stored',
  take: 'took',
  move: 'moved',
  open: 'opened',
  freeze: 'froze',
  thaw: 'thawing',
  reheated: 'reheated',
  'put-back': 'put-back',
  'buy-add': 'listed',
  'buy-remove': 'unlisted',
};
const deedOf = ({ intent, how }: LastDone): Deed | undefined =>
  intent === 'finish' ? gone[how ?? 'used'] : deeds[intent];

const samePlace: PlaceMention = { words: null, candidates: [], pointer: 'same', spot: null };
const goesThere: ReadonlySet<Deed> = new Set<Deed>(['stored', 'moved']);

const statement = (deed: Deed, thing: Mention, amount: Amount | null, definite: boolean): Statement => ({
  deed,
  thing,
  definite,
  fresh: false,
  corrects: false,
  ...(amount ? { amount } : {}),
  ...(goesThere.has(deed) ? { place: samePlace } : {}),
});

/** How many or how much of it: what stands before it, with nothing but "of" between. */
const amountBefore = (bits: readonly Bit[], at: number): { amount: Amount; bit: Bit } | null => {
  let before = at - 1;
  // "One can of the tomatoes".
  while (is(bits[before], 'of', 'more', 'definite')) before -= 1;
  const bit = bits[before];
  const figure = figureOf(bit);
  if (bit?.kind === 'amount') return { amount: bit.amount, bit };
  // "One of the apples", where the word may stand for a thing as well.
  if (bit && before < at - 1 && is(bit, 'one')) return { amount: { value: 1, unit: 'piece' }, bit };
  return bit && figure !== null ? { amount: { value: figure, unit: 'piece' }, bit } : null;
};

/** Something else is told or asked of it than that the same is so. */
const saysMore = (bits: readonly Bit[]): boolean =>
  bits.some((bit) => kindsOfMore.has(bit.kind) || isInside(bit)) ||
  some(bits, 'has', 'caution', 'contains', 'note-that', 'warn-that', 'fine', 'wished', 'reported') ||
  some(bits, 'not', 'if', 'without', 'is-not', 'wrong', 'denied', 'timer', 'remind', 'wh', 'aux');
/** "There's egg in that" is what it is made of. */
const isInside = (bit: Bit): boolean => is(bit, 'in-it') && !is(bit, 'prep', 'addition');
const kindsOfMore: ReadonlySet<Bit['kind']> = new Set<Bit['kind']>([
  ...(['place', 'day', 'time', 'span', 'person', 'marker', 'container', 'share', 'ordinal'] as const),
]);

/** Words of another deed than the one that goes on; to put something is said of any. */
const anotherDeed = (bits: readonly Bit[], deed: Deed): boolean =>
  bits.some(
    (bit) =>
      bit.kind === 'word' &&
      [...bit.classes].some((name) => /^(deed|state|date):/u.test(name)) &&
      !is(bit, `deed:${deed}`, `state:${deed}`, 'deed:stored', 'fill', 'addition', 'is'),
  );

/** "And one more": of what it was done to, so many more. */
const moreOfIt = (bits: readonly Bit[], deed: Deed): { act: Act; used: readonly Bit[] } | null => {
  const more = classed(bits, 'one-more', 'more');
  const [last] = more;
  if (deed !== 'took' || !last) return null;
  const at = bits.indexOf(last);
  // "Two more", "another two".
  const figure = figureOf(bits[at - 1]) ?? figureOf(bits[at + 1]);
  if (!is(last, 'one-more') && figure === null) return null;
  const amount: Amount = { value: figure ?? 1, unit: 'piece' };
  return {
    act: { intent: 'tell', slots: { statements: [statement(deed, itMention, amount, true)] } },
    used: [...more, ...bits.filter((bit) => figureOf(bit) !== null)],
  };
};

export const additionsFrame: Frame = ({ after: bits, last }) => {
  const deed = last ? deedOf(last) : undefined;
  if (!last || !deed || asks(bits) || saysMore(bits) || anotherDeed(bits, deed)) return null;
  const opening = bits.findIndex((bit) => !is(bit, 'opener', 'fill', 'aside') || is(bit, 'and', 'addition'));
  const heads = [...(is(bits[opening], 'and') ? [bits[opening]!] : []), ...classed(bits, 'addition')];
  if (heads.length === 0 || some(bits.slice(0, opening), 'repair')) return null;
  const things = ofKind(bits, 'thing').filter((bit) => !isJust(bit, last));
  const neutral = [
    ...heads,
    ...classed(bits, 'and', 'a', 'of', 'more', 'definite', 'is', 'i', 'you', 'they'),
  ];
  const idle = [...neutral, ...ofKind(bits, 'pointer'), ...classed(bits, `deed:${deed}`, 'deed:stored')];
  if (things.length === 0) {
    const more = moreOfIt(bits, deed);
    return more ? { acts: [more.act], used: wordsIn([...idle, ...more.used]) } : null;
  }
  const told = things.map((thing) => ({ thing, much: amountBefore(bits, bits.indexOf(thing)) }));
  const statements = told.map(({ thing, much }) => {
    const before = bits[bits.indexOf(thing) - 1];
    return statement(deed, thing.mention, much?.amount ?? null, is(before, 'definite'));
  });
  return {
    acts: [{ intent: 'tell', slots: { statements } }],
    used: wordsIn([...idle, ...told.flatMap(({ thing, much }) => (much ? [thing, much.bit] : [thing]))]),
  };
};

/** "Better put some more down to buy", of what was just used up or thrown out. */
export const wantedFrame: Frame = ({ after: bits, last }) => {
  if (!last || last.intent.startsWith('buy-') || asks(bits) || saysMore(bits)) return null;
  const wanted = classed(bits, 'to-buy', 'listed-there', 'deed:listed', 'state:listed');
  const others = ofKind(bits, 'thing').some((bit) => !isJust(bit, last) && isKnown(bit));
  if (wanted.length === 0 || others || last.names.length !== 1) return null;
  const things = ofKind(bits, 'thing');
  return {
    acts: [
      { intent: 'buy-add', slots: { item: things.find((bit) => isJust(bit, last))?.mention ?? itMention } },
    ],
    used: wordsIn([
      ...wanted,
      ...things,
      ...ofKind(bits, 'pointer'),
      ...classed(bits, 'a', 'more', 'put-on', 'set', 'deed:stored', 'one-more', 'i', 'you', 'need'),
    ]),
  };
};
