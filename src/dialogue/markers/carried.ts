/** A marker from one food to another, two that change places, and what one was on before. */
import {
  applyChange,
  itemWithMarker,
  lastItemOf,
  mark,
  swapMarkers as swapChange,
} from '../../kitchen/index.js';
import type { Id, Item, Marker } from '../../kitchen/model.js';
import type { Act, Mention } from '../../understanding/intents.js';
import { withChange } from '../describe/refusals.js';
import { markerNoun } from '../describe/touch.js';
import { type Handler, type Reply, type Turn, about, say } from '../handler.js';
import { markersMeant, needMarker } from '../refer/markers.js';
import { needItem } from '../refer/need.js';

/** The marker on what was named. */
export const wornBy = (turn: Turn, mention: Mention): { got: Marker } | { reply: Reply } => {
  const found = needItem(turn, mention, {
    question: say('ask-which-marker'),
    fitting: ({ markerId }) => markerId !== null,
  });
  if ('reply' in found) return found;
  const marker = found.got.markerId ? turn.kitchen.markers.get(found.got.markerId) : undefined;
  if (marker) return { got: marker };
  return {
    reply: { parts: [say('no-marker-on', { name: found.got.name })], memory: about(turn, [found.got]) },
  };
};

/** The food meant by its own name, or by the marker on it. */
const bearing = (turn: Turn, mention: Mention): Item | null => {
  if (mention.touch === null) return null;
  const on = markersMeant(turn, mention).flatMap(({ id }) => itemWithMarker(turn.kitchen, id) ?? []);
  return on.length === 1 ? on[0]! : null;
};

/** The two last spoken of, one after the other or together. */
const lastTwo = ({ kitchen, memory, state }: Turn): readonly Item[] => {
  const alive = (ids: readonly Id[]): Item[] =>
    [...new Set(ids)].flatMap((id) => {
      const item = kitchen.items.get(id);
      return item && item.gone === null ? [item] : [];
    });
  const pairs = [
    memory.items,
    memory.offered,
    [...memory.before, ...memory.items],
    state.asked?.subjects.slice(-2).flat() ?? [],
  ].map(alive);
  return pairs.find((pair) => pair.length === 2) ?? [];
};

/** "Swap the markers of the rice and the barley". */
export const swapMarkers: Handler = ({ slots }, turn) => {
  const got: Item[] = [];
  for (const [at, mention] of (slots.items ?? []).entries()) {
    const own = bearing(turn, mention);
    const found = own
      ? { got: own }
      : needItem(turn, mention, { slot: `item-${at}`, question: say('ask-swap') });
    if ('reply' in found) return found.reply;
    got.push(found.got);
  }
  const [one, other] = got.length === 2 ? got : lastTwo(turn);
  if (!one || !other) return { parts: [say('ask-swap')] };
  return withChange(turn, swapChange(turn, one.id, other.id), (change) => {
    const after = applyChange(turn.kitchen, change);
    const told = [one, other].map(({ id, name }) => {
      const marker = after.markers.get(after.items.get(id)?.markerId ?? '');
      return marker
        ? say('now-wears', { name, marker: markerNoun(marker) })
        : say('now-wears-none', { name });
    });
    return { parts: told, changes: [change], memory: about(turn, [one, other]) };
  });
};

/** Whose marker it is: what was named, what was spoken of, or what just went and left it behind. */
const sourceOf = (turn: Turn, mention: Mention | undefined): { got: Item } | { reply: Reply } => {
  if (mention?.pointer !== 'it')
    return needItem(turn, mention, { question: say('ask-which-marker'), slot: 'items' });
  const gone = turn.state.done?.turn === turn.state.turns || turn.state.done?.turn === turn.state.turns - 1;
  const left = gone
    ? turn.state
        .done!.changes.flatMap(({ ops }) =>
          ops.flatMap((op) => (op.kind === 'item' && op.before ? [op.before] : [])),
        )
        .find(({ markerId }) => markerId !== null)
    : undefined;
  return left ? { got: left } : needItem(turn, mention, { question: say('ask-which-marker'), slot: 'items' });
};

/** "Move the pin from the peas to the corn", "put its magnet on the soup": from where it is was said, so it is done. */
export const carryMarker = (act: Act, turn: Turn): Reply => {
  const { slots } = act;
  const source = sourceOf(turn, slots.items?.[0]);
  if ('reply' in source) return source.reply;
  const worn = source.got.markerId ? turn.kitchen.markers.get(source.got.markerId) : undefined;
  const said = slots.marker ? markersMeant(turn, slots.marker) : [];
  if (!worn)
    return { parts: [say('no-marker-on', { name: source.got.name })], memory: about(turn, [source.got]) };
  const found = needItem(turn, slots.item, { question: say('ask-mark-what', { marker: markerNoun(worn) }) });
  if ('reply' in found) return found.reply;
  const noun = markerNoun(worn);
  const to = found.got;
  // "The star from the pudding", which wears a heart: what it wears is asked about.
  const other = said.length > 0 && !said.some(({ id }) => id === worn.id);
  const old = to.markerId ? turn.kitchen.markers.get(to.markerId) : undefined;
  const from = itemWithMarker(turn.kitchen, worn.id);
  return withChange(turn, mark(turn, to.id, worn.id, { takeIt: true }), (change) => ({
    ...(other
      ? { confirm: say('confirm-take-marker', { marker: noun, from: source.got.name, name: to.name }) }
      : {}),
    parts: [
      say('marked', { name: to.name, marker: noun, ...(old ? { old: markerNoun(old) } : {}) }),
      ...(from ? [say('now-wears-none', { name: from.name })] : []),
    ],
    changes: [change],
    doubt: say('confirm-mark', { name: to.name, marker: noun }),
    memory: { ...about(turn, [to]), markerId: worn.id },
  }));
};

/** What bore it before what bears it now, by the journal where the record of the marker itself says nothing. */
const boreBefore = ({ kitchen, journal }: Turn, marker: Marker): Item | null => {
  const own = lastItemOf(kitchen, marker);
  if (own) return own;
  for (const { ops } of journal)
    for (const op of ops.toReversed()) {
      if (op.kind === 'marker' && op.id === marker.id && op.before?.lastItemId)
        return kitchen.items.get(op.before.lastItemId) ?? null;
      if (op.kind === 'item' && op.before?.markerId === marker.id && op.after?.markerId !== marker.id)
        return kitchen.items.get(op.id) ?? null;
    }
  return null;
};

/** "What was the ribbon on before?" */
export const wasOn: Handler = ({ slots }, turn) => {
  const id = turn.memory.markerId;
  const named = slots.marker ? needMarker(turn, slots.marker, { create: false, spareFirst: false }) : null;
  if (named && 'reply' in named) return named.reply;
  const marker = named?.got ?? (id ? turn.kitchen.markers.get(id) : undefined);
  if (!marker) return { parts: [say('ask-which-marker')] };
  const noun = markerNoun(marker);
  const before = boreBefore(turn, marker);
  const now = itemWithMarker(turn.kitchen, marker.id);
  return {
    parts: [
      before
        ? say('marker-bore', { marker: noun, name: before.name })
        : say('marker-bore-unknown', { marker: noun }),
      ...(now ? [say('marker-bears', { name: now.name })] : []),
    ],
    memory: { markerId: marker.id },
  };
};
