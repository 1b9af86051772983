/** "When did I last check the middle drawer": of a stock-take, and of no food. */
import { ofKind, wordsIn, type Frame } from './bits.js';

export const lastCheckFrame: Frame = ({ bits, tokens, beside }) => {
  const asks = tokens.findIndex((word) => beside(word, 'check-when'));
  const last = tokens.findIndex((word) => beside(word, 'check-last'));
  const checked = tokens.findIndex((word) => beside(word, 'check-done'));
  if (asks < 0 || last < 0 || checked < 0 || asks > checked) return null;
  if (ofKind(bits, 'thing').some(({ source, fit }) => source === 'hers' && fit >= surely)) return null;
  const [place] = ofKind(bits, 'place');
  const small = tokens.flatMap((word, from) =>
    ['check-when', 'check-last', 'check-done', 'check-beside'].some((list) => beside(word, list))
      ? [{ from, to: from + 1 }]
      : [],
  );
  return {
    acts: [{ intent: 'who-did', slots: { asked: 'checked', ...(place ? { place: place.place } : {}) } }],
    used: wordsIn([...small, ...(place ? [place] : [])]),
  };
};
const surely = 0.9;
