/** Lines of the list as they are said: what, how much of it, which kind, from where and for whom. */
import type { Amount } from '../../../../terms/amount.js';
import type { Mention, PersonMention } from '../../../../protocol/mentions.js';
import { itMention, type ListAtHand, type SaidLine } from '../../../intents.js';
import { figureOf, is, type Bit } from '../bits.js';
import { isIdle } from './pieces.js';

export interface Talk {
  readonly bits: readonly Bit[];
  readonly tokens: readonly string[];
  readonly list: ListAtHand;
  /** What was said before in the same breath was of the list. */
  readonly implied?: true;
}

export interface ReadLines {
  readonly lines: readonly SaidLine[];
  /** The pieces that name them. */
  readonly things: readonly Bit[];
  /** Shop, kind or person was said of one. */
  readonly more: boolean;
  /** Pieces that no line took, and that say something. */
  readonly left: readonly Bit[];
}

type Draft = { -readonly [K in keyof SaidLine]: SaidLine[K] };

const themMention: Mention = { ...itMention, pointer: 'them' };

export const amountOf = (bit: Bit | undefined): Amount | null => {
  const figure = figureOf(bit);
  if (bit?.kind === 'amount') return bit.amount;
  return figure === null ? null : { value: figure, unit: 'piece' };
};

const surelyThem = 0.8;
export const personIn = (bit: Bit | undefined): PersonMention | null =>
  bit?.kind === 'person' && (bit.candidates[0]?.fit ?? 0) >= surelyThem
    ? { words: bit.words, candidates: bit.candidates }
    : null;

const wordsOf = (tokens: readonly string[], from: number, to: number): string =>
  tokens.slice(from, to).join(' ');

/** The piece after it that says something. */
const nextOf = (bits: readonly Bit[], at: number): number => {
  let next = at + 1;
  while (
    next < bits.length &&
    is(bits[next], 'else-on', 'fill', 'kind-is', 'more') &&
    bits[next]!.kind === 'word'
  )
    next += 1;
  return next;
};

/** Where it is bought: "from the fish market", "at Kowalski's". */
const shopAt = (
  { bits, tokens }: Talk,
  at: number,
  named: boolean,
): { shop: string | null; to: number } | null => {
  if (!is(bits[at], 'from')) return null;
  const next = nextOf(bits, at);
  const shop = bits[next];
  if (!shop) return null;
  if (is(shop, 'shop-kind')) return { shop: wordsOf(tokens, shop.from, shop.to), to: next + 1 };
  if (is(shop, 'some-time', 'topic', 'there')) return { shop: null, to: next + 1 };
  // A name nobody knows is a shop's where nothing else is named after it.
  const name =
    shop.kind === 'person' || shop.kind === 'unknown' || (shop.kind === 'thing' && shop.source === 'open');
  return named && name && bits.slice(next + 1).every((bit) => isIdle(bit) || is(bit, 'topic', 'there'))
    ? { shop: wordsOf(tokens, shop.from, shop.to), to: next + 1 }
    : null;
};

/** "The unsweetened kind", "the big bag", after what it is of. */
const kindAt = ({ bits, tokens }: Talk, at: number): { note: string; to: number } | null => {
  const bit = bits[at]!;
  if (bit.kind === 'container') return { note: wordsOf(tokens, bit.from, bit.to), to: at + 1 };
  if (!is(bit, 'kind-is')) return null;
  const head = bits.findIndex((one, index) => index > at && is(one, 'kind-head'));
  const between = bits.slice(at + 1, head);
  if (head < 0 || between.length === 0 || between.length > 3) return null;
  if (between.some((one) => is(one, 'topic', 'and', 'put', 'need') || amountOf(one) !== null)) return null;
  return { note: wordsOf(tokens, bit.from, bits[head]!.to), to: head + 1 };
};

/** Which kind, or what for, up to where something else begins. */
const noteAt = ({ bits, tokens }: Talk, at: number): { note: string; to: number } | null => {
  if (!is(bits[at], 'of-kind')) return null;
  let to = at + 1;
  while (
    to < bits.length &&
    !is(bits[to], 'topic', 'there') &&
    !(is(bits[to], 'and') && (amountOf(bits[to + 1]) ?? bits[to + 1]?.kind === 'thing'))
  )
    to += 1;
  while (to > at + 1 && is(bits[to - 1], 'prep', 'else-on') && isIdle(bits[to - 1])) to -= 1;
  return to > at + 1 ? { note: wordsOf(tokens, bits[at]!.from, bits[to - 1]!.to), to } : null;
};

const isPointer = (bit: Bit | undefined): boolean =>
  bit?.kind === 'pointer' || (is(bit, 'it', 'them') && !is(bit, 'topic', 'there'));

/** `skips`: what the verb of it is, which takes nothing. */
export const readLines = (talk: Talk, skips: readonly string[]): ReadLines => {
  const { bits } = talk;
  const lines: Draft[] = [];
  const things: Bit[] = [];
  const left: Bit[] = [];
  let pending: { amount: Amount; more: boolean } | null = null;
  let whose: PersonMention | null = null;
  let mended = false;
  let more = false;
  let pointed = false;
  let several = false;
  const last = (): Draft | undefined => lines.at(-1);
  for (let at = 0; at < bits.length; at += 1) {
    const bit = bits[at]!;
    const shop = shopAt(talk, at, things.length > 0);
    if (shop) {
      for (const line of lines) if (shop.shop) line.shop ??= shop.shop;
      more ||= shop.shop !== null;
      at = shop.to - 1;
      continue;
    }
    if (is(bit, 'for') && last()) {
      const next = nextOf(bits, at);
      if (last()!.person && is(bits[next], 'whoever')) {
        at = next;
        continue;
      }
      const person = personIn(bits[next]);
      if (person) {
        last()!.person = person;
        more = true;
        at = next;
        continue;
      }
    }
    const person = personIn(bit);
    if (person && is(bits[at + 1], 'wants')) {
      pending ??= null;
      const line: Draft = { item: itMention, person };
      lines.push(line);
      more = true;
      at += 1;
      continue;
    }
    // "Theo's cereal".
    if (person && bits[at + 1]?.kind === 'thing') {
      whose = person;
      continue;
    }
    const note = last() ? (kindAt(talk, at) ?? noteAt(talk, at)) : null;
    if (note && last()) {
      last()!.note = note.note;
      more = true;
      at = note.to - 1;
      continue;
    }
    const amount = amountOf(bit);
    if (amount) {
      const says = { amount, more: bits.slice(Math.max(0, at - 1), at + 2).some((one) => is(one, 'more')) };
      const inside = bit.kind === 'amount' && bit.more === true;
      const next = bits[nextOf(bits, at)];
      const leads = next?.kind === 'thing' || !last();
      // "A five pound bag": so much of it, and what it comes in.
      if (leads) pending ??= { ...says, more: says.more || inside };
      else if (last()!.amount === undefined || mended) last()!.amount = amount;
      else left.push(bit);
      continue;
    }
    if (bit.kind === 'thing') {
      if (bit.mention.at) {
        left.push(bit);
        continue;
      }
      const open = last();
      const filled = open && open.item === itMention && open.person && things.length === 0;
      if (mended && lines.length > 0) {
        lines.pop();
        things.pop();
      }
      mended = false;
      const line: Draft = filled ? { ...open, item: bit.mention } : { item: bit.mention };
      if (filled) lines.pop();
      if (pending) line.amount = pending.amount;
      if (pending?.more) line.more = true;
      if (whose) {
        line.person = whose;
        more = true;
      }
      whose = null;
      pending = null;
      lines.push(line);
      things.push(bit);
      continue;
    }
    if (isPointer(bit)) {
      pointed = true;
      several ||= is(bit, 'them') || (bit.kind === 'pointer' && bit.mention.pointer === 'them');
      continue;
    }
    if (is(bit, 'repair') && lines.length > 0) {
      mended = true;
      continue;
    }
    if (isIdle(bit) || is(bit, ...skips, 'topic', 'there', 'more', 'repair', 'some-time', 'one')) continue;
    left.push(bit);
  }
  // Nothing by name: what the talk before was about.
  if (lines.length === 0 && (pointed || pending)) {
    const line: Draft = { item: several ? themMention : itMention };
    if (pending) line.amount = pending.amount;
    if (pending?.more) line.more = true;
    lines.push(line);
  } else if (pending && lines.length > 0 && last()!.amount === undefined) last()!.amount = pending.amount;
  return { lines, things, more, left };
};
