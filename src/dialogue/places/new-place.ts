/**
 * "In the bread bin", "the fridge door", of which nobody told yet. What stands by itself and has no rival is
 * made along with what goes there, and said back; what might be a mishearing of another is offered first.
 */
import { applyChange, buildPlaces, isRefused, joinChanges, placesIn } from '../../kitchen/index.js';
import type { Change, Id, Kitchen, Place, PlaceKind } from '../../kitchen/model.js';
import type { Say } from '../../speech/answer.js';
import type { PlaceStep } from '../../protocol/mentions.js';
import type { Act, PlaceMention, Slots } from '../../understanding/intents.js';
import { placeNoun, rootPlace } from '../describe/place.js';
import { refusal } from '../describe/refusals.js';
import { type Handler, type Reply, type Turn, list, say } from '../handler.js';
import { isWholeKind, kindNamed } from './place-kinds.js';

const NEW = 'new:';

/** What a "yes" to the offer settles the place as; null for what can only be part of another place. */
export const offerOf =
  ({ locale }: Turn) =>
  (words: string): string | null => {
    const kind = kindNamed(words, locale);
    return kind && isWholeKind(kind) ? `${NEW}${words}` : null;
  };

interface Unfolded {
  readonly kitchen: Kitchen;
  readonly changes: readonly Change[];
  readonly placeId: Id;
  readonly told: readonly Say[];
}

const kindOf = ({ locale }: Turn, { kind, words }: PlaceStep): PlaceKind =>
  kindNamed(kind, locale) ?? kindNamed(words, locale) ?? 'cupboard';

/** A fridge or a cupboard has shelves; a counter, a bread bin and a shelf over the cooker have none. */
const isDivided =
  ({ locale }: Turn) =>
  ({ kind, name }: Place): boolean =>
    kind === 'cupboard'
      ? [name.split(' ')[0], name.split(' ').at(-1)].some((word) => kindNamed(word, locale) === 'cupboard')
      : kind !== 'counter';

/**
 * Where a shelf is that was named alone: in what was just spoken of, in the only thing that has such parts, or in
 * the only thing there is. A counter has none.
 */
const around = (turn: Turn): Id | null => {
  const near = rootPlace(turn.kitchen, turn.memory.placeId);
  if (near && isDivided(turn)(near)) return near.id;
  const wholes = placesIn(turn.kitchen, null).filter(isDivided(turn));
  const parted = wholes.filter(({ id }) => placesIn(turn.kitchen, id).length > 0);
  const [only] = parted.length === 1 ? parted : wholes.length === 1 ? wholes : [];
  return only?.id ?? null;
};

/** "In the door": what keeps food in its door is the fridge, there already or new. */
const impliedBy = (turn: Turn, { kind }: PlaceStep): readonly PlaceStep[] => {
  const near = rootPlace(turn.kitchen, turn.memory.placeId);
  if (kind !== 'door' || near?.kind === 'fridge' || near?.kind === 'freezer') return [];
  const fridges = placesIn(turn.kitchen, null).filter((place) => place.kind === 'fridge');
  if (fridges.length > 1) return [];
  const candidates = fridges.map(({ id }) => ({ id, fit: 1 }));
  return [{ words: 'fridge', kind: 'fridge', whole: true, candidates }];
};

const withImplied = (turn: Turn, place: PlaceMention): PlaceMention => {
  const [first] = place.path ?? [];
  if (!first || first.whole || first.candidates.length > 0 || place.candidates.length > 0) return place;
  return { ...place, path: [...impliedBy(turn, first), ...place.path!] };
};

/** Whether a part of that kind can be new there: not where the like of it was counted. */
const mayBeNew = (turn: Turn, parentId: Id | null, step: PlaceStep): boolean =>
  step.distinct === true ||
  (parentId === null
    ? ![...turn.kitchen.places.values()].some(
        ({ kind, parentId: of }) => of === null && kind === kindOf(turn, step),
      )
    : !placesIn(turn.kitchen, parentId).some(
        ({ kind, position }) => kind === kindOf(turn, step) && position !== null,
      ));

/** A place of that name that is there by now, though the words were heard before it was. */
const calledThere = (turn: Turn, parentId: Id | null, step: PlaceStep | undefined): Id | null =>
  step
    ? (placesIn(turn.kitchen, parentId).find(({ name, aliases }) => [name, ...aliases].includes(step.words))
        ?.id ?? null)
    : null;

/** What was made is told from the outermost that is new: "a fridge with a door". */
const toldOf = (kitchen: Kitchen, outer: Id | null, made: readonly PlaceStep[]): Say => {
  const [first, second] = made;
  if (outer !== null) return say('new-part', { place: placeNoun(kitchen, outer), part: first!.words });
  return second
    ? say('new-whole-with', { place: first!.words, part: second.words })
    : say('new-whole', { place: first!.words });
};

/** The place said, made where it is new; null where it is on record, or has to be asked about. */
const unfold = (turn: Turn, { path = [], candidates }: PlaceMention): Unfolded | null => {
  const [outermost] = path;
  if (candidates.length > 0 || !outermost) return null;
  const known = outermost.candidates.find(({ id }) => turn.kitchen.places.has(id));
  let parentId: Id | null = known?.id ?? (outermost.whole ? null : around(turn));
  if (parentId === null && !outermost.whole) return null;
  let fresh = known ? path.slice(1) : path;
  // Made a moment ago, with another food of the same breath.
  for (
    let there = calledThere(turn, parentId, fresh[0]);
    there;
    there = calledThere(turn, parentId, fresh[0])
  ) {
    parentId = there;
    fresh = fresh.slice(1);
  }
  if (parentId !== null && fresh.length === 0)
    return { kitchen: turn.kitchen, changes: [], placeId: parentId, told: [] };
  const from = parentId;
  let now = turn;
  const changes: Change[] = [];
  for (const step of fresh) {
    if (!mayBeNew(now, parentId, step)) return null;
    const made = buildPlaces(now, {
      kind: kindOf(turn, step),
      parentId,
      names: [step.words],
      uncounted: true,
    });
    if (isRefused(made)) return null;
    changes.push(made);
    now = { ...now, kitchen: applyChange(now.kitchen, made) };
    parentId = made.ops[0]!.id;
  }
  if (parentId === null || changes.length === 0) return null;
  return { kitchen: now.kitchen, changes, placeId: parentId, told: [toldOf(now.kitchen, from, fresh)] };
};

/** "In the fridge", of the top shelf that was just named: its parts in order. */
const joined = (place: PlaceMention, within: PlaceMention): PlaceMention => {
  const outer: readonly PlaceStep[] =
    within.candidates.length > 0
      ? [{ words: within.words ?? '', kind: '', whole: true, candidates: within.candidates }]
      : (within.path ?? []);
  return { ...place, path: [...outer, ...(place.path ?? [])] };
};

/** A part of something nobody named: what it is part of is asked. */
const lacksWhole = (turn: Turn, { path = [], candidates }: PlaceMention): boolean =>
  candidates.length === 0 &&
  path.length > 0 &&
  !path[0]!.whole &&
  path[0]!.candidates.length === 0 &&
  around(turn) === null;

/** So much better a name fits that it is meant. */
const clearly = 0.05;

/** "The freezer's top drawer", of two freezers: those it may be part of. What was just spoken of is meant, or the only one with such parts. */
const wholesMeant = (turn: Turn, { path = [], candidates }: PlaceMention): readonly Place[] => {
  const [whole, part] = path;
  if (candidates.length > 0 || !whole || !part) return [];
  const top = whole.candidates[0]?.fit ?? 0;
  const meant = whole.candidates.flatMap(({ id, fit }) => {
    const place = fit >= top - clearly ? turn.kitchen.places.get(id) : undefined;
    return place ? [place] : [];
  });
  const near = rootPlace(turn.kitchen, turn.memory.placeId)?.id;
  const spoken = meant.filter(({ id }) => id === near);
  const having = meant.filter(({ id }) =>
    placesIn(turn.kitchen, id).some(({ kind }) => kind === kindOf(turn, part)),
  );
  return spoken.length === 1 ? spoken : having.length === 1 ? having : meant;
};

/** The place with its whole settled, where that is one. */
const ofWhole = (place: PlaceMention, whole: Place): PlaceMention => ({
  ...place,
  path: [{ ...place.path![0]!, candidates: [{ id: whole.id, fit: 1 }] }, ...place.path!.slice(1)],
});

interface Placed {
  readonly slots: Slots;
  readonly turn: Turn;
  readonly changes: readonly Change[];
  readonly told: readonly Say[];
}

/** Every place that an act names, made where it is new. */
const placed = (turn: Turn, slots: Slots): Placed => {
  let at: Placed = { slots, turn, changes: [], told: [] };
  const take = (mention: PlaceMention | undefined | null): PlaceMention | undefined => {
    const made = mention ? unfold(at.turn, withImplied(at.turn, mention)) : null;
    if (!made) return mention ?? undefined;
    at = {
      ...at,
      turn: { ...at.turn, kitchen: made.kitchen, memory: { ...at.turn.memory, placeId: made.placeId } },
      changes: [...at.changes, ...made.changes],
      told: [...at.told, ...made.told],
    };
    return { ...mention!, candidates: [{ id: made.placeId, fit: 1 }] };
  };
  const place = take(slots.place);
  const inside = take(slots.item?.at);
  const shares = slots.shares?.map((share) => ({ ...share, place: take(share.place)! }));
  return {
    ...at,
    slots: {
      ...slots,
      ...(place ? { place } : {}),
      ...(inside && slots.item ? { item: { ...slots.item, at: inside } } : {}),
      ...(shares ? { shares } : {}),
    },
  };
};

/** A place that was offered and agreed to, made before the handler runs. */
const agreed = (handler: Handler, act: Act, turn: Turn, settled: string): Reply => {
  const name = settled.slice(NEW.length);
  const made = buildPlaces(turn, {
    kind: kindNamed(name, turn.locale) ?? 'cupboard',
    parentId: null,
    names: [name],
  });
  if (isRefused(made)) return refusal(turn, made);
  const placeIds = made.ops.map(({ id }) => id);
  const picked = { ...turn.picked, place: placeIds };
  const reply = handler(act, { ...turn, kitchen: applyChange(turn.kitchen, made), picked });
  if (!reply.changes) return reply;
  return {
    ...reply,
    parts: [say('built', { names: name }), ...reply.parts],
    changes: [made, ...reply.changes],
  };
};

/** The handler, on a kitchen that has the place which was named. */
export const makingPlace =
  (handler: Handler): Handler =>
  (act, turn) => {
    const settled = turn.picked['place']?.[0];
    if (settled?.startsWith(NEW)) return agreed(handler, act, turn, settled);
    if (settled) return handler(act, turn);
    const { within, ...rest } = act.slots;
    const said = within && rest.place ? { ...rest, place: joined(rest.place, within) } : rest;
    const slots = said.place ? { ...said, place: withImplied(turn, said.place) } : said;
    if (slots.place && lacksWhole(turn, slots.place)) {
      const part = slots.place.path![0]!.words;
      const ask = { slot: 'within', question: say('ask-part-of', { part }), expecting: 'place' as const };
      return { parts: [], ask, askFor: { ...act, slots } };
    }
    const wholes = slots.place ? wholesMeant(turn, slots.place) : [];
    if (slots.place && wholes.length > 1) {
      const choices = wholes.map(({ id }) => ({ ids: [id], label: placeNoun(turn.kitchen, id) }));
      const question = say('which-place', {
        choices: list(
          choices.map(({ label }) => label),
          true,
        ),
      });
      const inner = { ...slots.place, path: slots.place.path!.slice(1) };
      return {
        parts: [],
        ask: { slot: 'within', question, expecting: 'place' },
        askFor: { ...act, slots: { ...slots, place: inner } },
      };
    }
    const settledIn = slots.place && wholes[0] ? { ...slots, place: ofWhole(slots.place, wholes[0]) } : slots;
    const { slots: known, turn: now, changes, told } = placed(turn, settledIn);
    const [first, ...others] = changes;
    const reply = handler({ ...act, slots: known }, now);
    if (!first || !reply.changes) return reply;
    return {
      ...reply,
      parts: [...reply.parts, ...told],
      changes: [joinChanges(first, ...others), ...reply.changes],
    };
  };
