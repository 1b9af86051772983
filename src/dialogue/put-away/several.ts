/** Several foods in one sentence. */
import { applyChange, itemsMade } from '../../kitchen/index.js';
import type { Mention, Slots } from '../../understanding/intents.js';
import { placeAt } from '../describe/place.js';
import { type Handler, type Reply, type Turn, about, list, say, onRecord } from '../handler.js';
import { move } from '../move/move.js';
import { needPlace } from '../refer/need.js';
import { alreadyHere } from './known.js';
import { nameOf } from './name.js';

/** "Put the milk and the eggs on the door." */
export const putAwayMany = (
  putAway: Handler,
  slots: Slots,
  turn: Turn,
  mentions: readonly Mention[],
): Reply => {
  const names = mentions.flatMap((mention) => nameOf(turn, mention) ?? []);
  const place = needPlace(turn, slots.place, { question: say('ask-put-where', { name: list(names) }) });
  if ('reply' in place) return place.reply;
  const all = mentions.flatMap(
    (mention, at) =>
      alreadyHere(
        turn,
        { ...slots, item: { ...mention, pointer: mention.pointer ?? 'them' } },
        names[at] ?? '',
      ) ?? [],
  );
  if (all.length === mentions.length && turn.qualifiers.has('definite')) {
    return move(
      { intent: 'move', slots: { ...slots, items: all } },
      { ...turn, picked: { ...turn.picked, place: [place.got.place.id] } },
    );
  }
  const { items: _items, item: _item, marker: _marker, ...rest } = slots;
  const replies: Reply[] = [];
  let at = turn;
  for (const mention of mentions) {
    const reply = putAway(
      { intent: 'put-away', slots: { ...rest, item: mention } },
      { ...at, picked: { place: [place.got.place.id] } },
    );
    if (!reply.changes) return reply;
    replies.push(reply);
    at = {
      ...at,
      kitchen: reply.changes.reduce((kitchen, change) => applyChange(kitchen, change), at.kitchen),
    };
  }
  const made = replies.flatMap(({ changes }) => changes ?? []).flatMap((change) => itemsMade(change));
  const where = placeAt(turn.kitchen, place.got.place.id);
  const { session } = turn.state;
  return {
    parts: [onRecord('put-away-done', { item: list(names), where })],
    changes: replies.flatMap(({ changes }) => changes ?? []),
    names,
    count: names.length,
    memory: about(at, made),
    ...(session?.kind === 'shop'
      ? {
          session: {
            ...session,
            items: [...session.items, ...made.map(({ id }) => id)],
            placeId: place.got.place.id,
          },
        }
      : {}),
  };
};
