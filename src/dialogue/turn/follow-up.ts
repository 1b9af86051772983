/** "What about the milk?", "and the butter": what was asked or done last, again, of something else. */
import type { Kitchen, PlaceKind } from '../../kitchen/model.js';
import type { Act, Intent, PlaceMention, Slots } from '../../understanding/intents.js';
import { rootPlace } from '../describe/place.js';
import type { Work } from './work.js';
import { assent } from '../handler.js';
import { findItems } from '../refer/items.js';
import { runAct, saying, turnOf } from './work.js';
import { cutTalkedOf } from '../outages/the-cut.js';

/** What can be asked or done again of another thing, place, person or day. */
const again: Readonly<Partial<Record<Intent, readonly (keyof Slots)[]>>> = {
  find: ['item', 'place'],
  count: ['item', 'place'],
  'tell-about': ['item'],
  'how-old': ['item'],
  'item-date': ['item'],
  keeps: ['item', 'place'],
  'use-first': ['place', 'when'],
  reheat: ['item', 'method', 'amount', 'number', 'from_state', 'preparation'],
  'thaw-plan': ['item', 'when'],
  'cook-temperature': ['item'],
  'left-out': ['item'],
  contains: ['item', 'place'],
  'can-eat': ['person', 'item'],
  'who-allergic': ['person'],
  'who-did': ['person', 'item'],
  'what-changed': ['person', 'when'],
  'how-to-reach': ['item'],
  'place-state': ['place'],
  places: ['place'],
  'marker-care': ['item'],
  'buy-read': ['item'],
  take: ['item', 'amount'],
  finish: ['item', 'amount'],
  move: ['item', 'amount', 'place'],
  open: ['item'],
  freeze: ['item', 'amount', 'place'],
  thaw: ['item', 'amount'],
  reheated: ['item'],
  'put-back': ['item'],
  undo: ['item'],
  'put-away': ['item', 'amount', 'place'],
  'buy-add': ['item', 'amount'],
  'buy-remove': ['item'],
};

/** What another thing does not share with the one before: its own name, amounts and dates. */
const ownOf: readonly (keyof Slots)[] = [
  'items',
  'marker',
  'amount',
  'left',
  'share',
  'shares',
  'dates',
  'container',
];

const without = (slots: Slots, keys: readonly (keyof Slots)[]): Slots =>
  Object.fromEntries(Object.entries(slots).filter(([key]) => !(keys as string[]).includes(key)));

const STATES: Readonly<Partial<Record<PlaceKind, Slots['from_state']>>> = {
  fridge: 'fridge',
  freezer: 'freezer',
  pantry: 'pantry',
  cupboard: 'pantry',
  counter: 'room',
};

/** "And in the freezer?", of how long food keeps: any freezer. */
const stateIn = (kitchen: Kitchen, { candidates }: PlaceMention): Slots['from_state'] => {
  const root = rootPlace(kitchen, candidates[0]?.id ?? null);
  return root ? STATES[root.kind] : undefined;
};

/** Lists that may be told again in part: "only the ones in the fridge". */
const narrowable: ReadonlySet<Intent> = new Set<Intent>([
  'find',
  'use-first',
  'contains',
  'can-eat',
  'no-date',
  'count',
  'how-old',
  'keeps',
]);

const narrowed = (last: Act, { place, maker, diet, container }: Slots): Act | null =>
  narrowable.has(last.intent) && (place ?? maker ?? diet ?? container)
    ? {
        intent: last.intent,
        slots: {
          ...last.slots,
          ...(last.intent === 'find' ? { asked: 'only' } : {}),
          ...(place ? { place } : {}),
          ...(maker ? { maker } : {}),
          ...(diet ? { diet } : {}),
          ...(container ? { container } : {}),
        },
      }
    : null;

const placedAt = ({ item }: Slots, place: PlaceMention): Slots => ({
  place,
  ...(item ? { item: { ...item, at: null } } : {}),
});

/** The act that is meant, or null when what was said is no more than a name. */
export const meantAgain = (
  kitchen: Kitchen,
  last: Act | null | undefined,
  { slots: said }: Act,
): Act | null => {
  if (last && said.asked === 'only') return narrowed(last, said);
  const takes = last ? again[last.intent] : undefined;
  if (!last || !takes) return null;
  const many = said.items && takes.includes('item') ? { items: said.items } : {};
  const fitting = takes.filter((slot) => said[slot] !== undefined);
  if (fitting.length === 0 && !said.items) return null;
  const given = Object.fromEntries(fitting.map((slot) => [slot, said[slot]])) as Slots;
  const named = given.item !== undefined || said.items !== undefined;
  // "Where is the milk?" "And in the pantry?": what is there, not whether the milk is.
  const place = given.place !== undefined && last.intent === 'find' ? (['item', 'items'] as const) : [];
  const sought = named && last.intent === 'find' ? (['place'] as const) : [];
  if (last.intent === 'keeps' && given.place && !named) {
    const state = stateIn(kitchen, given.place);
    return state
      ? { intent: 'keeps', slots: { ...without(last.slots, ['place']), from_state: state } }
      : null;
  }
  const kept = without(last.slots, [...(named ? [...ownOf, 'item' as const] : []), ...place, ...sought]);
  // "And butter on the top shelf": there, and not where the milk went.
  const told = last.intent === 'put-away' || (last.intent === 'move' && last.slots.asked === 'stands');
  const at = told ? (given.place ?? given.item?.at ?? null) : null;
  return { intent: last.intent, slots: { ...kept, ...given, ...many, ...(at ? placedAt(given, at) : {}) } };
};

/** A name that fits what is here only in part is not enough to change anything by. */
const surelyNamed = 0.9;
const halfNamed = ({ slots }: Act): boolean =>
  [slots.item, ...(slots.items ?? [])].some(
    (one) =>
      one && one.words !== null && one.candidates[0] !== undefined && one.candidates[0].fit < surelyNamed,
  );

/**
 * With nothing it could be the same as, it is asked what is there, or told what is known.
 * @param doubtfully runs an act that was not surely meant: a change is asked about first.
 */
export const followUp = (work: Work, act: Act, doubtfully: (work: Work, act: Act) => Work): Work => {
  const meant = meantAgain(work.kitchen, work.state.told?.act, act);
  // "What about the butter?" finishes nothing without a yes.
  const doubtful = meant && (halfNamed(meant) || (meant.intent === 'finish' && work.qualifiers.has('about')));
  if (meant) return doubtful ? doubtfully(work, meant) : runAct(work, meant);
  const { item, items, place, person, when, method, from_state: from } = act.slots;
  // "In the microwave then", after how it thaws or how hot it gets.
  if (method ?? from) return runAct(work, { intent: 'reheat', slots: act.slots });
  // "And the milk?", of a power cut.
  const last = work.state.told?.act?.intent;
  const ofOutage = cutTalkedOf(work) && (last === 'power-cut' || last === 'power-back');
  // Of several of one name, where they are; of one, all that is known.
  const several = item && new Set(findItems(turnOf(work), item).items.map(({ placeId }) => placeId)).size > 1;
  const plain = several && !work.qualifiers.has('by-age') ? 'find' : 'tell-about';
  if (item ?? items) return runAct(work, { intent: ofOutage ? 'keeps' : plain, slots: act.slots });
  if (place) return runAct(work, { intent: 'find', slots: { place } });
  if (person) return runAct(work, { intent: 'can-eat', slots: { person } });
  if (when) return runAct(work, { intent: 'use-first', slots: { when } });
  return saying(work, assent('nothing-was-asked'));
};
