/** How a container or a marker feels, in words: "large jar", "wooden bead with two knots". */
import type { Item, Kitchen, Marker } from '../../kitchen/model.js';
import { markerOf } from '../../kitchen/index.js';
import type { Say } from '../../speech/answer.js';
import type { Touch } from '../../terms/touch.js';
import { say } from '../handler.js';

const words = (...parts: (string | undefined)[]): string => parts.filter(Boolean).join(' ');

/** "large glass jar"; null when nothing is known. */
export const containerWords = (touch: Touch): string | null =>
  words(touch.size, touch.texture, touch.container) || null;

const markerWords = (touch: Touch): string =>
  words(touch.size, touch.texture, touch.shape, touch.fastening ?? (touch.shape ? 'marker' : undefined)) ||
  'marker';

/** "two knots". */
export const raised = (dots: number, counted = 'dot'): Say => say('raised', { dots, counted });

/** "wooden bead with two knots". */
export const touchNoun = (touch: Touch): Say => {
  const name = markerWords(touch);
  const count = touch.fastenings ?? 1;
  const base = count > 1 ? say('marker-several', { count, name }) : say('marker-plain', { name });
  return touch.dots !== undefined && touch.dots > 0
    ? say('marker-dots', { marker: base, raised: raised(touch.dots, touch.counted) })
    : base;
};

export const markerNoun = (marker: Marker): Say =>
  Object.keys(marker.touch).length === 0 ? say('marker-coded') : touchNoun(marker.touch);

/** With where it sits on the container, for finding it by hand. */
export const markerFull = (marker: Marker): Say =>
  marker.touch.spot
    ? say('marker-spot', { marker: markerNoun(marker), spot: marker.touch.spot })
    : markerNoun(marker);

/** How an item is known by hand: "large jar with the wooden bead"; null when nothing is recorded. */
export const itemFeel = (kitchen: Kitchen, item: Item): Say | null => {
  const container = containerWords(item.touch);
  const marker = markerOf(kitchen, item);
  if (container && marker) return say('feel-both', { container, marker: markerNoun(marker) });
  if (container) return say('feel-container', { container });
  if (marker) return say('feel-marker', { marker: markerNoun(marker) });
  return null;
};
