/** A marker that was lost or broke is no longer one that is spare; and one that turned up again. */
import { bringMarkerBack, findMarkers, itemWithMarker, loseMarker } from '../../kitchen/index.js';
import type { Marker } from '../../kitchen/model.js';
import type { Act } from '../../understanding/intents.js';
import { withChange } from '../describe/refusals.js';
import { markerNoun } from '../describe/touch.js';
import { type Reply, type Turn, say } from '../handler.js';
import { needMarker } from '../refer/markers.js';

/** "We've lost the ribbon", "the band on the milk broke": whatever it was on bears none now. */
export const loseIt = ({ slots }: Act, turn: Turn): Reply => {
  const meant = needMarker(turn, slots.marker, { create: false, spareFirst: false });
  if ('reply' in meant) return meant.reply;
  if (!meant.got) return { parts: [say('ask-which-marker')] };
  const { got } = meant;
  const marker = markerNoun(got);
  const on = itemWithMarker(turn.kitchen, got.id);
  return withChange(turn, loseMarker(turn, got.id), (change) => ({
    parts: [say('marker-lost', { marker, ...(on ? { name: on.name } : {}) })],
    changes: [change],
    doubt: say('confirm-lose-marker', { marker }),
    memory: { markerId: null },
  }));
};

/** As it was before it went, by the journal, the last that went first. */
const goneBefore = ({ journal, kitchen }: Turn, { slots }: Act): Marker | null => {
  const touch = slots.marker?.touch;
  for (const { ops } of journal)
    for (const op of ops)
      if (
        op.kind === 'marker' &&
        op.before &&
        !op.after &&
        !kitchen.markers.has(op.id) &&
        (!touch || findMarkers(kitchen, touch, [op.before]).some(({ differs }) => differs.length === 0))
      )
        return op.before;
  return null;
};

/** "I found the ribbon again"; null where none like it was ever lost. */
export const foundAgain = (act: Act, turn: Turn): Reply | null => {
  const lost = goneBefore(turn, act);
  if (!lost) return null;
  return withChange(turn, bringMarkerBack(turn, lost), (change) => ({
    parts: [say('marker-back', { marker: markerNoun(lost) })],
    changes: [change],
    doubt: say('confirm-add-marker', { marker: markerNoun(lost) }),
    memory: { markerId: lost.id },
  }));
};
