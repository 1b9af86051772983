/** What the turn before changed, for whoever hears the next: it may be put right, taken back or added to. */
import type { Change, Kitchen } from '../../kitchen/model.js';
import type { Filter } from '../../protocol/query.js';
import type { Answered, Intent, LastDone, ListAtHand, TalkedOf } from '../../understanding/intents.js';
import type { Conversation } from '../api.js';
import { shoppingList } from '../../kitchen/index.js';
import { namedBefore } from '../shopping/said.js';
import { type State, stateOf } from '../state.js';

const namesIn = (changes: readonly Change[]): readonly string[] => [
  ...new Set(
    changes.flatMap(({ ops }) =>
      ops.flatMap((op) => {
        if (op.kind === 'item' || op.kind === 'purchase') return (op.after ?? op.before)?.name ?? [];
        return op.kind === 'reminder' ? ((op.after ?? op.before)?.label ?? []) : [];
      }),
    ),
  ),
];

/** The place it was put, where that is part of another: its name says what kind of part it is. */
const partOf = (kitchen: Kitchen, changes: readonly Change[]): string | null => {
  const put = changes
    .flatMap(({ ops }) =>
      ops.flatMap((op) => {
        if (op.kind === 'place' && op.after) return [op.id];
        return op.kind === 'item' && op.after ? [op.after.placeId] : [];
      }),
    )
    .at(-1);
  const place = put ? kitchen.places.get(put) : undefined;
  return place?.parentId ? place.name : null;
};

/** Null where the turn before changed nothing. */
export const justDone = (conversation: Conversation, kitchen: Kitchen): LastDone | null => {
  const { done, turns } = stateOf(conversation);
  if (!done || done.turn !== turns - 1) return null;
  const { intent, slots } = done.act;
  return {
    intent,
    how: slots.how ?? null,
    names: namesIn(done.changes),
    part: partOf(kitchen, done.changes),
  };
};

/** The turn before told of food here: what is said now may be asked of that. */
export const toldJustNow = (conversation: Conversation): boolean => {
  const { asked, turns } = stateOf(conversation);
  return asked !== null && asked.turn === turns - 1;
};

/** The list to buy, for whoever hears the next: whether the talk is of it, and what was just spoken of. */
export const listAtHand = (conversation: Conversation, kitchen: Kitchen): ListAtHand => {
  const state = stateOf(conversation);
  const { told, turns, memory } = state;
  const talk = told?.act?.intent.startsWith('buy-') === true && turns - (told.turn ?? -9) <= 1;
  const named = memory.purchases.flatMap((id) => kitchen.purchases.get(id)?.name ?? []);
  const items = memory.items.flatMap((id) => kitchen.items.get(id)?.name ?? []);
  return {
    lines: shoppingList(kitchen).map(({ name }) => name),
    sections: [...new Set(shoppingList(kitchen).flatMap(({ section }) => section ?? []))],
    talk,
    about: talk && named.length > 0 ? named : items.length > 0 ? items : namedBefore(state),
  };
};

/** What the answer before was to, for whoever hears what follows it. */
export const answeredJustNow = (conversation: Conversation): Answered | null => {
  const { told, turns } = stateOf(conversation);
  return told?.act && turns - (told.turn ?? -9) <= 1
    ? {
        intent: told.act.intent,
        setting: told.act.slots.setting ?? null,
        ...(told.act.slots.guidance || told.act.intent === 'keeps' ? { guidance: told.act.slots } : {}),
      }
    : null;
};

const ofPlaces: ReadonlySet<Intent> = new Set<Intent>([
  'places',
  'place-state',
  'build-place',
  'rename-place',
]);
const ofMarker: ReadonlySet<Intent> = new Set<Intent>([
  'mark',
  'unmark',
  'add-marker',
  'marker-care',
  'marker-note',
]);
/** Asked of markers, and of no count on them. */
const notMeanings: ReadonlySet<string> = new Set([
  ...['all', 'alike', 'suggest', 'was-on', 'checked', 'cares', 'cares of those'],
]);

/** What the answer before was about besides food; null where it was about food, or long ago. */
export const talkedOf = (conversation: Conversation): TalkedOf | null => talkedOfIn(stateOf(conversation));

export const talkedOfIn = ({ told, asked, done, turns }: State): TalkedOf | null => {
  const marked = done?.turn === turns - 1 && done.changes.some(({ verb }) => markedBy.has(verb));
  if (marked) return 'marker';
  if (asked !== null && asked.turn === turns - 1) {
    if (asked.query.ask.includes('feel')) return 'marker';
    return asked.query.where.some(isFelt) ? 'felt' : null;
  }
  const act = told?.turn === turns - 1 ? told.act : null;
  if (!act) return null;
  const { intent, slots } = act;
  if (ofMarker.has(intent) || (intent === 'tell-about' && slots.asked === 'feel')) return 'marker';
  if (intent === 'whats-this') return 'felt';
  if (ofPlaces.has(intent)) return 'place';
  if (intent === 'define-dots') return 'meaning';
  if (intent !== 'markers') return null;
  if (slots.asked === 'was-on' || slots.asked === 'suggest') return 'marker';
  const counted = slots.dots !== undefined || slots.asked === 'dots' || slots.asked === 'count';
  return counted && !notMeanings.has(slots.asked ?? '') ? 'meaning' : 'markers';
};
/** "Which dish has the star magnet": known by a marker. */
const isFelt = (filter: Filter): boolean =>
  filter.by === 'felt' && (filter.touch.fastening ?? filter.touch.shape ?? filter.touch.dots) !== undefined;
const markedBy: ReadonlySet<string> = new Set(['marked', 'unmarked', 'added a marker']);
