/** Taking back, one deed or several, and taking back the taking back. */
import { classed, figureOf, some, wordsIn, type Frame } from './bits.js';

export const undoingFrame: Frame = ({ bits }) => {
  if (some(bits, 'wh', 'if', 'timer', 'remind')) return null;
  const again = classed(bits, 'redo');
  if (again.length > 0) return { acts: [{ intent: 'redo', slots: {} }], used: wordsIn(again) };
  const back = classed(bits, 'take-back');
  const figures = bits.filter((bit) => figureOf(bit) !== null);
  const both = classed(bits, 'both');
  const number = both.length > 0 ? 2 : figureOf(figures[0]);
  if (back.length === 0 || (number === null && back.length < 2)) return null;
  return {
    acts: [{ intent: 'undo', slots: { number: number ?? 2 } }],
    used: wordsIn([...back, ...both, ...figures, ...classed(bits, 'not')]),
  };
};
