/** Words for a feel that mean what was recorded in other words. */
import type { Touch } from '../../terms/touch.js';

const shapes: Readonly<Record<string, string>> = {
  triangular: 'triangle',
  circular: 'round',
  circle: 'round',
  rectangular: 'rectangle',
  starry: 'star',
};

/** As recorded: "triangular" is "triangle". */
export const plainTouch = (touch: Touch): Touch =>
  touch.shape && shapes[touch.shape] ? { ...touch, shape: shapes[touch.shape]! } : touch;

/** Ways a described feel may be meant, likeliest first: "wide" may be said of a jar or of its band. */
export const waysMeant = (said: Touch): readonly Touch[] => {
  const touch = plainTouch(said);
  const { size, ...rest } = touch;
  if (!size || Object.keys(rest).length === 0) return [touch];
  return [touch, ...(rest.texture ? [] : [{ ...rest, texture: size }]), rest];
};
