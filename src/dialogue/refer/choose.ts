/** Which of the things a question offered was chosen: "the small one", "the second", "all of them". */
import { partedPlace } from '../../understanding/index.js';
import { emptyMention } from '../../understanding/intents.js';
import type { Id, Item, Kitchen } from '../../kitchen/model.js';
import { likeness, placeUnder } from '../../kitchen/index.js';
import type { Beside } from '../../protocol/beside.js';
import type { Act, Mention } from '../../understanding/intents.js';
import type { Turn } from '../handler.js';
import type { Choice } from '../state.js';
import { atOrdinal, findItems } from './items.js';

/** What of the act names a choice, wherever the grammar put it. */
const mentionOf = (act: Act): Mention => {
  const { item, marker, place, maker, diet, container, ordinal, number } = act.slots;
  const said = item ?? marker ?? emptyMention;
  return {
    ...said,
    touch: said.touch ?? marker?.touch ?? container ?? null,
    ordinal: said.ordinal ?? ordinal ?? (item || marker || place ? null : (number ?? null)),
    maker: said.maker ?? maker ?? null,
    diet: said.diet ?? diet ?? null,
    at: said.at ?? place ?? null,
  };
};

export type Chosen =
  | { readonly chosen: readonly Id[] }
  | { readonly chosen: 'none' }
  | { readonly chosen: 'unclear' }
  /** Fewer than before, but still more than one. */
  | { readonly chosen: 'fewer'; readonly ids: readonly Id[] };

const dateWord = (item: Item): string[] => Object.values(item.dates);

const namesOf = (kitchen: Kitchen, id: Id): string[] => {
  const place = kitchen.places.get(id);
  const label = kitchen.reminders.get(id)?.label;
  return [...(place ? [place.name, ...place.aliases] : []), ...(label ? [label] : [])];
};

/** Those offered that are named, wholly or by nothing else than words of their names. */
const namedAmong = (beside: Beside | null, choices: readonly Choice[]): readonly Choice[] =>
  choices.filter(({ ids }) =>
    beside?.named.some(({ id, whole, alone }) => (whole || alone) && ids.includes(id)),
  );

/**
 * "The carrot one", when it was not made out otherwise: the one of those offered that is named; else the one that has a
 * word of its own among what was said.
 */
export const namedOf = (beside: Beside | null, choices: readonly Choice[]): readonly Id[] | null => {
  const fitting = namedAmong(beside, choices);
  if (fitting.length > 0) return fitting.length === 1 ? fitting[0]!.ids : null;
  const places = choices.map(
    ({ ids }) => new Set((beside?.named ?? []).filter(({ id }) => ids.includes(id)).flatMap(({ at }) => at)),
  );
  const own = choices.filter((_, nth) =>
    [...places[nth]!].some((at) => places.every((other, n) => n === nth || !other.has(at))),
  );
  return own.length === 1 ? own[0]!.ids : null;
};

/** Places and records that are not items are chosen by id. */
const chooseById = (turn: Turn, mention: Mention, choices: readonly Choice[]): Choice[] => {
  const { kitchen } = turn;
  const wanted = [...mention.candidates, ...(mention.at?.candidates ?? [])].map(({ id }) => id);
  const said = mention.words ?? mention.at?.words ?? null;
  const called = said
    ? choices.filter(({ ids }) =>
        ids.some((id) => namesOf(kitchen, id).some((name) => likeness(name, said) > 0)),
      )
    : [];
  // "Chest freezer left basket", where the freezers were offered: more than was asked, and not to be lost.
  const [best] = mention.at?.candidates ?? [];
  const within =
    best && choices.some(({ ids }) => ids.some((id) => placeUnder(kitchen, best.id, id) && id !== best.id));
  if (within && best.fit >= 0.8) return [];
  // "Second shelf of the fridge", where shelves of the pantry were offered.
  const elsewhere =
    best &&
    best.fit >= 0.9 &&
    partedPlace(mention.at?.words ?? '', turn.locale).outer !== undefined &&
    kitchen.places.has(best.id);
  if (elsewhere && !choices.some(({ ids }) => ids.some((id) => placeUnder(kitchen, id, best.id)))) return [];
  if (wanted.length === 0 || called.length === 1) return called;
  return choices.filter(({ ids }) =>
    ids.some(
      (id) =>
        wanted.includes(id) || (kitchen.places.has(id) && wanted.some((w) => placeUnder(kitchen, id, w))),
    ),
  );
};

export const choose = (turn: Turn, act: Act, choices: readonly Choice[]): Chosen => {
  const mention = mentionOf(act);
  const all = choices.flatMap(({ ids }) => ids);
  const allergens = choices.filter(({ ids }) => ids.some((id) => act.slots.allergens?.includes(id)));
  if (allergens.length > 0) return { chosen: allergens.flatMap(({ ids }) => ids) };
  switch (mention.pointer) {
    case 'all':
    case 'both':
    case 'them':
      return { chosen: all };
    case 'none':
      return { chosen: 'none' };
    case 'other':
      if (choices.length === 2) {
        const left = choices.filter(({ ids }) => !ids.some((id) => turn.memory.items.includes(id)));
        if (left.length === 1) return { chosen: left[0]!.ids };
      }
      break;
    default:
  }
  if (mention.ordinal !== null) {
    const at = atOrdinal(choices, mention.ordinal);
    return at ? { chosen: at.ids } : { chosen: 'unclear' };
  }
  const items = all.flatMap((id) => turn.kitchen.items.get(id) ?? []);
  if (items.length === 0) {
    const fit = chooseById(turn, mention, choices);
    return fit.length === 1 ? { chosen: fit[0]!.ids } : { chosen: 'unclear' };
  }
  const bare =
    mention.touch === null &&
    mention.maker === null &&
    mention.at === null &&
    mention.candidates.length === 0;
  const words = mention.words ?? act.slots.words ?? null;
  if (bare && words === null) {
    const named = namedAmong(turn.beside, choices).flatMap(({ ids }) => ids);
    if (named.length > 0 && named.length < all.length) return narrowed(named, choices);
  }
  const among: Turn = { ...turn, memory: { ...turn.memory, items: all, offered: all } };
  const day = act.slots.when ?? Object.values(act.slots.dates ?? {})[0];
  const dated =
    day && day !== 'unknown'
      ? items.filter((item) => dateWord(item).includes(day.day)).map(({ id }) => id)
      : [];
  if (dated.length > 0) return narrowed(dated, choices);
  const described = {
    ...mention,
    words,
    pointer: words || mention.candidates.length > 0 ? null : ('them' as const),
  };
  const found = findItems(among, described);
  const loose = turn.qualifiers.has('loose') ? mention.at?.candidates[0]?.id : undefined;
  const kept = found.items
    .filter(({ id, placeId }) => all.includes(id) && (loose === undefined || placeId === loose))
    .map(({ id }) => id);
  if (kept.length === 0 || found.near || kept.length === all.length) return { chosen: 'unclear' };
  return narrowed(kept, choices);
};

const narrowed = (kept: readonly Id[], choices: readonly Choice[]): Chosen => {
  const left = choices.filter(({ ids }) => ids.some((id) => kept.includes(id)));
  return left.length === 1 ? { chosen: left[0]!.ids } : { chosen: 'fewer', ids: kept };
};
