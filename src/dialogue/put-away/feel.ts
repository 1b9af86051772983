/** What was said of how it feels: the container, and the marker on it or in the hand. */
import type { Mention, Slots } from '../../understanding/intents.js';
import type { Turn } from '../handler.js';

/** "A jar of harissa with the wooden bead": the bead is its marker, the jar its container. */
export const withFeel = (slots: Slots): Slots => {
  const touch = slots.item?.touch;
  if (!slots.item || !touch || !slots.item.words) return slots;
  const { fastening, fastenings, shape, dots, counted, texture, spot, ...container } = touch;
  const mark = {
    ...(shape ? { shape } : {}),
    ...(fastening ? { fastening } : {}),
    ...(dots ? { dots } : {}),
    ...(counted ? { counted } : {}),
  };
  const item = { ...slots.item, touch: null };
  const marker = { ...item, words: null, candidates: [], touch };
  return {
    ...slots,
    item,
    ...(fastening && !slots.marker
      ? {
          marker: {
            ...marker,
            touch: {
              ...mark,
              ...(fastenings ? { fastenings } : {}),
              ...(spot ? { spot } : {}),
              ...(texture ? { texture } : {}),
            },
          },
        }
      : {}),
    ...(Object.keys(container).length > 0 && !slots.container ? { container } : {}),
  };
};

/** The marker in the hand goes on what is put away with it. */
export const touchedMarker = (turn: Turn, slots: Slots): Mention | undefined => {
  const { touched } = turn.memory;
  const using = slots.item?.pointer === 'this' || !slots.item || turn.state.frames.length === 0;
  if (!touched || touched.itemId || !using) return undefined;
  const candidates = touched.markerId ? [{ id: touched.markerId, fit: 1 }] : [];
  return {
    words: null,
    candidates,
    pointer: 'this',
    touch: null,
    ordinal: null,
    maker: null,
    diet: null,
    at: null,
  };
};
