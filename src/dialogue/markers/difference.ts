/** The least that would set a marker apart, in words: "one knot", "the neck". */
import type { Say } from '../../speech/answer.js';
import type { Touch } from '../../terms/touch.js';
import { raised } from '../describe/touch.js';
import { say } from '../handler.js';

export const difference = (touch: Touch): Say => {
  if (touch.dots !== undefined) return say('add-dots', { raised: raised(touch.dots, touch.counted) });
  if (touch.spot) return say('move-to-spot', { spot: touch.spot });
  return say('use-two');
};
