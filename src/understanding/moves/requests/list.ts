/** Two things asked of the list that name no thing outright: what runs low, and what is not on it yet. */
import { classed, ofKind, some, wordsIn, type Frame } from './bits.js';

export const listFrame: Frame = ({ bits }) => {
  const things = ofKind(bits, 'thing');
  const there = classed(bits, 'listed-there');
  const unless = classed(bits, 'if-not');
  const puts = classed(bits, 'put-on', 'set');
  if (unless.length > 0 && there.length > 0 && puts.length > 0 && things.length > 0) {
    const items = things.map(({ mention }) => mention);
    return {
      acts: [{ intent: 'buy-add', slots: items.length === 1 ? { item: items[0]! } : { items } }],
      used: wordsIn([...things, ...there, ...unless, ...puts, ...classed(bits, 'wh', 'if', 'topic-list')]),
    };
  }
  const low = classed(bits, 'low');
  const what = classed(bits, 'whatever');
  if (low.length === 0 || what.length === 0 || there.length === 0 || things.length > 0) return null;
  if (some(bits, 'not', 'if', 'remind', 'timer')) return null;
  return {
    acts: [{ intent: 'buy-add', slots: { asked: 'low' } }],
    used: wordsIn([...low, ...what, ...there, ...puts]),
  };
};
