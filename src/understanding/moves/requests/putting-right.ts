/**
 * What was just done, put right: what is said instead is a value of some kind, and it takes the place of the one
 * of its kind that was said before. What was denied, whose it is said of and why are no values.
 */
import type { Act, Intent, Slots } from '../../intents.js';
import { classed, figureOf, is, ofKind, some, wordsIn, type Bit, type Frame, type Request } from './bits.js';
import { saidIn, slotsOf, type Said } from './corrections.js';
import { asks, isAnyPart, isJust, hasWord, isKnown, isNamed } from './last.js';
import { wordsOfDeed } from './undoing.js';

/** What is told of food, and not of how much and where it is, puts nothing right. */
const tellsMore = (bits: readonly Bit[]): boolean =>
  some(
    bits,
    'if',
    'timer',
    'remind',
    'has',
    'caution',
    'note-that',
    'warn-that',
    'if-not',
    'low',
    'wished',
  ) ||
  bits.some(
    (bit) =>
      (is(bit, 'in-it') && !is(bit, 'prep')) ||
      (bit.kind === 'word' &&
        [...bit.classes].some((name) => name.startsWith('date:')) &&
        !is(bit, 'deed:made')),
  );

/** Done before, to be done otherwise: not another deed. */
const otherDeed = (bits: readonly Bit[], intent: Intent, swaps: boolean): boolean =>
  !swaps &&
  bits.some(
    (bit) =>
      bit.kind === 'word' &&
      [...bit.classes].some((name) => name.startsWith('deed:')) &&
      !is(
        bit,
        ...(wordsOfDeed[intent] ?? []).filter((deed) => deed !== 'deed:made'),
        'deed:stored',
        'fill',
        'repair',
        'opener',
        'change',
        'put-right',
      ),
  );

const neutral = [
  ...([
    'repair',
    'wrong',
    'denied',
    'meant',
    'put-right',
    'change',
    'except',
    'agree',
    'one',
    'is',
    'i',
    'a',
  ] as const),
  ...([
    'definite',
    'that',
    'they',
    'of',
    'by',
    'prep',
    'and',
    'but',
    'single',
    'fine',
    'state:fine',
  ] as const),
  ...([
    'direction',
    'has',
    'wh',
    'deed:made',
    'same-part',
    'apology',
    'set',
    'you',
    'from',
    'for',
    'more',
  ] as const),
];

const head = (bit: Bit | undefined): boolean => is(bit, 'repair', 'wrong', 'meant', 'put-right', 'denied');

const surelyThem = 0.9;
/** Names that nobody knows are one where something said that a name comes. */
const isValue = (bits: readonly Bit[], { bit, kind }: Said): boolean => {
  if (kind === 'place') return !isAnyPart(bit);
  if (bit.kind === 'person') return (bit.candidates[0]?.fit ?? 0) >= surelyThem;
  return kind !== 'thing' || isKnown(bit) || head(bits[bits.indexOf(bit) - 1]);
};

/** "It was Junie who made it": nobody else did. */
const cleft = (bits: readonly Bit[]): readonly Bit[] =>
  bits.filter(
    (bit, at) => is(bit, 'meant') && bits[at + 1]?.kind === 'person' && is(bits[at + 2], 'wh', 'that'),
  );

/** "The pantry one", with nothing else: of the places it might have meant, that. */
const whichOne = (bits: readonly Bit[]): readonly Bit[] =>
  bits.filter((bit, at) => is(bit, 'one') && bits[at - 1]?.kind === 'place');

/** Timers and reminders are put right by the frames that set them, but for a bare figure. */
const ofClocks: ReadonlySet<Intent> = new Set<Intent>([
  ...(['set-timer', 'change-timer', 'set-reminder', 'change-reminder'] as const),
]);

const past: ReadonlySet<Intent> = new Set<Intent>(['open', 'freeze', 'thaw', 'take', 'finish', 'move']);

const instead = (request: Request, kept: readonly Said[], denied: readonly Said[]): Slots => {
  const said = kept.reduce<Slots>((all, one) => ({ ...all, ...slotsOf(one, request) }), {});
  // "That jam's peach" is nobody's.
  const { amount, ...others } = said;
  // "Only a quarter" is part of it, and no quarter of a tub.
  if (amount?.unit === 'piece' && amount.value < 1) return { ...others, share: { fraction: amount.value } };
  const owned = request.last && said.item?.maker && hasWord(said.item.maker, request.last);
  const slots = owned && said.item ? { ...said, item: { ...said.item, maker: null } } : said;
  const not = denied.find(({ kind }) => kind === 'thing')?.bit;
  return not?.kind === 'thing' ? { ...slots, not: not.mention } : slots;
};

export const puttingRightFrame: Frame = (whole) => {
  const { after: bits, last } = whole;
  if (!last || asks(bits) || tellsMore(bits)) return null;
  const marked = [
    ...classed(bits, 'repair', 'wrong', 'denied', 'put-right', 'apology'),
    ...cleft(bits),
    ...whichOne(bits),
  ];
  if (marked.length === 0) return null;
  const request = { ...whole, bits };
  const told = saidIn(request);
  // Of a name denied, the other is the right one, whoever knows it.
  const named = told.some(({ kind, denied: no }) => kind === 'thing' && no);
  const all = told.filter((one) => (named && one.kind === 'thing') || isValue(bits, one));
  const denied = all.filter((said) => said.denied);
  const things = all.filter(({ kind, denied: no }) => kind === 'thing' && !no);
  // "The fish sauce is fine", "that jam": what it was done to, and not what is said instead.
  const others = things.filter(({ bit }) => !isJust(bit, last) && !(things.length > 1 && isNamed(bit, last)));
  const [thing] = others;
  // "A tin of beans on the third shelf, no, the fourth": another food is told of, and that is put right in itself.
  const ownRepair = thing && classed(bits, 'repair').some(({ from }) => from >= thing.bit.to);
  if (ownRepair && all.some(({ kind, bit }) => kind === 'place' && bit.to <= marked[0]!.from)) return null;
  // "No, eight eggs", of eggs, milk and juice: which of them it is said of.
  const which =
    last.names.length > 1 && !thing ? things.find(({ bit }) => isNamed(bit, last))?.bit : undefined;
  const rest = all.filter(({ kind, denied: no }) => kind !== 'thing' && !no);
  const kept = [...(thing ? [thing] : []), ...rest];
  const kinds = new Set(rest.map(({ kind }) => kind));
  // Two of a kind are more than is put right at once.
  if (kept.length === 0 || others.length > 1 || kinds.size < rest.length) return null;
  if (
    ofClocks.has(last.intent) &&
    !(last.intent === 'set-timer' && kept.length === 1 && figureOf(kept[0]!.bit) !== null)
  )
    return null;
  // A bare day leans as the date that was told: the rules know.
  if (kept.every(({ kind }) => kind === 'day') && !past.has(last.intent)) return null;
  const swaps = denied.some((one) => kept.some(({ kind }) => kind === one.kind));
  if (otherDeed(bits, last.intent, swaps || kinds.has('person'))) return null;
  // "Those peppers": nothing but what it was done to was named, and nothing of it said.
  const lastValue = Math.max(...all.map(({ bit }) => bits.indexOf(bit)), bits.indexOf(marked.at(-1)!));
  const why = bits.slice(lastValue + 1);
  // "The fridge, same shelf though".
  const part = some(bits, 'same-part') && kept.some(({ kind }) => kind === 'place');
  const slots = { ...instead(request, kept, denied), ...(part ? { asked: 'same-part' } : {}) };
  const act: Act = {
    intent: 'correct',
    slots: which?.kind === 'thing' ? { ...slots, item: which.mention } : slots,
  };
  return {
    acts: [act],
    used: wordsIn([
      ...all.map(({ bit }) => bit),
      ...classed(bits, ...neutral, ...(wordsOfDeed[last.intent] ?? [])),
      ...ofKind(bits, 'pointer'),
      ...why,
    ]),
  };
};
