/** Reheating, asked for in any wording: which dish, how much of it, in what, and where it is. */
import type { Act, Slots } from '../../intents.js';
import { classed, figureOf, is, ofKind, wordsIn, type Bit, type Frame } from './bits.js';

/** Lists of `requests.json`, and the way of heating that each says. */
const methods = {
  'heat-microwave': 'microwave',
  'heat-oven': 'oven',
  'heat-hob': 'hob',
  'heat-air-fryer': 'air fryer',
  'heat-toaster': 'toaster',
  'heat-steamer': 'steamer',
} as const;

export const methodIn = (bits: readonly Bit[]): { slots: Pick<Slots, 'method'>; bits: readonly Bit[] } => {
  for (const [list, method] of Object.entries(methods)) {
    const said = classed(bits, list);
    if (said.length > 0) return { slots: { method }, bits: said };
  }
  return { slots: {}, bits: [] };
};

/** "Two portions of it", "for two people". */
export const portionsIn = (bits: readonly Bit[]): { slots: Pick<Slots, 'amount'>; bits: readonly Bit[] } => {
  for (const [at, bit] of bits.entries()) {
    const eaters = bits[at + 1];
    const value = figureOf(bit);
    if (bit.kind === 'amount' && bit.amount.unit === 'portion')
      return { slots: { amount: bit.amount }, bits: [bit] };
    if (value !== null && eaters && is(eaters, 'eaters'))
      return { slots: { amount: { value, unit: 'portion' } }, bits: [bit, eaters] };
  }
  return { slots: {}, bits: [] };
};

export const reheatingFrame: Frame = ({ bits, tokens }) => {
  const at = bits.findIndex((bit) => is(bit, 'heat-it'));
  const verb = bits[at];
  // "I heated the stew" tells: only what leads to a request stands before the verb.
  if (!verb || !bits.slice(0, at).every((bit) => is(bit, 'fill', 'opener', 'heat-lead'))) return null;
  const asked =
    at === 0 || tokens[verb.from - 1] !== 'i' || bits.slice(0, at).some((bit) => is(bit, 'heat-lead'));
  const [thing, ...others] = ofKind(bits, 'thing').filter(({ from }) => from >= verb.to);
  if (!asked || !thing || others.length > 0) return null;
  const method = methodIn(bits);
  const portions = portionsIn(bits);
  const [place] = ofKind(bits, 'place');
  const item = place ? { ...thing.mention, at: place.place } : thing.mention;
  const act: Act = { intent: 'reheat', slots: { item, ...method.slots, ...portions.slots } };
  // "Walk me through it real slow, one thing at a time", behind the dish: how it is to be read out.
  const led = bits.findIndex((bit) => is(bit, 'heat-lead') && bit.from >= thing.to);
  const manner = led < 0 ? [] : bits.slice(led).filter(({ kind }) => kind === 'word' || kind === 'unknown');
  const used = [
    ...bits.slice(0, at + 1),
    thing,
    ...method.bits,
    ...portions.bits,
    ...(place ? [place] : []),
    ...manner.filter((bit) => !is(bit, 'not', 'if', 'keep')),
  ];
  return { acts: [act], used: wordsIn(used) };
};
