/**
 * What puts right: a constituent denied and one of its kind said instead, or a figure, day or place after "no" or
 * "that's right, except". Which deed it corrects is for the record of the conversation to say.
 */
import { itMention, type Act, type SaidDate, type Slots } from '../../intents.js';
import { classed, figureOf, is, ofKind, some, wordsIn, type Bit, type Frame, type Request } from './bits.js';

const kinds = ['thing', 'place', 'person', 'marker', 'amount', 'day', 'time', 'span'] as const;
type Kind = (typeof kinds)[number];

export interface Said {
  readonly kind: Kind;
  readonly bit: Bit;
  readonly denied: boolean;
}

const kindOf = (bit: Bit): Kind | null =>
  bit.kind === 'number' ? 'amount' : (kinds.find((kind) => kind === bit.kind) ?? null);

/** Every constituent, and whether it was denied: "not the pantry" is, and the fridge after it is not. */
export const saidIn = ({ bits }: Request): readonly Said[] => {
  let denying: Bit | null = null;
  return bits.flatMap((bit, at): Said[] => {
    if (is(bit, 'denied')) denying = bit;
    const kind = kindOf(bit);
    if (!kind) return [];
    const joined = is(bits[at - 1], 'between-hours') && at > 1;
    const denied =
      denying !== null && bits.slice(bits.indexOf(denying) + 1, at).every((one) => is(one, 'fill'));
    if (denied && !joined) denying = null;
    return [{ kind, bit, denied }];
  });
};

/** A day that something is due leans ahead, any other back. */
const dayOf = (bit: Bit, ahead: boolean): SaidDate | undefined =>
  bit.kind === 'day' ? (ahead ? bit.future : bit.past) : undefined;

export const slotsOf = ({ kind, bit }: Said, { expecting }: Request): Slots => {
  const figure = figureOf(bit);
  if (bit.kind === 'thing') return { item: bit.mention };
  if (bit.kind === 'place') return { place: bit.place };
  if (bit.kind === 'person') return { person: { words: bit.words, candidates: bit.candidates } };
  if (bit.kind === 'marker') return { marker: bit.mention };
  if (bit.kind === 'span') return { duration: bit.seconds };
  if (bit.kind === 'time') return { time: bit.time };
  if (bit.kind === 'amount') return { amount: bit.amount };
  if (kind === 'amount' && figure !== null) return { amount: { value: figure, unit: 'piece' } };
  const when = dayOf(bit, expecting === 'day-or-hour');
  return when ? { when } : {};
};

/** Nothing but a day and what it is of. */
const ofDates = (bits: readonly Bit[]): boolean =>
  new Set(ofKind(bits, 'day').map(({ future }) => JSON.stringify(future))).size === 1 &&
  ofKind(bits, 'thing').length <= 1 &&
  bits.every(({ kind }) => datePieces.has(kind));
const datePieces: ReadonlySet<Bit['kind']> = new Set<Bit['kind']>([
  'day',
  'word',
  'thing',
  'pointer',
  'unknown',
]);

/** "The use by's actually the twentieth", "it says best before June": a date of what was spoken of. */
const dated = (request: Request): { act: Act; used: readonly Bit[] } | null => {
  const { bits } = request;
  const day = ofKind(bits, 'day').at(-1);
  const useBy = classed(bits, 'use-by');
  const words = [...useBy, ...classed(bits, 'best-before')];
  // "Put Saturday on it as the use by", "change the use by to Saturday": where nothing else is put or changed.
  const orders = ofDates(bits) ? classed(bits, 'set', 'change') : [];
  const heads = [...classed(bits, 'wrong', 'repair', 'says'), ...orders];
  const known = ofKind(bits, 'thing').find(({ fit }) => fit > 0);
  if (!day || words.length === 0 || heads.length === 0 || some(bits, 'wh', 'if')) return null;
  const dates = useBy.length > 0 ? { useBy: day.future } : { bestBefore: day.future };
  return {
    act: { intent: 'amend', slots: { item: known?.mention ?? itMention, dates } },
    used: [...ofKind(bits, 'day'), ...words, ...heads, ...(known ? [known] : [])],
  };
};

/** How far into the sentence "no" still opens it. */
const opening = 3;

export const correctionsFrame: Frame = (request) => {
  const { bits } = request;
  const date = dated(request);
  if (date) return { acts: [date.act], used: wordsIn(date.used) };
  if (some(bits, 'wh', 'if', 'timer', 'remind', 'if-not', 'low')) return null;
  // "Is it in the pantry, not the fridge" asks.
  if (is(bits[0], 'guess-end')) return null;
  const said = saidIn(request);
  const agreed = some(bits.slice(0, opening), 'agree') ? classed(bits, 'except') : [];
  const heads = [...classed(bits, 'wrong'), ...agreed, ...classed(bits, 'repair')];
  // Nothing but an interjection stands before: "I have no eggs" puts nothing right.
  const opens =
    agreed.length > 0 ||
    heads.some((bit) =>
      bits.slice(0, bits.indexOf(bit)).every((one) => is(one, 'opener', 'aside', 'repair', 'wrong')),
    );
  // Of a kind denied and said anew, only that is put right, whatever else was named.
  const denied = said.filter((one) => one.denied);
  const anew = denied.flatMap((one) => {
    const others = said.filter(({ kind, denied: no }) => kind === one.kind && !no);
    const instead = others.find(({ bit }) => bit.from > one.bit.from) ?? others[0];
    return instead ? [{ one, instead }] : [];
  });
  const neutral = [...heads, ...classed(bits, 'denied', 'meant', 'agree', 'same-part', 'says', 'change')];
  const [swap] = anew;
  // After a request of its own in the same breath, it puts that right and nothing before.
  const early = swap && (opens || bits.findIndex((bit) => is(bit, 'denied', 'repair')) <= opening);
  const after = swap && bits.indexOf(swap.instead.bit) <= 1;
  if (swap && (early || after)) {
    const part = some(bits, 'same-part') ? { asked: 'same-part' } : {};
    const not = swap.one.bit.kind === 'thing' ? { not: swap.one.bit.mention } : {};
    // "Six lemons, not four": how many of what.
    const beside = swap.one.kind === 'thing' ? 'amount' : swap.one.kind === 'amount' ? 'thing' : null;
    const besides = said.find(({ kind, denied: no }) => kind === beside && !no);
    return {
      acts: [
        {
          intent: 'correct',
          slots: {
            ...slotsOf(swap.instead, request),
            ...(besides ? slotsOf(besides, request) : {}),
            ...part,
            ...not,
          },
        },
      ],
      used: wordsIn([...neutral, ...said.map(({ bit }) => bit)]),
    };
  }
  if (!opens || denied.length > 0) return null;
  const last = said.at(-1);
  const [kind, ...others] = new Set(said.map((one) => one.kind));
  // "Make that six lemons": how many of what.
  const counted = said.length === 2 && said[0]!.kind === 'amount' && last?.kind === 'thing';
  if (counted && last)
    return {
      acts: [{ intent: 'correct', slots: { ...slotsOf(said[0]!, request), ...slotsOf(last, request) } }],
      used: wordsIn([...neutral, ...said.map(({ bit }) => bit)]),
    };
  if (!last || !kind || others.length > 0 || kind === 'thing' || kind === 'marker') return null;
  // "That's not right, it was made on Monday": of which date is said as well, and that is told.
  if (kind === 'day' && some(bits, 'done-on')) return null;
  // "There's one more hiding in the bag, so make that three": what stands before the last word of it is why.
  const mends = bits[bits.indexOf(last.bit) - 1];
  const reason = mends && is(mends, 'repair') ? bits.slice(0, bits.indexOf(mends)) : [];
  return {
    acts: [{ intent: 'correct', slots: slotsOf(last, request) }],
    used: wordsIn([...neutral, ...said.map(({ bit }) => bit), ...reason]),
  };
};
